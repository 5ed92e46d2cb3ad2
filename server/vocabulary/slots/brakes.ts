import { defineSlot } from "../define.ts";
import { length, word } from "../fields.ts";
import { routings } from "../words.ts";
import { leverSettings } from "./controls.ts";

/** The front brake, from its lever to its pads. */
export const frontBrakeSlots = [
  defineSlot({
    path: "front-brake.lever",
    kinds: ["brake-lever"],
    description: "The lever of the front brake.",
    omitted: "unknown",
    settings: leverSettings,
  }),
  defineSlot({
    path: "front-brake.caliper",
    kinds: ["caliper", "rim-brake"],
    description: "What brakes the front wheel: a caliper or a rim brake; `none` where the hub holds the brake.",
    omitted: "unknown",
    settings: {
      "turned-for": length("Rotor for which a reversible flat-mount plate is turned.", {
        group: "Fit",
        lowest: 100,
        highest: 260,
        omitted: "none",
        deed: "Turn the mounting plate for a rotor of {}",
      }),
    },
  }),
  defineSlot({
    path: "front-brake.adapter",
    kinds: ["brake-adapter"],
    description: "What stands between mount and caliper.",
    omitted: "none",
  }),
  defineSlot({
    path: "front-brake.rotor",
    kinds: ["rotor"],
    description: "The front rotor; left out, there is none with a rim brake or a brake in the hub.",
    omitted: "unknown",
    noneWhen: [[{ slot: "front-brake.caliper", kind: "rim-brake" }], [{ slot: "front-brake.caliper", is: "none" }]],
  }),
  defineSlot({
    path: "front-brake.hose",
    kinds: ["hose", "cable"],
    description: "The hose, or cable and housing, of the front brake.",
    omitted: "none",
    settings: {
      "cut-length": length("Length of hose or housing once cut.", {
        group: "Set-up",
        lowest: 100,
        highest: 4000,
        deed: "Cut the hose to {}",
      }),
      entry: word(routings, "How it runs.", {
        group: "Fit",
        deed: {
          external: "Run the hose outside",
          internal: "Run the hose inside",
          "through-headset": "Run the hose through the headset",
        },
      }),
    },
  }),
  defineSlot({
    path: "front-brake.pads",
    kinds: ["brake-pads"],
    description: "The pads or blocks of the front brake, where they are not those that come with it.",
    omitted: "none",
  }),
] as const;

/** The rear brake, from its lever to its pads. */
export const rearBrakeSlots = [
  defineSlot({
    path: "rear-brake.lever",
    kinds: ["brake-lever"],
    description: "The lever of the rear brake; `none` with a coaster brake.",
    omitted: "unknown",
    settings: leverSettings,
  }),
  defineSlot({
    path: "rear-brake.caliper",
    kinds: ["caliper", "rim-brake"],
    description: "What brakes the rear wheel: a caliper or a rim brake; `none` where the hub holds the brake.",
    omitted: "unknown",
    settings: {
      "turned-for": length("Rotor for which a reversible flat-mount plate is turned.", {
        group: "Fit",
        lowest: 100,
        highest: 260,
        omitted: "none",
        deed: "Turn the mounting plate for a rotor of {}",
      }),
    },
  }),
  defineSlot({
    path: "rear-brake.adapter",
    kinds: ["brake-adapter"],
    description: "What stands between mount and caliper.",
    omitted: "none",
  }),
  defineSlot({
    path: "rear-brake.rotor",
    kinds: ["rotor"],
    description: "The rear rotor; left out, there is none with a rim brake or a brake in the hub.",
    omitted: "unknown",
    noneWhen: [[{ slot: "rear-brake.caliper", kind: "rim-brake" }], [{ slot: "rear-brake.caliper", is: "none" }]],
  }),
  defineSlot({
    path: "rear-brake.hose",
    kinds: ["hose", "cable"],
    description: "The hose, or cable and housing, of the rear brake.",
    omitted: "none",
    settings: {
      "cut-length": length("Length of hose or housing once cut.", {
        group: "Set-up",
        lowest: 100,
        highest: 4000,
        deed: "Cut the hose to {}",
      }),
      entry: word(routings, "How it runs.", {
        group: "Fit",
        deed: {
          external: "Run the hose outside",
          internal: "Run the hose inside",
          "through-headset": "Run the hose through the headset",
        },
      }),
    },
  }),
  defineSlot({
    path: "rear-brake.pads",
    kinds: ["brake-pads"],
    description: "The pads or blocks of the rear brake, where they are not those that come with it.",
    omitted: "none",
  }),
] as const;
