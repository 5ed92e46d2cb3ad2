import type { ResultValue, Working } from "../calculations/define.ts";
import { showResult } from "../calculations/show.ts";
import { calculationOfQuantity, type Quantity as QuantityRow } from "../calculations/table.ts";
import type { Check, Failure, Instance, Verdict } from "../checks/define.ts";
import { both } from "../checks/shared/sentence.ts";
import { instancesOf, needsOf } from "../checks/table.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import { headerPlace } from "../model/declaration.ts";
import { FactReader } from "../model/facts.ts";
import type { Finding, Outcome, Repair } from "../model/finding.ts";
import type { Maybe, Missing, Need, Needs } from "../model/need.ts";
import type { Workshop } from "../model/workshop.ts";
import { besideWritten } from "../values/as-written.ts";
import { placed } from "./provenance.ts";
import { isTouched, numberTouched } from "./reads.ts";

/** What came of one instance of a check. */
export interface InstanceResult {
  /** Empty for a check asked once of the build. */
  readonly instance: string;
  readonly verdict: Verdict;
  /** With which of the alternates it comes out so; absent for the first-named parts. */
  readonly combination?: Combination;
}

/** A bike that a build stands for beside that of its first-named parts. */
export interface Combination {
  readonly assembly: Assembly;
  /** The parts that decide the answer, whatever the other alternates are. */
  readonly parts: readonly CombinedPart[];
}

/** A part that decides an answer, in a slot that names several. */
export interface CombinedPart {
  readonly slot: string;
  readonly installed: Installed;
  /** The one named before it; absent for the first. */
  readonly after?: Installed;
  /** The same part where the build names it again: a wheel bought whole, as rim. */
  readonly again?: CombinedPart;
}

/** A check's row for a build: the worst outcome of its instances. */
export interface CheckRow {
  readonly check: Check;
  readonly outcome: Outcome;
  readonly instances: readonly InstanceResult[];
  readonly missing: readonly Missing[];
}

/** A number worked out for a build. */
export type WorkedQuantity =
  | { readonly state: "known"; readonly row: QuantityRow; readonly value: ResultValue; readonly unit: string }
  | { readonly state: "unknown"; readonly row: QuantityRow; readonly missing: readonly Missing[] }
  | { readonly state: "none"; readonly row: QuantityRow; readonly reason: string };

/** A build that differs in one slot alone: its answers serve for whatever that slot does not touch. */
export interface Alike {
  readonly evaluation: BuildEvaluation;
  /** The slot in which the two differ. */
  readonly slot: string;
}

/**
 * Works out numbers and asks checks on one assembled build. Numbers are worked out when first needed and kept; a
 * number that needs itself by a roundabout way is reported as unknown rather than followed for ever.
 */
export class BuildEvaluation {
  readonly reader: FactReader;
  readonly assembly: Assembly;
  readonly #quantities = new Map<string, WorkedQuantity>();
  readonly #underWay = new Set<string>();
  readonly #answers = new Map<string, Maybe>();

  readonly #alike: Alike | undefined;

  constructor(assembly: Assembly, workshop: Workshop, alike?: Alike) {
    this.assembly = assembly;
    this.#alike = alike;
    this.reader = new FactReader(
      assembly,
      workshop,
      (quantity) => this.#maybe(quantity),
      alike && ((need) => (isTouched(need, alike.slot) ? undefined : alike.evaluation.reader.answer(need))),
    );
  }

