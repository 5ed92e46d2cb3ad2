import { type DimensionName, type DimensionVector, dimensions } from "../../grammar/units.ts";
import { dimensionsOf, sameVector } from "../values/dimensions.ts";
import { withArticle } from "../values/problems.ts";
import type { FieldType, RangeRole } from "../values/types.ts";
import { familyByName, kindByName } from "../vocabulary/index.ts";

/**
 * What an expression is of, known before any build is: a number with what it measures, a list of numbers, a name of
 * a set, yes or no. Whatever does not go together is said where the rule is written.
 */
export type ExpressionType =
  | NumberOf
  | ListOfNumbers
  | { readonly form: "truth" }
  | { readonly form: "name"; readonly names: Names }
  | { readonly form: "names"; readonly names: Names }
  /** The word `none`. */
  | { readonly form: "none" }
  /** Something with a finding of its own; nothing more is said of what it stands in. */
  | { readonly form: "wrong" };

export interface NumberOf {
  readonly form: "number";
  readonly vector: DimensionVector;
  /** Known where it is written; a path has whatever currency its part states. */
  readonly currency?: string;
  readonly role: RangeRole;
  readonly shown: Shown;
  /** Bounds that its field has, in coherent units: what is not stated is not outside of them. */
  readonly lowest?: number;
  readonly highest?: number;
}

export interface ListOfNumbers {
  readonly form: "numbers";
  readonly vector: DimensionVector;
  readonly currency?: string;
  readonly shown: Shown;
}

/** How a number is shown to a person. */
export interface Shown {
  /** Where several dimensions share a vector (torque and energy), the one that is meant. */
  readonly dimension?: DimensionName;
  /** The unit that its field is usually shown in. */
  readonly unit?: string;
  /** The word behind a count: `t`, `links`. */
  readonly word?: string;
}

/** What names stand for, and so what may be compared with them. */
export type Names =
  | { readonly of: "word"; readonly words: Readonly<Record<string, string>> }
  | { readonly of: "code"; readonly family: string }
  /** The name of a part; any kind where no kinds are listed. */
  | { readonly of: "part"; readonly kinds: readonly string[] }
  | { readonly of: "slot" }
  | { readonly of: "text" }
  | { readonly of: "day" }
  | { readonly of: "colour" };

export const wrongType: ExpressionType = { form: "wrong" };
export const truthType: ExpressionType = { form: "truth" };

/** A number that measures something else: of a product, of a sum. */
export function numberType(vector: DimensionVector, shown: Shown = {}, currency?: string): NumberOf {
  return { form: "number", vector, role: "exact", shown, ...(currency === undefined ? {} : { currency }) };
}

export const plainNumber: NumberOf = numberType({});

/** The type of what a field of the vocabulary states. */
export function typeOfField(type: FieldType): ExpressionType {
  switch (type.type) {
    case "quantity": {
      const { vector, scale } = dimensions[type.dimension];
      return {
        form: "number",
        vector,
        role: type.role,
        shown: { dimension: type.dimension, ...(type.unit === undefined ? {} : { unit: type.unit }) },
        ...(type.lowest === undefined ? {} : { lowest: type.lowest * scale }),
        ...(type.highest === undefined ? {} : { highest: type.highest * scale }),
      };
    }
    case "quantities":
      return { form: "numbers", vector: dimensions[type.dimension].vector, shown: { dimension: type.dimension } };
    case "count":
      return {
        ...plainNumber,
        shown: type.unit === undefined ? {} : { word: type.unit },
        lowest: type.lowest ?? 0,
        ...(type.highest === undefined ? {} : { highest: type.highest }),
      };
    case "number":
      return {
        ...plainNumber,
        role: type.role,
        ...(type.lowest === undefined ? {} : { lowest: type.lowest }),
        ...(type.highest === undefined ? {} : { highest: type.highest }),
      };
    case "teeth":
      return { form: "numbers", vector: {}, shown: { word: "t" } };
    case "money":
      return { form: "number", vector: { money: 1 }, role: type.role, shown: {} };
    case "yes-no":
      return truthType;
    case "word":
      return { form: "name", names: { of: "word", words: type.words } };
    case "words":
      return { form: "names", names: { of: "word", words: type.words } };
    case "code":
      return { form: "name", names: { of: "code", family: type.family } };
    case "codes":
      return { form: "names", names: { of: "code", family: type.family } };
    case "part":
      return { form: "name", names: { of: "part", kinds: type.kinds } };
    case "slot":
      return { form: "name", names: { of: "slot" } };
    case "date":
      return { form: "name", names: { of: "day" } };
    case "colour":
      return { form: "name", names: { of: "colour" } };
    case "text":
      return { form: "name", names: { of: "text" } };
  }
}

/** What something is, for a sentence: `a length`, `a list of masses`, `a word`, `yes or no`. */
export function describeType(type: ExpressionType): string {
  switch (type.form) {
    case "number":
      return describeVector(type);
    case "numbers":
      return `a list, each item of it ${describeVector(type)}`;
    case "truth":
      return "yes or no";
    case "name":
      return describeNames(type.names);
    case "names":
      return `a list, each item of it ${describeNames(type.names)}`;
    case "none":
      return "none";
    case "wrong":
      return "not understood";
  }
}

function describeVector({ vector, currency, shown }: NumberOf | ListOfNumbers): string {
  if (sameVector(vector, {})) return shown.word === "t" ? "a count of teeth" : "a plain number";
  if (sameVector(vector, { money: 1 })) return currency === undefined ? "a sum of money" : `a sum in ${currency}`;
  const names = shown.dimension === undefined ? dimensionsOf(vector) : [shown.dimension];
  if (names.length === 0) return `a quantity that has no name (${symbolsOf(vector)})`;
  return names.map((name) => withArticle(dimensions[name].title)).join(" or ");
}

function symbolsOf(vector: DimensionVector): string {
  return Object.entries(vector)
    .filter(([, exponent]) => exponent !== 0)
    .map(([base, exponent]) => (exponent === 1 ? base : `${base} to the power ${exponent}`))
    .join(", ");
}

function describeNames(names: Names): string {
  switch (names.of) {
    case "word":
      return "a word of a set";
    case "code":
      return `the code of ${familyByName(names.family)?.noun ?? names.family}`;
    case "part":
      return names.kinds.length === 0 ? "a part" : nounsOf(names.kinds);
    case "slot":
      return "the name of a slot";
    case "text":
      return "a text";
    case "day":
      return "a day";
    case "colour":
      return "a colour";
  }
}

function nounsOf(kinds: readonly string[]): string {
  return kinds.map((kind) => kindByName(kind)?.noun ?? kind).join(" or ");
}

/** Whether two numbers may be added up and compared. */
export function sameMeasure(one: NumberOf | ListOfNumbers, other: NumberOf | ListOfNumbers): boolean {
  return sameVector(one.vector, other.vector);
}
