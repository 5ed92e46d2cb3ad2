import { baseUnit, type Unit } from "../../grammar/units.ts";
import type { Statement } from "../model/stated.ts";
import { usualUnit } from "../values/field-units.ts";
import { quote } from "../values/problems.ts";
import type { AnyValue, Code, FieldType, Interval, MoneyInterval } from "../values/types.ts";
import { isInterval, isMoney } from "../values/write.ts";
import { exactText, plainDigits } from "../values/write-number.ts";
import type { Field } from "../vocabulary/define.ts";
import { fieldsOf } from "./declared.ts";
import type { OwnEntry } from "./draft.ts";
import type { LibraryEntry } from "./library.ts";

/** The version of the shape below; a member is added without a new one, never changed or taken away. */
export const libraryVersion = 1;

/** The name under which the schema is published. */
export const librarySchemaName = "urn:ferrule:library:1";

/** A library as JSON, described by library.schema.json. */
export interface JsonLibrary {
  readonly $schema: typeof librarySchemaName;
  readonly schemaVersion: typeof libraryVersion;
  readonly languageVersion: number;
  readonly parts: readonly JsonPart[];
  readonly standards: readonly JsonStandard[];
}

interface JsonDeclaration {
  readonly name: string;
  readonly title?: string;
  readonly documentation?: string;
  readonly facts: Readonly<Record<string, JsonFact>>;
  readonly own?: readonly OwnEntry[];
}

export interface JsonPart extends JsonDeclaration {
  readonly kind: string;
  /** The part it derives from; `facts` are its own alone. */
  readonly from?: string;
}

export interface JsonStandard extends JsonDeclaration {
  readonly family: string;
}

/**
 * A fact: its value in the unit beside it, and how it is written in a file. Where both are given they have to agree;
 * `written` alone is enough, and so is `value` (with its unit) alone.
 */
export type JsonFact =
  | { readonly none: true }
  | {
      readonly value?: string | number | boolean | readonly (string | number)[];
      /** Ends of a range; one that is left out is not limited. */
      readonly least?: number;
      readonly greatest?: number;
      readonly unit?: string;
      readonly currency?: string;
      readonly written?: string;
    };

/** A library's parts and standards as data. */
export function libraryJson(entries: readonly LibraryEntry[], languageVersion: number): JsonLibrary {
  const parts: JsonPart[] = [];
  const standards: JsonStandard[] = [];
  for (const entry of entries) {
    const { keyword, kind, from } = entry.draft;
    const declaration = jsonDeclaration(entry);
    if (keyword === "standard") standards.push({ family: kind, ...declaration });
    else parts.push({ kind, ...(from === undefined ? {} : { from }), ...declaration });
  }
  return { $schema: librarySchemaName, schemaVersion: libraryVersion, languageVersion, parts, standards };
}

function jsonDeclaration({ draft, facts }: LibraryEntry): JsonDeclaration {
  const { name, title, documentation, own } = draft;
  const fields = fieldsOf(draft.keyword, draft.kind) ?? {};
  const stated: Record<string, JsonFact> = {};
  for (const [fact, written] of draft.facts) {
    const statement = facts.get(fact);
    const field = fields[fact];
    if (statement && field) stated[fact] = jsonFact(field, statement, written);
  }
  return {
    name,
    ...(title === undefined ? {} : { title }),
    ...(documentation === undefined ? {} : { documentation }),
    facts: stated,
    ...(own ? { own } : {}),
  };
}

function jsonFact({ type }: Field, statement: Statement, written: string): JsonFact {
  if (statement.state !== "stated") return { none: true };
  const { value } = statement;
  // A text says all there is; anything else is kept as its author wrote it, beside what it means.
  return type.type === "text" ? { value: String(value) } : { ...jsonValue(type, value), written };
}

