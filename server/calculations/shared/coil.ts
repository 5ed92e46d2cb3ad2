import { fact, type Maybe, type Missing, optional } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { missingOf, stated } from "./maybe.ts";
import { shockSize } from "./shock-size.ts";

/** A linkage whose leverage changes evenly from the start of the shock's stroke to its end; millimetres. */
export interface Linkage {
  readonly stroke: number;
  readonly start: number;
  readonly end: number;
}

/** Travel of the wheel for each millimetre of stroke, with the shock pressed in so far. */
export function leverageAt({ stroke, start, end }: Linkage, pressed: number): number {
  return start + ((end - start) * pressed) / stroke;
}

/**
 * How far a load in newtons on the wheel presses a coil of `rate` newtons per millimetre in, in millimetres: where the
 * coil's force is the load times the leverage there. `undefined` when the leverage rises faster than the coil stiffens.
 */
export function coilSag(load: number, rate: number, linkage: Linkage): number | undefined {
  const stiffness = rate - (load * (linkage.end - linkage.start)) / linkage.stroke;
  return stiffness > 0 ? (load * linkage.start) / stiffness : undefined;
}

/** Rate of the coil that a load presses in so far. */
export function coilRate(load: number, pressed: number, linkage: Linkage): number {
  return (load * leverageAt(linkage, pressed)) / pressed;
}

/** What {@link linkageOf} reads. */
export const linkageNeeds = {
  travel: optional(fact("frame", "rear-travel")),
  size: optional(fact("rear-shock", "size")),
  leverageStart: optional(fact("frame", "leverage-start")),
  leverageEnd: optional(fact("frame", "leverage-end")),
};

export interface LinkageFacts {
  readonly travel: Maybe<number>;
  readonly size: Maybe<ResolvedCode>;
  readonly leverageStart: Maybe<number>;
  readonly leverageEnd: Maybe<number>;
}

export type LinkageAnswer =
  | { readonly state: "known"; readonly linkage: Linkage }
  | { readonly state: "unknown"; readonly missing: readonly Missing[] }
  | { readonly state: "none"; readonly reason: string };

/** The linkage of a frame with its shock; where a maker states no leverage, its average stands for all of the stroke. */
export function linkageOf({ travel, size, leverageStart, leverageEnd }: LinkageFacts): LinkageAnswer {
  if (travel.state === "none" || size.state === "none")
    return { state: "none", reason: "nothing springs the rear wheel" };
  const missing = missingOf(travel, size);
  if (travel.state !== "known" || size.state !== "known") return { state: "unknown", missing };
  const stroke = shockSize(size.value)?.stroke;
  if (stroke === undefined) return { state: "none", reason: `${size.written} does not say a stroke` };
  const average = travel.value / stroke;
  const [start, end] = [stated(leverageStart), stated(leverageEnd)];
  return start === undefined || end === undefined
    ? { state: "known", linkage: { stroke, start: average, end: average } }
    : { state: "known", linkage: { stroke, start, end } };
}
