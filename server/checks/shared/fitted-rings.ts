import { ringNeeds, ringsInUse } from "../../calculations/shared/rings-in-use.ts";
import type { Installed } from "../../model/assembly.ts";
import { type Facts, type Known, optional, slot, type Unknown, worked } from "../../model/need.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, notApplicable, type Verdict } from "../define.ts";

/** A ring that the build turns, with what states its teeth and the part that it would be swapped with. */
export interface FittedRing {
  readonly teeth: number;
  /** The fact that states the teeth: of the ring's own part, or of the crankset it comes with. */
  readonly fact: Known;
  readonly slot: SlotPath;
  readonly part: Known<Installed>;
}

export type FittedRings =
  /** From the largest to the smallest; never empty. */
  | { readonly state: "known"; readonly rings: readonly [FittedRing, ...FittedRing[]] }
  | Unknown
  | { readonly state: "none" };

/** What a check says that is about rings where none are known. */
export function withoutRings(rings: Exclude<FittedRings, { readonly state: "known" }>): Verdict {
  return rings.state === "unknown" ? cannotTell(rings) : notApplicable("no ring is fitted");
}

/** What {@link fittedRings} reads. */
export const fittedRingNeeds = {
  ...ringNeeds,
  crankset: optional(slot("drivetrain.crankset")),
  outerPart: optional(slot("drivetrain.chainring")),
  middlePart: optional(slot("drivetrain.middle-chainring")),
  innerPart: optional(slot("drivetrain.inner-chainring")),
};

/**
 * The same for a check that can say nothing without the rings: whatever is missing of them is named together with
 * what else is missing.
 */
export const requiredRingNeeds = {
  ...fittedRingNeeds,
  ringDifference: worked<number>("drivetrain.front-difference"),
};

/** The rings in use, each with the part it belongs to. */
export function fittedRings(facts: Facts<typeof fittedRingNeeds>): FittedRings {
  const inUse = ringsInUse(facts);
  if (inUse.state !== "known") return inUse;
  const own = [
    { fact: facts.ring, part: facts.outerPart, slot: "drivetrain.chainring" },
    { fact: facts.middleRing, part: facts.middlePart, slot: "drivetrain.middle-chainring" },
    { fact: facts.innerRing, part: facts.innerPart, slot: "drivetrain.inner-chainring" },
  ] as const;
  const left = own.flatMap(({ fact, part, slot: path }) =>
    fact.state === "known" && part.state === "known" ? [{ teeth: fact.value, fact, part, slot: path as SlotPath }] : [],
  );
  const rings: FittedRing[] = [];
  for (const teeth of inUse.rings) {
    const index = left.findIndex((ring) => ring.teeth === teeth);
    if (index >= 0) rings.push(...left.splice(index, 1));
    else if (facts.crankRings.state === "known" && facts.crankset.state === "known") {
      rings.push({ teeth, fact: facts.crankRings, part: facts.crankset, slot: "drivetrain.crankset" });
    }
  }
  const [first, ...others] = rings;
  return first ? { state: "known", rings: [first, ...others] } : { state: "none" };
}

export type RingPlace = "outer" | "middle" | "inner";

export type PlacedRings =
  | {
      readonly state: "known";
      /** From the outside in; never empty. */
      readonly rings: readonly (FittedRing & { readonly place: RingPlace })[];
    }
  | Unknown
  | { readonly state: "none" };

/** The rings in use where they stand, whatever their size. */
export function placedRings(facts: Facts<typeof fittedRingNeeds>): PlacedRings {
  const fitted = fittedRings(facts);
  if (fitted.state !== "known") return fitted;
  const left = [...fitted.rings];
  const places = [
    { place: "outer", slot: "drivetrain.chainring" },
    { place: "middle", slot: "drivetrain.middle-chainring" },
    { place: "inner", slot: "drivetrain.inner-chainring" },
  ] as const;
  const own = places.flatMap(({ place, slot: path }) => {
    const index = left.findIndex((ring) => ring.slot === path);
    return index < 0 ? [] : left.splice(index, 1).map((ring) => ({ ...ring, place: place as RingPlace }));
  });
  // The rest come with the cranks, the largest outside, and fill the places between.
  const count = fitted.rings.length;
  const free = places.flatMap(({ place }) =>
    own.some((ring) => ring.place === place) || (place === "middle" && count < 3) ? [] : [place],
  );
  const sold = left.flatMap((ring, index) => {
    const place: RingPlace | undefined = free[index];
    return place === undefined ? [] : [{ ...ring, place }];
  });
  const order = places.map(({ place }) => place);
  const rings = [...own, ...sold].sort((a, b) => order.indexOf(a.place) - order.indexOf(b.place));
  return { state: "known", rings };
}

/** The slots that rings stand in, each once, the largest ring's first. */
export function ringSlots(rings: readonly FittedRing[]): readonly SlotPath[] {
  return [...new Set(rings.map((ring) => ring.slot))];
}

/** The facts that state the rings, each once. */
export function ringFacts(rings: readonly FittedRing[]): readonly Known[] {
  return [...new Set(rings.map((ring) => ring.fact))];
}
