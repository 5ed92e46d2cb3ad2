import { eachPartOnce } from "../../calculations/shared/every-part.ts";
import { missingOf } from "../../calculations/shared/maybe.ts";
import type { Installed } from "../../model/assembly.ts";
import { whichPart } from "../../model/facts.ts";
import { buildField, type Known, type Maybe, type Missing, type OfSlot, optional, setting } from "../../model/need.ts";
import { omittedSlot } from "../../model/omission.ts";
import { slotByPath } from "../../vocabulary/index.ts";
import { askedSlots } from "./open-slots.ts";

/** What is known of a mass, in grams: at least so much, and exactly so much where nothing is missing. */
export interface MassBound {
  readonly least: number;
  readonly missing: readonly Missing[];
  /** What to show beside a finding about it. */
  readonly facts: readonly Known[];
}

/** The bicycle with all its parts; of the facts only those of the two heaviest ones. */
export function bikeMass(masses: readonly OfSlot<number>[], slots: Known<ReadonlyMap<string, Installed>>): MassBound {
  const rows = eachPartOnce(masses);
  return {
    least: rows.reduce((sum, { fact }) => sum + massOf(fact), 0),
    missing: [...rows.flatMap(({ fact }) => (fact.state === "unknown" ? fact.missing : [])), ...emptyPlaces(slots)],
    facts: rows
      .flatMap(({ fact }) => knownOf(fact))
      .sort((a, b) => b.value - a.value)
      .slice(0, 2),
  };
}

/** Places for which nobody chose a part yet: it weighs something all the same. */
function emptyPlaces({ value: slots, place }: Known<ReadonlyMap<string, Installed>>): readonly Missing[] {
  return askedSlots.flatMap((path) => {
    const row = slotByPath(path);
    const open = row !== undefined && !slots.has(path) && omittedSlot(row, slots) === "unknown";
    return open ? [{ path, what: whichPart(path), place }] : [];
  });
}

/** What {@link carriedMass} reads. */
export function carriedNeeds() {
  return {
    kit: optional(buildField("rider.kit-mass")),
    onFront: optional(setting("carrying.front-rack", "load")),
    onRear: optional(setting("carrying.rear-rack", "load")),
  };
}

export interface CarriedFacts {
  readonly kit: Maybe<number>;
  readonly onFront: Maybe<number>;
  readonly onRear: Maybe<number>;
}

/** What is carried. What the racks carry is part of the kit; where they carry more than was said of that, they do. */
export function carriedMass({ kit, onFront, onRear }: CarriedFacts): MassBound {
  const onRacks = massOf(onFront) + massOf(onRear);
  return {
    least: Math.max(massOf(kit), onRacks),
    missing: missingOf(kit),
    facts: onRacks > massOf(kit) ? [...knownOf(onFront), ...knownOf(onRear)] : knownOf(kit),
  };
}

export function massOf(fact: Maybe<number>): number {
  return fact.state === "known" ? fact.value : 0;
}

export function knownOf<Value>(fact: Maybe<Value>): readonly Known<Value>[] {
  return fact.state === "known" ? [fact] : [];
}
