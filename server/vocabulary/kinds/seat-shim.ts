import { defineKind } from "../define.ts";
import { length } from "../fields.ts";

/** Fits a thin post in a wide tube. */
export const seatShim = defineKind({
  name: "seat-shim",
  noun: "a seatpost shim",
  description: "A sleeve that fits a thinner post in a seat tube; it adapts from small to large only.",
  fields: {
    "inside-diameter": length("Diameter of post that it takes.", {
      essential: true,
      group: "Fit",
      lowest: 20,
      highest: 40,
    }),
    "outside-diameter": length("Bore of seat tube that it fits.", {
      essential: true,
      group: "Fit",
      lowest: 20,
      highest: 45,
    }),
    length: length("Length, which has to reach as deep as the post must.", {
      essential: true,
      group: "Fit",
      lowest: 30,
      highest: 300,
    }),
  },
});
