import { fact, type Maybe, type Missing, optional } from "../../model/need.ts";
import type { Teeth } from "../../values/types.ts";
import { type BuildInputs, type Inputs, lacking, meaningless } from "../define.ts";
import { missingOf } from "./maybe.ts";

/**
 * Which rings a build turns. Cranks may be sold with rings, and each ring may be replaced by one in a slot of its own:
 * the slots decide, and where they are empty the crankset's own rings remain.
 */
export const ringNeeds = {
  crankRings: optional(fact("drivetrain.crankset", "rings")),
  ring: optional(fact("drivetrain.chainring", "teeth")),
  middleRing: optional(fact("drivetrain.middle-chainring", "teeth")),
  innerRing: optional(fact("drivetrain.inner-chainring", "teeth")),
};

export interface RingFacts {
  readonly crankRings: Maybe<Teeth>;
  readonly ring: Maybe<number>;
  readonly middleRing: Maybe<number>;
  readonly innerRing: Maybe<number>;
}

export type RingsInUse =
  /** From the largest to the smallest. */
  | { readonly state: "known"; readonly rings: Teeth }
  | { readonly state: "unknown"; readonly missing: readonly Missing[] }
  | { readonly state: "none" };

export function ringsInUse({ crankRings, ring, middleRing, innerRing }: RingFacts): RingsInUse {
  const asked = [middleRing, innerRing, ring, ...(ring.state === "known" ? [] : [crankRings])];
  const missing = missingOf(...asked);
  if (missing.length > 0) return { state: "unknown", missing };
  const own = crankRings.state === "known" ? [...crankRings.value].sort((a, b) => b - a) : [];
  const replaced = [
    ring.state === "known" ? ring.value : own[0],
    middleRing.state === "known" ? middleRing.value : own.length > 2 ? own[1] : undefined,
    innerRing.state === "known" ? innerRing.value : own.length > 1 ? own[own.length - 1] : undefined,
  ].filter((teeth) => teeth !== undefined);
  return replaced.length === 0 ? { state: "none" } : { state: "known", rings: replaced.sort((a, b) => b - a) };
}

/** Feeds a calculation once the rings in use are known; says what is missing, or that there are no rings. */
export function withRings<I extends Inputs>(facts: RingFacts, feed: (rings: Teeth) => BuildInputs<I>): BuildInputs<I> {
  const rings = ringsInUse(facts);
  if (rings.state === "unknown") return lacking(rings.missing);
  if (rings.state === "none") return meaningless("no ring is fitted");
  return feed(rings.rings);
}
