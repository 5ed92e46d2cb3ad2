import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, type Known, type Maybe, optional, setting } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import { anyHolderFact, type WheelPlace } from "./wheel-places.ts";

/** The axle that a hub has with the end caps on it, and the one that fork or frame takes. */
export function fittedAxleNeeds(place: WheelPlace) {
  const hub = ofWheel(place.wheel, "hub");
  return {
    hubAxle: optional(fact(hub, "axle")),
    fitted: optional(setting(hub, "axle-fitted")),
    takes: anyHolderFact<ResolvedCode>(place, "axle"),
  };
}

export interface FittedAxleFacts {
  readonly hubAxle: Maybe<ResolvedCode>;
  readonly fitted: Maybe<ResolvedCode>;
  readonly takes: Maybe<ResolvedCode>;
}

/** The hub's axle as it is fitted: the setting where the build states one, else what the hub comes with. */
export function fittedAxle({ hubAxle, fitted }: Pick<FittedAxleFacts, "hubAxle" | "fitted">): Maybe<ResolvedCode> {
  return fitted.state === "none" ? hubAxle : fitted;
}

/** Whether hub and fork or frame are known not to go together, which is found as such. */
export function axlesDiffer(
  facts: FittedAxleFacts,
): facts is FittedAxleFacts & { readonly takes: Known<ResolvedCode> } {
  const fitted = fittedAxle(facts);
  return fitted.state === "known" && facts.takes.state === "known" && !mate(fitted.value, facts.takes.value);
}
