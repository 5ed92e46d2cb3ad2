import type { Result, ResultValue } from "./define.ts";

/** A result as a person reads it, rounded to the digits its row gives, with its unit. */
export function showResult(result: Result | undefined, value: ResultValue): string {
  const digits = result?.digits ?? 2;
  const one = (part: number | string): string => (typeof part === "number" ? showNumber(part, digits) : part);
  const shown = Array.isArray(value) ? value.map(one).join(", ") : one(value as number | string);
  return result?.unit ? `${shown} ${result.unit}` : shown;
}

/** At most so many decimals, without trailing noughts; never "-0". */
export function showNumber(value: number, digits: number): string {
  const shown = value.toFixed(digits);
  const trimmed = shown.includes(".") ? shown.replace(/\.?0+$/, "") : shown;
  return trimmed === "-0" ? "0" : trimmed;
}