  /** The number at a path such as `drivetrain.capacity-needed`; `undefined` when no calculation gives one there. */
  quantity(path: string): WorkedQuantity | undefined {
    const kept = this.#quantities.get(path);
    if (kept) return kept;
    const row = calculationOfQuantity(path);
    if (!row) return undefined;
    if (this.#alike && !numberTouched(path, this.#alike.slot)) return this.#alike.evaluation.quantity(path);
    const worked = this.#work(row);
    this.#quantities.set(path, worked);
    return worked;
  }

  /** Works a number out once more with every step said; empty when it cannot be worked out. */
  working(path: string): readonly string[] {
    const row = calculationOfQuantity(path);
    if (!row) return [];
    const steps: string[] = [];
    const resolution = this.reader.resolve(row.inBuild.needs);
    if (resolution.state !== "known") return [];
    for (const fact of Object.values(resolution.facts) as Maybe[]) {
      if (fact.state === "known" && fact.written !== "") {
        steps.push(`${fact.path}: ${fact.written} (${fact.subject})`);
      }
    }
    const inputs = row.inBuild.inputs(resolution.facts);
    if (inputs.state !== "known") return steps;
    const recorder: Working = { step: (text) => steps.push(text) };
    row.calculation.compute(inputs.inputs, recorder);
    return steps;
  }

  /**
   * @param kept the answer of an instance where it is known already.
   * @param others what came of other combinations of alternates.
   */
  check(
    check: Check,
    kept?: (instance: number) => Verdict | undefined,
    others: readonly InstanceResult[] = [],
  ): CheckRow {
    const instances: InstanceResult[] = instancesOf(check).map((instance, index) => ({
      instance: instance.name,
      verdict: kept?.(index) ?? this.ask(check, instance),
    }));
    instances.push(...others);
    const asked = new Map<string, Missing>();
    for (const { verdict } of instances) {
      if (verdict.outcome !== "unknown") continue;
      for (const fact of verdict.missing) asked.set(`${fact.path} ${fact.what}`, fact);
    }
    const missing = [...asked.values()];
    return { check, outcome: worst(instances), instances, missing };
  }

  ask(check: Check, instance: Instance): Verdict {
    const resolution = this.reader.resolve(needsOf(check, instance));
    if (resolution.state === "unknown") return { outcome: "unknown", missing: resolution.missing };
    if (resolution.state === "none") {
      return { outcome: "notApplicable", reason: `${resolution.path} is none` };
    }
    return besideWritten(resolution.facts, () => check.test(resolution.facts, instance));
  }

  #work(row: QuantityRow): WorkedQuantity {
    // One calculation feeds several numbers of an assembly, so what is under way is the calculation in its place.
    const key = `${row.inBuild.assembly} ${row.calculation.name}`;
    if (this.#underWay.has(key)) return { state: "none", row, reason: `${row.path} needs itself` };
    this.#underWay.add(key);
    try {
      const resolution = this.reader.resolve(row.inBuild.needs);
      if (resolution.state === "unknown") return { state: "unknown", row, missing: resolution.missing };
      if (resolution.state === "none") return { state: "none", row, reason: `${resolution.path} is none` };
      const inputs = row.inBuild.inputs(resolution.facts);
      if (inputs.state === "unknown") return { state: "unknown", row, missing: inputs.missing };
      if (inputs.state === "none") return { state: "none", row, reason: inputs.reason };
      const results = row.calculation.compute(inputs.inputs);
      if ("impossible" in results && typeof results.impossible === "string") {
        return { state: "none", row, reason: results.impossible };
      }
      for (const [name, result] of Object.entries(row.calculation.results)) {
        const path = `${row.inBuild.assembly}.${name}`;
        const value = (results as Record<string, ResultValue | undefined>)[name];
        const own = calculationOfQuantity(path);
        if (!own) continue;
        const missing = inputs.lacking?.[name] ?? [];
        if (value === undefined && missing.length > 0) {
          this.#quantities.set(path, { state: "unknown", row: own, missing });
          continue;
        }
        this.#quantities.set(
          path,
          value === undefined
            ? { state: "none", row: own, reason: `${own.path} means nothing here` }
            : { state: "known", row: own, value, unit: result.unit },
        );
      }
      return this.#quantities.get(row.path) ?? { state: "none", row, reason: `${row.path} means nothing here` };
    } finally {
      this.#underWay.delete(key);
    }
  }

  #maybe(path: string): Maybe {
    const kept = this.#answers.get(path);
    if (kept) return kept;
    const answer = this.#answer(path);
    // An answer given while another number is under way may only say that the two need each other.
    if (this.#underWay.size === 0) this.#answers.set(path, answer);
    return answer;
  }

  #answer(path: string): Maybe {
    const place = headerPlace(this.assembly.declaration);
    const worked = this.quantity(path);
    if (!worked || worked.state === "none") return { state: "none", path, place };
    if (worked.state === "unknown") return { state: "unknown", missing: worked.missing };
    return {
      state: "known",
      value: worked.value,
      written: showResult(worked.row.calculation.results[worked.row.result], worked.value),
      path,
      subject: this.assembly.declaration.label,
      place,
    };
  }
}

