import { expect } from "vitest";
import { parseDeclaration } from "../../grammar/parse.ts";
import type { Calculation, ResultValue, Working } from "../../server/calculations/define.ts";
import { calculationByName } from "../../server/calculations/table.ts";
import { readValue } from "../../server/values/read.ts";

/** Inputs as a person writes them: `{ rings: "50-34 t", chainstay: "410 mm" }`. */
export type Written = Readonly<Record<string, string>>;

/** The values of inputs as written, for a calculation of the table. */
export function readInputs(calculation: Calculation, written: Written): Readonly<Record<string, unknown>> {
  const { name } = calculation;
  const inputs = Object.entries(written).map(([input, text]) => {
    const field = calculation.inputs[input]?.field;
    if (!field) throw new Error(`${name} has no input ${input}`);
    const entry = parseDeclaration(`part given given {\nvalue: ${text}\n}\n`).block?.entries[0];
    if (entry?.form !== "field") throw new Error(`${text} is no value`);
    const read = readValue(field.type, entry.value.tokens, { field: input, span: entry.value.span });
    const problem = read.problems.find(({ severity }) => severity === "error");
    if (problem || read.value === undefined) throw new Error(`${input}=${text}: ${problem?.message ?? "no value"}`);
    return [input, read.value] as const;
  });
  for (const [input, { optional }] of Object.entries(calculation.inputs)) {
    if (!optional && !(input in written)) throw new Error(`${name} needs ${input}`);
  }
  return Object.fromEntries(inputs);
}

function compute(name: string, written: Written, working?: Working): Readonly<Record<string, ResultValue | undefined>> {
  const calculation = calculationByName(name);
  if (!calculation) throw new Error(`no calculation is named ${name}`);
  const inputs = readInputs(calculation, written) as never;
  return calculation.compute(inputs, working) as Readonly<Record<string, ResultValue | undefined>>;
}

/** Reads inputs as the command line does and works the calculation out. */
export function calculate(name: string, written: Written): Readonly<Record<string, ResultValue | undefined>> {
  const results = compute(name, written);
  expect(results, `${name} ${JSON.stringify(written)}`).not.toHaveProperty("impossible");
  return results;
}

/** The lines of its working. */
export function workingOf(name: string, written: Written): readonly string[] {
  const lines: string[] = [];
  compute(name, written, { step: (text) => lines.push(text) });
  return lines;
}

/** One number of a calculation. */
export function number(name: string, written: Written, result: string): number {
  const value = calculate(name, written)[result];
  if (typeof value !== "number") throw new Error(`${name} gives no number ${result}: ${String(value)}`);
  return value;
}

/** Why a calculation refuses these inputs. */
export function refused(name: string, written: Written): string {
  const results = compute(name, written);
  expect(results).toHaveProperty("impossible");
  return String(results.impossible);
}

/** A published figure agrees with ours when ours, rounded to as many places, is it. */
export function expectAsPublished(ours: number, published: string): void {
  const places = published.includes(".") ? (published.split(".")[1] ?? "").length : 0;
  expect(Math.abs(ours - Number(published)), `${ours} against ${published}`).toBeLessThanOrEqual(
    0.5 * 10 ** -places + 1e-9,
  );
}

/** Agreement of two independent workings of one formula, to one part in a million unless said otherwise. */
export function expectAgree(ours: number, other: number, relative = 1e-6): void {
  expect(Math.abs(ours - other), `${ours} against ${other}`).toBeLessThanOrEqual(Math.abs(other) * relative + 1e-9);
}
