import { UsageProblem } from "./problem.ts";

/**
 * A count given as the value of an option; `undefined` when it is not given.
 * @param most the largest that means anything; any number does when left out.
 * @throws UsageProblem when it is no whole number from 1 to that.
 */
export function wholeNumber(
  option: string,
  written: string | undefined,
  most = Number.POSITIVE_INFINITY,
): number | undefined {
  if (written === undefined) return undefined;
  const value = /^\d+$/.test(written) ? Number(written) : 0;
  if (value >= 1 && value <= most) return value;
  const range = most === Number.POSITIVE_INFINITY ? "1 up" : `1 to ${most}`;
  throw new UsageProblem(`--${option} takes a whole number from ${range}; ${written} was given.`);
}
