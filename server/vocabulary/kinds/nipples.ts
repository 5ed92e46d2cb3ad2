import { defineKind } from "../define.ts";
import { code, count, length, quantity } from "../fields.ts";

/** The nuts of the spokes. */
export const nipples = defineKind({
  name: "nipples",
  noun: "nipples",
  description: "The nuts on the spokes of one wheel.",
  fields: {
    thread: code("spoke-thread", "Thread of the spoke that it takes.", { essential: true, group: "Fit" }),
    length: length("Length of the nipple.", { group: "Shape", lowest: 8, highest: 26 }),
    "body-diameter": length("Diameter of the body in the rim's hole.", { group: "Shape", lowest: 3, highest: 6 }),
    pieces: count("How many there are in the set that its mass and price are for, where it is sold by the set.", {
      group: "Identity",
      omitted: "none",
      lowest: 1,
      highest: 200,
    }),
    "mass-each": quantity("mass", "Mass of one nipple.", { group: "Identity", highest: 5 }),
  },
});
