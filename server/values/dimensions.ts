import {
  type DimensionName,
  type DimensionVector,
  dimensionNames,
  dimensions,
  fromBase,
  unitBySpelling,
} from "../../grammar/units.ts";
import type { Money } from "./types.ts";

/**
 * Arithmetic with dimensions, for rules: what is added must measure the same thing, and a product or a quotient
 * measures what its factors make together. Nothing throws; a result is a measure or a sentence that says why not.
 */

export interface Measure {
  /** In the coherent units m, kg, s, degree, K, A and lm, or in money of `currency`. */
  readonly value: number;
  readonly vector: DimensionVector;
  /** ISO 4217 letters, when money is part of it. */
  readonly currency?: string;
}

export type Arithmetic = { readonly measure: Measure } | { readonly wrong: string };

const bases = ["length", "mass", "time", "angle", "temperature", "current", "light", "money"] as const;

/** A number in the base unit of its dimension as a measure. */
export function measure(value: number, dimension: DimensionName): Measure {
  const { vector, scale } = dimensions[dimension];
  return { value: value * scale, vector };
}

/** A number without a dimension: a count, a ratio. */
export function plainMeasure(value: number): Measure {
  return { value, vector: {} };
}

export function moneyMeasure(money: Money): Measure {
  return { value: money.amount, vector: { money: 1 }, currency: money.currency };
}

/** The measure in the base unit of a dimension; undefined when it measures something else. */
export function inDimension(of: Measure, dimension: DimensionName): number | undefined {
  const { vector, scale } = dimensions[dimension];
  return sameVector(of.vector, vector) ? of.value / scale : undefined;
}

/** The dimensions that a vector can be; several when they share one, as torque and energy do; empty when it has no name. */
export function dimensionsOf(vector: DimensionVector): DimensionName[] {
  return dimensionNames.filter((name) => sameVector(vector, dimensions[name].vector));
}

export function sameVector(a: DimensionVector, b: DimensionVector): boolean {
  return bases.every((base) => (a[base] ?? 0) === (b[base] ?? 0));
}

export function isPlain(of: Measure): boolean {
  return sameVector(of.vector, {});
}

export function add(a: Measure, b: Measure): Arithmetic {
  const wrong = comparisonError(a, b, "added to");
  return wrong === undefined ? { measure: { ...a, value: a.value + b.value } } : { wrong };
}

export function subtract(a: Measure, b: Measure): Arithmetic {
  const wrong = comparisonError(b, a, "subtracted from");
  return wrong === undefined ? { measure: { ...a, value: a.value - b.value } } : { wrong };
}

export function multiply(a: Measure, b: Measure): Arithmetic {
  return combine(a, b, 1, a.value * b.value, "multiplied by");
}

export function divide(a: Measure, b: Measure): Arithmetic {
  if (b.value === 0) return { wrong: "The divisor is zero." };
  return combine(a, b, -1, a.value / b.value, "divided by");
}

/**
 * Why two measures cannot be added up or compared; undefined when they can. `verb` stands between them in the
 * sentence: "compared with", "added to".
 */
export function comparisonError(a: Measure, b: Measure, verb = "compared with"): string | undefined {
  if (!sameVector(a.vector, b.vector)) {
    return `${capital(describe(a))} cannot be ${verb} ${describe(b)}: they measure different things.`;
  }
  if (a.currency !== b.currency) {
    return `${a.currency ?? "Money"} cannot be ${verb} ${b.currency ?? "money"}: no exchange rate is kept.`;
  }
  return undefined;
}

/** What a measure measures, in words: `a length`, `a torque or an energy`, `GBP`, `a plain number`. */
export function describe(of: Measure): string {
  if (isPlain(of)) return "a plain number";
  if (sameVector(of.vector, { money: 1 })) return `a sum in ${of.currency ?? "money"}`;
  const names = dimensionsOf(of.vector).map((name) => {
    const { title } = dimensions[name];
    return `${/^[aeiou]/.test(title) ? "an" : "a"} ${title}`;
  });
  return names.length > 0 ? names.join(" or ") : `a quantity in ${symbolsOf(of)}`;
}

function combine(a: Measure, b: Measure, sign: 1 | -1, value: number, verb: string): Arithmetic {
  for (const factor of [a, b]) {
    if ((factor.vector.temperature ?? 0) !== 0 && !(isPlain(a) || isPlain(b))) {
      return {
        wrong: `${capital(describe(a))} cannot be ${verb} ${describe(b)}: a temperature has no zero to count from.`,
      };
    }
  }
  if (a.currency !== undefined && b.currency !== undefined && a.currency !== b.currency) {
    return { wrong: `${a.currency} cannot be ${verb} ${b.currency}: no exchange rate is kept.` };
  }
  if (!Number.isFinite(value)) return { wrong: `${capital(describe(a))} ${verb} ${describe(b)} gives no number.` };
  const vector: Partial<Record<(typeof bases)[number], number>> = {};
  for (const base of bases) {
    const exponent = (a.vector[base] ?? 0) + sign * (b.vector[base] ?? 0);
    if (exponent !== 0) vector[base] = exponent;
  }
  const currency = vector.money === undefined ? undefined : (a.currency ?? b.currency);
  return { measure: { value, vector, ...(currency === undefined ? {} : { currency }) } };
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** `kg·m2/s3`. */
function symbolsOf(of: Measure): string {
  const symbols = { mass: "kg", length: "m", time: "s", angle: "°", temperature: "K", current: "A", light: "lm" };
  const power = (symbol: string, exponent: number) => (exponent === 1 ? symbol : `${symbol}${exponent}`);
  const above: string[] = [];
  const below: string[] = [];
  for (const base of ["money", "mass", "length", "time", "angle", "temperature", "current", "light"] as const) {
    const exponent = of.vector[base] ?? 0;
    const symbol = base === "money" ? (of.currency ?? "money") : symbols[base];
    if (exponent > 0) above.push(power(symbol, exponent));
    if (exponent < 0) below.push(power(symbol, -exponent));
  }
  return `${above.join("·") || "1"}${below.map((symbol) => `/${symbol}`).join("")}`;
}

/** A measure in any unit of its dimension; undefined when the unit measures something else. */
export function inUnit(of: Measure, symbol: string): number | undefined {
  const unit = unitBySpelling(symbol);
  if (unit === undefined) return undefined;
  const base = inDimension(of, unit.dimension);
  return base === undefined ? undefined : fromBase(base, unit);
}
