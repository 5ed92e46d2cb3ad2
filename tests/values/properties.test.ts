import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { ValueToken } from "../../grammar/tree.ts";
import { dimensionNames, unitBySpelling, units, unitsOf } from "../../grammar/units.ts";
import { equal } from "../../server/values/compare.ts";
import { conversions } from "../../server/values/convert.ts";
import { exampleOf } from "../../server/values/example.ts";
import { readValue } from "../../server/values/read.ts";
import { showInterval, showPair, showQuantity, showSeveral, showValue } from "../../server/values/show.ts";
import type { AnyValue, FieldType, Interval } from "../../server/values/types.ts";
import { writeValue } from "../../server/values/write.ts";
import { applied, codesOf, fixesOf, read, tokensOf } from "./tokens.ts";

const words = { carbon: "", aluminium: "", "straight-side": "", none: "" };
const roles = ["exact", "tolerance", "adjustable", "allowed"] as const;

const types: FieldType[] = [
  ...dimensionNames.flatMap((dimension): FieldType[] => [
    ...roles.map((role): FieldType => ({ type: "quantity", dimension, role })),
    { type: "quantities", dimension },
  ]),
  ...units.map(
    (unit): FieldType => ({ type: "quantity", dimension: unit.dimension, role: "exact", unit: unit.symbol }),
  ),
  { type: "quantity", dimension: "length", role: "exact", lowest: 20, highest: 40 },
  { type: "quantity", dimension: "length", role: "allowed", lowest: 27.21, highest: 27.23 },
  { type: "quantity", dimension: "mass", role: "exact", unit: "kg", lowest: 1 },
  { type: "quantity", dimension: "mass", role: "exact", unit: "kg", highest: 5 },
  { type: "count" },
  { type: "count", unit: "t", lowest: 9, highest: 80 },
  { type: "number", role: "exact", lowest: 0, highest: 1 },
  { type: "number", role: "allowed" },
  { type: "teeth" },
  { type: "code", family: "axle" },
  { type: "codes", family: "axle" },
  { type: "word", words },
  { type: "words", words },
  { type: "text" },
  { type: "yes-no" },
  { type: "date" },
  { type: "money", role: "exact" },
  { type: "money", role: "allowed" },
  { type: "colour" },
  { type: "part", kinds: ["stem"] },
  { type: "slot" },
];
const runs = Number(process.env.RUNS ?? 1000);
const anyType = fc.constantFrom(...types);

/** Pieces of values, put together wrongly as often as rightly. */
const piece = fc.oneof(
  fc.constantFrom(
    "40",
    "-5",
    "3,5",
    "1,200",
    "1/8",
    "1/0",
    "½",
    "4-6",
    "27.2±0.05",
    "1-1/8",
    ".5",
    "9".repeat(400),
    "4..6",
    "1'0",
  ),
  fc.constantFrom(
    "N·m",
    "mm",
    "in",
    "lb",
    "in-lb",
    "kg",
    "°",
    "%",
    "t",
    "GBP",
    "£",
    "$5",
    "€",
    "psi",
    "m",
    "nm",
    "fl",
    "oz",
  ),
  fc.constantFrom("to", "±", "+/-", "-", "–", "..", "<=", ">=", "<", "=", "max", "min", "up", "at", "least", ",", "or"),
  fc.constantFrom(
    "none",
    "None",
    "n/a",
    "?",
    "yes",
    "true",
    "carbon",
    '"text"',
    '"',
    "[",
    "]",
    "(",
    "#2f5d50",
    "2027-03-31",
  ),
  fc.string({ unit: "binary", maxLength: 8 }),
);
const valueText = fc
  .array(piece, { maxLength: 7 })
  .chain((pieces) => fc.constantFrom("", " ", " ").map((joint) => pieces.join(joint)));
const anyToken: fc.Arbitrary<ValueToken> = fc.record({
  kind: fc.constantFrom("word", "text", "comma", "comparison", "bracket"),
  text: fc.oneof(fc.string({ unit: "binary" }), piece),
  span: fc.tuple(fc.nat(100), fc.nat(100)).map(([start, length]) => ({ start, end: start + length })),
});

