import { type Facts, fact, type Missing, optional, setting } from "../../model/need.ts";
import { forkLengthAlongAxis } from "./axle-positions.ts";
import { missingOf } from "./maybe.ts";

/** What {@link forkAsSet} reads. */
export const forkAsSetNeeds = {
  axleToCrown: fact("fork", "axle-to-crown"),
  forkOffset: fact("fork", "fork-offset"),
  forkTravel: optional(fact("fork", "travel")),
  forkTravelSet: optional(setting("fork", "travel-set")),
};

/**
 * Straight from the axle to the crown-race seat, with the travel as it is set: set to less, the legs stand so much
 * shorter along the steering axis than the fork comes with.
 */
export function forkAsSet({
  axleToCrown,
  forkOffset,
  forkTravel,
  forkTravelSet,
}: Facts<typeof forkAsSetNeeds>): number | readonly Missing[] {
  if (forkTravelSet.state !== "known") return axleToCrown.value;
  const missing = missingOf(forkTravel);
  if (missing.length > 0) return missing;
  const along = forkLengthAlongAxis(axleToCrown.value, forkOffset.value);
  if (forkTravel.state !== "known" || along === undefined) return axleToCrown.value;
  return Math.hypot(along + forkTravelSet.value - forkTravel.value, forkOffset.value);
}
