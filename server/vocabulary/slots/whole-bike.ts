import { defineSlot } from "../define.ts";
import { length, quantity } from "../fields.ts";

/** Slots that belong to no assembly. */
export const wholeBikeSlots = [
  defineSlot({
    path: "frame",
    kinds: ["frame"],
    description: "The frame.",
    omitted: "unknown",
  }),
  defineSlot({
    path: "fork",
    kinds: ["fork"],
    description: "The fork.",
    omitted: "unknown",
    settings: {
      "steerer-length": length("Length of the steerer after cutting, from the crown-race seat.", {
        group: "Set-up",
        lowest: 50,
        highest: 500,
        deed: "Cut the steerer to {}",
        workedOutAs: "steering.steerer-cut",
      }),
      "travel-set": length("Travel as set, where it can be changed.", {
        group: "Suspension",
        lowest: 10,
        highest: 250,
        omitted: "none",
        deed: "Set the fork to {} of travel",
      }),
      "air-pressure": quantity("pressure", "Pressure of the air spring.", {
        group: "Set-up",
        highest: 40,
        deed: "Set the air spring to {}",
      }),
      sag: quantity("ratio", "Sag, as a share of travel.", {
        group: "Set-up",
        lowest: 1,
        highest: 60,
        deed: "Set the sag to {}",
      }),
    },
  }),
  defineSlot({
    path: "rear-shock",
    kinds: ["rear-shock"],
    description: "The rear shock; a rigid frame, which states `rear-travel: none`, has none.",
    omitted: "unknown",
    noneWhen: [[{ slot: "frame", fact: "rear-travel", is: "none" }]],
    settings: {
      "air-pressure": quantity("pressure", "Pressure of the air spring.", {
        group: "Set-up",
        highest: 40,
        deed: "Set the air spring to {}",
      }),
      "spring-fitted": quantity("stiffness", "Rate of the coil that is fitted.", {
        group: "Set-up",
        highest: 250,
        omitted: "none",
        deed: "Fit a coil of {}",
      }),
      sag: quantity("ratio", "Sag, as a share of stroke.", {
        group: "Set-up",
        lowest: 1,
        highest: 60,
        deed: "Set the sag to {}",
      }),
    },
  }),
  defineSlot({
    path: "headset",
    kinds: ["headset"],
    description: "The headset.",
    omitted: "unknown",
    settings: {
      "locknut-spacers": length(
        "Height of the washers, spacers and cable hanger between the adjusting race and the locknut of a threaded headset, beyond those of its own stack.",
        { group: "Set-up", highest: 60, omitted: "none", example: "2 mm", deed: "Put {} of spacers under the locknut" },
      ),
    },
  }),
] as const;
