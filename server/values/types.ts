import type { DimensionName } from "../../grammar/units.ts";

/**
 * The types a field can have, as data, and the shape that each value takes once read.
 *
 * Every number inside the program is in the base unit of its dimension (mm, g, N·m, N, bar, °, ...: see
 * grammar/units.ts); what a person wrote is kept beside it for display. Counts are plain integers.
 */

/**
 * What a range means, by the field that holds it.
 * - `exact`: no range is allowed; the value is one number.
 * - `tolerance`: the true value is somewhere inside; a statement must hold for all of it.
 * - `adjustable`: the part can be set anywhere inside; some value must work.
 * - `allowed`: what else may be paired with it; membership is asked.
 */
export type RangeRole = "exact" | "tolerance" | "adjustable" | "allowed";

/** A closed interval in the base unit; an end that is not limited is infinite. */
export interface Interval {
  readonly least: number;
  readonly greatest: number;
}

/** A sum of money in one currency; sums of different currencies are never added up. */
export interface Money {
  /** ISO 4217 letters. */
  readonly currency: string;
  readonly amount: number;
}

/** A named interface of a family, as written; the model resolves it to a `standard` declaration. */
export interface Code {
  readonly family: string;
  readonly code: string;
}

/** Tooth counts in the order written, for cogs or rings. Never empty. */
export type Teeth = readonly number[];

export interface QuantityType<Role extends RangeRole = RangeRole> {
  readonly type: "quantity";
  readonly dimension: DimensionName;
  readonly role: Role;
  /** Unit shown when none other is asked for; the base unit when omitted. */
  readonly unit?: string;
  /** Bounds outside which the value is taken for a slip of the pen; in the base unit. */
  readonly lowest?: number;
  readonly highest?: number;
}
export interface CountType {
  readonly type: "count";
  /** The word after the number, when the trade writes one (`t` for teeth); `1` links, speeds and the like have none. */
  readonly unit?: string;
  readonly lowest?: number;
  readonly highest?: number;
}
/** A plain number without a unit, such as a ratio. */
export interface NumberType<Role extends RangeRole = RangeRole> {
  readonly type: "number";
  readonly role: Role;
  readonly lowest?: number;
  readonly highest?: number;
}
export interface TeethType {
  readonly type: "teeth";
}
export interface CodeType {
  readonly type: "code";
  readonly family: string;
}
export interface CodesType {
  readonly type: "codes";
  readonly family: string;
}
export interface WordType<Words extends string = string> {
  readonly type: "word";
  /** Each word with its meaning in one line. */
  readonly words: Readonly<Record<Words, string>>;
}
export interface WordsType<Words extends string = string> {
  readonly type: "words";
  readonly words: Readonly<Record<Words, string>>;
}
export interface TextType {
  readonly type: "text";
}
export interface YesNoType {
  readonly type: "yes-no";
}
/** A day of the calendar, written 2027-03-31. */
export interface DateType {
  readonly type: "date";
}
export interface MoneyType<Role extends "exact" | "allowed" = "exact" | "allowed"> {
  readonly type: "money";
  readonly role: Role;
  /** The least sum that can be meant, in any currency. */
  readonly lowest?: number;
}
export interface ColourType {
  readonly type: "colour";
}
/** A reference to a declared part of one of these kinds. */
export interface PartType {
  readonly type: "part";
  readonly kinds: readonly string[];
}
/** A reference to a slot of the same build, such as `rear-brake.lever`. */
export interface SlotReferenceType {
  readonly type: "slot";
}
/** Several quantities of one dimension, separated by commas, the unit after the last. */
export interface QuantitiesType {
  readonly type: "quantities";
  readonly dimension: DimensionName;
  /** Bounds of every item, in the base unit. */
  readonly lowest?: number;
  readonly highest?: number;
}

export type FieldType =
  | QuantityType
  | CountType
  | NumberType
  | TeethType
  | CodeType
  | CodesType
  | WordType
  | WordsType
  | TextType
  | YesNoType
  | DateType
  | MoneyType
  | ColourType
  | PartType
  | SlotReferenceType
  | QuantitiesType;

/** The shape of a read value of a field type. */
export type ValueOf<Type> =
  Type extends QuantityType<infer Role>
    ? "exact" extends Role
      ? [Role] extends ["exact"]
        ? number
        : number | Interval
      : Interval
    : Type extends CountType
      ? number
      : Type extends NumberType<infer Role>
        ? [Role] extends ["exact"]
          ? number
          : Interval
        : Type extends TeethType
          ? Teeth
          : Type extends CodeType
            ? Code
            : Type extends CodesType
              ? readonly Code[]
              : Type extends WordType<infer Words>
                ? Words
                : Type extends WordsType<infer Words>
                  ? readonly Words[]
                  : Type extends TextType | DateType | ColourType | PartType | SlotReferenceType
                    ? string
                    : Type extends YesNoType
                      ? boolean
                      : Type extends MoneyType<infer Role>
                        ? [Role] extends ["exact"]
                          ? Money
                          : MoneyInterval
                        : Type extends QuantitiesType
                          ? readonly number[]
                          : never;

/** An interval of money in one currency, for a budget. */
export interface MoneyInterval extends Interval {
  readonly currency: string;
}

export type AnyValue =
  | number
  | Interval
  | Teeth
  | Code
  | readonly Code[]
  | string
  | readonly string[]
  | boolean
  | Money
  | MoneyInterval
  | readonly number[];
