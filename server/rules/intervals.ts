import type { NumberValue, RunValue } from "./run-value.ts";
import { openValue } from "./run-value.ts";
import type { Reason } from "./truth.ts";
import type { ArithmeticSign } from "./typed-expression.ts";

/**
 * Arithmetic on numbers that may lie anywhere in a stretch. Every operation gives all that can come of it, so that
 * what is decided of the result is decided whatever the number turns out to be.
 */

/** Sums, differences, products and quotients; `what` is how a person would call the result. */
export function combine(sign: ArithmeticSign, one: NumberValue, other: NumberValue, what: string): RunValue {
  const reasons = together(one.reasons, other.reasons);
  if (typeof reasons === "string") {
    return openValue({
      why: "undefined",
      path: reasons,
      what: `${what}, in which ${reasons} stands twice and is a range`,
    });
  }
  const currency = currencyOf(sign, one, other);
  if (currency === "several") {
    return openValue({
      why: "undefined",
      path: what,
      what: `${what}, which is of ${one.currency} and ${other.currency}: no rate of exchange is kept`,
    });
  }
  if (sign === "/" && other.least <= 0 && other.greatest >= 0) {
    const isZero = other.least === 0 && other.greatest === 0;
    const missing = other.reasons.filter(({ why }) => why === "missing");
    if (!isZero && missing.length > 0) return openValue(...missing);
    return openValue({ why: "undefined", path: what, what: `${what}, whose divisor ${isZero ? "is" : "may be"} zero` });
  }
  const [least, greatest] = ends(sign, one, other);
  if (Number.isNaN(least) || Number.isNaN(greatest) || (reasons.length === 0 && !Number.isFinite(least))) {
    return openValue({ why: "undefined", path: what, what: `${what}, which is beyond all numbers` });
  }
  return { form: "number", least, greatest, reasons, ...(currency === undefined ? {} : { currency }) };
}

/**
 * The reasons of two numbers; the path of a range that both rest on where there is one: what one of them is then says
 * something of the other, and their ends must not be combined freely.
 */
export function together(one: readonly Reason[], other: readonly Reason[]): readonly Reason[] | string {
  for (const reason of one) {
    if (reason.why !== "spread") continue;
    if (other.some((second) => second.why === "spread" && second.path === reason.path)) return reason.path;
  }
  return [...one, ...other];
}

function currencyOf(sign: ArithmeticSign, one: NumberValue, other: NumberValue): string | undefined {
  const isRatio = sign === "/" && one.currency !== undefined && other.currency !== undefined;
  if (one.currency !== undefined && other.currency !== undefined && one.currency !== other.currency) return "several";
  return isRatio ? undefined : (one.currency ?? other.currency);
}

function ends(sign: ArithmeticSign, one: NumberValue, other: NumberValue): readonly [number, number] {
  switch (sign) {
    case "+":
      return [one.least + other.least, one.greatest + other.greatest];
    case "-":
      return [one.least - other.greatest, one.greatest - other.least];
    case "*":
      return hull(one, other, times);
    case "/":
      return hull(one, other, (a, b) => (Number.isFinite(b) ? a / b : Number.isFinite(a) ? 0 : Number.NaN));
  }
}

function hull(one: NumberValue, other: NumberValue, of: (a: number, b: number) => number): readonly [number, number] {
  const corners = [
    of(one.least, other.least),
    of(one.least, other.greatest),
    of(one.greatest, other.least),
    of(one.greatest, other.greatest),
  ];
  return [Math.min(...corners), Math.max(...corners)];
}

/** An end without limit times nothing is nothing. */
function times(a: number, b: number): number {
  return a === 0 || b === 0 ? 0 : a * b;
}
