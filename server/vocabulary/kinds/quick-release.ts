import { defineKind } from "../define.ts";
import { length, word, yesNo } from "../fields.ts";
import { wheelPositions } from "../words.ts";

/** A skewer. */
export const quickRelease = defineKind({
  name: "quick-release",
  noun: "a quick-release skewer",
  description: "A skewer with a cam that holds a wheel in open dropouts.",
  caution: "Closed hard, so that the lever leaves its mark in the palm, with the fork's tabs in place.",
  fields: {
    wheel: word(wheelPositions, "Wheel that it is made for.", { essential: true, group: "Fit" }),
    "greatest-span": length("Greatest width over the dropouts' outer faces that it spans.", {
      group: "Fit",
      lowest: 90,
      highest: 260,
    }),
    "steel-faces": yesNo("Whether its faces are steel and bite, as horizontal dropouts need.", { group: "Fit" }),
  },
});
