import type { Need } from "../../model/need.ts";
import type { FactField } from "../../vocabulary/index.ts";

/** What a fork calls the facts by which it holds a wheel and its brake. */
const ofFork = {
  axle: "axle",
  axleLength: "axle-length",
  axleThreadPitch: "axle-thread-pitch",
  axleSeat: "axle-seat",
  beadSeats: "bead-seats",
  widestTyre: "widest-tyre",
  tallestTyre: "tallest-tyre",
  brakeMount: "brake-mount",
  nativeRotor: "native-rotor",
  largestRotor: "largest-rotor",
  leastRotor: "least-rotor",
  cableStop: "cable-stop",
  brakeReach: "brake-reach",
  brakeRouting: "brake-routing",
  forbids: "forbids",
} as const satisfies Record<string, FactField<"fork">>;

type HolderFact = keyof typeof ofFork;

/** What a frame calls the same. */
const ofFrame = {
  axle: "rear-axle",
  axleLength: "rear-axle-length",
  axleThreadPitch: "rear-axle-thread-pitch",
  axleSeat: "rear-axle-seat",
  beadSeats: "rear-bead-seats",
  widestTyre: "widest-tyre",
  tallestTyre: "tallest-tyre",
  brakeMount: "rear-brake-mount",
  nativeRotor: "rear-native-rotor",
  largestRotor: "rear-largest-rotor",
  leastRotor: "rear-least-rotor",
  cableStop: "rear-cable-stop",
  brakeReach: "rear-brake-reach",
  brakeRouting: "brake-routing",
  forbids: "forbids",
} as const satisfies Record<HolderFact, FactField<"frame">>;

/** The two places of a wheel: the assemblies that belong to it, and the part that holds it there. */
export const wheelPlaces = [
  { name: "front", wheel: "front-wheel", brake: "front-brake", holder: "fork", facts: ofFork },
  { name: "rear", wheel: "rear-wheel", brake: "rear-brake", holder: "frame", facts: ofFrame },
] as const;

export type WheelPlace = (typeof wheelPlaces)[number];
type Brake = WheelPlace["brake"];

/**
 * The path of a slot of a brake. Both brakes have the same slots of the same kinds, so the type names the front one's.
 */
export function ofBrake<const Name extends string>(brake: Brake, name: Name): `front-brake.${Name}` {
  return `${brake}.${name}` as `front-brake.${Name}`;
}

/** A fact of what holds the wheel, under the name it has there; its type is vouched for by the caller. */
export function holderFact<Value>(place: WheelPlace, name: HolderFact): Need<Value, false> {
  return { kind: "fact", slot: place.holder, field: place.facts[name], optional: false };
}

/** The same, its absence left to the check to judge. */
export function anyHolderFact<Value>(place: WheelPlace, name: HolderFact): Need<Value, true> {
  return { kind: "fact", slot: place.holder, field: place.facts[name], optional: true };
}
