import type { Installed } from "../../model/assembly.ts";
import type { Repair } from "../../model/finding.ts";
import type { Maybe, Need } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import type { Joint } from "../../vocabulary/index.ts";
import { cannotTell, fails, notApplicable, type Verdict } from "../define.ts";
import { showCode } from "./codes.ts";
import { anyFact, anySlot, readEnd } from "./end.ts";
import { judgeMating, type MatingWords } from "./mating.ts";
import { swaps } from "./swaps.ts";
import { anyHolderFact, ofBrake, type WheelPlace } from "./wheel-places.ts";

/** A brake, what may stand under it, and what fork or frame offers. */
export interface BrakePlaceFacts {
  readonly caliper: Maybe<Installed>;
  readonly mount: Maybe<ResolvedCode>;
  readonly adapter: Maybe<Installed>;
  readonly sitsOn: Maybe<ResolvedCode>;
  readonly offers: Maybe<ResolvedCode>;
  readonly holder: Maybe<Installed>;
  readonly offered: Maybe<ResolvedCode>;
}

export function brakePlaceNeeds(place: WheelPlace): {
  readonly [K in keyof BrakePlaceFacts]: BrakePlaceFacts[K] extends Maybe<infer Value> ? Need<Value, true> : never;
} {
  const adapter = ofBrake(place.brake, "adapter");
  return {
    caliper: anySlot(ofBrake(place.brake, "caliper")),
    mount: anyFact(ofBrake(place.brake, "caliper"), "mount"),
    adapter: anySlot(adapter),
    sitsOn: anyFact(adapter, "sits-on"),
    offers: anyFact(adapter, "offers"),
    holder: anySlot(place.holder),
    offered: anyHolderFact(place, "brakeMount"),
  };
}

const words: MatingWords = {
  one: "is fixed to",
  other: "offers",
  nothing: "has no mount for a brake",
  remedy: "fit a brake for that mount, or an adapter between the two.",
};

const adapterWords: MatingWords = { ...words, remedy: "fit an adapter for that mount." };

/** Whether a brake sits on what fork or frame offers, directly or on its adapter. */
export function judgeBrakePlace(facts: BrakePlaceFacts, joint: Joint, place: WheelPlace): Verdict {
  const caliperSlot = ofBrake(place.brake, "caliper");
  const adapterSlot = ofBrake(place.brake, "adapter");
  const brake = readEnd(facts.caliper, facts.mount, "mount");
  const holder = readEnd(facts.holder, facts.offered, place.facts.brakeMount);
  const leaveOut: Repair = { kind: "leave-empty", slot: adapterSlot };
  if (facts.adapter.state === "none" || brake.state === "empty") {
    const insert: Repair = { kind: "insert-part", slot: adapterSlot };
    return judgeMating(joint, words, brake, holder, [insert, ...swaps(caliperSlot, place.holder)]);
  }
  const offers = readEnd(facts.adapter, facts.offers, "offers");
  const sitsOn = readEnd(facts.adapter, facts.sitsOn, "sits-on");
  if (brake.state === "known" && offers.state === "known" && !mate(brake.fact.value, offers.fact.value)) {
    return fails(
      `${brake.part.subject} is fixed to ${showCode(brake.fact.value)}, but its adapter ${offers.part.subject} offers ${showCode(offers.fact.value)}: fit an adapter that offers ${brake.fact.value.code}, or leave it out.`,
      offers.part,
      [brake.fact, offers.fact],
      [...swaps(adapterSlot), leaveOut, ...swaps(caliperSlot)],
    );
  }
  // What is wrong between adapter and mount is wrong whatever the brake is.
  const below = judgeMating(joint, adapterWords, sitsOn, holder, [...swaps(adapterSlot), leaveOut]);
  if (below.outcome === "fails") return below;
  const lacking = [brake, offers].flatMap((end) => (end.state === "unknown" ? [end.unknown] : []));
  if (below.outcome === "unknown")
    return { outcome: "unknown", missing: [...below.missing, ...lacking.flatMap(({ missing }) => missing)] };
  if (lacking.length > 0) return cannotTell(...lacking);
  if (brake.state !== "known" || offers.state !== "known") return notApplicable("brake and adapter share no mount");
  return below.outcome === "holds"
    ? {
        ...below,
        message: `${brake.part.subject} is fixed to ${showCode(offers.fact.value)} of its adapter. ${below.message}`,
      }
    : below;
}

/** Whether the brake is known not to sit on what is there. */
export function isMisplaced(facts: BrakePlaceFacts, joint: Joint, place: WheelPlace): boolean {
  return judgeBrakePlace(facts, joint, place).outcome === "fails";
}
