import { defineKind } from "../define.ts";
import { code, count, length, quantities, quantity, word } from "../fields.ts";

/** The spokes of one wheel. */
export const spokes = defineKind({
  name: "spokes",
  noun: "spokes",
  description: "The spokes of one wheel; their lengths are settings of the wheel, not facts of the spoke.",
  fields: {
    "spoke-head": word({ elbow: "With an elbow.", straight: "Straight-pull." }, "How its head sits in the flange.", {
      essential: true,
      group: "Shape",
    }),
    "end-diameter": length("Diameter at the elbow or head; at the thread it is what the thread is named by.", {
      essential: true,
      group: "Shape",
      lowest: 1,
      highest: 3.5,
    }),
    "middle-diameter": length("Diameter in the middle, or of a round spoke of the same cross-section.", {
      essential: true,
      group: "Shape",
      lowest: 0.8,
      highest: 3.5,
    }),
    thread: code("spoke-thread", "Thread for the nipple.", { group: "Fit" }),
    "lengths-stocked": quantities("length", "Lengths that can be had.", { group: "Shape", omitted: "none" }),
    pieces: count("How many there are in the set that its mass and price are for, where it is sold by the set.", {
      group: "Identity",
      omitted: "none",
      lowest: 1,
      highest: 200,
    }),
    "mass-each": quantity("mass", "Mass of one spoke of 264 mm.", { group: "Identity", lowest: 1, highest: 20 }),
  },
});