describe("whatever is written", () => {
  it("no list of tokens makes reading throw, and there is a value, an absence or an error", () => {
    fc.assert(
      fc.property(anyType, fc.array(anyToken, { maxLength: 8 }), (type, tokens) => {
        const result = readValue(type, tokens);
        const isRead = result.value !== undefined || result.isNone === true;
        expect(isRead || result.problems.some((problem) => problem.severity === "error")).toBe(true);
        expect(typeof result.written).toBe("string");
        for (const problem of result.problems) expect(problem.message.length).toBeLessThan(700);
      }),
      { numRuns: runs },
    );
  });

  it("an error keeps the value back, except for a text without quotes", () => {
    fc.assert(
      fc.property(anyType, valueText, (type, text) => {
        const result = read(type, text);
        const errors = result.problems.filter((problem) => problem.severity === "error");
        if (errors.length > 0 && type.type !== "text") expect(result.value).toBeUndefined();
        for (const number of numbersIn(result.value)) expect(Number.isNaN(number)).toBe(false);
      }),
      { numRuns: runs },
    );
  });

  it("every problem lies inside what was written, and every fix changes it", () => {
    fc.assert(
      fc.property(anyType, valueText, (type, text) => {
        for (const problem of read(type, text).problems) {
          expect(problem.span.start).toBeGreaterThanOrEqual(0);
          expect(problem.span.end).toBeLessThanOrEqual(text.length);
          expect(problem.code).toMatch(/^value\/[a-z-]+$/);
          for (const fix of fixesOf(problem)) {
            expect(fix.title).not.toBe("");
            expect(applied(text, fix)).not.toBe(text);
          }
        }
      }),
      { numRuns: runs },
    );
  });

  it("mending one problem after another comes to an end, and no fix brings its own problem back", () => {
    fc.assert(
      fc.property(anyType, valueText, (type, text) => {
        let current = text;
        for (let turn = 0; turn < 25; turn += 1) {
          const before = read(type, current);
          const problem = before.problems.find((one) => one.fix !== undefined);
          if (problem?.fix === undefined) return;
          const after = applied(current, problem.fix);
          // The text after `or` is another alternate, which the language hands over by itself.
          if (problem.code === "value/one-only" && type.type === "part") return;
          const count = (texts: string[]) => texts.filter((code) => `value/${code}` === problem.code).length;
          if (before.problems.length === 1) expect(codesOf(read(type, after))).not.toEqual(codesOf(before));
          else expect(count(codesOf(read(type, after)))).toBeLessThan(count(codesOf(before)));
          current = after;
        }
        throw new Error(`no end to mending ${text}`);
      }),
      { numRuns: runs },
    );
  });

  it("what is written canonically reads the same again", () => {
    fc.assert(
      fc.property(anyType, valueText, (type, text) => {
        const result = read(type, text);
        if (result.value === undefined) return;
        const again = read(type, result.written);
        expect(again.problems).toEqual([]);
        expect(again.value).toEqual(result.value);
        expect(again.written).toBe(result.written);
      }),
      { numRuns: runs },
    );
  });
});

function numbersIn(value: AnyValue | undefined): number[] {
  if (typeof value === "number") return [value];
  if (typeof value !== "object") return [];
  return Object.values(value).filter((item) => typeof item === "number");
}

describe("examples", () => {
  it.each(types.map((type) => [JSON.stringify(type), type] as const))("%s: reads without a problem", (_name, type) => {
    const result = read(type, exampleOf(type));
    expect(result.problems).toEqual([]);
    expect(result.value).toBeDefined();
  });
});

const finite = fc.double({ noNaN: true, min: -1e12, max: 1e12 });
const interval = fc
  .tuple(finite, finite, fc.constantFrom("both", "least", "greatest"))
  .map(([a, b, open]): Interval => {
    // No negative zero: it is written as zero.
    const [least, greatest] = [Math.min(a, b) || 0, Math.max(a, b) || 0];
    if (open === "least") return { least: Number.NEGATIVE_INFINITY, greatest };
    if (open === "greatest") return { least, greatest: Number.POSITIVE_INFINITY };
    return { least, greatest };
  });
