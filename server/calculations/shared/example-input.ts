import { exampleOf } from "../../values/example.ts";
import { showValue } from "../../values/show.ts";
import type { AnyValue } from "../../values/types.ts";
import type { Calculation } from "../define.ts";
import { implausible } from "./plausible.ts";

/** An input as a person would write it: that of the first worked example which has it, so that it can be worked with. */
export function exampleInput(calculation: Calculation, name: string): string {
  const row = calculation.inputs[name];
  if (!row) return "";
  const values = calculation.examples
    .map(({ inputs }) => (inputs as Record<string, AnyValue | undefined>)[name])
    .filter((one) => one !== undefined);
  const value = values.find((one) => implausible(name, row.field, one) === undefined) ?? values[0];
  if (value === undefined) return exampleOf(row.field.type);
  return showValue(row.field.type, value, { displayUnits: "metric", digits: 4 });
}
