import { describe, expect, it } from "vitest";
import { format } from "../../grammar/format.ts";
import { units } from "../../grammar/units.ts";

function spelled(value: string): string {
  const { text } = format(`part a b {\n  value: ${value}\n}\n`);
  const once = text.slice("part a b {\n  value: ".length, -"\n}\n".length);
  expect(format(text).text).toBe(text);
  return once;
}

describe("a value is written in one form", () => {
  it.each([
    ["40 Nm", "40 N·m"],
    ["40 N.m", "40 N·m"],
    ["40 N m", "40 N·m"],
    ["40 N m or 50 Nm", "40 N·m or 50 N·m"],
    ["27.2 +/- 0.05 mm", "27.2 ± 0.05 mm"],
    ["27.2 +- 0.05 mm", "27.2 ± 0.05 mm"],
    ["27.2±0.05 mm", "27.2 ± 0.05 mm"],
    ["27.2+/-0.05 mm", "27.2 ± 0.05 mm"],
    ["27.2 ±0.05 mm", "27.2 ± 0.05 mm"],
    ["\u22125 mm", "-5 mm"],
    ["11\u201313\u201315 t", "11-13-15 t"],
    ["11-28 T", "11-28 t"],
    ["57\u2013622", "57-622"],
    ["4-6 Nm", "4 to 6 N·m"],
    ["4\u20136 N·m", "4 to 6 N·m"],
    ["4..6 N·m", "4 to 6 N·m"],
    ["4 - 6 N·m", "4 to 6 N·m"],
    ["4 \u2013 6 N m", "4 to 6 N·m"],
    ["69 deg", "69°"],
    ["69 °", "69°"],
    ["68-70 degrees", "68 to 70°"],
    ["≤5 bar", "<= 5 bar"],
    ["⩾ 5 bars", ">= 5 bar"],
    ["1180,  1150 , 1210 newtons", "1180, 1150, 1210 N"],
    ["29 inches", "29 in"],
  ])("%s as %s", (typed, written) => {
    expect(spelled(typed)).toBe(written);
  });

  it.each([
    // A list of teeth, a code, a name, a date, a difference the wrong way round, a unit with no number before it.
    "11-13-15 t",
    "34-50 t",
    "57-622",
    "12x148",
    "12×148",
    "M10x1.5",
    "2027-03-31",
    "corrie.wide-10-52",
    "6-4 N·m",
    "4-6",
    "4-6 or 7",
    "Nm",
    "30mm",
    "deg 69",
    "corrie\u2013wide",
    "GBP 184.00",
    "1-1/8 in",
    '"40 Nm" 4-6',
  ])("%s is left alone", (value) => {
    expect(spelled(value)).toBe(value);
  });

  it("a difference in a rule stays a difference", () => {
    const text = "rule a {\n  require: b < 4 - 6 mm\n}\n";
    expect(format(text).text).toBe(text);
  });

  it("every spelling of every unit comes out as its symbol", () => {
    for (const { symbol, spellings } of units) {
      for (const spelling of [symbol, ...spellings]) {
        if (/[″”]/.test(spelling)) continue; // A quote after a number is reported instead.
        expect(spelled(`3 ${spelling}`)).toBe(symbol === "°" ? "3°" : `3 ${symbol}`);
      }
    }
  });

  it("names and texts in headers are left alone", () => {
    const text = 'standard axle 12 "40 Nm" {\n}\n';
    expect(format(text).text).toBe(text);
  });
});