const bareCode = fc.string({ unit: fc.constantFrom(...'abcXYZ019./-x×"\\ ,or'), minLength: 1, maxLength: 10 });

/** A type with a value of it. */
const typed: fc.Arbitrary<[FieldType, AnyValue]> = fc.oneof(
  fc
    .tuple(fc.constantFrom(...units), finite)
    .map(([unit, value]): [FieldType, AnyValue] => [
      { type: "quantity", dimension: unit.dimension, role: "exact", unit: unit.symbol },
      value === 0 ? 0 : value,
    ]),
  fc
    .tuple(fc.constantFrom(...units), interval)
    .map(([unit, value]): [FieldType, AnyValue] => [
      { type: "quantity", dimension: unit.dimension, role: "allowed", unit: unit.symbol },
      value,
    ]),
  fc
    .tuple(fc.constantFrom(...dimensionNames), fc.array(finite, { minLength: 1, maxLength: 5 }))
    .map(([dimension, values]): [FieldType, AnyValue] => [
      { type: "quantities", dimension },
      values.map((value) => value || 0),
    ]),
  fc.nat(1e6).map((value): [FieldType, AnyValue] => [{ type: "count" }, value]),
  finite.map((value): [FieldType, AnyValue] => [{ type: "number", role: "exact" }, value || 0]),
  fc
    .array(fc.integer({ min: 1, max: 200 }), { minLength: 1, maxLength: 14 })
    .map((value): [FieldType, AnyValue] => [{ type: "teeth" }, value]),
  bareCode
    .filter((code) => code.trim() === code && !/\d×\d/.test(code))
    .map((code): [FieldType, AnyValue] => [
      { type: "code", family: "axle" },
      { family: "axle", code },
    ]),
  fc
    .array(fc.constantFrom("a", "12x148", "b c", "or"), { minLength: 1, maxLength: 4 })
    .map((codes): [FieldType, AnyValue] => [
      { type: "codes", family: "axle" },
      codes.map((code) => ({ family: "axle", code })),
    ]),
  fc
    .uniqueArray(fc.constantFrom("carbon", "aluminium", "straight-side"), { minLength: 1 })
    .map((value): [FieldType, AnyValue] => [{ type: "words", words }, value]),
  fc
    .string({ unit: "grapheme" })
    .filter((text) => !/[\r\n\u2028\u2029]/.test(text))
    .map((text): [FieldType, AnyValue] => [{ type: "text" }, text]),
  fc.boolean().map((value): [FieldType, AnyValue] => [{ type: "yes-no" }, value]),
  fc
    .date({ min: new Date("0001-01-01"), max: new Date("9999-12-31"), noInvalidDate: true })
    .map((day): [FieldType, AnyValue] => [{ type: "date" }, day.toISOString().slice(0, 10)]),
  fc
    .tuple(fc.constantFrom("GBP", "EUR", "JPY", "KWD"), fc.integer({ min: -1e9, max: 1e9 }))
    .map(([currency, cents]): [FieldType, AnyValue] => [
      { type: "money", role: "exact" },
      { currency, amount: cents / 100 || 0 },
    ]),
  fc.tuple(fc.constantFrom("GBP", "JPY"), interval).map(([currency, value]): [FieldType, AnyValue] => [
    { type: "money", role: "allowed" },
    { currency, ...value },
  ]),
);

describe("writing and reading", () => {
  it("read(write(x)) is exactly x", () => {
    fc.assert(
      fc.property(typed, ([type, value]) => {
        const written = writeValue(type, value);
        if (written === undefined) throw new Error("nothing was written");
        const result = read(type, written);
        expect(result.problems).toEqual([]);
        expect(result.value).toEqual(value);
      }),
      { numRuns: runs },
    );
  });

  it("a value of another shape is not written", () => {
    expect(writeValue({ type: "teeth" }, "ten")).toBeUndefined();
    expect(writeValue({ type: "quantity", dimension: "mass", role: "exact" }, "ten")).toBeUndefined();
    expect(writeValue({ type: "money", role: "exact" }, 5)).toBeUndefined();
    expect(writeValue({ type: "codes", family: "axle" }, [])).toBeUndefined();
  });
});

