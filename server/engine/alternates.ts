import { firstPlaceOf } from "../calculations/shared/every-part.ts";
import type { Check, Instance, Verdict } from "../checks/define.ts";
import { instancesOf, needsOf } from "../checks/table.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import type { Need } from "../model/need.ts";
import type { Part } from "../model/part.ts";
import type { Workshop } from "../model/workshop.ts";
import type { CheckSet } from "../rules/check-set.ts";
import { BuildEvaluation, type CombinedPart, type InstanceResult } from "./evaluate.ts";
import { isTouched } from "./reads.ts";

/**
 * `cassette: a or b` stands for two bikes, and six such slots for sixty-four. An assembly is the bike of the first
 * names; here the others are asked. A check is asked only of the combinations of those slots that it reads: one that
 * reads the cassette and the cage never sees the two handlebars. What fails is named by the smallest set of parts
 * that clash, once.
 */

/** How many combinations one question is put to; those nearest to the first-named parts come first. */
export const mostCombinations = 512;

/** Which of its parts each slot with alternates has, by path: 0 for the first named. */
export type Choice = ReadonlyMap<string, number>;

/** What became of a build's alternates. */
export interface Alternates {
  /** The slots that name several parts, in the order of the build, with how many each names. */
  readonly slots: readonly { readonly path: string; readonly names: readonly string[] }[];
  /** How many different bikes the build stands for. */
  readonly combinations: number;
  /** Codes of checks that were not asked of every combination they tell apart. */
  readonly limited: readonly string[];
}

interface AlternateSlot {
  readonly path: string;
  /** What the slot would have, the first named first. */
  readonly installed: readonly Installed[];
  /** A second slot that names the same parts, which are one piece each: it has whichever the first one has. */
  readonly again?: AlternateSlot;
}

/** Whether a build stands for more than one bike. */
export function hasAlternates(assembly: Assembly): boolean {
  return alternateSlots(assembly).length > 0;
}

/**
 * How often each check fails over all combinations, by code and instance: a part fitted anew must raise none of it.
 * @param slot the slot whose part is to be judged; only checks that read it are asked.
 */
export function failuresOverAll(
  assembly: Assembly,
  workshop: Workshop,
  checks: CheckSet,
  slot: string,
): ReadonlyMap<string, number> {
  const evaluation = new BuildEvaluation(assembly, workshop);
  const questions = new AlternateQuestions(evaluation, workshop);
  const failures = new Map<string, number>();
  for (const { check, instance } of checks.reading(slot)) {
    const others = questions.askInstance(check, instance);
    const verdicts = [evaluation.ask(check, instance), ...others.map(({ verdict }) => verdict)];
    const count = verdicts.filter(({ outcome }) => outcome === "fails").length;
    failures.set(`${check.code} ${instance.name}`, count);
  }
  return failures;
}

/** A build with another part where one stands that is named: in place of that one, its alternates kept. */
export function withNamedPart(assembly: Assembly, path: string, named: Installed, part: Part): Assembly {
  const installed = assembly.slots.get(path);
  if (!installed) return assembly;
  const { name } = part.declaration;
  const replaced: Installed =
    installed.place.span.start === named.place.span.start
      ? { ...installed, state: "part", name, part }
      : {
          ...installed,
          alternates: installed.alternates.map((one) =>
            one.place.span.start === named.place.span.start ? { ...one, name, part } : one,
          ),
        };
  return { ...assembly, slots: new Map(assembly.slots).set(path, replaced) };
}

/** The slots that name several declared parts. A name that no declaration has is a finding already and is passed over. */
function alternateSlots(assembly: Assembly): readonly AlternateSlot[] {
  const found: AlternateSlot[] = [];
  for (const [path, installed] of assembly.slots) {
    const others = installed.alternates.flatMap(({ name, place, part }): Installed[] =>
      part ? [{ ...installed, state: "part", name, place, part }] : [],
    );
    if (others.length > 0) found.push({ path, installed: [installed, ...others] });
  }
  return found.flatMap((one): AlternateSlot[] => {
    if (found.some((first) => isAgain(one, first))) return [];
    const again = found.find((other) => isAgain(other, one));
    return [again ? { ...one, again } : one];
  });
}

/** Whether a slot names the parts of another one again: `hub: a or b` and `rim: a or b` of wheels bought whole. */
function isAgain(one: AlternateSlot, first: AlternateSlot): boolean {
  return (
    firstPlaceOf(one.path) === first.path &&
    one.installed.length === first.installed.length &&
    one.installed.every(({ name }, index) => name === first.installed[index]?.name)
  );
}

