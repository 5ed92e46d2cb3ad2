import { placesOf, standsTwice } from "../calculations/shared/every-part.ts";
import type { Check } from "../checks/define.ts";
import { both } from "../checks/shared/sentence.ts";
import { instancesOf, needsOf } from "../checks/table.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import type { Declaration } from "../model/declaration.ts";
import type { Finding, Repair, WrittenSetting } from "../model/finding.ts";
import type { Part } from "../model/part.ts";
import { commonFields } from "../vocabulary/index.ts";
import { failuresOverAll, hasAlternates, withNamedPart } from "./alternates.ts";
import { type Candidate, type CandidateFailure, partsFor, readingAny, SlotJudge, withPart } from "./candidates.ts";
import { type DeclarationEdit, removeEntry, writeEntry } from "./edit-build.ts";
import type { Engine } from "./engine.ts";
import { BuildEvaluation } from "./evaluate.ts";
import { byFit } from "./ranking.ts";
import { factsRead } from "./reads.ts";
import { settingTitle, withSetting } from "./set-settings.ts";

/** How many parts are offered in place of one that does not fit. */
const mostSwaps = 4;

/** A part to be fitted in place of another, with the edits that do so. */
export interface PartSwap {
  readonly title: string;
  readonly edits: readonly DeclarationEdit[];
}

/** A part that would mend a finding, and what has to go from its slot for it to do so. */
interface Swap {
  readonly candidate: Candidate;
  /** Settings that name other slots and made sense for the part before only. */
  readonly without: readonly string[];
  /** What has to be set with it, such as whose clamp it shares. */
  readonly set: WrittenSetting | undefined;
  /** How many facts it shares with the part that is there: a person changes as little as will do. */
  readonly likeness: number;
}

/**
 * Parts with which the finding is gone and nothing new fails. Where the slot's own reference to another slot (whose
 * clamp is shared) is in the way, parts that fit without it are offered too.
 * @param set a setting that is written together with the part's name, such as which clamp is shared with it.
 */
export function partSwaps(
  engine: Engine,
  build: Declaration,
  assembly: Assembly,
  finding: Finding,
  slot: string,
  set?: WrittenSetting,
): readonly PartSwap[] {
  const check = engine.checks.byCode(finding.code);
  // A wheel bought whole is exchanged for another one, in both of its places.
  const places = set ? [slot] : placesOf(assembly.slots, slot);
  const reading = readingAny(engine, places);
  // What a check does not read cannot mend what it finds.
  if (check && !reading.some((asked) => asked.check === check)) return [];
  const before = new Set<string>();
  let open = 0;
  const evaluation = new BuildEvaluation(assembly, engine.workshop);
  for (const { check: other, instance } of reading) {
    const { outcome } = evaluation.ask(other, instance);
    if (outcome === "fails") before.add(`${other.code} ${instance.name}`);
    if (outcome === "unknown" && other.code === finding.code) open++;
  }
  const current = assembly.slots.get(slot);
  const judged = set ? withSetting(assembly, set) : assembly;
  if (!judged) return [];
  // What is only told, such as that a remote has nothing to do any more, keeps nobody from fitting the part.
  const stood = ({ code, instance, severity }: CandidateFailure): boolean =>
    code !== check?.code && (severity === "information" || before.has(`${code} ${instance}`));
  const mended = (candidate: Candidate): boolean =>
    candidate.failures.every(stood) &&
    // What fails with the slot empty too may have been kept from failing by the part that is there.
    candidate.standing.every(({ code, instance }) => before.has(`${code} ${instance}`)) &&
    // What fails whatever stands here is not mended by another part here.
    !candidate.standing.some(({ code, path }) => code === finding.code && path === finding.path) &&
    // Where the check stays open at other places it was open before; here it has to be answered.
    candidate.unknown.filter((code) => code === check?.code).length <= open;
  const limits = check ? limitsRead(check, places, current?.part) : [];
  // Most parts state no such limit, and nobody asks them for one; but what is not known mends none.
  const answers = (part: Part): boolean => limits.every((fact) => part.facts.has(fact));
  const references = referencesOf(current, build);
  const ways = [{ without: [] as readonly string[], judging: new SlotJudge(engine, judged, places) }];
  if (references.length > 0 && set?.slot !== slot) {
    ways.push({
      without: references,
      judging: new SlotJudge(engine, withoutSettings(judged, slot, references), slot),
    });
  }
  const settings = set || places.length > 1 ? undefined : new NeededSettings(engine, judged, slot, finding.code);
  const found: Swap[] = [];
  for (const declaration of partsFor(engine, slot)) {
    if (declaration === current?.part?.declaration) continue;
    if (places.length > 1 && !standsTwice(declaration.kind)) continue;
    const part = engine.part(declaration);
    if (!answers(part)) continue;
    // Of a library of thousands most parts fail as the one that is there does, and need not be asked anything else.
    const hopeful = ways.filter(({ judging }) => !judging.fails(part, finding.code));
    if (hopeful.length === 0) continue;
    const swap = { without: [] as readonly string[], set, likeness: likeness(part, current?.part) };
    const judgements = hopeful.map(({ without, judging }) => ({ without, candidate: judging.judge(part) }));
    const way = judgements.find(({ candidate }) => mended(candidate));
    if (way) {
      found.push({ ...swap, ...way });
      continue;
    }
    const asItStands = judgements.find(({ without }) => without.length === 0);
    const better =
      asItStands &&
      settings?.with(
        asItStands.candidate,
        asItStands.candidate.failures.filter((failure) => !stood(failure)),
      );
    if (better && mended(better.candidate)) found.push({ ...swap, ...better });
  }
  found.sort(
    (one, other) =>
      one.candidate.errors - other.candidate.errors ||
      one.candidate.warnings - other.candidate.warnings ||
      one.candidate.unknown.length - other.candidate.unknown.length ||
      Number(one.set !== undefined) - Number(other.set !== undefined) ||
      other.likeness - one.likeness ||
      byFit(one.candidate, other.candidate),
  );
  const safe = alternatesKept(engine, build, finding, slot, current);
  return firstOf(found, mostSwaps, ({ candidate }) => safe(candidate.part)).map(
    ({ candidate: { part }, without, set }) => {
      const { name } = part.declaration;
      const removed = without.flatMap((setting) => removeEntry(build, `${slot}.${setting}`) ?? []);
      const fitted = fittingTitle(part.declaration, current, places);
      const less = removed.length > 0 ? `, without ${without.join(" and ")}` : "";
      const more = set ? `. ${settingTitle(set)}` : "";
      return {
        title: `${fitted}${less}${more}`,
        edits: [
          ...writeNames(build, assembly, places, name),
          ...removed,
          ...(set ? [writeEntry(build, `${set.slot}.${set.setting}`, set.value)] : []),
        ],
      };
    },
  );
}

