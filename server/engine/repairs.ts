import { parseDeclaration } from "../../grammar/parse.ts";
import { checkByCode, checksReading } from "../checks/table.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import type { Declaration } from "../model/declaration.ts";
import type { Finding, Repair } from "../model/finding.ts";
import type { Part } from "../model/part.ts";
import { readStandard } from "../model/standard.ts";
import type { Statement } from "../model/stated.ts";
import { nearestSeveral } from "../values/near.ts";
import { readValue } from "../values/read.ts";
import { commonFields } from "../vocabulary/index.ts";
import { failuresOverAll, hasAlternates, withNamedPart } from "./alternates.ts";
import { byFit, type Candidate, partsFor, SlotJudge } from "./candidates.ts";
import { inMonths } from "./days.ts";
import { addLine, type DeclarationEdit, findEntry, removeEntry, writeEntry } from "./edit-build.ts";
import type { Engine } from "./engine.ts";
import { BuildEvaluation } from "./evaluate.ts";
import type { Range } from "./positions.ts";

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
/** How many parts are offered in place of one that does not fit. */
const mostSwaps = 4;

interface Draft {
  readonly title: string;
  readonly unfinished?: boolean;
  readonly edits: readonly DeclarationEdit[];
}

/**
 * Works out what would mend a finding. A part is offered only when, with it in the slot, the finding is gone and
 * nothing that held begins to fail.
 * @param build the declaration the finding belongs to.
 */
export function mends(engine: Engine, build: Declaration, finding: Finding): readonly Mend[] {
  const drafts: Draft[] = [];
  const assembly = finding.bike ?? (build.keyword === "build" ? engine.report(build)?.assembly : undefined);
  const repairs = assembly ? withoutWorse(engine, assembly, finding.repairs) : finding.repairs;
  for (const repair of repairs) drafts.push(...work(engine, build, assembly, finding, repair));
  if (assembly && finding.outcome === "fails" && checkByCode(finding.code)) drafts.push(waive(engine, build, finding));
  return drafts
    .filter(({ edits }) => edits.length > 0 && edits.every(({ declaration }) => !declaration.builtIn))
    .map((draft, index) => ({
      title: draft.title,
      preferred: index === 0 && !draft.unfinished,
      unfinished: draft.unfinished ?? false,
      edits: draft.edits.map(({ declaration, span, text }) => ({
        uri: declaration.uri,
        range: engine.range({ declaration, span }),
        newText: text,
      })),
    }));
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
      return nearNames(engine, repair).map((name) => ({
        title: `Write ${name}`,
        edits: [{ declaration: repair.place.declaration, span: repair.place.span, text: name }],
      }));
    case "swap-part":
    case "insert-part":
      return assembly ? swaps(engine, build, assembly, finding, repair.slot) : [];
    case "set-setting":
      return [
        {
          title: `Set ${repair.slot}.${repair.setting} to ${repair.value}`,
          edits: [writeEntry(build, `${repair.slot}.${repair.setting}`, repair.value)],
        },
      ];
    case "set-field":
      return [
        { title: `Set ${repair.field} to ${repair.value}`, edits: [writeEntry(build, repair.field, repair.value)] },
      ];
    case "set-fact":
      return setFact(assembly, repair);
    case "state-fact":
      return stateFact(assembly, repair);
    case "leave-empty":
      return [{ title: `Leave ${repair.slot} empty`, edits: [leaveEmpty(build, repair.slot)] }];
  }
}

/** Of several values for one setting, those with which nothing else begins to fail; all where that leaves none. */
function withoutWorse(engine: Engine, assembly: Assembly, repairs: readonly Repair[]): readonly Repair[] {
  const settings = repairs.filter((repair) => repair.kind === "set-setting");
  if (settings.length < 2) return repairs;
  const worse = new Set<Repair>(settings.filter((repair) => beginsToFail(engine, assembly, repair)));
  const isBettered = (repair: Repair): boolean =>
    repair.kind === "set-setting" &&
    worse.has(repair) &&
    settings.some((other) => other.slot === repair.slot && other.setting === repair.setting && !worse.has(other));
  return repairs.filter((repair) => !isBettered(repair));
}

