import { describe, expect, it } from "vitest";
import { calculations } from "../../server/calculations/table.ts";
import { calculate, readInputs, workingOf } from "./calculate.ts";
import type { WorkedCase } from "./cases/define.ts";
import { cases } from "./cases/index.ts";

function casesOf(name: string): readonly WorkedCase[] {
  return cases.filter(({ calculation }) => calculation === name);
}

/** Numbers to the tolerance, relative to their size; texts word for word; lists item by item. */
function expectSame(actual: unknown, expected: unknown, tolerance: number, name: string): void {
  if (typeof expected === "number") {
    expect(typeof actual, `${name} is a number: ${String(actual)}`).toBe("number");
    const difference = Math.abs((actual as number) - expected);
    expect(difference, `${name}: ${String(actual)} against ${expected}`).toBeLessThanOrEqual(
      Math.max(Math.abs(expected) * tolerance, 1e-7),
    );
  } else if (Array.isArray(expected)) {
    expect(Array.isArray(actual), `${name} is a list: ${String(actual)}`).toBe(true);
    const items = actual as readonly unknown[];
    expect(items.length, `${name}: ${items.join(", ")}`).toBe(expected.length);
    expected.forEach((item, index) => {
      expectSame(items[index], item, tolerance, `${name}[${index}]`);
    });
  } else {
    expect(actual, name).toBe(expected);
  }
}

describe.each(cases.map((one) => [one.calculation, one.source, one] as const))("%s: %s", (_name, _source, one) => {
  it("comes to what was worked out", () => {
    const results = calculate(one.calculation, one.inputs);
    for (const [name, expected] of Object.entries(one.results)) {
      expectSame(results[name], expected, one.tolerance ?? 1e-6, name);
    }
  });

  it("states every result", () => {
    const results = calculate(one.calculation, one.inputs);
    expect(Object.keys(one.results).sort()).toEqual(Object.keys(results).sort());
  });

  it("shows its working", () => {
    const lines = workingOf(one.calculation, one.inputs);
    expect(lines.length).toBeGreaterThan(0);
    for (const line of one.working ?? []) expect(lines).toContain(line);
  });
});

describe("the cases", () => {
  it.each(calculations.map((calculation) => [calculation.name, calculation] as const))(
    "of %s are two or more, of other inputs than each other's and its examples'",
    (name, calculation) => {
      const own = casesOf(name);
      expect(own.length, `add cases of ${name} to tests/published-values/cases/`).toBeGreaterThanOrEqual(2);
      const inputs = [
        ...own.map((one) => readInputs(calculation, one.inputs)),
        ...calculation.examples.map((example) => example.inputs as Readonly<Record<string, unknown>>),
      ].map((values) => JSON.stringify(Object.entries(values).sort(([one], [other]) => (one < other ? -1 : 1))));
      expect(new Set(inputs).size).toBe(inputs.length);
    },
  );

  it.each(calculations.map(({ name, results }) => [name, results] as const))(
    "of %s between them state every result",
    (name, results) => {
      const shown = new Set(casesOf(name).flatMap((one) => Object.keys(one.results)));
      expect(Object.keys(results).filter((result) => !shown.has(result))).toEqual([]);
    },
  );

  it("name calculations that exist, and where their numbers come from", () => {
    const names = new Set(calculations.map(({ name }) => name));
    for (const { calculation, source } of cases) {
      expect(names.has(calculation), calculation).toBe(true);
      expect(source.length, source).toBeGreaterThan(15);
    }
  });
});
