import { fromBase, toBase } from "../../grammar/units.ts";
import { inBounds } from "./bounds.ts";
import { usualUnit } from "./field-units.ts";
import type { FieldType } from "./types.ts";
import { roundedText, withUnit } from "./write-number.ts";

/** A value of a type as it would be written, for messages, hover and snippets. It always reads without a problem. */
export function exampleOf(type: FieldType): string {
  switch (type.type) {
    case "quantity": {
      const unit = usualUnit(type);
      const middle =
        type.lowest !== undefined && type.highest !== undefined
          ? (type.lowest + type.highest) / 2
          : // Nothing at all is no example of a length.
            type.lowest || type.highest || toBase(10, unit);
      return withUnit(
        exampleNumber(fromBase(middle, unit), (few) => inBounds(type, toBase(few, unit))),
        unit.symbol,
      );
    }
    case "quantities":
      return withUnit("10, 12", usualUnit(type).symbol);
    case "count": {
      const number = Math.ceil(type.lowest ?? Math.min(type.highest ?? 12, 12));
      return type.unit === undefined ? String(number) : `${number} ${type.unit}`;
    }
    case "number":
      return exampleNumber(
        type.lowest !== undefined && type.highest !== undefined
          ? (type.lowest + type.highest) / 2
          : (type.lowest ?? type.highest ?? 1.5),
        (few) => inBounds(type, few),
      );
    case "teeth":
      return "11-13-15 t";
    case "code":
      return "12x148";
    case "codes":
      return "12x142, 12x148";
    case "word":
      return Object.keys(type.words)[0] ?? "word";
    case "words":
      return Object.keys(type.words).slice(0, 2).join(", ");
    case "text":
      return '"as you like it"';
    case "yes-no":
      return "yes";
    case "date":
      return "2027-03-31";
    case "money":
      return "GBP 184.00";
    case "colour":
      return "#2f5d50";
    case "part":
      return "moor.stub-35";
    case "slot":
      return "rear-brake.lever";
  }
}

/** As few digits as leave it a value of the field. */
function exampleNumber(value: number, isPlausible: (value: number) => boolean): string {
  const few = [1, 2, 3].map((digits) => Number(value.toPrecision(digits))).find(isPlausible);
  return roundedText(few ?? value);
}
