import { describe, expect, it } from "vitest";
import { parseDeclaration } from "../../grammar/parse.ts";
import { readValue } from "../../server/values/read.ts";
import type { Interval, QuantityType } from "../../server/values/types.ts";
import { applied, codesOf, read, tokensOf } from "./tokens.ts";

const torque: QuantityType<"exact"> = { type: "quantity", dimension: "torque", role: "exact" };
const torqueRange: QuantityType<"allowed"> = { type: "quantity", dimension: "torque", role: "allowed" };
const length: QuantityType<"exact"> = { type: "quantity", dimension: "length", role: "exact" };
const lengthTolerance: QuantityType<"tolerance"> = { type: "quantity", dimension: "length", role: "tolerance" };
const travel: QuantityType<"adjustable"> = { type: "quantity", dimension: "length", role: "adjustable" };
const temperature: QuantityType<"allowed"> = { type: "quantity", dimension: "temperature", role: "allowed" };

describe("one number", () => {
  // text, value in the base unit, canonical spelling. Factors: see units.test.ts.
  it.each([
    [torque, "40 N·m", 40, "40 N·m"],
    [torque, "40Nm", 40, "40 N·m"],
    [torque, "40 N.m", 40, "40 N·m"],
    [torque, "40 N-m", 40, "40 N·m"],
    [torque, "40 N m", 40, "40 N·m"],
    [torque, "40\u00a0N·m", 40, "40 N·m"],
    [torque, "60 in-lb", 60 * 0.1129848290276167, "60 lbf·in"],
    [torque, "60 in lb", 60 * 0.1129848290276167, "60 lbf·in"],
    [torque, "30 ft-lbs", 360 * 0.1129848290276167, "30 lbf·ft"],
    [length, "12mm", 12, "12 mm"],
    [length, "-5 mm", -5, "-5 mm"],
    [length, "\u22125 mm", -5, "-5 mm"],
    [length, "\u20135 mm", -5, "-5 mm"],
    [length, "+5 mm", 5, "5 mm"],
    [length, ".5 in", 12.7, "0.5 in"],
    [length, "1 1/8 in", 28.575, "1 1/8 in"],
    [length, "1-1/8 in", 28.575, "1 1/8 in"],
    [length, "1⅛ in", 28.575, "1 1/8 in"],
    [length, "-1 1/8 in", -28.575, "-1 1/8 in"],
    [length, "9/16 in", 14.2875, "9/16 in"],
    [length, "9/16in", 14.2875, "9/16 in"],
    [length, "27.20 mm", 27.2, "27.20 mm"],
    [{ type: "quantity", dimension: "angle", role: "exact" }, "73.5°", 73.5, "73.5°"],
    [{ type: "quantity", dimension: "angle", role: "exact" }, "73.5 deg", 73.5, "73.5°"],
    [{ type: "quantity", dimension: "time", role: "exact" }, "5 min", 300, "5 min"],
    [
      { type: "quantity", dimension: "stiffness", role: "exact" },
      "450 lb/in",
      450 * (4.4482216152605 / 25.4),
      "450 lb/in",
    ],
    [{ type: "quantity", dimension: "mass", role: "exact" }, "78 kg", 78_000, "78 kg"],
    [{ type: "quantity", dimension: "ratio", role: "exact" }, "25%", 25, "25 %"],
  ] as [QuantityType, string, number, string][])("%o %s", (type, text, value, written) => {
    const result = read(type, text);
    expect(result.problems).toEqual([]);
    expect(result.value).toBeCloseTo(value, 9);
    expect(result.written).toBe(written);
  });
});

