import { fact, type Maybe, optional } from "../../model/need.ts";
import { ofBrake, type WheelPlace } from "./wheel-places.ts";

/** What moves the lever's end and the brake's end of one brake. */
export function brakeActuationNeeds({ brake }: WheelPlace) {
  return {
    leverActuation: optional(fact(ofBrake(brake, "lever"), "brake-actuation")),
    brakeActuation: optional(fact(ofBrake(brake, "caliper"), "brake-actuation")),
  };
}

export interface BrakeActuationFacts {
  readonly leverActuation: Maybe<string>;
  readonly brakeActuation: Maybe<string>;
}

/** Whether lever and brake are known to be moved in different ways, which is found as such. */
export function actuationsDiffer({ leverActuation, brakeActuation }: BrakeActuationFacts): boolean {
  return (
    leverActuation.state === "known" &&
    brakeActuation.state === "known" &&
    leverActuation.value !== brakeActuation.value
  );
}

/** Whether one of the two is known to be moved in another way than this, so that the question does not arise. */
export function movedOtherwise(
  { leverActuation, brakeActuation }: BrakeActuationFacts,
  actuation: "cable" | "hydraulic",
): boolean {
  return [leverActuation, brakeActuation].some((known) => known.state === "known" && known.value !== actuation);
}
