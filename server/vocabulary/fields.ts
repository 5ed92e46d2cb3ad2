import type { DimensionName } from "../../grammar/units.ts";
import type {
  CodesType,
  CodeType,
  ColourType,
  CountType,
  DateType,
  FieldType,
  MoneyType,
  NumberType,
  PartType,
  QuantitiesType,
  QuantityType,
  RangeRole,
  SlotReferenceType,
  TeethType,
  TextType,
  WordsType,
  WordType,
  YesNoType,
} from "../values/types.ts";
import type { Deed, Field, FieldGroup, Omission } from "./define.ts";

/** What may be said of a field besides its type and description. */
export interface FieldOptions {
  readonly omitted?: Omission;
  readonly impliedBy?: readonly string[];
  readonly group?: FieldGroup;
  readonly essential?: boolean;
  readonly formerNames?: readonly string[];
  readonly source?: string;
  readonly example?: string;
  readonly deed?: Deed;
  readonly workedOutAs?: string;
}

export interface NumberBounds {
  /** In the base unit of the dimension, whatever unit is shown. */
  readonly lowest?: number;
  readonly highest?: number;
  readonly unit?: string;
}

function field<Type extends FieldType>(type: Type, description: string, options: FieldOptions): Field<Type> {
  return { type, description, omitted: "unknown", ...options };
}

/** A quantity of one number, such as a length that is what it is. */
export function quantity(
  dimension: DimensionName,
  description: string,
  { unit, lowest, highest, ...options }: FieldOptions & NumberBounds = {},
): Field<QuantityType<"exact">> {
  return field(
    {
      type: "quantity",
      dimension,
      role: "exact",
      ...(unit === undefined ? {} : { unit }),
      ...(lowest === undefined ? {} : { lowest }),
      ...(highest === undefined ? {} : { highest }),
    },
    description,
    options,
  );
}

/** A quantity that may be a range; `role` says what the range means. */
export function quantityRange<const Role extends Exclude<RangeRole, "exact">>(
  dimension: DimensionName,
  role: Role,
  description: string,
  { unit, lowest, highest, ...options }: FieldOptions & NumberBounds = {},
): Field<QuantityType<Role>> {
  return field(
    {
      type: "quantity",
      dimension,
      role,
      ...(unit === undefined ? {} : { unit }),
      ...(lowest === undefined ? {} : { lowest }),
      ...(highest === undefined ? {} : { highest }),
    },
    description,
    options,
  );
}

export function count(
  description: string,
  { unit, lowest, highest, ...options }: FieldOptions & NumberBounds = {},
): Field<CountType> {
  return field(
    {
      type: "count",
      ...(unit === undefined ? {} : { unit }),
      ...(lowest === undefined ? {} : { lowest }),
      ...(highest === undefined ? {} : { highest }),
    },
    description,
    options,
  );
}

export function number(
  description: string,
  { lowest, highest, ...options }: FieldOptions & NumberBounds = {},
): Field<NumberType<"exact">> {
  return field(
    {
      type: "number",
      role: "exact",
      ...(lowest === undefined ? {} : { lowest }),
      ...(highest === undefined ? {} : { highest }),
    },
    description,
    options,
  );
}

/** A plain number that may be a range. */
export function numberRange<const Role extends Exclude<RangeRole, "exact">>(
  role: Role,
  description: string,
  { lowest, highest, ...options }: FieldOptions & NumberBounds = {},
): Field<NumberType<Role>> {
  return field(
    {
      type: "number",
      role,
      ...(lowest === undefined ? {} : { lowest }),
      ...(highest === undefined ? {} : { highest }),
    },
    description,
    options,
  );
}

/** A plain length in millimetres; the commonest field of all. */
export function length(description: string, options: FieldOptions & NumberBounds = {}): Field<QuantityType<"exact">> {
  return quantity("length", description, { lowest: 0, ...options });
}

/** An angle in degrees. */
export function angle(description: string, options: FieldOptions & NumberBounds = {}): Field<QuantityType<"exact">> {
  return quantity("angle", description, { lowest: -180, highest: 180, ...options });
}

/**
 * The torque window of a fastener, from the least to the greatest that the part's maker allows. Any value inside may
 * be used, so that a joint fits only where the windows of both of its parts overlap.
 */
export function torque(
  description: string,
  options: FieldOptions & NumberBounds = {},
): Field<QuantityType<"adjustable">> {
  return quantityRange("torque", "adjustable", description, {
    group: "Assembly",
    lowest: 0.1,
    highest: 100,
    ...options,
  });
}

/** A count of teeth, such as `34 t`. */
export function toothCount(description: string, options: FieldOptions & NumberBounds = {}): Field<CountType> {
  return count(description, { unit: "t", lowest: 6, highest: 80, ...options });
}

/** Tooth counts: cogs of a cassette, rings of a crankset. */
export function teeth(description: string, options: FieldOptions = {}): Field<TeethType> {
  return field({ type: "teeth" }, description, options);
}

/** One interface code of a family. */
export function code(family: string, description: string, options: FieldOptions = {}): Field<CodeType> {
  return field({ type: "code", family }, description, options);
}

/** Several interface codes of a family, any of which the part takes. */
export function codes(family: string, description: string, options: FieldOptions = {}): Field<CodesType> {
  return field({ type: "codes", family }, description, options);
}

/** One word of a set. */
export function word<const Words extends string>(
  words: Readonly<Record<Words, string>>,
  description: string,
  options: FieldOptions = {},
): Field<WordType<Words>> {
  return field({ type: "word", words }, description, options);
}

/** Several words of a set. */
export function words<const Words extends string>(
  set: Readonly<Record<Words, string>>,
  description: string,
  options: FieldOptions = {},
): Field<WordsType<Words>> {
  return field({ type: "words", words: set }, description, options);
}

export function text(description: string, options: FieldOptions = {}): Field<TextType> {
  return field({ type: "text" }, description, options);
}

export function yesNo(description: string, options: FieldOptions = {}): Field<YesNoType> {
  return field({ type: "yes-no" }, description, options);
}

export function date(description: string, options: FieldOptions = {}): Field<DateType> {
  return field({ type: "date" }, description, options);
}

export function money(
  description: string,
  { lowest, ...options }: FieldOptions & Pick<MoneyType, "lowest"> = {},
): Field<MoneyType<"exact">> {
  const bounds = lowest === undefined ? {} : { lowest };
  return field({ type: "money", role: "exact", ...bounds }, description, options);
}

export function moneyRange(description: string, options: FieldOptions = {}): Field<MoneyType<"allowed">> {
  return field({ type: "money", role: "allowed" }, description, options);
}

export function colour(description: string, options: FieldOptions = {}): Field<ColourType> {
  return field({ type: "colour" }, description, options);
}

/** A reference to a declared part of one of these kinds. */
export function partReference(
  kinds: readonly string[],
  description: string,
  options: FieldOptions = {},
): Field<PartType> {
  return field({ type: "part", kinds }, description, options);
}

/** A reference to another slot of the same build, such as `clamp: rear-brake.lever`. */
export function slotReference(description: string, options: FieldOptions = {}): Field<SlotReferenceType> {
  return field({ type: "slot" }, description, options);
}

/** A list of measured quantities. */
export function quantities(
  dimension: DimensionName,
  description: string,
  { lowest, highest, ...options }: FieldOptions & NumberBounds = {},
): Field<QuantitiesType> {
  return field(
    {
      type: "quantities",
      dimension,
      ...(lowest === undefined ? {} : { lowest }),
      ...(highest === undefined ? {} : { highest }),
    },
    description,
    options,
  );
}
