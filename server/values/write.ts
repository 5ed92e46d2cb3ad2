import { baseUnit } from "../../grammar/units.ts";
import { writeCode } from "./code.ts";
import { minorDigits } from "./currency.ts";
import { type UnitsOfField, usualUnit } from "./field-units.ts";
import { quote } from "./problems.ts";
import { writeTeeth } from "./teeth.ts";
import type { AnyValue, Code, FieldType, Interval, Money, MoneyInterval } from "./types.ts";
import { exactText, plainDigits, withUnit } from "./write-number.ts";

/**
 * Writes a value as it stands in a file, so that reading it again gives exactly this value: for repairs, imports and
 * exports. Undefined when the value has not the shape of its type.
 */
export function writeValue(type: FieldType, value: AnyValue): string | undefined {
  switch (type.type) {
    case "quantity":
      if (typeof value === "number") return writeInterval({ least: value, greatest: value }, quantityWriter(type));
      return isInterval(value) ? writeInterval(value, quantityWriter(type)) : undefined;
    case "quantities":
      return isListOf(value, "number") ? writeQuantities(type, value) : undefined;
    case "count":
      if (typeof value !== "number") return undefined;
      return type.unit === undefined ? String(value) : `${value} ${type.unit}`;
    case "number":
      if (typeof value === "number") return plainDigits(value);
      return isInterval(value) ? writeInterval(value, plainWriter) : undefined;
    case "teeth":
      return isListOf(value, "number") ? writeTeeth(value) : undefined;
    case "code":
      return isCode(value) ? writeCode(value.code) : undefined;
    case "codes":
      return isListOf<Code>(value, "object") ? value.map((each) => writeCode(each.code)).join(", ") : undefined;
    case "words":
      return isListOf(value, "string") ? value.join(", ") : undefined;
    case "text":
      return typeof value === "string" ? quote(value) : undefined;
    case "yes-no":
      return typeof value === "boolean" ? (value ? "yes" : "no") : undefined;
    case "money":
      return writeMoney(value);
    case "word":
    case "date":
    case "colour":
    case "part":
    case "slot":
      return typeof value === "string" ? value : undefined;
  }
}

/** How the numbers of a type are written: digits, and what is put around one number or two with a sign between. */
interface IntervalWriter {
  number(value: number): { readonly text: string; readonly unit: string };
  compose(numbers: string, unit: string): string;
}

const plainWriter: IntervalWriter = {
  number: (value) => ({ text: plainDigits(value), unit: "" }),
  compose: (numbers) => numbers,
};

function quantityWriter(type: UnitsOfField): IntervalWriter {
  return {
    number(value) {
      const usual = usualUnit(type);
      const text = exactText(value, usual);
      if (text !== undefined) return { text, unit: usual.symbol };
      // The field's own unit cannot hold this number to the last digit; the base unit can.
      return { text: plainDigits(value), unit: baseUnit(type.dimension).symbol };
    },
    compose: withUnit,
  };
}

function writeInterval(interval: Interval, writer: IntervalWriter): string | undefined {
  const { least, greatest } = interval;
  const finite = [least, greatest].filter(Number.isFinite).map((end) => writer.number(end));
  const [first, second] = finite;
  if (first === undefined) return undefined;
  if (least === greatest) return writer.compose(first.text, first.unit);
  if (second === undefined) {
    return `${least === Number.NEGATIVE_INFINITY ? "<=" : ">="} ${writer.compose(first.text, first.unit)}`;
  }
  if (first.unit === second.unit) return writer.compose(`${first.text} to ${second.text}`, first.unit);
  return `${writer.compose(first.text, first.unit)} to ${writer.compose(second.text, second.unit)}`;
}

function writeQuantities(type: UnitsOfField, values: readonly number[]): string {
  const writer = quantityWriter(type);
  const written = values.map((value) => writer.number(value));
  const [first] = written;
  if (first !== undefined && written.every((one) => one.unit === first.unit)) {
    return withUnit(written.map((one) => one.text).join(", "), first.unit);
  }
  return written.map((one) => withUnit(one.text, one.unit)).join(", ");
}

function writeMoney(value: AnyValue): string | undefined {
  if (isMoney(value)) return `${value.currency} ${amountText(value.amount, value.currency)}`;
  if (!isInterval(value) || !("currency" in value)) return undefined;
  const { currency } = value as MoneyInterval;
  return writeInterval(value, {
    number: (amount) => ({ text: amountText(amount, currency), unit: currency }),
    compose: (numbers, unit) => `${unit} ${numbers}`,
  });
}

/** An amount with the decimals of its currency, and with more where it has more. */
export function amountText(amount: number, currency: string): string {
  if (Math.abs(amount) >= 1e15) return plainDigits(amount);
  const usual = amount.toFixed(minorDigits(currency));
  return Number(usual) === amount ? usual.replace(/^-(?=[0.]*$)/, "") : plainDigits(amount);
}

export function isInterval(value: AnyValue): value is Interval | MoneyInterval {
  return typeof value === "object" && "least" in value && "greatest" in value;
}

export function isMoney(value: AnyValue): value is Money {
  return typeof value === "object" && "amount" in value;
}

export function isCode(value: AnyValue): value is Code {
  return typeof value === "object" && "code" in value;
}

function isListOf(value: AnyValue, type: "number"): value is readonly number[];
function isListOf(value: AnyValue, type: "string"): value is readonly string[];
function isListOf<Item>(value: AnyValue, type: "object"): value is readonly Item[] & AnyValue;
function isListOf(value: AnyValue, type: string): boolean {
  return Array.isArray(value) && value.length > 0 && value.every((item) => typeof item === type);
}
