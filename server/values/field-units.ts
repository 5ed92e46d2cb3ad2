import { baseUnit, type DimensionName, type Unit, unitBySpelling, unitsOf } from "../../grammar/units.ts";

/** What says in which units a field is written: the members that quantity types share. */
export interface UnitsOfField {
  readonly dimension: DimensionName;
  readonly unit?: string;
}

/** The unit of a field when nobody says otherwise. */
export function usualUnit(type: UnitsOfField): Unit {
  const named = type.unit === undefined ? undefined : unitBySpelling(type.unit);
  return named?.dimension === type.dimension ? named : baseUnit(type.dimension);
}

/** The units of a field, the field's own first. */
export function unitsFor(type: UnitsOfField): Unit[] {
  const usual = usualUnit(type);
  return [usual, ...unitsOf(type.dimension).filter((unit) => unit !== usual)];
}
