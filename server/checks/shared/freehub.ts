import type { Installed } from "../../model/assembly.ts";
import type { Known, Maybe, Need, Unknown } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import { atLeast } from "../../values/compare.ts";
import { asList, dimensionOf, lacksDimension, type OneOrMoreCodes } from "./codes.ts";
import { anyFact, anySetting, anySlot } from "./end.ts";

/** How cogs meet the freehub body: on their own body, on a longer one of the same splines, or not at all. */

export type FreehubNeeds = {
  readonly cassette: Need<Installed, true>;
  readonly cogBody: Need<ResolvedCode, true>;
  readonly cogThread: Need<ResolvedCode, true>;
  readonly cogs: Need<readonly number[], true>;
  readonly hub: Need<Installed, true>;
  readonly bodies: Need<OneOrMoreCodes, true>;
  readonly hubThread: Need<ResolvedCode, true>;
  readonly fitted: Need<ResolvedCode, true>;
};

export type FreehubFacts = {
  readonly [K in keyof FreehubNeeds]: FreehubNeeds[K] extends Need<infer Value, true> ? Maybe<Value> : never;
};

export function freehubNeeds(): FreehubNeeds {
  return {
    cassette: anySlot("drivetrain.cassette"),
    cogBody: anyFact("drivetrain.cassette", "freehub"),
    cogThread: anyFact("drivetrain.cassette", "thread"),
    cogs: anyFact("drivetrain.cassette", "cogs"),
    hub: anySlot("rear-wheel.hub"),
    bodies: anyFact("rear-wheel.hub", "freehub"),
    hubThread: anyFact("rear-wheel.hub", "freewheel-thread"),
    fitted: anySetting("rear-wheel.hub", "freehub-fitted"),
  };
}

/** The body that cogs stand on, with the room that is left on a longer one. */
export type BodyFit =
  | { readonly state: "fits"; readonly body: ResolvedCode; readonly longer: number }
  /** The splines match, but the body is too short by `short`. */
  | { readonly state: "short"; readonly body: ResolvedCode; readonly short: number }
  | { readonly state: "other" }
  | { readonly state: "unknown"; readonly unknown: Unknown };

/**
 * The best of the bodies for cogs made for one: their own first, then a longer one of the same splines.
 * @param single true for one sprocket, which spacers put anywhere on splines of its shape.
 */
export function fitBody(made: ResolvedCode, bodies: OneOrMoreCodes, single: boolean): BodyFit {
  const list = asList(bodies);
  const own = list.find((body) => mate(made, body));
  if (own) return { state: "fits", body: own, longer: 0 };
  const profile = dimensionOf<string>(made, "profile");
  let best: BodyFit = { state: "other" };
  for (const body of list) {
    if (profile === undefined || dimensionOf<string>(body, "profile") !== profile) continue;
    if (single) return { state: "fits", body, longer: 0 };
    const needed = dimensionOf<number>(made, "body-length");
    const length = dimensionOf<number>(body, "body-length");
    if (needed === undefined || length === undefined) {
      if (best.state === "other") {
        best = { state: "unknown", unknown: lacksDimension(needed === undefined ? made : body, "body-length") };
      }
      continue;
    }
    if (atLeast(length, needed)) return { state: "fits", body, longer: Math.max(0, length - needed) };
    if (best.state === "other") best = { state: "short", body, short: needed - length };
  }
  return best;
}

/** Whether the cogs are one sprocket. */
export function isSprocket(cassette: Known<Installed>): boolean {
  return cassette.value.part?.kind?.name === "sprocket";
}
