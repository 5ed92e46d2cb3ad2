import { describe, expect, it } from "vitest";
import { unitBySpelling } from "../../grammar/units.ts";
import type { Calculation, ResultValue } from "../../server/calculations/define.ts";
import { calculations, quantities } from "../../server/calculations/table.ts";
import { clashingPaths } from "../../server/vocabulary/index.ts";
import { record } from "./run.ts";

/** Counted things, plain numbers and texts, and a deceleration: no unit of a field. */
const unitsOutsideTheTable = new Set(["", "t", "links", "pitches", "m/s²"]);

/** Numbers agree to the tolerance of the example, relative to the size of the number; texts and lists item by item. */
function expectClose(actual: ResultValue | undefined, expected: ResultValue, tolerance: number, name: string): void {
  if (typeof expected === "number") {
    expect(typeof actual, `${name} is a number`).toBe("number");
    const allowed = Math.max(Math.abs(expected) * tolerance, 1e-9);
    expect(
      Math.abs((actual as number) - expected),
      `${name}: ${String(actual)} against ${expected}`,
    ).toBeLessThanOrEqual(allowed);
    return;
  }
  if (typeof expected === "string") {
    expect(actual, name).toBe(expected);
    return;
  }
  expect(Array.isArray(actual), `${name} is a list`).toBe(true);
  const items = actual as readonly (number | string)[];
  expect(items.length, `${name} has as many items: ${items.join(", ")}`).toBe(expected.length);
  expected.forEach((item, index) => {
    expectClose(items[index], item, tolerance, `${name}[${index}]`);
  });
}

describe.each(calculations.map((calculation) => [calculation.name, calculation] as const))("%s", (_, calculation) => {
  it.each(calculation.examples.map((example, index) => [`${index + 1}: ${example.source}`, example] as const))(
    "example %s",
    (_source, example) => {
      const { results } = record(calculation, example.inputs);
      for (const [name, expected] of Object.entries(example.results)) {
        expectClose(results[name], expected as ResultValue, example.tolerance ?? 1e-6, name);
      }
    },
  );

  it("has two independent examples or more, each naming its source", () => {
    expect(calculation.examples.length).toBeGreaterThanOrEqual(2);
    const inputs = calculation.examples.map((example) => JSON.stringify(example.inputs));
    expect(new Set(inputs).size).toBe(inputs.length);
    for (const { source } of calculation.examples) expect(source.length).toBeGreaterThan(8);
  });

  it("has an example for every result", () => {
    const shown = new Set(
      calculation.examples.flatMap((example) => Object.keys(record(calculation, example.inputs).results)),
    );
    expect(Object.keys(calculation.results).filter((name) => !shown.has(name))).toEqual([]);
  });

  it("gives the same results silently and with its working recorded", () => {
    for (const { inputs } of calculation.examples) {
      const { results, working } = record(calculation, inputs);
      expect(calculation.compute(inputs)).toEqual(results);
      expect(working.length).toBeGreaterThan(0);
      for (const line of working) expect(line, "working").not.toMatch(/NaN|undefined|Infinity|\[object/);
    }
  });

  it("shows every number that it gives in its working", () => {
    for (const { inputs } of calculation.examples) {
      const { results, working } = record(calculation, inputs);
      const shown = working.flatMap((line) => (line.match(/-?\d+(?:\.\d+)?/g) ?? []).map(Number));
      // Grams may be shown as kilograms; what went in unchanged need not be said again.
      const given = Object.values(inputs).flat();
      for (const [name, value] of Object.entries(results)) {
        for (const one of [value].flat()) {
          if (typeof one !== "number" || one === 0 || given.includes(one)) continue;
          const isShown = (size: number): boolean =>
            shown.some((number) => Math.abs(Math.abs(number) - Math.abs(size)) <= 0.051 + Math.abs(size) * 1e-4);
          const found = isShown(one) || (calculation.results[name]?.unit === "g" && isShown(one / 1000));
          expect(found, `${name} ${one} in\n${working.join("\n")}`).toBe(true);
        }
      }
    }
  });

  it("is described for a person", () => {
    expect(calculation.name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
    expect(calculation.description).toMatch(/\.$/);
    expect(calculation.formula.length).toBeGreaterThan(10);
    expect(calculation.source.length).toBeGreaterThan(5);
    for (const [name, { field }] of Object.entries(calculation.inputs)) {
      expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(field.description, name).toMatch(/\.$/);
    }
    for (const [name, result] of Object.entries(calculation.results)) {
      expect(name).toMatch(/^[a-z0-9]+(-[a-z0-9]+)*$/);
      expect(result.description, name).toMatch(/\.$/);
      expect(unitBySpelling(result.unit)?.symbol ?? unitsOutsideTheTable.has(result.unit), name).toBeTruthy();
    }
  });

  it("gives only results that it declares, lists where it says so", () => {
    for (const { inputs } of calculation.examples) {
      for (const [name, value] of Object.entries(record(calculation, inputs).results)) {
        const row = (calculation as Calculation).results[name];
        expect(row, name).toBeDefined();
        expect(Array.isArray(value), name).toBe(row?.list === true);
      }
    }
  });
});

describe("the table", () => {
  it("has no name twice", () => {
    const names = calculations.map(({ name }) => name);
    expect(names.filter((name, index) => names.indexOf(name) !== index)).toEqual([]);
  });

  it("publishes each number of a build once", () => {
    const paths = calculations.flatMap(({ inBuild = [], results }) =>
      inBuild.flatMap(({ assembly }) => Object.keys(results).map((name) => `${assembly}.${name}`)),
    );
    expect(paths.filter((path, index) => paths.indexOf(path) !== index)).toEqual([]);
    expect(quantities.length).toBe(paths.length);
  });

  it("gives numbers of a build names that no slot or field has", () => {
    expect(clashingPaths(quantities.map(({ path }) => path))).toEqual([]);
  });

  it("names numbers that it needs from other calculations as they are published", () => {
    const published = new Set(quantities.map(({ path }) => path));
    const needed = calculations.flatMap(({ name, inBuild = [] }) =>
      inBuild.flatMap(({ needs }) =>
        Object.values(needs).flatMap((need) => (need.kind === "worked" ? [[name, need.quantity] as const] : [])),
      ),
    );
    expect(needed.filter(([, path]) => !published.has(path))).toEqual([]);
  });
});