describe("ranges", () => {
  it.each([
    [torqueRange, "4 to 6 N·m", 4, 6, "4 to 6 N·m"],
    [torqueRange, "4-6 N·m", 4, 6, "4 to 6 N·m"],
    [torqueRange, "4–6 N·m", 4, 6, "4 to 6 N·m"],
    [torqueRange, "4 - 6 Nm", 4, 6, "4 to 6 N·m"],
    [torqueRange, "4..6 N·m", 4, 6, "4 to 6 N·m"],
    [torqueRange, "4Nm-6Nm", 4, 6, "4 to 6 N·m"],
    [torqueRange, "4 N-m to 6 N-m", 4, 6, "4 to 6 N·m"],
    [torqueRange, "4 N·m to 6", 4, 6, "4 to 6 N·m"],
    [torqueRange, "<= 5 N·m", Number.NEGATIVE_INFINITY, 5, "<= 5 N·m"],
    [torqueRange, "<=5Nm", Number.NEGATIVE_INFINITY, 5, "<= 5 N·m"],
    [torqueRange, "≤ 5 N·m", Number.NEGATIVE_INFINITY, 5, "<= 5 N·m"],
    [travel, ">= 20 mm", 20, Number.POSITIVE_INFINITY, ">= 20 mm"],
    [travel, "20 mm", 20, 20, "20 mm"],
    [travel, "-10 to -5 mm", -10, -5, "-10 to -5 mm"],
    [travel, "-10--5 mm", -10, -5, "-10 to -5 mm"],
    [travel, "1/2 - 3/4 in", 12.7, 19.05, "1/2 to 3/4 in"],
    [travel, "1 to 30 mm", 1, 30, "1 to 30 mm"],
    [travel, "1 in to 30 mm", 25.4, 30, "1 in to 30 mm"],
    [lengthTolerance, "27.2 ± 0.05 mm", 27.15, 27.25, "27.2 ± 0.05 mm"],
    [lengthTolerance, "27.2±0.05mm", 27.15, 27.25, "27.2 ± 0.05 mm"],
    [lengthTolerance, "27.2 +/- 0.05 mm", 27.15, 27.25, "27.2 ± 0.05 mm"],
    [lengthTolerance, "27.2 mm ± 0.05 mm", 27.15, 27.25, "27.2 ± 0.05 mm"],
    [lengthTolerance, "100 mm ± 2 %", 98, 102, "100 mm ± 2 %"],
    // A spread of 9 °F is 5 °C, wherever it is counted from.
    [temperature, "68 ± 9 °F", 15, 25, "68 ± 9 °F"],
  ] as [QuantityType, string, number, number, string][])("%o %s", (type, text, least, greatest, written) => {
    const result = read(type, text);
    expect(result.problems).toEqual([]);
    const interval = result.value as Interval;
    if (Number.isFinite(least)) expect(interval.least).toBeCloseTo(least, 9);
    else expect(interval.least).toBe(least);
    if (Number.isFinite(greatest)) expect(interval.greatest).toBeCloseTo(greatest, 9);
    else expect(interval.greatest).toBe(greatest);
    expect(result.written).toBe(written);
  });

  it.each([
    ["4 to 6 N·m", "4 N·m"],
    ["<= 5 N·m", "5 N·m"],
    ["5 ± 1 N·m", "5 N·m"],
  ])("%s is refused where one number is meant", (text, number) => {
    const result = read(torque, text);
    expect(codesOf(result)).toEqual(["range-not-allowed"]);
    expect(result.value).toBeUndefined();
    expect(result.problems[0]?.message).toBe(`it is one number, not a range: write the one it is, as in ${number}.`);
  });
});

