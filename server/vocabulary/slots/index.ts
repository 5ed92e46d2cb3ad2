import { frontBrakeSlots, rearBrakeSlots } from "./brakes.ts";
import { carryingSlots } from "./carrying.ts";
import { cockpitSlots } from "./cockpit.ts";
import { drivetrainSlots } from "./drivetrain.ts";
import { lightingSlots } from "./lighting.ts";
import { seatSlots } from "./seat.ts";
import { frontWheelSlots, rearWheelSlots } from "./wheels.ts";
import { wholeBikeSlots } from "./whole-bike.ts";

/** Every slot of a build, in the order in which a build is usually written. */
export const slotTable = [
  ...wholeBikeSlots,
  ...drivetrainSlots,
  ...frontBrakeSlots,
  ...rearBrakeSlots,
  ...cockpitSlots,
  ...seatSlots,
  ...frontWheelSlots,
  ...rearWheelSlots,
  ...lightingSlots,
  ...carryingSlots,
] as const;

/** The names of the assemblies with what belongs to each. */
export const assemblyTable = {
  drivetrain: "Everything that turns the rear wheel and changes its gear.",
  "front-brake": "The front brake, from its lever to its pads.",
  "rear-brake": "The rear brake, from its lever to its pads.",
  cockpit: "What the rider steers with.",
  seat: "What the rider sits on.",
  "front-wheel": "The front wheel.",
  "rear-wheel": "The rear wheel.",
  lighting: "Lamps, and what else the law of the road may ask for.",
  carrying: "Mudguards, racks, stands and seats.",
} as const;

/**
 * The assembly whose keys are the workshop's own: each may hold a part of any kind, under any name in kebab-case.
 */
export const extrasAssembly = "extras";
