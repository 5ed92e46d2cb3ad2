import { type DimensionName, unitBySpelling } from "../../grammar/units.ts";
import { currencies, currencySigns } from "../values/currency.ts";

/** The title of a column, taken apart: `Weight (g)` is a weight in grams. */
export interface Heading {
  /** In small letters with dashes, as names of facts are written. */
  readonly name: string;
  /** The unit of bare numbers below it. */
  readonly unit?: { readonly symbol: string; readonly dimension: DimensionName };
  /** The currency of bare sums below it. */
  readonly currency?: string;
}

/** Takes the title of a column apart. What is no unit in it stays part of the name. */
export function readHeading(title: string): Heading {
  const text = title.trim();
  const bracketed = /^(.*?)[\s_]*[([]\s*([^()[\]]+?)\s*[)\]]\s*$/.exec(text);
  if (bracketed) {
    const [, name = "", inside = ""] = bracketed;
    const measure = measureOf(inside);
    if (measure && name.trim() !== "") return { name: slug(name), ...measure };
  }
  // `Weight, g`, `Weight/g`, `weight_g`, `Price GBP`, `£ price`.
  const trailing = /^(.*?)(?:\s*[,/]\s*|[\s_]+in[\s_]+|[\s_]+)([^\s,/_]+)$/.exec(text);
  if (trailing) {
    const [, name = "", last = ""] = trailing;
    const measure = measureOf(last);
    if (measure && name.trim() !== "" && isClearlyMeasure(last)) return { name: slug(name), ...measure };
  }
  const sign = /[£€¥]/.exec(text)?.[0];
  const currency = sign === undefined ? undefined : onlyCurrency(sign);
  return { name: slug(text), ...(currency === undefined ? {} : { currency }) };
}

/** Words that are units and ordinary words as well are units only in brackets. */
function isClearlyMeasure(word: string): boolean {
  return !["in", "t", "m", "l", "A", "V", "bar", "stone", "foot", "pound", "pounds"].includes(word);
}

function measureOf(text: string): Pick<Heading, "unit" | "currency"> | undefined {
  const unit = unitBySpelling(text) ?? unitBySpelling(text.toLowerCase());
  if (unit) return { unit: { symbol: unit.symbol, dimension: unit.dimension } };
  const currency = onlyCurrency(text);
  return currency === undefined ? undefined : { currency };
}

/** A currency's letters, or a sign that means one currency alone. */
function onlyCurrency(text: string): string | undefined {
  if (/^[A-Z]{3}$/.test(text) && currencies().has(text)) return text;
  const meant = Object.hasOwn(currencySigns, text) ? currencySigns[text] : undefined;
  return meant?.length === 1 ? meant[0] : undefined;
}

/** A text as names are written: small letters and digits with dashes between. */
export function slug(text: string): string {
  return text
    .normalize("NFKD")
    .replace(/\p{M}+/gu, "")
    .toLowerCase()
    .replace(/[^\p{L}\p{N}.]+/gu, "-")
    .replace(/^[-.]+|[-.]+$/g, "");
}
