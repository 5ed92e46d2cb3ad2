import type { Verdict } from "../checks/define.ts";
import { type CheckInstance, checksReading, needsOf } from "../checks/table.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import { type Declaration, headerPlace } from "../model/declaration.ts";
import type { Severity } from "../model/finding.ts";
import type { Part } from "../model/part.ts";
import { buildFields, slotByPath } from "../vocabulary/index.ts";
import type { Engine } from "./engine.ts";
import { BuildEvaluation } from "./evaluate.ts";
import { factsRead } from "./reads.ts";

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
  /** In grams; unknown masses sort last. */
  readonly mass: number | undefined;
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

/** All parts of the libraries that may go into a slot, by kind. */
export function* partsFor(engine: Engine, path: string): Iterable<Declaration> {
  for (const kind of slotByPath(path)?.kinds ?? []) {
    for (const declaration of engine.workshop.declared("part", kind)) {
      // Of two declarations with one name only the first counts.
      if (engine.workshop.part(declaration.name) === declaration) yield declaration;
    }
  }
}

interface Failure {
  readonly asked: AskedInstance;
  readonly severity: Severity;
  readonly isSetUp: boolean;
}

/** What came of the checks, without the words: the same for all parts that state the same facts. */
interface Judgement {
  readonly failures: readonly Failure[];
  readonly standing: readonly StandingFailure[];
  readonly errors: number;
  readonly setUps: number;
  readonly warnings: number;
  readonly unknown: readonly string[];
  readonly holds: number;
  readonly margin: number;
}

/** The answer of one instance of a check, without its words. */
interface Answer {
  readonly outcome: Verdict["outcome"] | "stands";
  readonly severity: Severity;
  readonly isSetUp: boolean;
  readonly margin: number;
}

interface AskedInstance extends CheckInstance {
  /** The facts of the part that the answer rests on, in order; absent when it may rest on anything about it. */
  readonly facts?: readonly string[];
  readonly answers: Map<string, Answer>;
  /** How it fails with the slot empty, when it does. */
  readonly standing?: StandingFailure;
}

/**
 * Judges many parts in one slot of one build. Parts that state the same facts, as far as a check reads them, get the
 * same answer from it, and what the slot does not touch is read once; so a library of thousands is judged in the time
 * that its different facts take.
 */
export class SlotJudge {
  readonly #engine: Engine;
  readonly #assembly: Assembly;
  readonly #path: string;
  readonly #asked: readonly AskedInstance[];
  /** Every fact that any check reads, in order; absent when one reads the part as a whole. */
  readonly #facts: readonly string[] | undefined;
  readonly #judgements = new Map<string, Judgement>();
  readonly #elsewhere = new Set<Declaration>();
  /** The build with the slot empty: its answers serve for whatever the slot does not touch. */
  readonly #without: BuildEvaluation;