const gravity: Readonly<Record<Verdict["outcome"], number>> = { notApplicable: 0, holds: 1, unknown: 2, fails: 3 };

function worst(instances: readonly InstanceResult[]): Verdict["outcome"] {
  let outcome: Verdict["outcome"] = "notApplicable";
  for (const { verdict } of instances) if (gravity[verdict.outcome] > gravity[outcome]) outcome = verdict.outcome;
  return outcome;
}

/**
 * The findings of a row: one per failing instance, or one for several whose root is the same. What cannot be checked is
 * counted in the row, not repeated here.
 */
export function rowFindings(row: CheckRow, assembly: Assembly, languageNumber: number): Finding[] {
  const { check } = row;
  const findings: Finding[] = [];
  for (const { verdict, combination, instance } of failures(row)) {
    const severity = verdict.severity ?? check.severity;
    const caution = verdict.caution ?? check.caution;
    findings.push({
      code: check.code,
      // A check that came after the workshop's language number never breaks a build that was clean.
      severity: severity === "error" && check.since > languageNumber ? "warning" : severity,
      message: ofCombination(verdict.message, combination),
      ...placed(verdict, combination?.assembly ?? assembly, needsRead(check, instance)),
      path: verdict.at.path,
      repairs: combination ? [...verdict.repairs, ...leaveOut(combination, assembly)] : verdict.repairs,
      outcome: "fails",
      ...(combination ? { bike: combination.assembly } : {}),
      ...(caution === undefined ? {} : { caution }),
      ...(verdict.safety || check.safety ? { safety: true } : {}),
    });
  }
  return findings;
}

/** What was asked for the answer; for several instances told as one, what any of them asks. */
function needsRead(check: Check, instance: string | undefined): readonly Need[] {
  return instancesOf(check)
    .filter(({ name }) => instance === undefined || name === instance)
    .flatMap((one) => Object.values(needsOf(check, one) as Needs));
}

interface FoundFailure {
  /** Absent for several that are told as one. */
  readonly instance?: string;
  readonly verdict: Failure;
  readonly combination?: Combination | undefined;
}

/** Failing instances, those of the build as it stands before those of other combinations of alternates. */
function failures({ check, instances }: CheckRow): readonly FoundFailure[] {
  const found = instances.flatMap(({ instance, verdict, combination }): FoundFailure[] =>
    verdict.outcome === "fails" ? [{ instance, verdict, combination }] : [],
  );
  if (!check.merge || found.length < 2) return found;
  const plain = found.flatMap(({ verdict, combination }) => (combination ? [] : [verdict]));
  return [...check.merge(plain).map((verdict) => ({ verdict })), ...found.filter(({ combination }) => combination)];
}

/** "corrie.wide-11-50 as drivetrain.cassette and moor.stub-50 as cockpit.stem". */
export function combinationText({ parts }: Combination): string {
  return parts.map(({ slot, installed }) => `${installed.name} as ${slot}`).join(" and ");
}

/** What is said of one of the bikes that a build stands for, with the parts that make it come out so. */
export function ofCombination(message: string, combination: Combination | undefined): string {
  return combination ? `With ${combinationText(combination)}: ${message}` : message;
}

/**
 * A clash of alternates is mended by naming one of them no longer, where the build itself names it: in both places, if
 * it is named in two.
 */
function leaveOut({ parts }: Combination, { declaration }: Assembly): readonly Repair[] {
  return parts.flatMap((part): Repair[] => {
    const named = part.again ? [part, part.again] : [part];
    const changes = named.flatMap(({ installed: { place }, after }) =>
      after && place.declaration === declaration && after.place.declaration === declaration
        ? [{ span: { start: after.place.span.end, end: place.span.end }, text: "" }]
        : [],
    );
    // Left out in one of its places only, it would clash with the other.
    if (changes.length < named.length) return [];
    const { name, place } = part.installed;
    const title = `Name ${name} no longer among the parts for ${both(named.map(({ slot }) => slot))}`;
    return [{ kind: "change-text", title, place, changes }];
  });
}