/** Whether a check that does not fail now would fail with a setting written so. */
function beginsToFail(
  engine: Engine,
  assembly: Assembly,
  { slot, setting, value }: Extract<Repair, { kind: "set-setting" }>,
): boolean {
  const installed = assembly.slots.get(slot);
  const field = installed?.slot.settings[setting];
  const written = parseDeclaration(`build setting {\n  ${setting}: ${value}\n}\n`).block?.entries[0];
  if (!installed || !field || written?.form !== "field") return false;
  const reading = readValue(field.type, written.value.tokens, { field: setting, span: written.value.span });
  const { place } = installed;
  const statement: Statement = reading.isNone
    ? { state: "none", place }
    : reading.value === undefined
      ? { state: "unreadable", place }
      : { state: "stated", value: reading.value, written: reading.written, place };
  const settings = new Map(installed.settings).set(setting, statement);
  const slots = new Map(assembly.slots).set(slot, { ...installed, settings });
  const before = new BuildEvaluation(assembly, engine.workshop);
  const after = new BuildEvaluation({ ...assembly, slots }, engine.workshop);
  return checksReading(slot).some(
    ({ check, instance }) =>
      after.ask(check, instance).outcome === "fails" && before.ask(check, instance).outcome !== "fails",
  );
}

function leaveEmpty(build: Declaration, slot: string): DeclarationEdit {
  const entry = findEntry(build.tree.block, slot);
  if (entry?.form !== "field") return writeEntry(build, slot, "none");
  const end = entry.block?.span.end ?? entry.value.span.end;
  return { declaration: build, span: { start: entry.value.span.start, end }, text: "none" };
}

function nearNames(engine: Engine, repair: Extract<Repair, { kind: "near-name" }>): readonly string[] {
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
  // Where nothing is near and the family has few interfaces, one of them is meant.
  return near.length === 0 && codes.size <= mostCodes ? [...codes].sort() : near;
}

/** A part that would mend a finding, and what has to go from its slot for it to do so. */
interface Swap {
  readonly candidate: Candidate;
  /** Settings that name other slots and made sense for the part before only. */
  readonly without: readonly string[];
  /** How many facts it shares with the part that is there: a person changes as little as will do. */
  readonly likeness: number;
}

/**
 * Parts with which the finding is gone and nothing new fails. Where the slot's own reference to another slot (whose
 * clamp is shared) is in the way, parts that fit without it are offered too.
 */
function swaps(
  engine: Engine,
  build: Declaration,
  assembly: Assembly,
  finding: Finding,
  slot: string,
): readonly Draft[] {
  const check = checkByCode(finding.code);
  const before = new Set<string>();
  const evaluation = new BuildEvaluation(assembly, engine.workshop);
  for (const { check: other, instance } of checksReading(slot)) {
    if (evaluation.ask(other, instance).outcome === "fails") before.add(`${other.code} ${instance.name}`);
  }
  const current = assembly.slots.get(slot);
  const mended = (candidate: Candidate): boolean =>
    candidate.failures.every(({ code, instance }) => {
      if (check && code === check.code) return false;
      return before.has(`${code} ${instance}`);
    }) &&
    // What fails whatever stands here is not mended by another part here.
    !candidate.standing.some(({ code, path }) => code === finding.code && path === finding.path) &&
    !(check && candidate.unknown.includes(check.code));
  const references = referencesOf(current, build);
  const ways = [{ without: [] as readonly string[], judging: new SlotJudge(engine, assembly, slot) }];
  if (references.length > 0) {
    ways.push({
      without: references,
      judging: new SlotJudge(engine, withoutSettings(assembly, slot, references), slot),
    });
  }
  const found: Swap[] = [];
  for (const declaration of partsFor(engine, slot)) {
    if (declaration === current?.part?.declaration) continue;
    const part = engine.part(declaration);
    for (const { without, judging } of ways) {
      const candidate = judging.judge(part);
      if (!mended(candidate)) continue;
      found.push({ candidate, without, likeness: likeness(part, current?.part) });
      break;
    }
  }
  found.sort(
    (one, other) =>
      one.candidate.errors - other.candidate.errors ||
      one.candidate.warnings - other.candidate.warnings ||
      one.candidate.unknown.length - other.candidate.unknown.length ||
      other.likeness - one.likeness ||
      byFit(one.candidate, other.candidate),
  );
  const safe = alternatesKept(engine, build, finding, slot, current);
  return firstOf(found, mostSwaps, ({ candidate }) => safe(candidate.part)).map(({ candidate: { part }, without }) => {
    const { name, label } = part.declaration;
    const removed = without.flatMap((setting) => removeEntry(build, `${slot}.${setting}`) ?? []);
    return {
      title: `${current?.part ? "Fit" : "Add"} ${label} (${name}) as ${slot}${removed.length > 0 ? `, without ${without.join(" and ")}` : ""}`,
      edits: [writeName(build, assembly, slot, name), ...removed],
    };
  });
}

