import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, type Maybe, type Need, optional, slot } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import { anyHolderFact, holderFact, type WheelPlace } from "./wheel-places.ts";

type AxleField = "axle-length" | "axle-thread-pitch" | "axle-seat";

/** One fact of a thru axle and the same fact of the fork or frame, with what says whether the two are of one size. */
export function thruAxleNeeds<Value>(
  place: WheelPlace,
  field: AxleField,
  holderField: "axleLength" | "axleThreadPitch" | "axleSeat",
) {
  const axle = ofWheel(place.wheel, "axle");
  return {
    axle: slot(axle),
    own: { kind: "fact", slot: axle, field, optional: false } as Need<Value, false>,
    asked: holderFact<Value>(place, holderField),
    made: optional(fact(axle, "axle")),
    takes: anyHolderFact<ResolvedCode>(place, "axle"),
  };
}

/** Whether the axle is of another size altogether, which is found as such. */
export function isOtherSize(made: Maybe<ResolvedCode>, takes: Maybe<ResolvedCode>): boolean {
  return made.state === "known" && takes.state === "known" && !mate(made.value, takes.value);
}
