import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, type Known, type Maybe, optional, setting } from "../../model/need.ts";
import type { WheelPlace } from "./wheel-places.ts";

/** How a wheel is laced, as far as the build says. */
export function lacingNeeds({ wheel }: WheelPlace) {
  const spokes = ofWheel(wheel, "spokes");
  return {
    cross: optional(setting(spokes, "cross")),
    crossDriveSide: optional(setting(spokes, "cross-drive-side")),
    crossNonDriveSide: optional(setting(spokes, "cross-non-drive-side")),
    lacing: optional(setting(spokes, "lacing")),
    head: optional(fact(ofWheel(wheel, "hub"), "spoke-head")),
  };
}

export interface LacingFacts {
  readonly cross: Maybe<number>;
  readonly crossDriveSide: Maybe<number>;
  readonly crossNonDriveSide: Maybe<number>;
  readonly lacing: Maybe<string>;
  readonly head: Maybe<string>;
}

/** One side of a wheel with its crossings. */
export interface LacedSide {
  readonly name: "drive-side" | "non-drive-side";
  readonly cross: Maybe<number>;
  /** The setting in which its crossings stand. */
  readonly setting: "cross" | "cross-drive-side" | "cross-non-drive-side";
}

export function lacedSides({ cross, crossDriveSide, crossNonDriveSide }: LacingFacts): readonly LacedSide[] {
  const side = (name: LacedSide["name"], own: Maybe<number>): LacedSide =>
    own.state === "none" ? { name, cross, setting: "cross" } : { name, cross: own, setting: `cross-${name}` };
  return [side("drive-side", crossDriveSide), side("non-drive-side", crossNonDriveSide)];
}

/** Why the lengths and crossings of a lacing are not worked out; `undefined` for an even one. */
export function refusedLacing({ lacing, head }: Pick<LacingFacts, "lacing" | "head">): string | undefined {
  if (head.state === "known" && head.value === "straight") {
    return `${head.subject} takes straight-pull spokes, whose lengths its maker states`;
  }
  if (lacing.state === "known" && lacing.value !== "even") {
    return `only an even lacing is worked out, and this one is ${(lacing as Known<string>).written}`;
  }
  return undefined;
}
