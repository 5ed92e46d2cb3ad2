import { parseDeclaration } from "../../../grammar/parse.ts";
import type { TextChange } from "../../../grammar/tree.ts";
import type { Calculation, Impossible, Working } from "../../calculations/define.ts";
import { exampleInput } from "../../calculations/shared/example-input.ts";
import { implausible } from "../../calculations/shared/plausible.ts";
import { calculationByName, calculations } from "../../calculations/table.ts";
import {
  calculationJson,
  calculationListJson,
  calculationListText,
  calculationText,
  inputLines,
  type WorkedCalculation,
} from "../../reports/calculation.ts";
import { coloured, plain } from "../../reports/paint.ts";
import { printable } from "../../reports/printable.ts";
import { shownIn } from "../../values/display.ts";
import { nearest } from "../../values/near.ts";
import { readValue } from "../../values/read.ts";
import type { DisplayUnits } from "../../values/show.ts";
import type { AnyValue } from "../../values/types.ts";
import type { Field } from "../../vocabulary/define.ts";
import type { Invocation } from "../command.ts";
import { exitCodes } from "../exit-codes.ts";
import { UsageProblem } from "../problem.ts";

/** Works one calculation out, or lists them all. */
export function run(invocation: Invocation): number {
  const { terminal, positionals } = invocation;
  const isJson = invocation.value("format") === "json";
  const paint = terminal.colour ? coloured : plain;
  const [name, ...words] = positionals;
  if (name === undefined) {
    terminal.write(
      isJson ? json(calculationListJson(calculations)) : calculationListText(calculations, terminal.width, paint),
    );
    return exitCodes.clean;
  }
  // A number of a build has the path of its assembly before it, and may be one of several that a calculation gives.
  const calculation = calculationByName(name) ?? calculationOfResult(name);
  if (!calculation) throw unknownCalculation(name);
  const inputs = readInputs(calculation, words);
  for (const [input, { value }] of inputs) {
    const field = calculation.inputs[input]?.field;
    const said = field && implausible(input, field, value);
    if (said !== undefined) terminal.warn(`ferrule: ${printable(said)}\n`);
  }
  const worked = workOut(calculation, inputs);
  const units = (invocation.value("units") ?? "metric") as DisplayUnits;
  const text = (): string => shownIn(units, () => calculationText(worked, terminal.width, paint));
  terminal.write(isJson ? json(calculationJson(worked)) : text());
  if (worked.impossible === undefined) return exitCodes.clean;
  return worked.isInput ? exitCodes.usage : exitCodes.findings;
}

function calculationOfResult(name: string): Calculation | undefined {
  const result = name.slice(name.lastIndexOf(".") + 1);
  return calculationByName(result) ?? calculations.find(({ results }) => Object.hasOwn(results, result));
}

function json(value: unknown): string {
  return `${JSON.stringify(value, undefined, 2)}\n`;
}

function unknownCalculation(name: string): UsageProblem {
  const near = nearest(
    name,
    calculations.map((calculation) => calculation.name),
  );
  return new UsageProblem(
    `There is no calculation ${printable(name)}.${near === undefined ? "" : ` Did you mean ${near}?`}`,
    ["ferrule calculate lists them all."],
  );
}

interface ReadInput {
  readonly value: AnyValue;
  readonly written: string;
}

/** @throws UsageProblem that names every input that is missing, unknown, or cannot be read, and what was expected. */
function readInputs(calculation: Calculation, words: readonly string[]): ReadonlyMap<string, ReadInput> {
  const given = assignments(calculation, words);
  const problems: string[] = [];
  const inputs = new Map<string, ReadInput>();
  for (const [name, { field, optional }] of Object.entries(calculation.inputs)) {
    const text = given.get(name);
    given.delete(name);
    if (text === undefined) {
      if (!optional) problems.push(`${name} is missing: ${expectation(calculation, name)}`);
      continue;
    }
    const read = readInput(calculation, name, field, text);
    if ("problem" in read) problems.push(read.problem);
    else inputs.set(name, read);
  }
  for (const name of given.keys()) {
    const near = nearest(name, Object.keys(calculation.inputs));
    problems.push(`it has no input ${printable(name)}.${near === undefined ? "" : ` Did you mean ${near}?`}`);
  }
  if (problems.length === 0) return inputs;
  const needed = Object.entries(calculation.inputs).flatMap(([name, { field, optional }]) =>
    inputLines(name, field.type, field.description, optional, 100).map((line) => line.slice(2)),
  );
  throw new UsageProblem(`${calculation.name} cannot be worked out:`, [...problems, "Its inputs:", ...needed]);
}

