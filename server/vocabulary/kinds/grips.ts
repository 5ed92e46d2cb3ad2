import { defineKind } from "../define.ts";
import { length, torque, word, yesNo } from "../fields.ts";

/** A pair of grips. */
export const grips = defineKind({
  name: "grips",
  noun: "a pair of grips",
  description: "A pair of grips for the ends of a bar.",
  fields: {
    "inside-diameter": length("Diameter of the bar that it fits.", {
      essential: true,
      group: "Fit",
      lowest: 18,
      highest: 32,
      example: "22.2 mm",
    }),
    length: length("Length of bar that each takes up, its clamps included.", {
      essential: true,
      group: "Fit",
      lowest: 50,
      highest: 200,
    }),
    held: word(
      { clamp: "A clamp with a bolt.", "slip-on": "Friction alone.", glue: "Glue or tape." },
      "What keeps it from turning.",
      { group: "Fit" },
    ),
    "closes-end": yesNo("Whether its outer end is closed, or a plug for the bar's end comes with it.", {
      group: "Fit",
    }),
    "clamp-torque": torque("Torque of its clamp.", { highest: 8, example: "2 to 3 N·m" }),
  },
});
