import type { Calculation, Result, ResultValue } from "../calculations/define.ts";
import { exampleInput } from "../calculations/shared/example-input.ts";
import { showResult } from "../calculations/show.ts";
import { usualUnit } from "../values/field-units.ts";
import type { FieldType } from "../values/types.ts";
import type { Paint } from "./paint.ts";
import { paragraph } from "./printable.ts";

/** What working one calculation out came to. */
export interface WorkedCalculation {
  readonly calculation: Calculation;
  /** Inputs as written, in canonical spelling. */
  readonly inputs: ReadonlyMap<string, string>;
  readonly results: Readonly<Record<string, ResultValue>>;
  readonly working: readonly string[];
  /** Why there are no results, when there are none. */
  readonly impossible?: string;
}

/** The unit an input is usually written in; empty for a plain number, a word or a text. */
export function unitOfInput(type: FieldType): string {
  switch (type.type) {
    case "quantity":
    case "quantities":
      return usualUnit(type).symbol;
    case "count":
      return type.unit ?? "";
    case "teeth":
      return "t";
    default:
      return "";
  }
}

/** What `calculate NAME ... --format json` writes. */
export function calculationJson(worked: WorkedCalculation) {
  const { calculation, results, working, impossible } = worked;
  return {
    calculation: calculation.name,
    inputs: Object.fromEntries(worked.inputs),
    results: Object.fromEntries(
      Object.entries(results).map(([name, value]) => [name, { value, unit: calculation.results[name]?.unit ?? "" }]),
    ),
    working,
    ...(impossible === undefined ? {} : { impossible }),
  };
}

/** What `calculate --format json` writes without a name. */
export function calculationListJson(calculations: readonly Calculation[]) {
  return {
    calculations: calculations.map((calculation) => ({
      name: calculation.name,
      title: calculation.title,
      description: calculation.description,
      inputs: Object.entries(calculation.inputs).map(([name, { field, optional }]) => ({
        name,
        unit: unitOfInput(field.type),
        description: field.description,
        optional,
        example: exampleInput(calculation, name),
        ...("words" in field.type ? { words: Object.keys(field.type.words) } : {}),
      })),
      results: Object.entries(calculation.results).map(([name, { unit, description, list }]) => ({
        name,
        unit,
        description,
        list: list ?? false,
      })),
      formula: calculation.formula,
      source: calculation.source,
    })),
  };
}

/** Results with their working, for a person. */
export function calculationText(worked: WorkedCalculation, width: number, paint: Paint): string {
  const { calculation } = worked;
  const lines = [paint.strong(calculation.title)];
  for (const [name, written] of worked.inputs) lines.push(...paragraph(`${name}: ${written}`, width, "    ", "  "));
  if (worked.working.length > 0)
    lines.push("", ...worked.working.flatMap((step) => paragraph(step, width, "    ", "  ")));
  lines.push("");
  if (worked.impossible !== undefined) lines.push(...paragraph(worked.impossible, width, "").map(paint.error));
  for (const [name, value] of Object.entries(worked.results)) {
    const row = calculation.results[name];
    lines.push(...resultLines(name, row, value, width, paint));
  }
  lines.push("", ...paragraph(`Formula: ${calculation.formula}`, width, "  ", ""));
  lines.push(...paragraph(`Source: ${calculation.source}`, width, "  ", ""));
  return `${lines.join("\n")}\n`;
}

function resultLines(
  name: string,
  row: Result | undefined,
  value: ResultValue,
  width: number,
  paint: Paint,
): readonly string[] {
  const [first = "", ...rest] = paragraph(`${name}: ${showResult(row, value)}`, width, "  ", "");
  const said = row?.description === undefined ? [] : paragraph(row.description, width, "  ").map(paint.quiet);
  return [paint.strong(first), ...rest, ...said];
}

/** Every calculation with what it needs and gives, for a person. */
export function calculationListText(calculations: readonly Calculation[], width: number, paint: Paint): string {
  const lines: string[] = [];
  for (const calculation of calculations) {
    lines.push(
      `${paint.strong(calculation.name)}`,
      ...paragraph(calculation.description, width, "  "),
      ...Object.entries(calculation.inputs).flatMap(([name, { field, optional }]) =>
        inputLines(name, field.type, field.description, optional, width),
      ),
      "",
    );
  }
  lines.push("ferrule calculate NAME INPUT=VALUE... works one out.", "");
  return lines.join("\n");
}

/** What an input is, in what unit, and whether it can be left out. */
export function inputLines(
  name: string,
  type: FieldType,
  description: string,
  optional: boolean,
  width: number,
): readonly string[] {
  const unit = unitOfInput(type);
  const notes = [...(unit === "" ? [] : [`in ${unit}`]), ...(optional ? ["may be left out"] : [])];
  const words = "words" in type ? ` One of ${Object.keys(type.words).join(", ")}.` : "";
  const note = notes.length === 0 ? "" : ` (${notes.join(", ")})`;
  return paragraph(`${name}${note}: ${description}${words}`, width, "      ", "    ");
}
