import { expect, test } from "vitest";
import { minorDigits } from "../../server/values/currency.ts";

test("decimals of a currency are those of ISO 4217, whose list the platform follows for money in use", () => {
  const platform = (currency: string): number | undefined =>
    new Intl.NumberFormat("en", { style: "currency", currency }).resolvedOptions().maximumFractionDigits;
  for (const currency of [
    "GBP",
    "EUR",
    "USD",
    "CHF",
    "SEK",
    "JPY",
    "KRW",
    "CLP",
    "ISK",
    "VND",
    "BHD",
    "KWD",
    "TND",
    "CLF",
  ]) {
    expect(minorDigits(currency), currency).toBe(platform(currency));
  }
  expect(minorDigits("nothing")).toBe(2);
});
