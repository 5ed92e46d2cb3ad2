import { both } from "../checks/shared/sentence.ts";
import type { Assembly } from "../model/assembly.ts";
import type { Declaration } from "../model/declaration.ts";
import { label } from "../model/facts.ts";
import type { Finding, Repair, WrittenSetting } from "../model/finding.ts";
import { readStandard } from "../model/standard.ts";
import { writeCode } from "../values/code.ts";
import { nearestSeveral } from "../values/near.ts";
import { slotByPath } from "../vocabulary/index.ts";
import { inMonths } from "./days.ts";
import { addLine, type DeclarationEdit, findEntry, writeEntry, writeSettings } from "./edit-build.ts";
import type { Engine } from "./engine.ts";
import { type JudgedRepair, judged } from "./judged-repairs.ts";
import { fittingTitle, partSwaps } from "./part-swaps.ts";
import type { Range } from "./positions.ts";
import { fieldTitle, settingTitle } from "./set-settings.ts";
import { stateSetting } from "./state-setting.ts";

/** A repair worked out to text, ready to apply. */
export interface Mend {
  readonly title: string;
  /** True for the one that a person would most likely want. */
  readonly preferred: boolean;
  /** True when the text still wants a person's word after it is applied (a reason, a value). */
  readonly unfinished: boolean;
  readonly edits: readonly { readonly uri: string; readonly range: Range; readonly newText: string }[];
}

/** How many interfaces of a family are offered when none is near what was written. */
const mostCodes = 8;

interface Draft {
  readonly title: string;
  readonly unfinished?: boolean;
  /** One of several that may be meant just as well: nobody is to have it applied unseen. */
  readonly isOpen?: boolean;
  readonly edits: readonly DeclarationEdit[];
}

/**
 * Works out what would mend a finding. A part is offered only when, with it in the slot, the finding is gone and
 * nothing that held begins to fail.
 * @param build the declaration the finding belongs to.
 * @param leftOut repairs of this kind are not worked out.
 */
export function mends(engine: Engine, build: Declaration, finding: Finding, leftOut?: Repair["kind"]): readonly Mend[] {
  return keptDrafts(engine, build, finding, leftOut)
    .filter(({ edits }) => edits.length > 0 && edits.every(({ declaration }) => !declaration.builtIn))
    .filter((draft, index, all) => all.findIndex((other) => isSameEdit(draft, other)) === index)
    .map((draft, index) => ({
      title: draft.title,
      preferred: index === 0 && !draft.unfinished && !draft.isOpen,
      unfinished: draft.unfinished ?? false,
      edits: draft.edits.map(({ declaration, span, text }) => ({
        uri: declaration.uri,
        range: engine.range({ declaration, span }),
        newText: text,
      })),
    }));
}

/** What was worked out for findings, by the kind of repair that was left out, and what the libraries were then. */
const worked = new WeakMap<
  Finding,
  {
    readonly build: Declaration;
    readonly librariesRevision: number;
    readonly drafts: Map<Repair["kind"] | "", readonly Draft[]>;
  }
>();

/**
 * Repairs are worked out once for a finding: as long as it stands nothing in its build has changed, and an edit of
 * another build does not change what the libraries offer. Names are looked for among builds too, so those are not kept.
 */
function keptDrafts(
  engine: Engine,
  build: Declaration,
  finding: Finding,
  leftOut: Repair["kind"] | undefined,
): readonly Draft[] {
  const wanted = finding.repairs.filter(({ kind }) => kind !== leftOut);
  if (wanted.some(({ kind }) => kind === "near-name")) return draftsOf(engine, build, finding, wanted);
  const { librariesRevision } = engine;
  let kept = worked.get(finding);
  if (kept?.librariesRevision !== librariesRevision || kept.build !== build) {
    kept = { build, librariesRevision, drafts: new Map() };
    worked.set(finding, kept);
  }
  let drafts = kept.drafts.get(leftOut ?? "");
  if (!drafts) {
    drafts = draftsOf(engine, build, finding, wanted);
    kept.drafts.set(leftOut ?? "", drafts);
  }
  return drafts;
}