function expectation(calculation: Calculation, name: string): string {
  return `write ${name}=${exampleInput(calculation, name).replaceAll(" ", "")}`;
}

/** `chainstay=435 mm` and `chainstay=435`, `mm`: words after an assignment belong to its value. */
function assignments(calculation: Calculation, words: readonly string[]): Map<string, string> {
  const given = new Map<string, string>();
  let last: string | undefined;
  for (const word of words) {
    const assignment = /^([A-Za-z][A-Za-z0-9-]*)\s*=(?!=)\s*(.*)$/s.exec(word);
    if (assignment) {
      const [, name = "", text = ""] = assignment;
      if (given.has(name)) throw new UsageProblem(`${name} is given twice.`);
      given.set(name, text);
      last = name;
    } else if (last === undefined) {
      const first = Object.entries(calculation.inputs)[0];
      throw new UsageProblem(
        `${printable(word)} is no input: write NAME=VALUE${first === undefined ? "" : `, such as ${first[0]}=${exampleInput(calculation, first[0]).replaceAll(" ", "")}`}.`,
      );
    } else given.set(last, `${given.get(last)} ${word}`.trim());
  }
  return given;
}

/** Reads a value as a file would, by the type of its input. */
function readInput(
  calculation: Calculation,
  name: string,
  field: Field,
  text: string,
): ReadInput | { readonly problem: string } {
  const expected = `${expectation(calculation, name)} (${field.description})`;
  // The shell has taken the quotes off.
  if (field.type.type === "text" && text !== "" && !text.includes('"')) {
    return { value: text, written: text };
  }
  // A value of a file stands on one line, in a declaration.
  if (/[\r\n{}]/.test(text)) return { problem: `${name}=${printable(text)} is not a value: ${expected}` };
  const source = `part given given {\nvalue: ${listed(text, field)}\n}\n`;
  const tree = parseDeclaration(source);
  const entry = tree.block?.entries[0];
  const wrong = tree.problems.find(({ severity }) => severity === "error");
  if (entry?.form !== "field" || (text.trim() !== "" && wrong)) {
    return { problem: `${name}=${printable(text)} cannot be read: ${wrong?.message ?? ""} ${expected}` };
  }
  const read = readValue(field.type, entry.value.tokens, { field: name, span: entry.value.span });
  const problem = read.problems.find(({ severity }) => severity === "error");
  if (problem) {
    // What was most likely meant keeps the person's own number.
    const [start, end] = [entry.value.span.start, source.length - "\n}\n".length];
    const meant = problem.fix && applied(source.slice(start, end), problem.fix.changes, start);
    const own = meant !== undefined && "value" in readInput(calculation, name, field, meant);
    return {
      problem: `${printable(problem.message)} Expected: ${own ? `write ${name}=${meant.replaceAll(" ", "")} (${field.description})` : expected}`,
    };
  }
  if (read.value === undefined) return { problem: `${name} needs a value: ${expected}` };
  return { value: read.value, written: read.written };
}

/** A text with changes made in it, whose places count from `start`. */
function applied(text: string, changes: readonly TextChange[], start: number): string {
  return [...changes]
    .sort((a, b) => b.span.start - a.span.start)
    .reduce(
      (result, { span, text: put }) => result.slice(0, span.start - start) + put + result.slice(span.end - start),
      text,
    );
}

/** A word of a shell has no blanks: `50,34` is a list where the input takes one, and never a decimal there. */
function listed(text: string, { type }: Field): string {
  const takesList = type.type === "teeth" || type.type === "quantities";
  return takesList ? text.replace(/(?<=\d),(?=\d)/g, type.type === "teeth" ? "-" : ", ") : text;
}

function workOut(
  calculation: Calculation,
  inputs: ReadonlyMap<string, ReadInput>,
): WorkedCalculation & { readonly isInput?: boolean } {
  const working: string[] = [];
  const recorder: Working = { step: (text) => working.push(text) };
  const values = Object.fromEntries([...inputs].map(([name, { value }]) => [name, value]));
  const results = calculation.compute(values as never, recorder);
  const common = {
    calculation,
    inputs: new Map([...inputs].map(([name, { written }]) => [name, written])),
    working,
  };
  if ("impossible" in results && typeof results.impossible === "string") {
    const { impossible, isInput } = results as Impossible;
    return { ...common, results: {}, impossible, isInput: isInput ?? false };
  }
  const known = Object.entries(results).filter((entry) => entry[1] !== undefined);
  return { ...common, results: Object.fromEntries(known) as WorkedCalculation["results"] };
}
