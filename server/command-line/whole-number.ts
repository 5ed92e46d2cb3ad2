import { UsageProblem } from "./problem.ts";

/**
 * A count given as the value of an option; `undefined` when it is not given.
 * @throws UsageProblem when it is no whole number from 1 up.
 */
export function wholeNumber(option: string, written: string | undefined): number | undefined {
  if (written === undefined) return undefined;
  const value = /^\d{1,9}$/.test(written) ? Number(written) : 0;
  if (value >= 1) return value;
  throw new UsageProblem(`--${option} takes a whole number from 1 up; ${written} was given.`);
}
