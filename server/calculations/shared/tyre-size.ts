import type { ResolvedCode } from "../../model/standard.ts";
import { compositeHalves, familyByName } from "../../vocabulary/index.ts";

/** Section width and bead-seat diameter as a tyre's designation by ISO 5775-1 says them, in millimetres. */
export interface TyreSize {
  readonly width: number;
  /** Absent when the half after the dash is a name rather than a diameter. */
  readonly beadSeat?: number;
}

/** What `61-622` says; `undefined` for a code of another form. */
export function tyreSize(size: ResolvedCode): TyreSize | undefined {
  const family = familyByName(size.family);
  const halves = family && compositeHalves(family, size.code);
  const width = halves?.[0].value;
  if (width === undefined || !(width > 0)) return undefined;
  const beadSeat = Number(halves?.[1].text);
  return beadSeat > 0 ? { width, beadSeat } : { width };
}

/** The diameter that a standard of a bead seat states, or that its code says. */
export function beadSeatDiameter(code: ResolvedCode): number | undefined {
  const stated = code.standard?.dimensions.get("diameter");
  if (stated?.state === "stated" && typeof stated.value === "number") return stated.value;
  const number = Number(code.code);
  return number > 0 ? number : undefined;
}
