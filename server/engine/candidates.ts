import type { Check, Instance, Verdict } from "../checks/define.ts";
import { type CheckInstance, needsOf } from "../checks/table.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import { type Declaration, headerPlace } from "../model/declaration.ts";
import type { Severity } from "../model/finding.ts";
import type { Missing, Need, Needs } from "../model/need.ts";
import type { Part } from "../model/part.ts";
import { isRuleCheck } from "../rules/rule-check.ts";
import type { Money } from "../values/types.ts";
import { buildFields, slotByPath } from "../vocabulary/index.ts";
import type { Engine } from "./engine.ts";
import { BuildEvaluation } from "./evaluate.ts";
import { factsRead, isTouched } from "./reads.ts";

/** A check that would fail with a part in a slot. */
export interface CandidateFailure {
  readonly code: string;
  readonly instance: string;
  readonly severity: Severity;
  /** True when the build would be changed first, such as the length of a chain or a budget: the part itself fits. */
  readonly isSetUp: boolean;
  /** What does not fit; put into words when somebody reads it. */
  readonly message: string;
}

/** A check that fails whatever stands in the slot. */
export interface StandingFailure {
  readonly code: string;
  readonly instance: string;
  readonly message: string;
  /** The path in the build that it is about. */
  readonly path: string;
}

/** What a part would do in a slot of a build. */
export interface Candidate {
  readonly part: Part;
  /** Checks that would fail with it there, errors first. */
  readonly failures: readonly CandidateFailure[];
  /** Checks that fail just so with the slot empty: whatever is put there, they are another part's doing. */
  readonly standing: readonly StandingFailure[];
  /** How many of the failures are errors, how many of them only ask for another set-up, and how many are warnings. */
  readonly errors: number;
  readonly setUps: number;
  readonly warnings: number;
  /** Checks that could not be made for want of facts. */
  readonly unknown: readonly string[];
  readonly holds: number;
  /** The least room left in any check that has a measure, as a share of its limit; 1 when none has. */
  readonly margin: number;
  /** The check in which that is; absent when none has a measure. */
  readonly tightest: Tightest | undefined;
  /** What is not stated and holds up checks, each once; found out when somebody reads it. */
  readonly missing: readonly Missing[];
  /** The part of it that is not the part's own to state. */
  readonly missingElsewhere: readonly Missing[];
  /** In grams; unknown masses sort last. */
  readonly mass: number | undefined;
  /** Unknown prices sort last; those in another currency than the workshop's just before them. */
  readonly price: Money | undefined;
}

/** The check that holds with the least room left. */
export interface Tightest {
  readonly code: string;
  readonly instance: string;
  /** As a share of the limit. */
  readonly margin: number;
  /** What was compared, with both numbers; put into words when somebody reads it. */
  readonly message: string;
}

/** The assembly with another part in a slot. Settings stay where the slot keeps its kind of part. */
export function withPart(assembly: Assembly, path: string, part: Part): Assembly {
  const slot = slotByPath(path);
  if (!slot) return assembly;
  const before = assembly.slots.get(path);
  const installed: Installed = {
    slot,
    state: "part",
    name: part.declaration.name,
    part,
    place: before?.place ?? headerPlace(assembly.declaration),
    settings: before?.settings ?? new Map(),
    alternates: [],
  };
  return { ...assembly, slots: new Map(assembly.slots).set(path, installed) };
}

/**
 * All parts of the libraries that may go into a slot, by kind.
 * @param standing the part that stands there: a slot of the workshop's own takes any kind, and what is asked for in it
 * is another of that part's kind.
 */
export function* partsFor(engine: Engine, path: string, standing?: Part): Iterable<Declaration> {
  const kinds = slotByPath(path)?.kinds ?? [];
  const like = standing?.kind === undefined ? [] : [standing.kind.name];
  for (const kind of kinds.length > 0 ? kinds : like) {
    for (const declaration of engine.workshop.declared("part", kind)) {
      // Of two declarations with one name only the first counts.
      if (engine.workshop.part(declaration.name) === declaration) yield declaration;
    }
  }
}

