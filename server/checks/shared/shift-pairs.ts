import type { Installed } from "../../model/assembly.ts";
import { type Facts, fact, type Known, type Maybe, optional, slot, type Unknown } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { type Actuation, type KnownActuation, rearActuationNeeds, rearDerailleurActuation } from "./actuation.ts";

/** A controller and what it moves. */
export const shiftPairs = [
  { name: "rear", controller: "drivetrain.rear-controller", moves: "drivetrain.rear-derailleur" },
  { name: "front", controller: "drivetrain.front-controller", moves: "drivetrain.front-derailleur" },
  { name: "gear-hub", controller: "drivetrain.rear-controller", moves: "rear-wheel.hub" },
] as const;

export type ShiftPairName = (typeof shiftPairs)[number]["name"];

/** What {@link shiftPair} reads of one pair. */
export function shiftPairNeeds(pair: (typeof shiftPairs)[number]) {
  return {
    ...rearActuationNeeds,
    controller: optional(slot(pair.controller)),
    controllerActuation: optional(fact(pair.controller, "actuation")),
    controllerFamily: optional(fact(pair.controller, "shift-family")),
    moved: optional(slot(pair.moves)),
    movedFamily: optional(fact(pair.moves, "shift-family")),
    frontActuation: optional(fact("drivetrain.front-derailleur", "actuation")),
    hubActuation: optional(fact("rear-wheel.hub", "actuation")),
    rearDerailleur: optional(slot("drivetrain.rear-derailleur")),
    hubGears: optional(fact("rear-wheel.hub", "gears")),
    cogs: optional(fact("drivetrain.cassette", "cogs")),
  };
}

export type ShiftPairFacts = Facts<ReturnType<typeof shiftPairNeeds>>;

export interface ShiftPair {
  readonly controller: Maybe<Installed>;
  readonly controllerActuation: Maybe<Actuation>;
  readonly controllerFamily: Maybe<ResolvedCode>;
  readonly moved: Known<Installed>;
  readonly movedActuation: KnownActuation;
  readonly movedFamily: Maybe<ResolvedCode>;
  readonly slots: { readonly controller: SlotPath; readonly moved: SlotPath };
}

/** The pair, or why there is none to speak of. */
export function shiftPair(
  facts: ShiftPairFacts,
  pair: (typeof shiftPairs)[number],
): ShiftPair | { readonly reason: string } | { readonly unknown: Unknown } {
  const { moved } = facts;
  // With a derailleur as well as gears in the hub, the rear controller is the derailleur's.
  if (pair.name === "gear-hub" && facts.rearDerailleur.state === "known") {
    return { reason: "the rear controller works a derailleur" };
  }
  if (moved.state === "none") return { reason: `${pair.moves} is none` };
  if (moved.state === "unknown") return { unknown: moved };
  if (pair.name === "gear-hub") {
    if (facts.hubGears.state === "none") return { reason: "the hub has no gears inside" };
    if (facts.rearDerailleur.state === "unknown") return { unknown: facts.rearDerailleur };
    if (facts.hubGears.state === "unknown") return { unknown: facts.hubGears };
  }
  const movedActuation =
    pair.name === "rear"
      ? rearDerailleurActuation(facts)
      : pair.name === "front"
        ? facts.frontActuation
        : facts.hubActuation;
  return {
    controller: facts.controller,
    controllerActuation: facts.controllerActuation,
    controllerFamily: facts.controllerFamily,
    moved,
    movedActuation,
    movedFamily: facts.movedFamily,
    slots: { controller: pair.controller, moved: pair.moves },
  };
}
