import type { Facts, Missing, Needs } from "../model/need.ts";
import type { ValueOf } from "../values/types.ts";
import type { Field } from "../vocabulary/define.ts";

/**
 * How a calculation is declared: one value in one file. The command line calls it with plain numbers, builds feed it
 * from their parts, and the reference page, the worked examples and the hover all come from the same value.
 */

/** Records the steps of a calculation, for a person to follow. Absent when nobody asked: steps then cost nothing. */
export interface Working {
  /** One line of working in words and numbers, such as "largest cog 52 t − smallest cog 10 t = 42 t". */
  step(text: string): void;
}

/** An input: a row like any field of the vocabulary; an optional one may be left out. */
export interface Input<F extends Field = Field, Optional extends boolean = boolean> {
  readonly field: F;
  readonly optional: Optional;
}

export function input<const F extends Field>(field: F): Input<F, false> {
  return { field, optional: false };
}

export function optionalInput<const F extends Field>(field: F): Input<F, true> {
  return { field, optional: true };
}

export type Inputs = Readonly<Record<string, Input>>;

/** A result: its unit and what it is. */
export interface Result {
  /**
   * The unit in which the value is: a symbol of the unit table (usually the base unit of its dimension, but metres
   * where the trade says metres), `t`, `links`, `pitches`, or empty for a plain number or a text.
   */
  readonly unit: string;
  readonly description: string;
  /** Decimals shown to a person; the value itself is never rounded by it. */
  readonly digits: number;
  /** True when it is a list, such as the ratio of every gear. */
  readonly list?: boolean;
}
export type Results = Readonly<Record<string, Result>>;

export type InputValues<I extends Inputs> = {
  readonly [K in keyof I as I[K] extends Input<Field, true> ? never : K]: ValueOf<I[K]["field"]["type"]>;
} & {
  readonly [K in keyof I as I[K] extends Input<Field, true> ? K : never]?: ValueOf<I[K]["field"]["type"]> | undefined;
};

export type ResultValue = number | string | readonly number[] | readonly string[];
export type ResultValues<R extends Results> = {
  readonly [K in keyof R]?: R[K]["list"] extends true ? readonly number[] | readonly string[] : number | string;
};

/** Says that a result cannot be worked out from these inputs, and why. */
export interface Impossible {
  readonly impossible: string;
  /** An input is missing or is no number that it can be, so that nothing was worked out at all. */
  readonly isInput?: true;
}

export function impossible(reason: string): Impossible {
  return { impossible: reason };
}

/** Says that an input is missing, or cannot be what it is. */
export function unusable(reason: string): Impossible {
  return { impossible: reason, isInput: true };
}

/** What feeding a calculation from a build comes to, besides its inputs. */
export type BuildInputs<I extends Inputs> =
  | {
      readonly state: "known";
      readonly inputs: InputValues<I>;
      /** What is missing for results that need more than the rest: those are unknown, the others are worked out. */
      readonly lacking?: Readonly<Record<string, readonly Missing[]>>;
    }
  | { readonly state: "unknown"; readonly missing: readonly Missing[] }
  | { readonly state: "none"; readonly reason: string };

export interface Example<I extends Inputs, R extends Results> {
  readonly inputs: InputValues<I>;
  readonly results: ResultValues<R>;
  /** Relative difference allowed; 1e-6 when omitted. */
  readonly tolerance?: number;
  /** Where the numbers come from: a publication, "common practice, no source", or "from memory". */
  readonly source: string;
}

/** How a build feeds a calculation. */
export interface InBuild<I extends Inputs, N extends Needs> {
  /** The assembly whose paths the results get: `drivetrain` gives `drivetrain.capacity-needed`. */
  readonly assembly: string;
  readonly needs: N;
  inputs(facts: Facts<N>): BuildInputs<I>;
}

export interface Calculation<I extends Inputs = Inputs, R extends Results = Results, N extends Needs = Needs> {
  readonly name: string;
  readonly title: string;
  readonly description: string;
  readonly inputs: I;
  readonly results: R;
  /** In words a mechanic can follow with a pencil. */
  readonly formula: string;
  readonly source: string;
  compute(inputs: InputValues<I>, working?: Working): ResultValues<R> | Impossible;
  /**
   * How builds feed it; several when one calculation serves several places (front and rear). Absent for one that is
   * only called by itself.
   */
  readonly inBuild?: readonly InBuild<I, N>[];
  /** Worked examples; run as tests. At least two independent ones. */
  readonly examples: readonly Example<I, R>[];
}

/**
 * Declares a calculation. Inside it every input has its own type; whoever holds a list of calculations sees the plain
 * one. No number without bounds ever leaves it, whatever the inputs.
 */
export function defineCalculation<
  const I extends Inputs,
  const R extends Results,
  N extends Needs = Record<never, never>,
>(calculation: Calculation<I, R, N>): Calculation {
  const bounded: Calculation<I, R, N> = {
    ...calculation,
    compute(inputs, working) {
      const results = calculation.compute(inputs, working);
      return isBounded(results) ? results : impossible("These inputs are beyond anything that can be worked out.");
    },
  };
  return bounded as unknown as Calculation;
}

function isBounded(results: object): boolean {
  return Object.values(results)
    .flat()
    .every((value) => typeof value !== "number" || Number.isFinite(value));
}

/**
 * Inputs found in a build.
 * @param lacking what is missing for single results, by their names.
 */
export function known<I extends Inputs>(
  inputs: InputValues<I>,
  lacking: Readonly<Record<string, readonly Missing[]>> = {},
): BuildInputs<I> {
  return { state: "known", inputs, lacking };
}

/** The build lacks facts that only matter in its case; a part that is not there lacks all that is asked of it at once. */
export function lacking(missing: readonly Missing[]): {
  readonly state: "unknown";
  readonly missing: readonly Missing[];
} {
  const byPath = new Map(missing.map((one) => [one.path, one]));
  return { state: "unknown", missing: [...byPath.values()] };
}

/** The number means nothing for this build. */
export function meaningless(reason: string): { readonly state: "none"; readonly reason: string } {
  return { state: "none", reason };
}