/** Numbers of few digits in some unit: what a person would write. */
const fewDigits = fc
  .tuple(fc.integer({ min: -999, max: 999 }), fc.constantFrom(1, 10))
  .map(([number, by]) => number / by);
const anyUnit = fc.constantFrom(...units);

describe("showing", () => {
  it("read(show(x)) is x, for numbers of few digits in their own unit", () => {
    fc.assert(
      fc.property(anyUnit, fewDigits, (unit, number) => {
        const type: FieldType = { type: "quantity", dimension: unit.dimension, role: "exact" };
        const value = (number - unit.offset) * unit.factor;
        const result = read(type, showQuantity(value, unit.dimension, { unit: unit.symbol, digits: 3 }));
        expect(equal(result.value as number, value)).toBe(true);
      }),
      { numRuns: runs },
    );
  });

  it("read(show(interval)) is the interval, open ones included", () => {
    fc.assert(
      fc.property(anyUnit, fewDigits, fewDigits, fc.constantFrom("both", "least", "greatest"), (unit, a, b, open) => {
        const [low, high] = [Math.min(a, b), Math.max(a, b)].map((number) => (number - unit.offset) * unit.factor);
        const value = {
          least: open === "greatest" ? Number.NEGATIVE_INFINITY : (low ?? 0),
          greatest: open === "least" ? Number.POSITIVE_INFINITY : (high ?? 0),
        };
        const type: FieldType = { type: "quantity", dimension: unit.dimension, role: "allowed" };
        const shown = showInterval(value, unit.dimension, { unit: unit.symbol, digits: 3 });
        const again = read(type, shown).value as Interval;
        expect(equal(again.least, value.least) && equal(again.greatest, value.greatest), shown).toBe(true);
      }),
      { numRuns: runs },
    );
  });

  it("two that differ never look the same, and two that are equal always do", () => {
    fc.assert(
      fc.property(
        anyUnit,
        fc.integer({ min: -99_999, max: 99_999 }),
        fc.integer({ min: 1, max: 1000 }),
        (unit, number, step) => {
          const first = number / 100;
          const second = first + step / 10_000;
          const options = { unit: unit.symbol };
          const [a, b] = showPair(first * unit.factor, second * unit.factor, unit.dimension, options);
          expect(a).not.toBe(b);
          const [c, d] = showPair(first * unit.factor, first * unit.factor * (1 + 1e-13), unit.dimension, options);
          expect(c).toBe(d);
        },
      ),
      { numRuns: runs },
    );
  });

  it("never throws, whatever the number, the unit and the digits", () => {
    const number = fc.oneof(fc.double(), fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, -0, 1e300, 5e-324));
    const options = fc.record(
      {
        unit: fc.oneof(fc.constantFrom(...units.map((unit) => unit.symbol)), fc.string()),
        digits: fc.oneof(fc.integer(), fc.double()),
        displayUnits: fc.constantFrom("metric", "inch", "both"),
      },
      { requiredKeys: [] },
    );
    fc.assert(
      fc.property(fc.constantFrom(...dimensionNames), number, number, options, (dimension, a, b, chosen) => {
        expect(showQuantity(a, dimension, chosen)).not.toBe("");
        expect(showInterval({ least: a, greatest: b }, dimension, chosen)).not.toBe("");
        expect(showSeveral([a, b], dimension, chosen)).toHaveLength(2);
      }),
      { numRuns: runs },
    );
    fc.assert(
      fc.property(typed, ([type, value]) => {
        expect(showValue(type, value, { displayUnits: "both" })).toBeTypeOf("string");
      }),
    );
  });
});

