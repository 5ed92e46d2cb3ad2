import { describe, expect, it } from "vitest";
import { currencies, minorDigits } from "../../server/values/currency.ts";
import { daysInMonth } from "../../server/values/date.ts";
import type { MoneyType } from "../../server/values/types.ts";
import { applied, codesOf, fixesOf, read } from "./tokens.ts";

const price: MoneyType<"exact"> = { type: "money", role: "exact" };
const budget: MoneyType<"allowed"> = { type: "money", role: "allowed" };
const infinity = Number.POSITIVE_INFINITY;

describe("sums", () => {
  it.each([
    [price, "GBP 184.00", { currency: "GBP", amount: 184 }, "GBP 184.00"],
    [price, "GBP184", { currency: "GBP", amount: 184 }, "GBP 184"],
    [price, "EUR -5", { currency: "EUR", amount: -5 }, "EUR -5"],
    [budget, "<= GBP 3200", { currency: "GBP", least: -infinity, greatest: 3200 }, "<= GBP 3200"],
    [budget, ">= JPY 100", { currency: "JPY", least: 100, greatest: infinity }, ">= JPY 100"],
    [budget, "GBP 100 to 200", { currency: "GBP", least: 100, greatest: 200 }, "GBP 100 to 200"],
    [budget, "GBP 100-200", { currency: "GBP", least: 100, greatest: 200 }, "GBP 100 to 200"],
    [budget, "GBP 100 to GBP 200", { currency: "GBP", least: 100, greatest: 200 }, "GBP 100 to 200"],
    [budget, "GBP 100 ± 10", { currency: "GBP", least: 90, greatest: 110 }, "GBP 100 ± 10"],
  ] as const)("%o %s", (type, text, value, written) => {
    expect(read(type, text)).toEqual({ value, written, problems: [] });
  });

  // Each habit has its own code and a fix that reads clean as the sum that was meant.
  it.each([
    [price, "£184", "currency-sign", "GBP 184"],
    [price, "184€", "currency-sign", "EUR 184"],
    [price, "-£5", "currency-sign", "GBP -5"],
    [price, "gbp 184", "currency-sign", "GBP 184"],
    [price, "184 GBP", "currency-first", "GBP 184"],
    [price, "184", "missing-unit", "GBP 184"],
    [price, "GBP 3,200", "thousands-separator", "GBP 3200"],
    [price, "GBP 3,20", "decimal-comma", "GBP 3.20"],
    [price, "GBX 5", "unknown-currency", "GBP 5"],
    [budget, "100-200 GBP", "currency-first", "GBP 100 to 200"],
    [budget, "£100-£200", "currency-sign", "GBP 100 to 200"],
  ] as const)("%o %s: %s", (type, text, code, meant) => {
    const result = read(type, text);
    expect(codesOf(result)).toEqual([code]);
    const [fix] = fixesOf(result.problems[0]);
    if (fix === undefined) throw new Error("no fix");
    const mended = applied(text, fix);
    expect(mended).toBe(meant);
    expect(read(type, mended).problems).toEqual([]);
  });

  it("of a field with a least sum are no less, and a sum of nothing is one", () => {
    const atLeastNothing: MoneyType<"exact"> = { ...price, lowest: 0 };
    const result = read(atLeastNothing, "GBP -5.00");
    expect(result.value).toBeUndefined();
    expect(codesOf(result)).toEqual(["out-of-bounds"]);
    expect(result.problems[0]?.message).toContain("cannot be GBP -5.00: it is at least GBP 0.00.");
    expect(read(atLeastNothing, "GBP 0").value).toEqual({ currency: "GBP", amount: 0 });
  });

  it("gives no value for a sign of several currencies, and offers each", () => {
    const result = read(price, "$5");
    expect(result.value).toBeUndefined();
    expect(fixesOf(result.problems[0]).map((fix) => applied("$5", fix))).toEqual(["USD 5", "CAD 5", "AUD 5"]);
  });

  it("takes a sign of several currencies for the workshop's own", () => {
    expect(read(price, "$5", { currency: "CAD" }).value).toEqual({ currency: "CAD", amount: 5 });
  });

  it("never makes one range of two currencies", () => {
    const result = read(budget, "GBP 1 to EUR 2");
    expect(codesOf(result)).toEqual(["two-currencies"]);
    expect(result.value).toBeUndefined();
  });

  it("refuses a range where one price is meant", () => {
    expect(codesOf(read(price, "GBP 1 to 2"))).toEqual(["range-not-allowed"]);
  });

  // ISO 4217:2015, table A.1: minor units.
  it.each([
    ["GBP", 2],
    ["EUR", 2],
    ["JPY", 0],
    ["KWD", 3],
  ] as const)("%s has %d decimals", (currency, digits) => {
    expect(currencies().has(currency)).toBe(true);
    expect(minorDigits(currency)).toBe(digits);
  });

  it("survives a currency that is none", () => {
    expect(minorDigits("")).toBe(2);
    expect(minorDigits("not letters")).toBe(2);
  });
});

describe("days", () => {
  it.each(["2027-03-31", "2024-02-29", "2000-02-29", "0001-01-01"])("%s is one", (text) => {
    expect(read({ type: "date" }, text)).toEqual({ value: text, written: text, problems: [] });
  });

  it.each([
    ["2027-02-29", "February 2027 has 28 days."],
    ["1900-02-29", "February 1900 has 28 days."],
    ["2027-04-31", "April 2027 has 30 days."],
    ["2027-01-00", "January 2027 has 31 days."],
    ["2027-13-01", "there is no month 13."],
    ["0000-01-01", "there is no such year."],
  ])("%s is none: %s", (text, reason) => {
    const result = read({ type: "date" }, text);
    expect(result.value).toBeUndefined();
    expect(result.problems[0]?.message).toContain(reason);
  });

  it("knows the months as the runtime's own calendar does", () => {
    for (const year of [1, 4, 100, 400, 1582, 1899, 1900, 1999, 2000, 2023, 2024, 2100, 9999]) {
      for (let month = 1; month <= 12; month += 1) {
        const last = new Date(0);
        last.setUTCFullYear(year, month, 0);
        expect(daysInMonth(year, month)).toBe(last.getUTCDate());
      }
    }
  });

  it.each([
    ["31/03/2027", ["2027-03-31"]],
    ["31.3.2027", ["2027-03-31"]],
    ["2027/3/1", ["2027-03-01"]],
    ["2027-3-1", ["2027-03-01"]],
    ["20270331", ["2027-03-31"]],
    ["31 March 2027", ["2027-03-31"]],
    ["March 31, 2027", ["2027-03-31"]],
    ["1st Sept 2027", ["2027-09-01"]],
    // A day first is commoner here than a month first; both are offered.
    ["03/04/2027", ["2027-04-03", "2027-03-04"]],
    ["32/13/2027", []],
    ["soon", []],
  ])("%s may mean %j", (text, meant) => {
    const result = read({ type: "date" }, text);
    expect(codesOf(result)).toEqual(["not-a-date"]);
    const texts = fixesOf(result.problems[0]).map((fix) => applied(text, fix));
    expect(texts).toEqual(meant);
    for (const each of texts) expect(read({ type: "date" }, each).problems).toEqual([]);
  });
});
