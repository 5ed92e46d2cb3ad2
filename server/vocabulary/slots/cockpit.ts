import { defineSlot } from "../define.ts";
import { angle, length, word, yesNo } from "../fields.ts";
import { threadTreatments, treatmentDeeds } from "../words.ts";
import { controlSettings } from "./controls.ts";

/** What the rider steers with. */
export const cockpitSlots = [
  defineSlot({
    path: "cockpit.stem",
    kinds: ["stem"],
    description: "The stem.",
    omitted: "unknown",
    settings: {
      "spacers-below": length("Height of the spacers under the stem.", {
        essential: true,
        group: "Set-up",
        highest: 150,
        example: "15 mm",
        deed: "Put {} of spacers under the stem",
      }),
      "spacers-above": length("Height of the spacers over the stem.", {
        group: "Set-up",
        highest: 80,
        deed: "Put {} of spacers over the stem",
      }),
      "steerer-clamp-treatment": word(
        threadTreatments,
        "What goes between stem and steerer; left out, what their makers say.",
        { group: "Assembly", omitted: "none", deed: treatmentDeeds },
      ),
      flipped: yesNo("Whether it is turned upside down, so that its angle points the other way.", {
        group: "Set-up",
        omitted: "none",
        deed: { yes: "Turn the stem upside down", no: "Turn the stem the right way up" },
      }),
      "quill-insertion": length("Depth of a quill in the steerer.", {
        group: "Set-up",
        highest: 200,
        deed: "Set the quill {} deep",
      }),
      "cap-gap": length("From the steerer's top down from the top of the stem or top spacer.", {
        group: "Set-up",
        highest: 20,
        deed: "Let the steerer end {} below the top",
      }),
    },
  }),
  defineSlot({
    path: "cockpit.spacers",
    kinds: ["steerer-spacers"],
    description: "The spacers themselves, where the workshop keeps them as a part.",
    omitted: "none",
  }),
  defineSlot({
    path: "cockpit.steerer-plug",
    kinds: ["steerer-plug"],
    description: "Star nut or plug in the steerer, where it does not come with headset or fork (`plug-supplied`).",
    omitted: "none",
    settings: {
      depth: length("From the steerer's top down to its upper end.", {
        group: "Set-up",
        highest: 120,
        deed: "Set the plug {} below the top of the steerer",
      }),
    },
  }),
  defineSlot({
    path: "cockpit.handlebar",
    kinds: ["handlebar"],
    description: "The handlebar.",
    omitted: "unknown",
    settings: {
      "cut-width": length("Overall width once cut; left out, the bar stays as it is.", {
        group: "Set-up",
        lowest: 300,
        highest: 1000,
        omitted: "none",
        deed: "Cut the bar to {}",
      }),
      "stem-clamp-treatment": word(
        threadTreatments,
        "What goes between bar and stem; left out, what their makers say.",
        { group: "Assembly", omitted: "none", deed: treatmentDeeds },
      ),
      "control-clamp-treatment": word(
        threadTreatments,
        "What goes between the bar and the clamps of controls; left out, what their makers say.",
        { group: "Assembly", omitted: "none", deed: treatmentDeeds },
      ),
      rotation: angle("Turn of the bar from the position that its maker intends, positive up.", {
        group: "Set-up",
        lowest: -45,
        highest: 45,
        omitted: "none",
      }),
    },
  }),
  defineSlot({
    path: "cockpit.grips",
    kinds: ["grips"],
    description: "The grips; left out, there are none on a taped bar.",
    omitted: "unknown",
    noneWhen: [[{ slot: "cockpit.tape", is: "present" }]],
    settings: {
      "cut-length": length("Length of each grip once cut.", {
        group: "Set-up",
        lowest: 50,
        highest: 200,
        omitted: "none",
        deed: "Cut the grips to {}",
      }),
    },
  }),
  defineSlot({
    path: "cockpit.tape",
    kinds: ["tape"],
    description: "The bar tape.",
    omitted: "none",
  }),
  defineSlot({
    path: "cockpit.bar-end-plugs",
    kinds: ["bar-end-plugs"],
    description: "Plugs in the bar's ends, where they do not come with grips or tape.",
    omitted: "none",
  }),
  defineSlot({
    path: "cockpit.remote",
    kinds: ["remote"],
    description: "The remote of fork or shock.",
    omitted: "none",
    settings: controlSettings,
  }),
] as const;