function firstOf<Item>(items: readonly Item[], most: number, isWanted: (item: Item) => boolean): readonly Item[] {
  const wanted: Item[] = [];
  for (const item of items) {
    if (wanted.length === most) break;
    if (isWanted(item)) wanted.push(item);
  }
  return wanted;
}

/** Whether a part in place of the one that is there leaves every other combination of alternates as well as it was. */
function alternatesKept(
  engine: Engine,
  build: Declaration,
  finding: Finding,
  slot: string,
  current: Installed | undefined,
): (part: Part) => boolean {
  const whole = engine.report(build)?.assembly;
  if (!whole || !current || !hasAlternates(whole)) return () => true;
  const before = failuresOverAll(whole, engine.workshop, slot);
  const named = whole.slots.get(slot);
  const already = new Set([named?.part, ...(named?.alternates.map(({ part }) => part) ?? [])]);
  return (part) => {
    if (already.has(part)) return false;
    const after = failuresOverAll(withNamedPart(whole, slot, current, part), engine.workshop, slot);
    const mended = ofCode(after, finding.code) < ofCode(before, finding.code);
    return mended && [...after].every(([question, count]) => count <= (before.get(question) ?? 0));
  };
}

function ofCode(failures: ReadonlyMap<string, number>, code: string): number {
  let sum = 0;
  for (const [question, count] of failures) if (question.startsWith(`${code} `)) sum += count;
  return sum;
}

/** Settings of a slot, written in this build, that name other slots. */
function referencesOf(installed: Installed | undefined, build: Declaration): readonly string[] {
  return [...(installed?.settings ?? [])].flatMap(([name, statement]) =>
    installed?.slot.settings[name]?.type.type === "slot" && statement.place.declaration === build ? [name] : [],
  );
}

function withoutSettings(assembly: Assembly, slot: string, names: readonly string[]): Assembly {
  const installed = assembly.slots.get(slot);
  if (!installed) return assembly;
  const settings = new Map([...installed.settings].filter(([name]) => !names.includes(name)));
  return { ...assembly, slots: new Map(assembly.slots).set(slot, { ...installed, settings }) };
}

/** How many of a part's facts are stated alike of another; what it is called, weighs and costs aside. */
function likeness(part: Part, other: Part | undefined): number {
  let alike = 0;
  for (const [name, statement] of other?.facts ?? []) {
    if (Object.hasOwn(commonFields, name) && name !== "material") continue;
    const own = part.facts.get(name);
    if (own?.state !== statement.state) continue;
    if (own.state !== "stated" || statement.state !== "stated" || own.written === statement.written) alike++;
  }
  return alike;
}

/** Writes a part's name into a slot, keeping the settings that stand behind the old one. */
function writeName(build: Declaration, assembly: Assembly, slot: string, name: string): DeclarationEdit {
  const installed = assembly.slots.get(slot);
  if (installed && installed.place.declaration === build) {
    return { declaration: build, span: installed.place.span, text: name };
  }
  return writeEntry(build, slot, name);
}

function setFact(assembly: Assembly | undefined, repair: Extract<Repair, { kind: "set-fact" }>): readonly Draft[] {
  const part = assembly?.slots.get(repair.slot)?.part;
  if (!part) return [];
  const stated = part.facts.get(repair.fact);
  const title = `Correct ${repair.fact} of ${part.declaration.label} to ${repair.value}, if its maker says so`;
  if (stated) {
    return [{ title, edits: [{ declaration: stated.place.declaration, span: stated.place.span, text: repair.value }] }];
  }
  return [{ title, edits: [writeEntry(part.declaration, repair.fact, repair.value)] }];
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
