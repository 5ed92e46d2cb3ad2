import { defineKind } from "../define.ts";
import { code, count, length, numberRange, quantityRange } from "../fields.ts";

/** A toothed belt. */
export const belt = defineKind({
  name: "belt",
  noun: "a belt",
  description: "A toothed drive belt in one closed loop, which needs a frame that opens.",
  caution: "Never crimped, twisted, turned inside out, rolled or levered on: a belt damaged that way fails later.",
  fields: {
    speeds: count("Number of cogs it is made for, which is one.", { lowest: 1, highest: 1, group: "Gearing" }),
    "drive-family": code("drive-family", "Pitch and tooth profile that belt, ring and sprocket share.", {
      essential: true,
      group: "Fit",
    }),
    teeth: count("Teeth round the whole belt.", { essential: true, group: "Fit", lowest: 40, highest: 250, unit: "t" }),
    pitch: length("From the middle of one tooth to the next.", { group: "Fit", lowest: 4, highest: 16 }),
    width: length("Width of the belt.", { group: "Fit", lowest: 4, highest: 30 }),
    "tension-frequency": numberRange("adjustable", "Natural frequency of the free run at right tension, in hertz.", {
      group: "Set-up",
      lowest: 5,
      highest: 150,
      example: "45 to 60",
    }),
    "tension-force": quantityRange(
      "force",
      "adjustable",
      "Force that presses the middle of the free run down by the maker's distance at right tension.",
      { group: "Set-up", lowest: 1, highest: 200 },
    ),
    "tension-deflection": length("Distance by which that force presses the free run down.", {
      group: "Set-up",
      lowest: 1,
      highest: 50,
    }),
    "line-tolerance": length("Greatest difference between the lines of ring and sprocket.", {
      group: "Limits",
      highest: 10,
    }),
    "smallest-sprocket": count("Fewest teeth of a sprocket it may run round.", {
      group: "Limits",
      unit: "t",
      lowest: 10,
      highest: 60,
    }),
  },
});