/** Limits by which a check judges a part, as far as the part that is there states them. */
function limitsRead(check: Check, places: readonly string[], current: Part | undefined): readonly string[] {
  const read = instancesOf(check).flatMap((instance) =>
    places.flatMap((place) => [...factsRead(needsOf(check, instance), place)]),
  );
  return [...new Set(read)].filter(
    (fact) => current?.facts.has(fact) && current.kind?.fields[fact]?.group === "Limits",
  );
}

/** "Fit Corrie long 12 (corrie.long-12) as drivetrain.rear-derailleur"; "Add" where nothing stands there. */
export function fittingTitle(
  { name, label }: Declaration,
  current: Installed | undefined,
  places: readonly string[],
): string {
  return `${current?.part ? "Fit" : "Add"} ${label} (${name}) as ${both(places)}`;
}

/** How many parts are tried with another setting for one finding. */
const mostSettings = 40;

/** Settings of a slot that a part needs, as the check that would fail without them proposes. */
class NeededSettings {
  readonly #engine: Engine;
  readonly #assembly: Assembly;
  readonly #slot: string;
  readonly #code: string;
  readonly #judges = new Map<string, SlotJudge>();
  #tries = 0;

  /** @param code of the finding to be mended: what it proposes itself is offered without another part. */
  constructor(engine: Engine, assembly: Assembly, slot: string, code: string) {
    this.#engine = engine;
    this.#assembly = assembly;
    this.#slot = slot;
    this.#code = code;
  }

  /** A part that fails one check alone, judged with the setting by which that check would be content. */
  with(
    { part }: Candidate,
    failures: readonly CandidateFailure[],
  ): { readonly candidate: Candidate; readonly set: WrittenSetting } | undefined {
    const [failure, ...more] = failures;
    if (!failure || more.length > 0 || failure.code === this.#code || this.#tries >= mostSettings) return undefined;
    const asked = this.#engine.checks
      .reading(this.#slot)
      .find(({ check, instance }) => check.code === failure.code && instance.name === failure.instance);
    if (!asked) return undefined;
    this.#tries++;
    const evaluation = new BuildEvaluation(withPart(this.#assembly, this.#slot, part), this.#engine.workshop);
    const verdict = evaluation.ask(asked.check, asked.instance);
    const set = verdict.outcome === "fails" ? verdict.repairs.find((repair) => this.#isOwn(repair)) : undefined;
    const judge = set?.kind === "set-setting" ? this.#judge(set) : undefined;
    return judge && set?.kind === "set-setting" ? { candidate: judge.judge(part), set } : undefined;
  }

  #isOwn(repair: Repair): boolean {
    return repair.kind === "set-setting" && repair.slot === this.#slot;
  }

  #judge(set: WrittenSetting): SlotJudge | undefined {
    const key = `${set.setting}: ${set.value}`;
    const known = this.#judges.get(key);
    if (known) return known;
    const changed = withSetting(this.#assembly, set);
    const judge = changed && new SlotJudge(this.#engine, changed, this.#slot);
    if (judge) this.#judges.set(key, judge);
    return judge;
  }
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
  const before = failuresOverAll(whole, engine.workshop, engine.checks, slot);
  const named = whole.slots.get(slot);
  const already = new Set([named?.part, ...(named?.alternates.map(({ part }) => part) ?? [])]);
  return (part) => {
    if (already.has(part)) return false;
    const after = failuresOverAll(withNamedPart(whole, slot, current, part), engine.workshop, engine.checks, slot);
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
/** A part's name in each of its places. A build that says nothing yet gets them on one line: two edits would open two blocks. */
function writeNames(
  build: Declaration,
  assembly: Assembly,
  places: readonly string[],
  name: string,
): readonly DeclarationEdit[] {
  const [first, ...others] = places;
  if (first === undefined || others.length === 0 || build.tree.block?.entries.length) {
    return places.map((place) => writeName(build, assembly, place, name));
  }
  return [writeEntry(build, first, [name, ...others.map((place) => `${place}: ${name}`)].join("; "))];
}

function writeName(build: Declaration, assembly: Assembly, slot: string, name: string): DeclarationEdit {
  const installed = assembly.slots.get(slot);
  if (installed && installed.place.declaration === build) {
    return { declaration: build, span: installed.place.span, text: name };
  }
  return writeEntry(build, slot, name);
}
