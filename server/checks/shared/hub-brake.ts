import { type Facts, fact, type Known, optional, slot, type Unknown } from "../../model/need.ts";

/** What {@link backPedalled} reads. */
export const backPedalNeeds = {
  hub: optional(slot("rear-wheel.hub")),
  coaster: optional(fact("rear-wheel.hub", "coaster-brake")),
  cogPart: optional(slot("drivetrain.cassette")),
  fixedCog: optional(fact("drivetrain.cassette", "fixed")),
};

export type BackPedalled =
  /** The lower run of the chain is pulled when the rider pedals backward. */
  { readonly state: "known"; readonly fact: Known; readonly what: string } | Unknown | { readonly state: "none" };

/** Whether pedalling backward pulls on the lower run: a coaster brake, or a cog fixed to the wheel. */
export function backPedalled({ hub, coaster, cogPart, fixedCog }: Facts<typeof backPedalNeeds>): BackPedalled {
  if (coaster.state === "known" && coaster.value) {
    return { state: "known", fact: coaster, what: `${coaster.subject} has a coaster brake` };
  }
  if (fixedCog.state === "known" && fixedCog.value) {
    return { state: "known", fact: fixedCog, what: `${fixedCog.subject} is a fixed cog` };
  }
  const missing = [hub, coaster, cogPart, fixedCog].flatMap((one) => (one.state === "unknown" ? one.missing : []));
  return missing.length > 0 ? { state: "unknown", missing } : { state: "none" };
}