/** The answer of one instance of a check, without its words. */
interface Answer {
  readonly outcome: Verdict["outcome"] | "stands";
  readonly severity: Severity;
  readonly isSetUp: boolean;
  readonly margin: number;
  /** What is missing for it that is not the part's own to state. */
  readonly missing: readonly Missing[];
}

interface AskedInstance extends CheckInstance {
  /** How it fails with the slot empty, when it does. */
  readonly standing?: StandingFailure;
}

/** Instances whose answers rest on the same facts of the part: alike in these, two parts get the same answers. */
interface AskedGroup {
  /** Which of all facts they are, by their place in the list. */
  readonly facts: readonly number[];
  readonly asked: readonly AskedInstance[];
  readonly answers: Map<string, readonly Answer[]>;
}

/**
 * Judges many parts in one slot of one build. Parts that state the same facts, as far as a check reads them, get the
 * same answer from it, and what the slot does not touch is read once; so a library of thousands is judged in the time
 * that its different facts take.
 */
export class SlotJudge {
  readonly #engine: Engine;
  readonly #assembly: Assembly;
  readonly #paths: readonly string[];
  readonly #groups: readonly AskedGroup[];
  readonly #groupsByCode = new Map<string, readonly AskedGroup[]>();
  /** Every fact that any check reads, with a number for each thing that some part states of it. */
  readonly #facts: readonly { readonly name: string; readonly stated: Map<string, number> }[];
  readonly #elsewhere = new Set<Declaration>();
  /** The build with the slot empty: its answers serve for whatever the slot does not touch. */
  readonly #without: BuildEvaluation;