function draftsOf(engine: Engine, build: Declaration, finding: Finding, wanted: readonly Repair[]): readonly Draft[] {
  const drafts: Draft[] = [];
  const assembly = finding.bike ?? (build.keyword === "build" ? engine.report(build)?.assembly : undefined);
  const unsafe: Draft[] = [];
  const tried = assembly ? judged(engine, assembly, finding, fittingFirst(wanted)) : untried(wanted);
  for (const { repair, settings, isSafe, fails } of tried) {
    // A name that is near was meant; no library is searched for what else would do.
    if (repair.kind === "swap-part" && finding.code === "model/unknown-part" && drafts.length > 0) continue;
    const found =
      repair.kind === "set-setting"
        ? [setSettings(build, repair.slot, settings)]
        : work(engine, build, assembly, finding, repair);
    if (isSafe) drafts.push(...found);
    else unsafe.push(...found.map((draft) => ({ ...draft, title: `${draft.title}${thenFails(fails)}`, isOpen: true })));
  }
  // What leaves the finding, or makes another, is for a person to choose, after all that does not.
  drafts.push(...unsafe);
  if (assembly && finding.outcome === "fails" && engine.checks.byCode(finding.code))
    drafts.push(waive(engine, build, finding));
  return drafts;
}

/** Whether two repairs come to the same, such as the part that a rule names and the one that the libraries offer. */
function isSameEdit({ edits }: Draft, { edits: others }: Draft): boolean {
  return (
    edits.length === others.length &&
    edits.every(({ declaration, span, text }, index) => {
      const other = others[index];
      return (
        other?.declaration === declaration &&
        other.span.start === span.start &&
        other.span.end === span.end &&
        other.text === text
      );
    })
  );
}

function work(
  engine: Engine,
  build: Declaration,
  assembly: Assembly | undefined,
  finding: Finding,
  repair: Repair,
): readonly Draft[] {
  switch (repair.kind) {
    case "change-text":
      return [
        {
          title: repair.title,
          edits: repair.changes.map((change) => ({ declaration: repair.place.declaration, ...change })),
        },
      ];
    case "near-name":
      return nearNames(engine, repair);
    case "swap-part":
    case "insert-part":
      return assembly
        ? partSwaps(engine, build, assembly, finding, repair.slot, "set" in repair ? repair.set : undefined)
        : [];
    case "set-setting":
      return [setSettings(build, repair.slot, [repair])];
    case "set-field": {
      // A rule says which part is fitted as it says what a field is.
      const part = slotByPath(repair.field) && engine.workshop.part(repair.value);
      const title = part
        ? fittingTitle(part, assembly?.slots.get(repair.field), [repair.field])
        : fieldTitle(repair.field, repair.value);
      return [{ title, edits: [writeEntry(build, repair.field, repair.value)] }];
    }
    case "set-fact":
      return setFact(assembly, repair);
    case "state-fact":
      return stateFact(assembly, repair);
    case "state-setting":
      return assembly ? stateSetting(engine, build, assembly, repair) : [];
    case "leave-empty":
      return [{ title: leaveOutTitle(assembly, repair.slot), edits: [leaveEmpty(build, repair.slot)] }];
  }
}

/** Another part for a place comes before leaving the place empty: whoever fitted one had a use for it. */
function fittingFirst(repairs: readonly Repair[]): readonly Repair[] {
  const ordered = [...repairs];
  for (const repair of repairs) {
    if (repair.kind !== "leave-empty") continue;
    const last = ordered.findLastIndex((other) => other.kind === "swap-part" && other.slot === repair.slot);
    const at = ordered.indexOf(repair);
    if (last < at) continue;
    ordered.splice(at, 1);
    ordered.splice(last, 0, repair);
  }
  return ordered;
}

/** Where there is no build to try them on. */
function untried(repairs: readonly Repair[]): readonly JudgedRepair[] {
  return repairs.map((repair) => ({
    repair,
    settings: repair.kind === "set-setting" ? [repair] : [],
    isSafe: true,
    fails: [],
  }));
}