/** The marks « and » stand round the place that the first problem points at. */
describe("problems point at their place", () => {
  const bounded: QuantityType<"exact"> = { ...length, lowest: 20, highest: 40 };
  it.each([
    [torque, "40 «mm»", "wrong-dimension"],
    [torque, "«40»", "missing-unit"],
    [torque, "40 «Nmx»", "unknown-unit"],
    [torque, "«3,5» N·m", "decimal-comma"],
    [torque, "«1,200» N·m", "thousands-separator"],
    [torque, "«1'200» N·m", "thousands-separator"],
    [torque, "«1 200» N·m", "two-numbers"],
    [torque, "«1/0» N·m", "not-a-number"],
    [torque, "40 «nm»", "unit-capitals"],
    [torque, "«N·m 40»", "unit-first"],
    [torqueRange, "«6 to 4 N·m»", "range-order"],
    [torqueRange, "«5 ± -1 N·m»", "range-order"],
    [torqueRange, "«max 5 N·m»", "range-words"],
    [torqueRange, "«5 N·m max»", "range-words"],
    [torqueRange, "«< 5 N·m»", "range-words"],
    [torqueRange, "«min 5 N·m»", "range-words"],
    [torqueRange, "«no more than 5 N·m»", "range-words"],
    [torqueRange, "«4 6» N·m", "two-numbers"],
    [torqueRange, "4-6 «mm»", "wrong-dimension"],
    [bounded, "«318 mm»", "out-of-bounds"],
    [bounded, "«31.8 cm»", "out-of-bounds"],
    [length, "«10, 12 mm»", "one-only"],
    [length, "10 «or» 12 mm", "alternates"],
    [length, '«"12 mm"»', "quoted-number"],
    [length, "«?»", "unknown"],
    [length, "«n/a»", "none"],
    [length, "«wide»", "not-a-number"],
  ] as [QuantityType, string, string][])("%o %s", (type, marked, code) => {
    const start = marked.indexOf("«");
    const end = marked.indexOf("»") - 1;
    const result = read(type, marked.replace(/[«»]/g, ""));
    expect(codesOf(result)).toEqual([code]);
    expect(result.problems[0]?.span).toEqual({ start, end });
    if (result.problems[0]?.severity === "error") expect(result.value).toBeUndefined();
    else expect(result.value).toBeDefined();
  });

  it("names the dimension, what was written and the units to choose from", () => {
    const message = read(torque, "40 mm", { field: "lockring-torque" }).problems[0]?.message;
    expect(message).toBe(
      "40 mm is a length, but lockring-torque is a torque, written in N·m, N·cm, N·mm, lbf·in or lbf·ft.",
    );
  });

  it("says the plausible bounds of a slip, in the field's own unit", () => {
    const message = read({ ...length, lowest: 200, highest: 2000, unit: "cm" }, "18 mm", { field: "inseam" })
      .problems[0];
    expect(message?.message).toBe(
      "inseam cannot be 18 mm, which is 1.8 cm: it is between 20 cm and 200 cm. Look for a slipped digit or a wrong unit.",
    );
  });

  it("reports a unit that both numbers of a range lack once", () => {
    expect(codesOf(read(torqueRange, "4 to 6"))).toEqual(["missing-unit"]);
  });

  it("accepts a bound itself, also when conversion leaves it a hair outside", () => {
    // 5 × 0.1129848290276167 N·m is the bound to the last digit only by luck.
    const bound = 0.1129848290276167 * 5;
    expect(read({ ...torque, highest: bound * (1 - 1e-15) }, "5 lbf·in").problems).toEqual([]);
  });
});

describe("fixes that name units", () => {
  it("offers the field's usual unit first, and only units that the field could mean", () => {
    const type: QuantityType<"exact"> = {
      type: "quantity",
      dimension: "mass",
      role: "exact",
      unit: "kg",
      lowest: 500,
      highest: 40_000,
    };
    const [problem] = read(type, "12").problems;
    const titles = [problem?.fix, ...(problem?.otherFixes ?? [])].map((fix) => fix?.title);
    expect(titles).toEqual(["Add the unit kg (kilograms)", "Add the unit lb (pounds)"]);
  });

  it.each([
    [{ type: "quantity", dimension: "force", role: "exact" }, "120 kg", "120 kgf"],
    [{ type: "quantity", dimension: "stiffness", role: "exact" }, "450 lb", "450 lb/in"],
    [{ type: "quantity", dimension: "torque", role: "exact" }, "60 lb/in", "60 lbf·in"],
    [{ type: "quantity", dimension: "time", role: "exact" }, "5 m", "5 min"],
    [{ type: "quantity", dimension: "volume", role: "exact" }, "2 oz", "2 fl-oz-us"],
  ] as [QuantityType, string, string][])("%o %s is probably %s", (type, text, meant) => {
    expect(read(type, text).problems[0]?.fix?.changes[0]?.text).toBe(meant);
  });

  it("offers what a slipped unit would have to be", () => {
    const type: QuantityType<"exact"> = { ...length, lowest: 20, highest: 40 };
    expect(read(type, "31.8 cm").problems[0]?.fix?.changes[0]?.text).toBe("31.8 mm");
  });
});