  /**
   * @param place the slot, or both slots of a part that stands in two.
   * @param base answers on the assembly as it stands, where somebody has them: what the slot does not touch is not asked again.
   */
  constructor(engine: Engine, assembly: Assembly, place: string | readonly string[], base?: BuildEvaluation) {
    this.#engine = engine;
    this.#assembly = assembly;
    const paths = typeof place === "string" ? [place] : place;
    this.#paths = paths;
    const slots = new Map([...assembly.slots].filter(([slot]) => !paths.includes(slot)));
    this.#without = new BuildEvaluation(
      { ...assembly, slots },
      engine.workshop,
      typeof place === "string" && base ? { evaluation: base, slot: place } : undefined,
    );
    for (const { part } of slots.values()) if (part) this.#elsewhere.add(part.declaration);
    const byFacts = new Map<string, { readonly names: readonly string[]; readonly asked: AskedInstance[] }>();
    for (const { check, instance } of readingAny(engine, paths)) {
      const needs = needsOf(check, instance);
      if (this.#neverApplies(needs)) continue;
      const names = [...new Set(paths.flatMap((path) => [...factsRead(needs, path)]))].sort();
      const group = byFacts.get(names.join(" ")) ?? { names, asked: [] };
      byFacts.set(names.join(" "), group);
      const verdict = this.#without.ask(check, instance);
      group.asked.push({ check, instance, ...standingOf(check, instance, verdict) });
    }
    const all = [...new Set([...byFacts.values()].flatMap(({ names }) => names))];
    this.#facts = all.map((name) => ({ name, stated: new Map() }));
    this.#groups = [...byFacts.values()].map(({ names, asked }) => ({
      facts: names.map((name) => all.indexOf(name)),
      asked,
      answers: new Map(),
    }));
  }

  /** Something that the slot does not touch is absent, such as a budget: whatever stands in the slot, nobody asks. */
  #neverApplies(needs: Needs): boolean {
    return (Object.values(needs) as Need[]).some(
      (need) =>
        !need.optional &&
        !this.#paths.some((path) => isTouched(need, path)) &&
        this.#without.reader.answer(need).state === "none",
    );
  }

  /** The build with a part in the slot, laid together when somebody asks. */
  #evaluationWith(part: Part): () => BuildEvaluation {
    let evaluation: BuildEvaluation | undefined;
    return () => {
      const [path, ...more] = this.#paths;
      evaluation ??= new BuildEvaluation(
        this.#paths.reduce((assembly, place) => withPart(assembly, place, part), this.#assembly),
        this.#engine.workshop,
        path !== undefined && more.length === 0 ? { evaluation: this.#without, slot: path } : undefined,
      );
      return evaluation;
    };
  }

  /** Whether one check would fail with a part in the slot, at whatever place it is asked of. */
  fails(part: Part, code: string): boolean {
    let fails = false;
    let groups = this.#groupsByCode.get(code);
    if (!groups) {
      groups = this.#groups.filter(({ asked }) => asked.some(({ check }) => check.code === code));
      this.#groupsByCode.set(code, groups);
    }
    this.#eachAnswer(groups, part, this.#evaluationWith(part), ({ check }, { outcome }) => {
      fails ||= check.code === code && outcome === "fails";
    });
    return fails;
  }

  judge(part: Part): Candidate {
    const evaluate = this.#evaluationWith(part);
    const failures: CandidateFailure[] = [];
    const standing: StandingFailure[] = [];
    const unknown: string[] = [];
    const open: AskedInstance[] = [];
    const elsewhere = new Map<string, Missing>();
    let holds = 0;
    let tightest: Tightest | undefined;
    this.#eachAnswer(this.#groups, part, evaluate, (asked, answer) => {
      if (answer.outcome === "stands" && asked.standing) standing.push(asked.standing);
      else if (answer.outcome === "fails") failures.push(failureOf(asked, answer, evaluate));
      else if (answer.outcome === "unknown") {
        unknown.push(asked.check.code);
        open.push(asked);
        for (const one of answer.missing) elsewhere.set(keyOf(one), one);
      } else if (answer.outcome === "holds") {
        holds++;
        if (answer.margin < (tightest?.margin ?? 1)) tightest = tightestOf(asked, answer, evaluate);
      }
    });
    failures.sort((a, b) => gravity(b) - gravity(a));
    const errors = failures.filter(({ severity }) => severity === "error");
    return {
      part,
      failures,
      standing,
      errors: errors.length,
      setUps: errors.filter(({ isSetUp }) => isSetUp).length,
      warnings: failures.filter(({ severity }) => severity === "warning").length,
      unknown,
      holds,
      margin: tightest?.margin ?? 1,
      tightest,
      get missing(): readonly Missing[] {
        return missingFor(open, evaluate());
      },
      missingElsewhere: [...elsewhere.values()],
      mass: massOf(part),
      price: priceOf(part),
    };
  }

  #eachAnswer(
    groups: readonly AskedGroup[],
    part: Part,
    evaluate: () => BuildEvaluation,
    take: (asked: AskedInstance, answer: Answer) => void,
  ): void {
    // A part that stands elsewhere in the build may be recognised as the same piece: it is like no other.
    const isElsewhere = this.#elsewhere.has(part.declaration);
    const numbers: number[] = [];
    for (const { facts, asked, answers } of groups) {
      let key = part.kind?.name ?? "";
      for (const fact of isElsewhere ? [] : facts) {
        numbers[fact] ??= numberOf(part, this.#facts[fact]!);
        key += ` ${numbers[fact]}`;
      }
      let known = isElsewhere ? undefined : answers.get(key);
      if (!known) {
        known = asked.map((one) => answerOf(one, evaluate(), this.#paths));
        if (!isElsewhere) answers.set(key, known);
      }
      for (let index = 0; index < asked.length; index++) take(asked[index]!, known[index]!);
    }
  }
}

/** The checks that read any of some slots, each once. */
export function readingAny(engine: Engine, paths: readonly string[]): readonly CheckInstance[] {
  const found = new Map<string, CheckInstance>();
  for (const path of paths) {
    for (const asked of engine.checks.reading(path)) found.set(`${asked.check.code} ${asked.instance.name}`, asked);
  }
  return [...found.values()];
}

/** A number for what a part states of a fact: the same for all that state the same. */
function numberOf(
  part: Part,
  { name, stated }: { readonly name: string; readonly stated: Map<string, number> },
): number {
  const statement = part.facts.get(name);
  if (!statement) return 0;
  const said = statement.state === "stated" ? statement.written : `\n${statement.state}`;
  const known = stated.get(said);
  if (known !== undefined) return known;
  stated.set(said, stated.size + 1);
  return stated.size;
}

function standingOf(check: Check, instance: Instance, verdict: Verdict): { readonly standing?: StandingFailure } {
  if (verdict.outcome !== "fails") return {};
  const { message, at } = verdict;
  return { standing: { code: check.code, instance: instance.name, message, path: at.path } };
}

function answerOf(
  { check, instance, standing }: AskedInstance,
  evaluation: BuildEvaluation,
  slots: readonly string[],
): Answer {
  const verdict = evaluation.ask(check, instance);
  const stands =
    verdict.outcome === "fails" &&
    standing !== undefined &&
    (verdict.message === standing.message || isOfTheWhole(check, standing.path));
  return {
    outcome: stands ? "stands" : verdict.outcome,
    severity: (verdict.outcome === "fails" ? verdict.severity : undefined) ?? check.severity,
    isSetUp: verdict.outcome === "fails" && isSetting(verdict.at.path),
    margin: verdict.outcome === "holds" ? (verdict.margin ?? 1) : 1,
    missing:
      verdict.outcome === "unknown"
        ? verdict.missing.filter(({ path }) => !slots.some((slot) => path === slot || path.startsWith(`${slot}.`)))
        : [],
  };
}

/**
 * Budgets and house rules are about the whole: one that fails with the slot empty fails whatever is put there, although
 * its numbers then take the part in.
 */
function isOfTheWhole(check: Check, path: string): boolean {
  return isRuleCheck(check) || path.startsWith("budget.");
}

function failureOf(
  { check, instance }: AskedInstance,
  { severity, isSetUp }: Answer,
  evaluate: () => BuildEvaluation,
): CandidateFailure {
  return {
    code: check.code,
    instance: instance.name,
    severity,
    isSetUp,
    get message(): string {
      const verdict = evaluate().ask(check, instance);
      return verdict.outcome === "fails" ? verdict.message : check.title;
    },
  };
}

function tightestOf({ check, instance }: AskedInstance, { margin }: Answer, evaluate: () => BuildEvaluation): Tightest {
  return {
    code: check.code,
    instance: instance.name,
    margin,
    get message(): string {
      const verdict = evaluate().ask(check, instance);
      return verdict.outcome === "holds" ? verdict.message : check.title;
    },
  };
}

function missingFor(open: readonly AskedInstance[], evaluation: BuildEvaluation): readonly Missing[] {
  const found = new Map<string, Missing>();
  for (const { check, instance } of open) {
    const verdict = evaluation.ask(check, instance);
    if (verdict.outcome !== "unknown") continue;
    for (const one of verdict.missing) found.set(keyOf(one), one);
  }
  return [...found.values()];
}

function keyOf({ path, what }: Missing): string {
  return `${path} ${what}`;
}

/** The mass that a part states, in grams. */
export function massOf(part: Part): number | undefined {
  const mass = part.facts.get("mass");
  return mass?.state === "stated" && typeof mass.value === "number" ? mass.value : undefined;
}

/** The price that a part states. */
export function priceOf(part: Part): Money | undefined {
  const price = part.facts.get("price");
  return price?.state === "stated" ? (price.value as Money) : undefined;
}

/** Judges one part in a slot by the checks that read the slot. */
export function judge(engine: Engine, assembly: Assembly, path: string, part: Part): Candidate {
  return new SlotJudge(engine, assembly, path).judge(part);
}

/** What does not fit at all before what fits once it is set up otherwise. */
function gravity({ severity, isSetUp }: CandidateFailure): number {
  if (severity === "error") return isSetUp ? 2 : 3;
  return severity === "warning" ? 1 : 0;
}

/** True for the path of a setting or of a field of the build: what is decided for the build, as against what a part is. */
export function isSetting(path: string): boolean {
  if (Object.hasOwn(buildFields, path)) return true;
  const dot = path.lastIndexOf(".");
  const slot = dot < 0 ? undefined : slotByPath(path.slice(0, dot));
  return slot !== undefined && Object.hasOwn(slot.settings, path.slice(dot + 1));
}