function thenFails(codes: readonly string[]): string {
  if (codes.length === 0) return "";
  return `, with which ${both(codes)} ${codes.length === 1 ? "begins" : "begin"} to fail`;
}

function setSettings(build: Declaration, slot: string, settings: readonly WrittenSetting[]): Draft {
  return { title: settings.map(settingTitle).join(". "), edits: writeSettings(build, slot, settings) };
}

function leaveOutTitle(assembly: Assembly | undefined, slot: string): string {
  const installed = assembly?.slots.get(slot);
  return installed && installed.state !== "none"
    ? `Leave out ${label(installed)} (${slot}: none)`
    : `Leave ${slot} empty`;
}

function leaveEmpty(build: Declaration, slot: string): DeclarationEdit {
  const entry = findEntry(build.tree.block, slot);
  if (entry?.form !== "field") return writeEntry(build, slot, "none");
  const end = entry.block?.span.end ?? entry.value.span.end;
  return { declaration: build, span: { start: entry.value.span.start, end }, text: "none" };
}

function nearNames(engine: Engine, repair: Extract<Repair, { kind: "near-name" }>): readonly Draft[] {
  const names = new Set<string>();
  const codes = new Set<string>();
  const kinds = repair.kinds.length > 0 ? repair.kinds : [undefined];
  for (const kind of kinds) {
    for (const declaration of engine.workshop.declared(repair.keyword, kind)) {
      if (declaration === repair.place.declaration) continue;
      names.add(declaration.name);
      if (repair.keyword !== "standard") continue;
      codes.add(declaration.name);
      for (const alias of readStandard(declaration).aliases) names.add(alias);
    }
  }
  const near = nearestSeveral(repair.name, names);
  // Where nothing is near and the family has few interfaces, one of them is meant, and nobody can say which.
  const isOpen = near.length === 0 && codes.size <= mostCodes;
  return (isOpen ? [...codes].sort() : near).map((name) => {
    const text = repair.keyword === "standard" ? writeCode(name) : name;
    const { declaration, span } = repair.place;
    return { title: `Write ${text}`, isOpen, edits: [{ declaration, span, text }] };
  });
}

/** A fact is the maker's to state: a number that would fit is offered, and never applied unseen. */
function setFact(assembly: Assembly | undefined, repair: Extract<Repair, { kind: "set-fact" }>): readonly Draft[] {
  const part = assembly?.slots.get(repair.slot)?.part;
  if (!part) return [];
  const stated = part.facts.get(repair.fact);
  const title = `Correct ${repair.fact} of ${part.declaration.label} to ${repair.value}, if its maker says so`;
  if (stated) {
    const { declaration, span } = stated.place;
    return [{ title, isOpen: true, edits: [{ declaration, span, text: repair.value }] }];
  }
  return [{ title, isOpen: true, edits: [writeEntry(part.declaration, repair.fact, repair.value)] }];
}

function stateFact(assembly: Assembly | undefined, repair: Extract<Repair, { kind: "state-fact" }>): readonly Draft[] {
  const part = assembly?.slots.get(repair.slot)?.part;
  if (!part || part.facts.has(repair.fact)) return [];
  return [
    {
      title: `State ${repair.fact} where ${part.declaration.label} is declared`,
      unfinished: true,
      edits: [writeEntry(part.declaration, repair.fact, "")],
    },
  ];
}

/** A waiver without its reason: the reason is for a person to give, and an empty one is refused. */
function waive(engine: Engine, build: Declaration, finding: Finding): Draft {
  const at = finding.path === "" ? "" : ` at ${finding.path}`;
  const line = `waive ${finding.code}${at} "" until ${inMonths(engine.today, 3)}`;
  const { block } = build.tree;
  return {
    title: `Waive ${finding.code} here, with a reason`,
    unfinished: true,
    edits: block ? [addLine(build, block, line)] : [],
  };
}
