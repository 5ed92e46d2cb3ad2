import { fact, type Known, type Maybe, optional } from "../../model/need.ts";
import type { Teeth } from "../../values/types.ts";
import { type BuildInputs, type Inputs, meaningless } from "../define.ts";
import { type RingFacts, ringNeeds, withRings } from "./rings-in-use.ts";

/** Rings and cogs that the rider shifts between; a gear hub multiplies them, and has numbers of its own. */
export const gearNeeds = {
  ...ringNeeds,
  cogs: fact("drivetrain.cassette", "cogs"),
  hubGears: optional(fact("rear-wheel.hub", "gears")),
};

export interface GearFacts extends RingFacts {
  readonly cogs: Known<Teeth>;
  readonly hubGears: Maybe<number>;
}

/** Feeds a calculation of every gear, unless the hub changes gear inside. */
export function withGears<I extends Inputs>(
  facts: GearFacts,
  feed: (gears: { readonly rings: Teeth; readonly cogs: Teeth }) => BuildInputs<I>,
): BuildInputs<I> {
  if (facts.hubGears.state === "known")
    return meaningless("the hub changes gear inside, so that ring and cog are not all");
  return withRings(facts, (rings) => feed({ rings, cogs: facts.cogs.value }));
}
