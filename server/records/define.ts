import type { Working } from "../calculations/define.ts";
import type { Instance, Verdict } from "../checks/define.ts";
import type { Severity } from "../model/finding.ts";
import type { Facts, Known, Missing, Needs } from "../model/need.ts";

/**
 * How a comparison of records is declared: one value in one file, as a check of builds is. It is asked where a record
 * holds the value that it judges, and nowhere else.
 */

/** Where a comparison is made: the path of the value that it judges, and of another one that it looks at beside it. */
export interface MeasuredInstance extends Instance {
  readonly path: string;
  readonly beside?: string;
}

/** The answer, with what had been expected for whoever shows both beside each other. */
export interface Judgement {
  readonly verdict: Verdict;
  /** "5 to 8 mm", "578 N ± 10 %". */
  readonly expected?: string;
}

export function judged(verdict: Verdict, expected?: string): Judgement {
  return expected === undefined ? { verdict } : { verdict, expected };
}

export interface Comparison<I extends MeasuredInstance = MeasuredInstance, N extends Needs = Needs, Value = unknown> {
  /** `record/chain-gap`. Never reused for another meaning. */
  readonly code: string;
  readonly title: string;
  readonly severity: Severity;
  /** True when what it guards can hurt someone. */
  readonly safety?: boolean;
  /** Said with every failure, where a mistake can hurt someone. */
  readonly caution?: string;
  /**
   * - `spec`: compared with what the build states or comes to. Once the recipe has moved on, that is no longer the
   *   specification of the bicycle that was measured.
   * - `record`: judged by what was measured alone.
   */
  readonly restsOn: "spec" | "record";
  /** Empty for what is made up by the path that is measured. */
  readonly instances: readonly I[];
  /** What it needs to know of the build. */
  needs(instance: I): N;
  /**
   * @param measured the value at the instance's path, or the one beside it where only that was measured.
   * @param beside the value beside it, where both were.
   */
  test(measured: Known<Value>, facts: Facts<N>, instance: I, beside?: Known<Value>): Judgement;
  /** The steps from what was measured to what is compared, where it is more than one number. */
  working?(measured: Known<Value>, facts: Facts<N>, instance: I, working: Working, beside?: Known<Value>): void;
  /** Why it matters, for a person who never met the fault. */
  readonly explanation: string;
  /** A publication, or "common practice, no source", or "from memory". */
  readonly source: string;
  /**
   * Whole Ferrule texts, run as tests: a build named `example` with its parts and a record of it, in which it holds and
   * fails.
   */
  readonly examples: { readonly holds: string; readonly fails: string };
}

/** Declares a comparison. Inside it every fact has its own type; whoever holds a list of them sees the plain one. */
export function defineComparison<const I extends MeasuredInstance, const N extends Needs, Value>(
  comparison: Comparison<I, N, Value>,
): Comparison {
  return comparison as unknown as Comparison;
}

/** What a record itself would have to hold for an answer. */
export function notMeasured(path: string, what: string, at: Known): Missing {
  return { path, what, place: at.place };
}
