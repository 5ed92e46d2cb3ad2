import { calculations } from "../calculations/table.ts";
import { describeType } from "./field-type.ts";
import { code, page, table } from "./markdown.ts";

/** Every calculation: formula, inputs, results, source. */
export function calculationsPage(): string {
  const parts = [
    "Every number that is worked out. Each can be called alone: `ferrule calculate NAME input=value ...`, in any unit of the right dimension, and shows its working.",
  ];
  for (const calculation of calculations) {
    parts.push(
      `## ${calculation.name}`,
      `**${calculation.title}.** ${calculation.description}`,
      `Formula: ${calculation.formula}`,
      table(
        ["input", "takes", "what it is"],
        Object.entries(calculation.inputs).map(([name, { field, optional }]) => [
          code(name) + (optional ? " (may be left out)" : ""),
          describeType(field.type),
          field.description,
        ]),
      ),
      table(
        ["result", "unit", "what it is"],
        Object.entries(calculation.results).map(([name, result]) => [
          code(name) + (result.list ? " (a list)" : ""),
          result.unit === "" ? "-" : result.unit,
          result.description,
        ]),
      ),
      `In a build: ${
        calculation.inBuild
          ? calculation.inBuild
              .flatMap(({ assembly }) => Object.keys(calculation.results).map((name) => code(`${assembly}.${name}`)))
              .join(", ")
          : "not fed by builds; call it alone."
      }`,
      `Source: ${calculation.source}`,
    );
  }
  return page("Calculations", parts);
}
