import type { DimensionVector } from "../../grammar/units.ts";
import { sameVector } from "../values/dimensions.ts";
import { type NumberOf, numberType, type Shown } from "./expression-type.ts";

/** What a sum or a difference of two numbers that measure the same thing is. */
export function sumType(one: NumberOf, other: NumberOf): NumberOf {
  const shown = Object.keys(one.shown).length > 0 ? one.shown : other.shown;
  return { ...numberType(one.vector, shown, one.currency ?? other.currency), role: looser(one, other) };
}

/** What a product or a quotient measures: what its factors make together. */
export function productType(sign: "*" | "/", one: NumberOf, other: NumberOf): NumberOf {
  const vector: Record<string, number> = {};
  for (const base of new Set([...Object.keys(one.vector), ...Object.keys(other.vector)])) {
    const key = base as keyof DimensionVector;
    const exponent = (one.vector[key] ?? 0) + (sign === "*" ? 1 : -1) * (other.vector[key] ?? 0);
    if (exponent !== 0) vector[key] = exponent;
  }
  const hasMoney = vector.money !== undefined;
  const currency = hasMoney ? (one.currency ?? other.currency) : undefined;
  return { ...numberType(vector, shownOf(sign, one, other), currency), role: looser(one, other) };
}

/** A quantity times a plain number is shown as the quantity is. */
function shownOf(sign: "*" | "/", one: NumberOf, other: NumberOf): Shown {
  const kept = sameVector(other.vector, {}) ? one : sign === "*" && sameVector(one.vector, {}) ? other : undefined;
  return kept === undefined || sameVector(kept.vector, {}) ? {} : kept.shown;
}

function looser(one: NumberOf, other: NumberOf): NumberOf["role"] {
  return one.role === "exact" ? other.role : one.role;
}
