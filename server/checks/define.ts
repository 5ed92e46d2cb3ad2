import type { Place } from "../model/declaration.ts";
import type { Repair, Severity } from "../model/finding.ts";
import type { Facts, Known, Missing, Needs, Unknown } from "../model/need.ts";
import type { SlotPath } from "../vocabulary/index.ts";

/**
 * How a check is declared: one value in one file, with everything there is to know about it. Nothing about a check
 * stands anywhere else.
 */

/** The answer to a check on one instance. */
export type Verdict =
  | {
      readonly outcome: "holds";
      /** What was compared, in a sentence with both numbers. */
      readonly message: string;
      /**
       * How much room is left, as a share of the limit (0 for none); ranks parts that fit. Absent for yes-or-no
       * questions.
       */
      readonly margin?: number;
    }
  | {
      readonly outcome: "fails";
      readonly message: string;
      /** The fact that a person would change first: the finding is shown there. */
      readonly at: { readonly place: Place; readonly path: string };
      readonly related: readonly { readonly message: string; readonly place: Place }[];
      readonly repairs: readonly Repair[];
      /** When it is less (or more) grave than the check says by itself. */
      readonly severity?: Severity;
      readonly caution?: string;
      /** True when this way of failing endangers somebody, although the check as such does not: see {@link Check.safety}. */
      readonly safety?: true;
      /** What clashes with what, for a check that makes one finding of several with one root. */
      readonly clash?: Clash;
    }
  | { readonly outcome: "unknown"; readonly missing: readonly Missing[] }
  | { readonly outcome: "notApplicable"; readonly reason: string };

export type Failure = Extract<Verdict, { readonly outcome: "fails" }>;

/** Facts of several parts of which one at least is wrong. */
export interface Clash {
  /** Where they meet: "the rear brake's lever on the bar". */
  readonly where: string;
  readonly sides: readonly { readonly slot: SlotPath; readonly part: Known; readonly fact: Known }[];
}

export function holds(message: string, margin?: number): Verdict {
  return margin === undefined ? { outcome: "holds", message } : { outcome: "holds", message, margin };
}

/**
 * @param message what does not fit, both values with units, and what mends it.
 * @param at the fact to change first.
 * @param others the other facts compared, each shown as a related place.
 */
export function fails(
  message: string,
  at: Known,
  others: readonly Known[],
  repairs: readonly Repair[] = [],
  options: Pick<Failure, "severity" | "caution" | "safety" | "clash"> = {},
): Failure {
  return {
    outcome: "fails",
    message,
    at: { place: at.place, path: at.path },
    related: others.map((other) => ({ message: statedAs(other), place: other.place })),
    repairs,
    ...options,
  };
}

/** "Corrie long 12 states largest-cog: 52 t". */
export function statedAs(known: Known): string {
  const name = known.path.slice(known.path.lastIndexOf(".") + 1);
  return `${known.subject}: ${name} ${known.written}`;
}

export function cannotTell(...unknown: readonly Unknown[]): Verdict {
  return { outcome: "unknown", missing: unknown.flatMap(({ missing }) => missing) };
}

export function notApplicable(reason: string): Verdict {
  return { outcome: "notApplicable", reason };
}

/** An instance of a check that is asked more than once of a build: per side, per slot, per joint. */
export interface Instance {
  /** Shown when a report lists instances, such as `rear` or `drivetrain.rear-controller`. */
  readonly name: string;
}

export interface CheckExamples {
  /**
   * Whole Ferrule texts, run as tests: the check must hold in the first and fail in the second. They are complete
   * workshops of their own (parts and one build named `example`) with only what the check needs.
   */
  readonly holds: string;
  readonly fails: string;
}

export interface Check<I extends Instance = Instance, N extends Needs = Needs> {
  /** `drivetrain/largest-cog`. Never reused for another meaning. */
  readonly code: string;
  readonly title: string;
  readonly severity: Severity;
  /** The language number from which its failures may be errors; before that they are at most warnings. */
  readonly since: number;
  /** True when what it guards can hurt someone: a waiver never hides it altogether. */
  readonly safety?: boolean;
  /** Asked once of the build when absent. */
  readonly instances?: readonly I[];
  needs(instance: I): N;
  test(facts: Facts<N>, instance: I): Verdict;
  /** Makes one finding of those of several instances that have one root; each instance still counts as failing. */
  merge?(failures: readonly Failure[]): readonly Failure[];
  /** Why it matters, for a person who never met the fault. */
  readonly explanation: string;
  /** A publication, or "common practice, no source", or "from memory". */
  readonly source: string;
  /** Said with every failure, where a mistake can hurt someone. */
  readonly caution?: string;
  readonly examples: CheckExamples;
}

export function defineCheck<const I extends Instance, const N extends Needs>(check: Check<I, N>): Check<I, N> {
  return check;
}
