import type { DimensionName } from "../../grammar/units.ts";
import type { FieldType } from "../values/types.ts";

/**
 * How a row of the vocabulary is declared. Parsing of values, completion, hover, the export and the reference pages
 * all read these rows and nothing else, so adding a field is one edit in one file.
 */

/**
 * What a field or slot means when nobody wrote it.
 * - `unknown`: the fact exists but was not stated; whatever needs it cannot be checked.
 * - `none`: leaving it out says that there is none (a frame without a stated belt opening has none).
 */
export type Omission = "unknown" | "none";

/** Headings under which fields stand together, in the order in which sheets and reference pages show them. */
export const fieldGroups = [
  "Identity",
  "Gearing",
  "Fit",
  "Brakes",
  "Geometry",
  "Shape",
  "Suspension",
  "Clearance",
  "Limits",
  "Control",
  "Electronics",
  "Set-up",
  "Assembly",
] as const;
export type FieldGroup = (typeof fieldGroups)[number];

export interface Field<Type extends FieldType = FieldType> {
  readonly type: Type;
  /** One line for hover and the reference: what it is, how it is measured, which way is positive. */
  readonly description: string;
  readonly omitted: Omission;
  /**
   * Facts of the same part that nobody states without this one: beside one of them, leaving it out does not mean that
   * there is none.
   */
  readonly impliedBy?: readonly string[];
  /** The heading it stands under on a build sheet; fields of one group stand together. */
  readonly group?: FieldGroup;
  /** True when a complete entry of this kind is expected to state it: offered first, and asked for by a snippet. */
  readonly essential?: boolean;
  /** Earlier names of the field, still read, with a fix to the present one. */
  readonly formerNames?: readonly string[];
  /** Where the definition comes from, when it is not the trade's common usage. */
  readonly source?: string;
  /** An example as it would be written. */
  readonly example?: string;
  /** What somebody does at the bench to make it so; asked for by repairs that write a value. */
  readonly deed?: Deed;
  /** The worked-out number that it is usually set to: `chain-links-needed` of its own assembly, or a full path. */
  readonly workedOutAs?: string;
}

/**
 * An instruction in which `{}` stands for the value, or one for each value of a few: `otherwise` is the one for those
 * that are not named. Of a number that may go either way, `positive` and `negative` say which way; its sign is then left
 * out.
 */
export type Deed = string | Readonly<Record<string, string>>;

export type Fields = Readonly<Record<string, Field>>;

export interface Kind<Name extends string = string, F extends Fields = Fields> {
  readonly name: Name;
  /** In the trade's words, with an article where a sentence needs one: "a cassette". */
  readonly noun: string;
  readonly description: string;
  readonly fields: F;
  /** Said wherever a part of this kind is handled, when a mistake with it can hurt someone. */
  readonly caution?: string;
}

/**
 * Something a build says of another slot. A fact is `stated` when it is written and is not `none`.
 */
export type SlotCondition =
  | { readonly slot: string; readonly is: "none" | "present" }
  | { readonly slot: string; readonly kind: string }
  | { readonly slot: string; readonly fact: string; readonly is: "stated" | "none" }
  | { readonly slot: string; readonly fact: string; readonly word: string };

/** A place in a build where a part goes. */
export interface Slot<Path extends string = string, K extends string = string, S extends Fields = Fields> {
  /** `frame`, or `drivetrain.cassette`: the assembly and the name in it. */
  readonly path: Path;
  /** Kinds that may go in. The first is the usual one. */
  readonly kinds: readonly K[];
  readonly description: string;
  /** `unknown`: every whole bike has something here or says `none`. `none`: leaving it out means there is none. */
  readonly omitted: Omission;
  /**
   * Where leaving an `unknown` slot out means `none` after all: the alternatives, of each of which every condition
   * has to hold (a bike without a front derailleur needs no controller for one).
   */
  readonly noneWhen?: readonly (readonly SlotCondition[])[];
  /** How the part is installed here. Names never collide with facts of the kinds. */
  readonly settings: S;
}

/**
 * One half of a composite code such as `ZS44/28.6`: a code of another family, or a number of a dimension in its
 * base unit.
 */
export type CodeHalf =
  | { readonly name: string; readonly family: string; readonly optional?: true }
  | { readonly name: string; readonly dimension: DimensionName; readonly optional?: true };

/** A family of mating interfaces; the fields that a `standard` of it may state. */
export interface Family<Name extends string = string, F extends Fields = Fields> {
  readonly name: Name;
  readonly noun: string;
  readonly description: string;
  readonly fields: F;
  /** Set where a code is written in two halves; no `standard` is needed for the composite itself. */
  readonly composite?: { readonly separator: string; readonly halves: readonly [CodeHalf, CodeHalf] };
}

export function defineKind<const Name extends string, const F extends Fields>(kind: Kind<Name, F>): Kind<Name, F> {
  return kind;
}

export function defineSlot<
  const Path extends string,
  const K extends string,
  const S extends Fields = Record<never, never>,
>(slot: Omit<Slot<Path, K, S>, "settings"> & { readonly settings?: S }): Slot<Path, K, S> {
  return { settings: {} as S, ...slot };
}

export function defineFamily<const Name extends string, const F extends Fields>(
  family: Family<Name, F>,
): Family<Name, F> {
  return family;
}
