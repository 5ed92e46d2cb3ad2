import { defineKind } from "../define.ts";
import { code, length } from "../fields.ts";

/** Rings on the steerer. */
export const steererSpacers = defineKind({
  name: "steerer-spacers",
  noun: "steerer spacers",
  description: "Rings on the steerer under and over the stem.",
  fields: {
    "inside-diameter": length("Diameter of steerer that they fit.", {
      essential: true,
      group: "Fit",
      lowest: 20,
      highest: 45,
    }),
    "total-height": length("Height of all of them together.", { group: "Shape", highest: 200 }),
    "routing-system": code("routing-system", "System of bar, stem, spacers and headset for hoses inside.", {
      group: "Fit",
      omitted: "none",
    }),
  },
});
