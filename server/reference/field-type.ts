import { baseUnit, unitsOf } from "../../grammar/units.ts";
import type { Bounds } from "../values/bounds.ts";
import { showInterval, showNumber, showPair } from "../values/show.ts";
import type { FieldType } from "../values/types.ts";

/** What may be written for a type, in a few words, and the bounds outside which it is taken for a slip of the pen. */
export function describeType(type: FieldType): string {
  const bounds = boundsOf(type);
  return bounds === undefined ? whatIsWritten(type) : `${whatIsWritten(type)}; ${bounds}`;
}

/** "4 to 12 mm", "1 or more"; nothing where the only bound is that there is no less than nothing. */
function boundsOf(type: FieldType): string | undefined {
  if (!("lowest" in type || "highest" in type)) return undefined;
  const { lowest, highest }: Bounds = type;
  if (highest === undefined && (lowest === undefined || lowest === 0)) return undefined;
  const dimension = "dimension" in type ? type.dimension : undefined;
  const unit = type.type === "quantity" && type.unit !== undefined ? { unit: type.unit } : {};
  const show = (bound: number): string =>
    // Beside nothing, so that a small bound is not rounded to it.
    dimension === undefined ? showNumber(bound) : showPair(bound, 0, dimension, unit)[0];
  if (highest === undefined) return `${show(lowest ?? 0)} or more`;
  if (lowest === undefined) return `${show(highest)} at most`;
  if (dimension === undefined) return `${show(lowest)} to ${show(highest)}`;
  return showInterval({ least: lowest, greatest: highest }, dimension, unit);
}

function whatIsWritten(type: FieldType): string {
  switch (type.type) {
    case "quantity": {
      const units = unitsOf(type.dimension).map((unit) => unit.symbol);
      const usual = type.unit ?? baseUnit(type.dimension).symbol;
      const others = units.filter((unit) => unit !== usual).slice(0, 3);
      const range = type.role === "exact" ? "" : ", or a range";
      return `${type.dimension} in ${[usual, ...others].join(", ")}${range}`;
    }
    case "quantities":
      return `several of ${type.dimension}, in ${baseUnit(type.dimension).symbol}`;
    case "count":
      return type.unit === undefined ? "a whole number" : `a whole number of ${type.unit}`;
    case "number":
      return type.role === "exact" ? "a number" : "a number or a range";
    case "teeth":
      return "teeth, such as 11-13-15 t";
    case "code":
      return `a code of ${type.family}`;
    case "codes":
      return `one or more codes of ${type.family}`;
    case "word":
      return Object.keys(type.words).join(" | ");
    case "words":
      return `any of ${Object.keys(type.words).join(", ")}`;
    case "text":
      return "text in quotes";
    case "yes-no":
      return "yes | no";
    case "date":
      return "a day, such as 2027-03-31";
    case "money":
      return type.role === "exact" ? "money, such as GBP 184.00" : "money or a limit, such as <= GBP 3200";
    case "colour":
      return "a colour";
    case "part":
      return `the name of ${type.kinds.join(" or ")}`;
    case "slot":
      return "a slot of the build, such as rear-brake.lever";
  }
}
