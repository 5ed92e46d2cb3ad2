import { expect } from "vitest";
import type { Calculation, ResultValue } from "../../server/calculations/define.ts";
import { calculationByName } from "../../server/calculations/table.ts";

export interface Recorded {
  readonly results: Readonly<Record<string, ResultValue>>;
  readonly working: readonly string[];
}

/** Runs a calculation with its working recorded; the test fails when it says that it is impossible. */
export function record(calculation: Calculation, inputs: Calculation["examples"][number]["inputs"]): Recorded {
  const working: string[] = [];
  const results = calculation.compute(inputs, { step: (text) => working.push(text) });
  expect(results).not.toHaveProperty("impossible");
  return { results: results as Recorded["results"], working };
}

/** Runs a calculation of the table by its name. */
export function run(name: string, inputs: Readonly<Record<string, unknown>>): Recorded["results"] {
  const calculation = calculationByName(name);
  if (!calculation) throw new Error(`no calculation is named ${name}`);
  return record(calculation, inputs as never).results;
}

/** Why a calculation refuses these inputs; the test fails when it does not. */
export function refusal(name: string, inputs: Readonly<Record<string, unknown>>): string {
  const calculation = calculationByName(name);
  if (!calculation) throw new Error(`no calculation is named ${name}`);
  const results = calculation.compute(inputs as never);
  expect(results).toHaveProperty("impossible");
  return String((results as { impossible: unknown }).impossible);
}