function jsonValue(type: FieldType, value: AnyValue): Exclude<JsonFact, { readonly none: true }> {
  switch (type.type) {
    case "quantity": {
      const range = typeof value === "number" ? exactly(value) : (value as Interval);
      return rangeIn(range, unitFor(type, [range.least, range.greatest]));
    }
    case "quantities": {
      const unit = unitFor(type, value as readonly number[]);
      return { value: (value as readonly number[]).map((one) => inUnit(one, unit)), unit: unit.symbol };
    }
    case "number":
      return typeof value === "number" ? { value } : ends(value as Interval);
    case "count":
      return { value: value as number, ...(type.unit === undefined ? {} : { unit: type.unit }) };
    case "teeth":
      return { value: value as readonly number[], unit: "t" };
    case "code":
      return { value: (value as Code).code };
    case "codes":
      return { value: (value as readonly Code[]).map(({ code }) => code) };
    case "money":
      return jsonMoney(value);
    case "words":
      return { value: value as readonly string[] };
    default:
      return { value: value as string | boolean };
  }
}

function jsonMoney(value: AnyValue): Exclude<JsonFact, { readonly none: true }> {
  if (isMoney(value)) return { value: value.amount, currency: value.currency };
  if (!isInterval(value)) return {};
  const { currency } = value as MoneyInterval;
  return { ...ends(value), currency };
}

function exactly(value: number): Interval {
  return { least: value, greatest: value };
}

function rangeIn({ least, greatest }: Interval, unit: Unit): Exclude<JsonFact, { readonly none: true }> {
  if (least === greatest) return { value: inUnit(least, unit), unit: unit.symbol };
  return { ...ends({ least: inUnit(least, unit), greatest: inUnit(greatest, unit) }), unit: unit.symbol };
}

/** JSON has no infinity: an end that is not limited is left out. */
function ends({ least, greatest }: Interval): {
  readonly least?: number;
  readonly greatest?: number;
  readonly value?: number;
} {
  if (least === greatest) return { value: least };
  return {
    ...(Number.isFinite(least) ? { least } : {}),
    ...(Number.isFinite(greatest) ? { greatest } : {}),
  };
}

/** The field's usual unit where its digits say the number exactly, else the base unit, in which it is kept. */
function unitFor(type: Extract<FieldType, { type: "quantity" | "quantities" }>, values: readonly number[]): Unit {
  const usual = usualUnit(type);
  const isExact = values.every((value) => !Number.isFinite(value) || exactText(value, usual) !== undefined);
  return isExact ? usual : baseUnit(type.dimension);
}

function inUnit(value: number, unit: Unit): number {
  if (!Number.isFinite(value)) return value;
  return Number(exactText(value, unit) ?? value);
}

/** A fact of JSON as it is written in a file, or why it cannot be. */
export function writtenFact(type: FieldType, fact: Exclude<JsonFact, { readonly none: true }>): string | undefined {
  const { value, least, greatest, unit, currency } = fact;
  if (type.type === "text") return typeof value === "string" ? quote(value) : undefined;
  const single = Array.isArray(value) ? value : value === undefined ? undefined : [value];
  if (type.type === "money") {
    const amounts = typeof value === "number" ? plainDigits(value) : range(least, greatest);
    return currency === undefined || amounts === undefined ? undefined : `${currency} ${amounts}`;
  }
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (single) {
    const text = single
      .map((one) => (typeof one === "number" ? plainDigits(one) : one))
      .join(type.type === "teeth" ? "-" : ", ");
    return unit === undefined ? text : `${text} ${unit}`;
  }
  const numbers = range(least, greatest);
  return numbers === undefined ? undefined : unit === undefined ? numbers : `${numbers} ${unit}`;
}

function range(least: number | undefined, greatest: number | undefined): string | undefined {
  if (least === undefined) return greatest === undefined ? undefined : `<= ${plainDigits(greatest)}`;
  return greatest === undefined ? `>= ${plainDigits(least)}` : `${plainDigits(least)} to ${plainDigits(greatest)}`;
}
