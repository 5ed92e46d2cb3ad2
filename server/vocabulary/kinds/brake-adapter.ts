import { defineKind } from "../define.ts";
import { code, length, torque, word } from "../fields.ts";
import { wheelPositions } from "../words.ts";

/** Carries a caliper for a larger rotor or another mount. */
export const brakeAdapter = defineKind({
  name: "brake-adapter",
  noun: "a brake adapter",
  description: "Carries a caliper on another mount, or for a larger rotor.",
  fields: {
    "sits-on": code("brake-mount", "Mount that it is fixed to.", { essential: true, group: "Brakes" }),
    offers: code("brake-mount", "Mount that it offers to the caliper.", { essential: true, group: "Brakes" }),
    "rotor-change": length("By how much it enlarges the rotor that the mount takes; zero for a change of mount only.", {
      essential: true,
      group: "Brakes",
      lowest: 0,
      highest: 120,
      example: "20 mm",
    }),
    wheel: word(wheelPositions, "Wheel that it is made for, where that matters.", { group: "Brakes", omitted: "none" }),
    "mounting-torque": torque("Torque of its own bolts.", { highest: 20 }),
    "caliper-torque": torque("Torque of the caliper's bolts in it.", { highest: 20 }),
  },
});