  constructor(engine: Engine, assembly: Assembly, path: string) {
    this.#engine = engine;
    this.#assembly = assembly;
    this.#path = path;
    const slots = new Map(assembly.slots);
    slots.delete(path);
    this.#without = new BuildEvaluation({ ...assembly, slots }, engine.workshop);
    for (const [slot, { part }] of assembly.slots) {
      if (slot !== path && part) this.#elsewhere.add(part.declaration);
    }
    const all = new Set<string>();
    let readsWhole = false;
    this.#asked = checksReading(path).map(({ check, instance }) => {
      const read = factsRead(needsOf(check, instance), path);
      if (!read) readsWhole = true;
      for (const fact of read ?? []) all.add(fact);
      const verdict = this.#without.ask(check, instance);
      const standing: StandingFailure | undefined =
        verdict.outcome === "fails"
          ? { code: check.code, instance: instance.name, message: verdict.message, path: verdict.at.path }
          : undefined;
      return {
        check,
        instance,
        answers: new Map(),
        ...(read ? { facts: [...read].sort() } : {}),
        ...(standing ? { standing } : {}),
      };
    });
    this.#facts = readsWhole ? undefined : [...all].sort();
  }

  judge(part: Part): Candidate {
    let evaluation: BuildEvaluation | undefined;
    const evaluate = (): BuildEvaluation => {
      evaluation ??= new BuildEvaluation(withPart(this.#assembly, this.#path, part), this.#engine.workshop, {
        evaluation: this.#without,
        slot: this.#path,
      });
      return evaluation;
    };
    const { failures, standing, errors, setUps, warnings, unknown, holds, margin } = this.#judgement(part, evaluate);
    const mass = part.facts.get("mass");
    return {
      part,
      failures: failures.map(({ asked: { check, instance }, severity, isSetUp }) => ({
        code: check.code,
        instance: instance.name,
        severity,
        isSetUp,
        get message(): string {
          const verdict = evaluate().ask(check, instance);
          return verdict.outcome === "fails" ? verdict.message : check.title;
        },
      })),
      standing,
      errors,
      setUps,
      warnings,
      unknown,
      holds,
      margin,
      mass: mass?.state === "stated" && typeof mass.value === "number" ? mass.value : undefined,
    };
  }

  #judgement(part: Part, evaluate: () => BuildEvaluation): Judgement {
    // A part that stands elsewhere in the build may be recognised as the same piece.
    if (this.#elsewhere.has(part.declaration)) return this.#ask(evaluate, undefined);
    if (!this.#facts) return this.#ask(evaluate, part);
    const signature = signatureOf(part, this.#facts);
    const kept = this.#judgements.get(signature);
    if (kept) return kept;
    const judgement = this.#ask(evaluate, part);
    this.#judgements.set(signature, judgement);
    return judgement;
  }

  /** @param part whose answers may be shared with parts alike; `undefined` for one that is like no other. */
  #ask(evaluate: () => BuildEvaluation, part: Part | undefined): Judgement {
    const failures: Failure[] = [];
    const standing: StandingFailure[] = [];
    const unknown: string[] = [];
    let holds = 0;
    let margin = 1;
    for (const asked of this.#asked) {
      const answer = this.#answer(asked, evaluate, part);
      if (answer.outcome === "stands" && asked.standing) standing.push(asked.standing);
      if (answer.outcome === "fails") failures.push({ asked, severity: answer.severity, isSetUp: answer.isSetUp });
      else if (answer.outcome === "unknown") unknown.push(asked.check.code);
      else if (answer.outcome === "holds") {
        holds++;
        margin = Math.min(margin, answer.margin);
      }
    }
    failures.sort((a, b) => gravity(b) - gravity(a));
    const errors = failures.filter(({ severity }) => severity === "error").length;
    const warnings = failures.filter(({ severity }) => severity === "warning").length;
    const setUps = failures.filter(({ severity, isSetUp }) => severity === "error" && isSetUp).length;
    return { failures, standing, errors, setUps, warnings, unknown, holds, margin };
  }

  #answer(asked: AskedInstance, evaluate: () => BuildEvaluation, part: Part | undefined): Answer {
    const signature = part && asked.facts ? signatureOf(part, asked.facts) : undefined;
    const kept = signature === undefined ? undefined : asked.answers.get(signature);
    if (kept) return kept;
    const { check, instance } = asked;
    const verdict = evaluate().ask(check, instance);
    const stands = verdict.outcome === "fails" && verdict.message === asked.standing?.message;
    const answer: Answer = {
      outcome: stands ? "stands" : verdict.outcome,
      severity: (verdict.outcome === "fails" ? verdict.severity : undefined) ?? check.severity,
      isSetUp: verdict.outcome === "fails" && isSetting(verdict.at.path),
      margin: verdict.outcome === "holds" ? (verdict.margin ?? 1) : 1,
    };
    if (signature !== undefined) asked.answers.set(signature, answer);
    return answer;
  }
}

/** What a part states, as far as some facts go: two parts with one signature are alike to whoever reads only these. */
function signatureOf(part: Part, facts: readonly string[]): string {
  let signature = part.kind?.name ?? "";
  for (const fact of facts) {
    const statement = part.facts.get(fact);
    signature += statement ? `\n${statement.state}${statement.state === "stated" ? statement.written : ""}` : "\n";
  }
  return signature;
}

/** Judges one part in a slot by the checks that read the slot. */
export function judge(engine: Engine, assembly: Assembly, path: string, part: Part): Candidate {
  return new SlotJudge(engine, assembly, path).judge(part);
}

/** What does not fit at all before what fits once it is set up otherwise. */
function gravity({ severity, isSetUp }: Failure): number {
  if (severity === "error") return isSetUp ? 2 : 3;
  return severity === "warning" ? 1 : 0;
}

/** True for the path of a setting or of a field of the build: what is decided for the build, as against what a part is. */
function isSetting(path: string): boolean {
  if (Object.hasOwn(buildFields, path)) return true;
  const dot = path.lastIndexOf(".");
  const slot = dot < 0 ? undefined : slotByPath(path.slice(0, dot));
  return slot !== undefined && Object.hasOwn(slot.settings, path.slice(dot + 1));
}

/** The better candidate first: fewest errors, then changes of set-up, then warnings, then open questions, then margin, mass and name. */
export function byFit(one: Candidate, other: Candidate): number {
  return (
    one.errors - one.setUps - (other.errors - other.setUps) ||
    one.errors - other.errors ||
    one.warnings - other.warnings ||
    one.unknown.length - other.unknown.length ||
    other.margin - one.margin ||
    (one.mass ?? Number.POSITIVE_INFINITY) - (other.mass ?? Number.POSITIVE_INFINITY) ||
    (one.part.declaration.name < other.part.declaration.name ? -1 : 1)
  );
}

/** Every part of the libraries for a slot, those that fit first. */
export function rankCandidates(engine: Engine, assembly: Assembly, path: string): readonly Candidate[] {
  const judging = new SlotJudge(engine, assembly, path);
  return [...partsFor(engine, path)].map((declaration) => judging.judge(engine.part(declaration))).sort(byFit);
}
