import type { ValueToken } from "../../grammar/tree.ts";
import { fromBase, toBase, type Unit } from "../../grammar/units.ts";
import { equal } from "./compare.ts";
import { unitsFor } from "./field-units.ts";
import { type Fix, replacement, spanOf } from "./problems.ts";
import { readValue } from "./read.ts";
import type { FieldType, Interval } from "./types.ts";
import { decimalText, withUnit } from "./write-number.ts";

/** Digits that a converted number keeps: more than a bench needs, so that nothing is lost by it. */
const convertedDigits = 5;

/**
 * Offers a quantity in the other units of its dimension, the field's own first: refactorings for a value that reads
 * well. The title says where the new number is rounded.
 */
export function conversions(type: FieldType, tokens: readonly ValueToken[]): Fix[] {
  if (type.type !== "quantity") return [];
  const result = readValue(type, tokens);
  const value = result.value as number | Interval | undefined;
  if (value === undefined || result.problems.some((problem) => problem.severity === "error")) return [];
  const interval = typeof value === "number" ? { least: value, greatest: value } : value;
  const span = spanOf(tokens, { start: 0, end: 0 });
  return unitsFor(type).flatMap((unit) => {
    const converted = inUnit(interval, unit);
    if (converted === undefined || converted.text === result.written) return [];
    const rounded = converted.isRounded ? " (rounded)" : "";
    return [replacement(span, converted.text, `Convert to ${converted.text}${rounded}`)];
  });
}

/** The interval written in a unit; undefined where the numbers would be too small or too great to be of use. */
function inUnit(interval: Interval, unit: Unit): { text: string; isRounded: boolean } | undefined {
  let isRounded = false;
  const ends: string[] = [];
  for (const end of [interval.least, interval.greatest].filter(Number.isFinite)) {
    const value = fromBase(end, unit);
    const size = Math.abs(value);
    if (size !== 0 && (size < 0.1 || size >= 100_000)) return undefined;
    const whole = size < 1 ? 0 : Math.floor(Math.log10(size)) + 1;
    const text = decimalText(value, convertedDigits - whole);
    if (!equal(toBase(Number(text), unit), end)) isRounded = true;
    ends.push(text);
  }
  const [first, second] = ends;
  if (first === undefined) return undefined;
  const sign = interval.least === Number.NEGATIVE_INFINITY ? "<= " : interval.greatest === Infinity ? ">= " : "";
  const numbers = second === undefined || second === first ? first : `${first} to ${second}`;
  return { text: sign + withUnit(numbers, unit.symbol), isRounded };
}