/** Every bike a build stands for as an assembly, the first-named parts first; at most so many. */
export function combinations(assembly: Assembly, most: number = mostCombinations): readonly Assembly[] {
  const slots = alternateSlots(assembly);
  return choices(slots, most).map((choice) => chosen(assembly, slots, choice));
}

function chosen(assembly: Assembly, slots: readonly AlternateSlot[], choice: Choice): Assembly {
  const fitted = new Map(assembly.slots);
  for (const slot of slots) {
    const index = choice.get(slot.path) ?? 0;
    for (const { path, installed } of slot.again ? [slot, slot.again] : [slot]) {
      const part = installed[index];
      if (part) fitted.set(path, { ...part, alternates: [] });
    }
  }
  return { ...assembly, slots: fitted };
}

/** Asks the checks of a build's other combinations. */
export class AlternateQuestions {
  readonly alternates: Alternates;
  readonly #slots: readonly AlternateSlot[];
  readonly #workshop: Workshop;
  readonly #primary: BuildEvaluation;
  /** Evaluations of combinations, by which part each slot has. */
  readonly #evaluations = new Map<string, BuildEvaluation>();
  readonly #limited: string[] = [];

  constructor(primary: BuildEvaluation, workshop: Workshop) {
    this.#primary = primary;
    this.#workshop = workshop;
    this.#slots = alternateSlots(primary.assembly);
    this.alternates = {
      slots: this.#slots.map(({ path, installed }) => ({ path, names: installed.map(({ name }) => name) })),
      combinations: this.#slots.reduce((product, { installed }) => product * installed.length, 1),
      limited: this.#limited,
    };
  }

  /** Names looked up for the answers. */
  get lookups(): readonly string[] {
    return [...this.#evaluations.values()].flatMap(({ reader }) => [...reader.lookups]);
  }

  /** What comes of a check with other combinations than the first-named parts: each clash and each open question once. */
  ask(check: Check): readonly InstanceResult[] {
    const found: InstanceResult[] = [];
    for (const instance of instancesOf(check)) found.push(...this.askInstance(check, instance));
    return found;
  }

  /** The same for one instance of a check. */
  askInstance(check: Check, instance: Instance): readonly InstanceResult[] {
    const needs = Object.values(needsOf(check, instance)) as Need[];
    const read = this.#slots.filter(({ path, again }) =>
      needs.some((need) => isTouched(need, path) || (again && isTouched(need, again.path))),
    );
    if (read.length === 0) return [];
    const asked = choices(read, mostCombinations).map((choice) => ({
      choice,
      verdict: this.#evaluation(choice).ask(check, instance),
    }));
    const all = read.reduce((product, { installed }) => product * installed.length, 1);
    if (asked.length < all && !this.#limited.includes(check.code)) this.#limited.push(check.code);
    const result = ({ choice, verdict }: Asked, clash: Choice): InstanceResult => ({
      instance: instance.name,
      verdict,
      combination: { assembly: this.#evaluation(choice).assembly, parts: this.#parts(clash) },
    });
    // A sum over the whole build that is too large with any choice is so by the first-named parts already.
    const isSum = needs.some(({ kind }) => kind.startsWith("every-"));
    const found = isSum && asked.every(({ verdict }) => verdict.outcome === "fails") ? [] : clashes(asked);
    return [
      ...found.map(({ clash, example }) => result(example, clash)),
      ...openQuestions(asked).map((one) => result(one, one.choice)),
    ];
  }

  /** The parts of a choice, those of slots with alternates alone. */
  #parts(choice: Choice): readonly CombinedPart[] {
    return this.#slots.flatMap((slot): CombinedPart[] => {
      const index = choice.get(slot.path);
      const part = index === undefined ? undefined : partOf(slot, index);
      const again = index === undefined || !slot.again ? undefined : partOf(slot.again, index);
      return part ? [again ? { ...part, again } : part] : [];
    });
  }

  #evaluation(choice: Choice): BuildEvaluation {
    const differing = this.#slots.filter(({ path }) => (choice.get(path) ?? 0) > 0);
    const last = differing.at(-1);
    if (!last) return this.#primary;
    const key = differing.map(({ path }) => `${path} ${choice.get(path)}`).join(" ");
    const kept = this.#evaluations.get(key);
    if (kept) return kept;
    // A combination differs in one slot from one that is nearer to the first-named parts; whatever that slot does not
    // touch is answered there.
    const nearer = new Map(choice);
    nearer.delete(last.path);
    const evaluation = new BuildEvaluation(
      chosen(this.#primary.assembly, this.#slots, choice),
      this.#workshop,
      last.again ? undefined : { evaluation: this.#evaluation(nearer), slot: last.path },
    );
    this.#evaluations.set(key, evaluation);
    return evaluation;
  }
}

