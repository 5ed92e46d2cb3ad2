import { everyFact, type Facts } from "../../model/need.ts";
import type { Money } from "../../values/types.ts";
import { text } from "../../vocabulary/fields.ts";
import { type BuildInputs, defineCalculation, input, known, meaningless, optionalInput, unusable } from "../define.ts";
import { eachPartOnce, namesIn, ofAssembly, sumPlaces } from "../shared/every-part.ts";

const inputs = {
  prices: input(text("Prices of the parts, separated by commas.")),
  unpriced: optionalInput(text("Names of parts whose price is not known, separated by commas.")),
};

const needs = { prices: everyFact<Money>("price") };

function feedOf(assembly: string) {
  return ({ prices }: Facts<typeof needs>): BuildInputs<typeof inputs> => {
    const rows = ofAssembly(eachPartOnce(prices.value), assembly);
    if (rows.length === 0) return meaningless("nothing is fitted here");
    return known({
      prices: rows
        .flatMap(({ fact }) => (fact.state === "known" ? [`${fact.value.currency} ${fact.value.amount}`] : []))
        .join(", "),
      unpriced: rows
        .filter(({ fact }) => fact.state === "unknown")
        .map(({ slot }) => slot)
        .join(", "),
    });
  };
}

/** A price as written: three letters of ISO 4217 and an amount. */
const price = /^([A-Z]{3})\s+(\d{1,12}(?:\.\d{1,6})?)$/;

/** Price of what is fitted, as far as it is known. */
export default defineCalculation({
  name: "price",
  title: "Price of the parts",
  description:
    "Sum of the prices that are stated, each currency by itself. Parts whose price is not known are named, and make the sum a least price.",
  inputs,
  results: {
    "price-at-least": {
      unit: "",
      digits: 2,
      list: true,
      description: "Sum of the known prices, one for each currency.",
    },
    "unpriced-parts": { unit: "", digits: 0, list: true, description: "Parts whose price is not known." },
  },
  formula: "sum of all prices known, never across currencies",
  source: "definition",
  compute({ prices, unpriced }, working) {
    const sums = new Map<string, number>();
    for (const written of namesIn(prices)) {
      const [, currency, amount] = price.exec(written) ?? [];
      if (currency === undefined || amount === undefined) {
        return unusable(`${written} is no price; write the currency's three letters and the amount: GBP 184.00.`);
      }
      // Whole millionths add up exactly, which fractions of ten would not.
      sums.set(currency, (sums.get(currency) ?? 0) + Math.round(Number(amount) * 1e6));
    }
    const shown = [...sums].map(([currency, millionths]) => `${currency} ${(millionths / 1e6).toFixed(2)}`);
    const missing = namesIn(unpriced);
    working?.step(
      `${namesIn(prices).join(" + ") || "No price is stated"}${shown.length > 0 ? ` = ${shown.join(" and ")}` : ""}`,
    );
    if (missing.length > 0) working?.step(`At least, since the price is not known of: ${missing.join(", ")}`);
    return { "price-at-least": shown, "unpriced-parts": missing };
  },
  inBuild: sumPlaces.map((assembly) => ({ assembly, needs, inputs: feedOf(assembly) })),
  examples: [
    {
      inputs: { prices: "GBP 184.00, GBP 32.55, GBP 0.10", unpriced: "saddle, grips" },
      results: { "price-at-least": ["GBP 216.65"], "unpriced-parts": ["saddle", "grips"] },
      source: "worked by hand",
    },
    {
      inputs: { prices: "GBP 10.00, EUR 12.50, GBP 5.25" },
      results: { "price-at-least": ["GBP 15.25", "EUR 12.50"], "unpriced-parts": [] },
      source: "worked by hand: two currencies stay two sums",
    },
  ],
});
