import { showWorkedOut } from "../values/show.ts";
import type { Result, ResultValue } from "./define.ts";

/** A result as a person reads it, rounded to the digits its row gives, with its unit. */
export function showResult(result: Result | undefined, value: ResultValue): string {
  if (Array.isArray(value) && value.length === 0) return "none";
  const digits = result?.digits ?? 2;
  const one = (part: number | string): string => (typeof part === "number" ? showNumber(part, digits) : part);
  const shown = Array.isArray(value) ? value.map(one).join(", ") : one(value as number | string);
  if (!result?.unit) return shown;
  const withUnit = `${shown} ${result.unit}`;
  const values: readonly (number | string)[] = Array.isArray(value) ? value : [value];
  const numbers = values.filter((one) => typeof one === "number");
  return numbers.length === values.length ? showWorkedOut(numbers, result.unit, withUnit) : withUnit;
}

/** At most so many decimals, without trailing noughts; never "-0". */
export function showNumber(value: number, digits: number): string {
  const shown = value.toFixed(digits);
  const trimmed = shown.includes(".") ? shown.replace(/\.?0+$/, "") : shown;
  return trimmed === "-0" ? "0" : trimmed;
}
