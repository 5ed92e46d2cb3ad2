import type { FieldType } from "../../values/types.ts";
import type { Field } from "../define.ts";
import type { KindName, SlotPath } from "../index.ts";

/** How far a measured value may lie from what it is compared with; numbers are in the base unit. */
export interface Tolerance {
  /** What it is a tolerance of, for a sentence: "from the aim", "of one spoke from the others". */
  readonly of: string;
  /** So much more or less. */
  readonly by?: number;
  /** Such a share of the expected value more or less, 0.1 for 10 %. Where `by` stands too, the wider one counts. */
  readonly share?: number;
  /** Never more than this. */
  readonly most?: number;
  /** Never less than this. */
  readonly least?: number;
  /** A publication, or "common practice, no source", or "from memory". */
  readonly source: string;
}

/** Something that is measured on a bicycle as built: a row of the table of measurements. */
export interface Measurement<Type extends FieldType = FieldType> extends Field<Type> {
  /** The slot whose part is measured; absent for the bicycle as a whole. */
  readonly on?: SlotPath;
  /** Where a part of such a kind has what is measured in it, although the slot itself is empty. */
  readonly builtInto?: { readonly slot: SlotPath; readonly kind: KindName };
  /** What it is compared with, for a sentence: "the least thickness that the rotor's maker states". */
  readonly comparedWith: string;
  readonly tolerances: Readonly<Record<string, Tolerance>>;
  /** Where what it is compared with comes from. */
  readonly source: string;
}

/** What a row says besides its type and description. */
export interface MeasurementOptions extends Pick<Measurement, "on" | "builtInto" | "comparedWith" | "source"> {
  readonly tolerances?: Measurement["tolerances"];
}

/** A row. It is never missing: what was not measured is not in the record. */
export function measurement<Type extends FieldType>(
  field: Field<Type>,
  { tolerances = {}, ...options }: MeasurementOptions,
): Measurement<Type> {
  return { ...field, omitted: "none", tolerances, ...options };
}

export const practice = "common practice, no source";
