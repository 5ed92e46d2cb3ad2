import { unitBySpelling } from "../../grammar/units.ts";
import { calculationOfQuantity } from "../calculations/table.ts";
import type { FieldType } from "../values/types.ts";
import type { Field } from "../vocabulary/define.ts";

/**
 * How a number that is worked out for a build is read when somebody measured it; `undefined` where there is no such
 * number, or what is worked out is a word or a list of words.
 */
export function workedFieldAt(path: string): Field | undefined {
  const quantity = calculationOfQuantity(path);
  const result = quantity?.calculation.results[quantity.result];
  if (!quantity || !result) return undefined;
  // A row does not say whether a result without a unit is a number; its worked examples do.
  const shown = quantity.calculation.examples.map(({ results }) => results[quantity.result]).find(isGiven);
  const [sample] = Array.isArray(shown) ? shown : [shown];
  if (typeof sample === "string") return undefined;
  const type = typeOf(result.unit, result.list === true);
  return type && { type, description: result.description, omitted: "none" };
}

function isGiven(value: unknown): boolean {
  return value !== undefined && !(Array.isArray(value) && value.length === 0);
}

function typeOf(symbol: string, isList: boolean): FieldType | undefined {
  const unit = unitBySpelling(symbol);
  if (isList) return unit && { type: "quantities", dimension: unit.dimension };
  if (unit) return { type: "quantity", dimension: unit.dimension, role: "exact", unit: unit.symbol };
  return symbol === "t" ? { type: "count", unit: "t" } : { type: "number", role: "exact" };
}