/** The part that stands at an index among those that a slot names. */
function partOf({ path, installed }: AlternateSlot, index: number): CombinedPart | undefined {
  const part = installed[index];
  const after = installed[index - 1];
  return part && { slot: path, installed: part, ...(after ? { after } : {}) };
}

interface Asked {
  readonly choice: Choice;
  readonly verdict: Verdict;
}

/**
 * The choices of so many slots, those that differ least from the first-named parts first, at most so many.
 */
function choices(slots: readonly AlternateSlot[], most: number): readonly Choice[] {
  const found: Choice[] = [];
  for (let differing = 0; differing <= slots.length && found.length < most; differing++) {
    extend(slots, 0, differing, new Map(), found, most);
  }
  return found;
}

function extend(
  slots: readonly AlternateSlot[],
  from: number,
  differing: number,
  sofar: ReadonlyMap<string, number>,
  into: Choice[],
  most: number,
): void {
  if (into.length >= most) return;
  const slot = slots[from];
  if (!slot) {
    if (differing === 0) into.push(sofar);
    return;
  }
  // Too few slots are left to differ in.
  if (differing > slots.length - from) return;
  extend(slots, from + 1, differing, new Map(sofar).set(slot.path, 0), into, most);
  if (differing === 0) return;
  for (let index = 1; index < slot.installed.length; index++) {
    extend(slots, from + 1, differing - 1, new Map(sofar).set(slot.path, index), into, most);
  }
}

/**
 * The smallest sets of parts with which a check fails whatever stands in the other slots. Each has the combination
 * nearest to the first-named parts as its example, and one part at least that is not first-named; what fails in the
 * same words with the first-named parts has been said.
 */
function clashes(asked: readonly Asked[]): readonly { readonly clash: Choice; readonly example: Asked }[] {
  const said = new Set(messageOf(asked[0]));
  const found: { readonly clash: Choice; readonly example: Asked }[] = [];
  for (const example of asked.slice(1)) {
    const [message] = messageOf(example);
    if (message === undefined || said.has(message)) continue;
    if (found.some(({ clash }) => agrees(example.choice, clash))) continue;
    found.push({ clash: smallestClash(example.choice, asked), example });
  }
  return found;
}

function messageOf(asked: Asked | undefined): readonly string[] {
  return asked?.verdict.outcome === "fails" ? [asked.verdict.message] : [];
}

function agrees(choice: Choice, clash: Choice): boolean {
  for (const [path, index] of clash) if (choice.get(path) !== index) return false;
  return true;
}

function smallestClash(choice: Choice, asked: readonly Asked[]): Choice {
  const fails = (clash: Choice): boolean =>
    asked.every(({ choice: other, verdict }) => verdict.outcome === "fails" || !agrees(other, clash));
  const entries = [...choice];
  const others = entries.filter(([, index]) => index > 0);
  for (const entry of others) if (fails(new Map([entry]))) return new Map([entry]);
  for (const other of others) {
    for (const entry of entries) {
      const pair = new Map([other, entry]);
      if (pair.size === 2 && fails(pair)) return pair;
    }
  }
  // Larger ones are made small by leaving out what is not needed, first-named parts before others.
  const clash = new Map(choice);
  for (const [path] of entries.sort((one, other) => one[1] - other[1])) {
    const index = clash.get(path)!;
    clash.delete(path);
    const isOther = [...clash.values()].some((kept) => kept > 0);
    if (!isOther || !fails(clash)) clash.set(path, index);
  }
  return clash;
}

/** Combinations that cannot be judged for want of facts which no earlier one asked for. */
function openQuestions(asked: readonly Asked[]): readonly Asked[] {
  const known = new Set<string>();
  return asked.filter(({ verdict }, index) => {
    if (verdict.outcome !== "unknown") return false;
    const fresh = verdict.missing.filter(({ path, what }) => !known.has(`${path} ${what}`));
    for (const { path, what } of fresh) known.add(`${path} ${what}`);
    return index > 0 && fresh.length > 0;
  });
}
