import type { Known } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";

/** A position against its aim. */
export interface Aimed {
  /** Millimetres beyond the aim, positive or negative; `undefined` as near as the tolerance asks. */
  readonly off: number | undefined;
  /** Both as shown, how far apart they are, and how near is near enough. */
  readonly is: string;
  readonly aim: string;
  readonly by: string;
  readonly tolerance: string;
  /** What is left of the tolerance, as a share of it. */
  readonly margin: number;
}

/**
 * A position in words, without a sign: "69 mm below the bar clamp".
 * @param shown the position as `aimed` shows it.
 */
export function placed(value: number, shown: string, positive: string, negative: string): string {
  return value < 0 ? `${shown.replace(/^[-−]/, "")} ${negative}` : `${shown} ${positive}`;
}

export function aimed(actual: Known<number>, aim: Known<number>, tolerance: Known<number>): Aimed {
  const difference = actual.value - aim.value;
  const [is, wanted] = showPair(Math.round(actual.value * 10) / 10, aim.value, "length", { digits: 0 });
  const [apart, near] = showPair(Math.abs(difference), tolerance.value, "length", { digits: 0 });
  return {
    off: greaterThan(Math.abs(difference), tolerance.value) ? difference : undefined,
    is,
    aim: wanted,
    by: apart,
    tolerance: near,
    margin: tolerance.value > 0 ? Math.max(0, 1 - Math.abs(difference) / tolerance.value) : 0,
  };
}