describe("with the language in front", () => {
  function tokensInFile(value: string) {
    const text = `part stem moor.stub {\n  it: ${value}\n}\n`;
    const entry = parseDeclaration(text).block?.entries[0];
    const start = text.indexOf(value);
    if (entry?.form !== "field") throw new Error("no field was parsed");
    return entry.value.tokens.map((token) => ({
      ...token,
      span: { start: token.span.start - start, end: token.span.end - start },
    }));
  }

  it.each([
    "40 N·m",
    "40Nm",
    "4–6 N·m",
    "4..6Nm",
    "<=5 N·m",
    ">= 20 mm",
    "27.2±0.05mm",
    "1 1/8 in",
    "9/16in",
    "1180, 1150, 1210 N",
    "GBP 184.00",
    "£184",
    "10-12-14 t",
    "ZS44/28.6",
    '"say \\"when\\""',
    "#2f5d50",
    "2027-03-31",
    "73.5°",
    "rear-brake.lever",
  ])("%s has the tokens that these tests give it", (value) => {
    expect(tokensInFile(value)).toEqual(tokensOf(value));
  });

  it("places a unit rightly in a word whose number the language has put right", () => {
    const tokens = tokensInFile("3,200nm");
    expect(tokens.map((token) => token.text)).toEqual(["3200nm"]);
    const [problem] = readValue(torque, tokens, { field: "it" }).problems;
    expect(problem?.code).toBe("value/unit-capitals");
    expect(applied("3,200nm", problem?.fix ?? { title: "", changes: [] })).toBe("3,200N·m");
  });
});

describe("two values with a slash between", () => {
  const width: QuantityType = { type: "quantity", dimension: "length", role: "allowed", lowest: 50, highest: 150 };
  const fixesOf = (type: QuantityType, text: string): readonly string[] =>
    read(type, text).problems.flatMap(({ fix, otherFixes }) =>
      [...(fix ? [fix] : []), ...(otherFixes ?? [])].flatMap(({ changes }) => changes.map((change) => change.text)),
    );

  it.each([
    [width, "68/73 mm", ["68 to 73 mm"]],
    [width, "73/68 mm", ["68 to 73 mm"]],
    [torqueRange, "6/8 N·m", ["6 to 8 N·m"]],
    [torqueRange, "6/8Nm", ["6 to 8 N·m"]],
    [torqueRange, "35/53 lbf·in", ["35 to 53 lbf·in"]],
    [length, "68/73 mm", ["68 mm", "73 mm"]],
    [length, "6/8 in", ["6 in", "8 in"]],
    [length, "3/5 in", ["3 in", "5 in"]],
    [length, "9/4 in", ["4 in", "9 in"]],
    [{ ...width, lowest: 70 }, "68/73 mm", []],
  ] as [QuantityType, string, string[]][])("%o %s is no fraction", (type, text, fixes) => {
    const result = read(type, text);
    expect(result.value).toBeUndefined();
    expect(codesOf(result)).toEqual(["two-values"]);
    expect(fixesOf(type, text)).toEqual(fixes);
    for (const fix of fixes) expect(read(type, fix).problems).toEqual([]);
  });

  it.each([
    ["1/2 mm", 0.5],
    ["1/3 mm", 1 / 3],
    ["11/128 in", (11 / 128) * 25.4],
    ["3/4 in", 19.05],
    ["15/16 in", (15 / 16) * 25.4],
  ])("%s is one", (text, value) => {
    const result = read(length, text);
    expect(result.problems).toEqual([]);
    expect(result.value).toBeCloseTo(value, 9);
  });

  it("says so", () => {
    expect(read(width, "68/73 mm", { field: "shell-widths" }).problems[0]?.message).toBe(
      "68/73 mm names two values, and reads as a fraction; a range is written 68 to 73 mm.",
    );
    expect(read(length, "68/73 mm", { field: "shell-width" }).problems[0]?.message).toBe(
      "shell-width is one number, and 68/73 mm names two: write the one it is.",
    );
  });
});
