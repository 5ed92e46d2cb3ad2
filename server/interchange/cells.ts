import { parseDeclaration } from "../../grammar/parse.ts";
import { excerpt, quote } from "../values/problems.ts";
import { readValue } from "../values/read.ts";
import type { AnyValue, FieldType } from "../values/types.ts";
import { writeValue } from "../values/write.ts";
import { plainNumbers } from "./decimals.ts";
import { outOfPlace } from "./draft.ts";
import { areEqual } from "./equal.ts";

/** How the cells of a column are written. */
export interface CellStyle {
  readonly decimals: "point" | "comma";
  /** Unit of bare numbers. */
  readonly unit?: string;
  /** Currency of bare sums. */
  readonly currency?: string;
  /** What the column is called, for messages. */
  readonly field?: string;
}

/** A cell as it is written in a file, or why it cannot be. */
export type ReadCell = { readonly written: string; readonly isNone?: true } | { readonly problem: string };

/** Reads a cell of a table by the type of the fact it states. */
export function readCell(type: FieldType, cell: string, style: CellStyle): ReadCell {
  if (type.type === "text") return { written: quote(cell) };
  const text = asWritten(type, cell.trim(), style);
  if (text === undefined) {
    const other = style.decimals === "point" ? "comma" : "point";
    return {
      problem: `${excerpt(cell)} is not written with a decimal ${style.decimals}, as the map says; is it a ${other}?`,
    };
  }
  return readWritten(type, text, style.field);
}

/** Reads a value as it would stand in a file, and gives its canonical spelling. */
export function readWritten(type: FieldType, text: string, field = "this value"): ReadCell {
  const misplaced = outOfPlace(text);
  if (misplaced !== undefined) return { problem: misplaced };
  const reading = read(type, text, field);
  if (reading.problem !== undefined) return { problem: reading.problem };
  if (reading.isNone) return { written: "none", isNone: true };
  const { value, written } = reading;
  if (value === undefined) return { problem: `${excerpt(text)} cannot be read as ${field}` };
  if (written === text) return { written };
  // What is shown to people is not always what reads back to the very same value.
  const again = read(type, written, field);
  if (again.problem === undefined && areEqual(again.value, value)) return { written };
  const exact = writeValue(type, value);
  return exact === undefined ? { problem: `${excerpt(text)} cannot be written into a file` } : { written: exact };
}

interface ReadText {
  readonly value?: AnyValue;
  readonly isNone?: true;
  readonly written: string;
  readonly problem?: string;
}

/** What was read lately, by type: thousands of rows hold the same few codes, lists of teeth and masses. */
const readLately = new WeakMap<FieldType, Map<string, ReadText>>();
/** Readings kept of one type, and how long a text may be to be kept: what comes from outside must not fill the memory. */
const mostKept = 5000;
const longestKept = 100;

function read(type: FieldType, text: string, field: string): ReadText {
  if (text.length > longestKept) return readAnew(type, text, field);
  let kept = readLately.get(type);
  if (!kept || kept.size >= mostKept) {
    kept = new Map();
    readLately.set(type, kept);
  }
  const key = `${field} ${text}`;
  const known = kept.get(key);
  if (known) return known;
  const reading = readAnew(type, text, field);
  kept.set(key, reading);
  return reading;
}

function readAnew(type: FieldType, text: string, field: string): ReadText {
  const { block, problems } = parseDeclaration(`part a a {\n  a: ${text}\n}\n`);
  const entry = block?.entries[0];
  const broken = problems.find(({ severity }) => severity === "error");
  if (broken || block?.entries.length !== 1 || entry?.form !== "field" || entry.block) {
    return { written: text, problem: broken?.message ?? `${excerpt(text)} cannot be read` };
  }
  const reading = readValue(type, entry.value.tokens, { field, span: entry.value.span });
  const wrong = reading.problems.find(({ severity }) => severity === "error");
  return {
    ...(reading.value === undefined ? {} : { value: reading.value }),
    ...(reading.isNone ? { isNone: true } : {}),
    written: reading.written,
    ...(wrong ? { problem: wrong.message } : {}),
  };
}

/** Whether a text reads back as one value, whatever it means. */
export function isOneValue(text: string): boolean {
  if (outOfPlace(text) !== undefined) return false;
  const { block, problems } = parseDeclaration(`part a a {\n  a: ${text}\n}\n`);
  const entry = block?.entries[0];
  const isPlain = block?.entries.length === 1 && entry?.form === "field" && !entry.block;
  return isPlain && !problems.some(({ severity }) => severity === "error");
}

/** The value that a file states for a field: for comparing what was written in two ways. */
export function statedValue(type: FieldType, written: string): AnyValue | "none" | undefined {
  const { value, isNone } = read(type, written, "");
  return isNone ? "none" : value;
}

/** A number or several, with no unit behind. */
const bareNumbers = /^[-+<>=\u2264\u2265\u00b1\u2212]*\s*\d(?:[\d\s.,+/\u00b1\u2010-\u2015\u2212-]|to)*$/;

/** Whether a cell is a number, or several, of which it does not say in what unit. */
export function isBareNumber(cell: string): boolean {
  return bareNumbers.test(cell);
}

/** Turns the ways in which tables write a value into the way a file does; `undefined` for a number of another style. */
function asWritten(type: FieldType, cell: string, { decimals, unit, currency }: CellStyle): string | undefined {
  switch (type.type) {
    case "quantity":
    case "quantities": {
      const numbers = plainNumbers(cell, decimals);
      if (numbers === undefined) return undefined;
      return unit !== undefined && bareNumbers.test(numbers) ? `${numbers} ${unit}` : numbers;
    }
    case "money": {
      const numbers = plainNumbers(cell, decimals);
      if (numbers === undefined) return undefined;
      return currency !== undefined && bareNumbers.test(numbers) ? `${currency} ${numbers}` : numbers;
    }
    case "number":
      return plainNumbers(cell, decimals);
    case "count": {
      const numbers = plainNumbers(cell, decimals);
      return numbers?.replace(/^(\d+)\s*-?\s*(?:speeds?|spd|sp|holes?|h|links?)\.?$/i, "$1");
    }
    case "teeth":
      return withDashes(cell);
    case "codes":
    case "words":
      return cell.replace(/\s*[;|]\s*/g, ", ");
    case "yes-no":
      return /^(?:x|\u2713|\u2714)$/i.test(cell) ? "yes" : cell;
    default:
      return cell;
  }
}

/** `11, 13, 15 T`, `11/13/15` and `50 34` as `11-13-15 t`; where two signs follow each other, a count is missing. */
function withDashes(cell: string): string {
  const bare = cell.replace(/(\d)\s*[tT](?:eeth)?(?=$|[^\p{L}])/gu, "$1");
  const counts = bare
    .replace(/\s+/g, " ")
    .replace(/ ?[,;/|\u2010-\u2015-]? ?$/, "")
    .split(/ ?[,;/|\u2010-\u2015-] ?| /);
  return counts.every((count) => /^\d+$/.test(count)) ? `${counts.join("-")} t` : cell;
}
