import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { baseUnit } from "../../grammar/units.ts";
import type { Calculation, Input } from "../../server/calculations/define.ts";
import { calculations } from "../../server/calculations/table.ts";
import type { FieldType } from "../../server/values/types.ts";

/** Numbers that nobody would write, beside those that somebody might. */
const absurd = fc.oneof(
  fc.constantFrom(0, -1, 1, 1e-9, -1e-9, 1e9, -1e9, 1e300, -1e300, Number.MAX_VALUE, Number.MIN_VALUE, 90, 180, 360),
  fc.constantFrom(Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY),
  fc.double({ noNaN: true }),
);

function bounded(lowest = 0, highest = 1000): fc.Arbitrary<number> {
  return fc.double({ min: lowest, max: highest, noNaN: true });
}

/** Values of a field's type: within its bounds, or anything a number can be. */
function arbitraryOf(type: FieldType, wild: boolean): fc.Arbitrary<unknown> {
  const number = (lowest?: number, highest?: number): fc.Arbitrary<number> =>
    wild ? absurd : bounded(lowest, Math.max(highest ?? 1000, lowest ?? 0));
  switch (type.type) {
    case "quantity":
    case "number":
      return type.role === "exact"
        ? number(type.lowest, type.highest)
        : fc
            .tuple(number(type.lowest, type.highest), number(type.lowest, type.highest))
            .map(([a, b]) => ({ least: wild ? a : Math.min(a, b), greatest: wild ? b : Math.max(a, b) }));
    case "count":
      return wild ? absurd : fc.integer({ min: type.lowest ?? 0, max: type.highest ?? 300 });
    case "teeth":
      return fc.array(wild ? absurd : fc.integer({ min: 6, max: 80 }), { minLength: wild ? 0 : 1, maxLength: 14 });
    case "quantities":
      return fc.array(wild ? absurd : bounded(0, 1000), { maxLength: 8 });
    case "word":
      return fc.constantFrom(...Object.keys(type.words));
    case "yes-no":
      return fc.boolean();
    case "text":
      return fc.oneof(fc.string(), fc.constantFrom("GBP 1.00, EUR 2.50", "a, b", ""));
    default:
      throw new Error(`no values are made for ${type.type}`);
  }
}

function inputsOf(calculation: Calculation, wild: boolean): fc.Arbitrary<Readonly<Record<string, unknown>>> {
  const rows = Object.entries(calculation.inputs as Readonly<Record<string, Input>>);
  return fc.record(Object.fromEntries(rows.map(([name, { field }]) => [name, arbitraryOf(field.type, wild)])), {
    requiredKeys: rows.filter(([, { optional }]) => !optional).map(([name]) => name),
  });
}

/** Never throws; says why not, or gives bounded numbers; and the working changes nothing. */
function holdsFor(calculation: Calculation, inputs: Readonly<Record<string, unknown>>): void {
  const before = JSON.stringify(inputs);
  const working: string[] = [];
  const silent = calculation.compute(inputs as never);
  const recorded = calculation.compute(inputs as never, { step: (text) => working.push(text) });
  expect(recorded).toEqual(silent);
  expect(JSON.stringify(inputs)).toBe(before);
  if ("impossible" in silent) {
    expect(String(silent.impossible)).toMatch(/\S.*\.$/s);
    return;
  }
  expect(working.length).toBeGreaterThan(0);
  for (const [name, value] of Object.entries(silent)) {
    expect(calculation.results[name], name).toBeDefined();
    for (const one of [value].flat()) {
      if (typeof one === "number") expect(Number.isFinite(one), `${name} is ${one}`).toBe(true);
    }
  }
}

describe.each(calculations.map((calculation) => [calculation.name, calculation] as const))("%s", (_, calculation) => {
  it("bears any inputs within their bounds", () => {
    fc.assert(
      fc.property(inputsOf(calculation, false), (inputs) => holdsFor(calculation, inputs)),
      { numRuns: 60 },
    );
  });

  it("bears absurd inputs", () => {
    fc.assert(
      fc.property(inputsOf(calculation, true), (inputs) => holdsFor(calculation, inputs)),
      { numRuns: 150 },
    );
  });

  it("has inputs whose units are known", () => {
    for (const { field } of Object.values(calculation.inputs)) {
      if ("dimension" in field.type) expect(baseUnit(field.type.dimension).factor).toBe(1);
    }
  });
});
