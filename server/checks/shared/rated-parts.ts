import type { SlotPath } from "../../vocabulary/index.ts";

const loaded = [
  "frame",
  "fork",
  "rear-shock",
  "headset",
  "drivetrain.crankset",
  "drivetrain.bottom-bracket",
  "drivetrain.pedals",
  "cockpit.stem",
  "cockpit.handlebar",
  "seat.post",
  "seat.saddle",
  "front-wheel.hub",
  "front-wheel.rim",
  "front-wheel.spokes",
  "front-wheel.tyre",
  "front-wheel.axle",
  "rear-wheel.hub",
  "rear-wheel.rim",
  "rear-wheel.spokes",
  "rear-wheel.tyre",
  "rear-wheel.axle",
] as const satisfies readonly SlotPath[];

const driving = [
  "drivetrain.rear-derailleur",
  "drivetrain.front-derailleur",
  "drivetrain.cassette",
  "drivetrain.chain",
  "drivetrain.chainring",
  "drivetrain.rear-controller",
  "front-brake.lever",
  "front-brake.caliper",
  "front-brake.rotor",
  "rear-brake.lever",
  "rear-brake.caliper",
  "rear-brake.rotor",
] as const satisfies readonly SlotPath[];

/** The places whose parts bear the rider. */
export const loadedParts = loaded.map((slot) => ({ name: slot as SlotPath, slot: slot as SlotPath }));

/** The places whose parts a maker rates for a use: those that bear the rider, drive or brake. */
export const ratedParts = [...loaded, ...driving].map((slot) => ({ name: slot as SlotPath, slot: slot as SlotPath }));