describe("conversions offered for a value", () => {
  it("keep the value to five digits, and say where they round", () => {
    const type: FieldType = { type: "quantity", dimension: "torque", role: "exact" };
    const text = "354 lbf·in";
    const texts = conversions(type, tokensOf(text)).map((fix) => [fix.title, applied(text, fix)]);
    expect(texts[0]).toEqual(["Convert to 39.997 N·m (rounded)", "39.997 N·m"]);
    expect(texts.map(([, after]) => after)).toContain("29.5 lbf·ft");
  });

  it("read clean in every unit, near the value they came from", () => {
    fc.assert(
      fc.property(fc.constantFrom(...dimensionNames), fc.integer({ min: 1, max: 9999 }), (dimension, number) => {
        const type: FieldType = { type: "quantity", dimension, role: "allowed" };
        for (const unit of unitsOf(dimension)) {
          const text = `${number} ${unit.symbol}`;
          const before = read(type, text).value as Interval;
          for (const fix of conversions(type, tokensOf(text))) {
            const after = read(type, applied(text, fix));
            expect(after.problems).toEqual([]);
            const size = Math.abs((after.value as Interval).least - before.least);
            const offset = Math.abs((unitBySpelling("K")?.offset ?? 0) * (dimension === "temperature" ? 1 : 0));
            expect(size).toBeLessThanOrEqual((Math.abs(before.least) + offset) * 1e-4);
          }
        }
      }),
    );
  });

  it("are not offered for what cannot be read", () => {
    expect(conversions({ type: "quantity", dimension: "torque", role: "exact" }, tokensOf("40 mm"))).toEqual([]);
    expect(conversions({ type: "text" }, tokensOf('"40 mm"'))).toEqual([]);
  });
});

describe("long input", () => {
  it.each([
    ["digits", "9".repeat(200_000)],
    ["one word", "a".repeat(200_000)],
    ["signs", "1±".repeat(100_000)],
    ["units", "1a±".repeat(100_000)],
    ["dashes", "1-".repeat(100_000)],
    ["words", "mm ".repeat(100_000)],
    ["numbers", "1 ".repeat(100_000)],
    ["commas", ", ".repeat(100_000)],
    ["commas in a word", "1,".repeat(100_000)],
    ["points", ".".repeat(200_000)],
  ])("%s do not hold anything up", (_name, text) => {
    const tokens = tokensOf(text);
    for (const type of types.slice(0, 5).concat(types.slice(-17))) {
      const start = performance.now();
      readValue(type, tokens);
      expect(performance.now() - start).toBeLessThan(5000);
    }
  });
});

describe("a plain number with its unit", () => {
  const quantities = types.flatMap((type) => (type.type === "quantity" ? [type] : []));
  const number = fc.oneof(
    fc.nat(9999).map(String),
    fc.tuple(fc.nat(9999), fc.nat(999)).map(([whole, part]) => `${whole}.${String(part).padStart(3, "0")}`),
    fc.constantFrom(
      "0",
      "00",
      "07",
      "1.",
      ".5",
      "27.2",
      "27.20",
      "27.22",
      "5",
      "20",
      "40",
      "1e3",
      "999999999",
      "1000000000",
    ),
  );

  const isBounded = ({ lowest, highest }: (typeof quantities)[number]): boolean => (lowest ?? highest) !== undefined;
  const typeAndUnit = fc
    .constantFrom(...quantities, ...Array.from({ length: 40 }, () => quantities.filter(isBounded)).flat())
    .chain((type) => fc.tuple(fc.constant(type), fc.constantFrom(...unitsOf(type.dimension), ...units.slice(0, 2))));

  it("reads as it does in a range from itself to itself", () => {
    fc.assert(
      fc.property(typeAndUnit, number, ([type, unit], written) => {
        const apart = read(type, `${written} ${unit.symbol}`);
        // A range of one number to itself is read number by number, which the short way never does.
        const other = read({ ...type, role: "allowed" }, `${written} to ${written} ${unit.symbol}`);
        if (apart.problems.length === 0) {
          const value = typeof apart.value === "number" ? apart.value : (apart.value as Interval).least;
          expect((other.value as Interval).least).toBe(value);
          expect(other.written).toBe(apart.written?.replace(/^[\d.]+/, (digits) => `${digits} to ${digits}`));
        } else expect(other.value === undefined).toBe(apart.value === undefined);
      }),
      { numRuns: runs },
    );
  });
});
