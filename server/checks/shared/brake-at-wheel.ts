import { ofWheel } from "../../calculations/shared/wheels.ts";
import type { Installed } from "../../model/assembly.ts";
import type { Known, Maybe, Unknown } from "../../model/need.ts";
import { anyFact, anySlot } from "./end.ts";
import { ofBrake, type WheelPlace } from "./wheel-places.ts";

/** What {@link brakeAtWheel} reads. */
export function brakeAtWheelNeeds({ brake, wheel }: WheelPlace) {
  return {
    caliper: anySlot(ofBrake(brake, "caliper")),
    drum: anyFact<boolean>(ofWheel(wheel, "hub"), "drum-brake"),
  };
}

export interface BrakeAtWheelFacts {
  readonly caliper: Maybe<Installed>;
  readonly drum: Maybe<boolean>;
}

/** What a lever works at one wheel. */
export type BrakeAtWheel =
  /** A caliper or rim brake on fork or frame. */
  | { readonly state: "known"; readonly where: "holder"; readonly brake: Known<Installed> }
  /** The drum or roller brake in the hub; what is known is the hub's statement that it has one. */
  | { readonly state: "known"; readonly where: "hub"; readonly brake: Known<boolean> }
  /** Neither. A coaster brake is worked by the pedals and is none of them. */
  | { readonly state: "none" }
  | Unknown;

/** The brake at a wheel: without one on fork or frame, the lever works the one in the hub, if there is one. */
export function brakeAtWheel({ caliper, drum }: BrakeAtWheelFacts): BrakeAtWheel {
  if (caliper.state === "known") return { state: "known", where: "holder", brake: caliper };
  if (caliper.state === "unknown") return caliper;
  if (drum.state === "unknown") return drum;
  return drum.state === "known" && drum.value ? { state: "known", where: "hub", brake: drum } : { state: "none" };
}
