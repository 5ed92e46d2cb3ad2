import { fact, type Maybe, type Missing, optional } from "../../model/need.ts";

/** Whether a frame's rear end is sprung, and how much its rear centre grows. A rigid frame says `rear-travel: none`. */
export const rearEndNeeds = {
  rearTravel: optional(fact("frame", "rear-travel")),
  rearCentreGrowth: optional(fact("frame", "rear-centre-growth-full")),
};

export interface RearEndFacts {
  readonly rearTravel: Maybe<number>;
  readonly rearCentreGrowth: Maybe<number>;
}

export type RearEnd =
  | { readonly state: "rigid" }
  /** `growth`: by how many millimetres the rear centre is longer at its longest than unladen; never less than zero. */
  | { readonly state: "sprung"; readonly growth: number }
  | { readonly state: "unknown"; readonly missing: readonly Missing[] };

export function rearEnd({ rearTravel, rearCentreGrowth }: RearEndFacts): RearEnd {
  if (rearTravel.state === "none") return { state: "rigid" };
  if (rearTravel.state === "unknown") return { state: "unknown", missing: rearTravel.missing };
  if (rearCentreGrowth.state === "unknown") return { state: "unknown", missing: rearCentreGrowth.missing };
  // Where the rear centre only shrinks, it is longest unladen.
  return { state: "sprung", growth: rearCentreGrowth.state === "known" ? Math.max(0, rearCentreGrowth.value) : 0 };
}
