import { defineKind } from "../define.ts";
import { length, word } from "../fields.ts";

/** A cable with its housing. */
export const cable = defineKind({
  name: "cable",
  noun: "a cable kit",
  description: "An inner cable with its housing, ferrules and end cap.",
  fields: {
    serves: word({ shift: "Shifting.", brake: "Braking.", dropper: "A dropper post." }, "What it works.", {
      essential: true,
      group: "Control",
    }),
    "inner-diameter": length("Diameter of the inner cable.", { group: "Fit", lowest: 0.8, highest: 2.5 }),
    "inner-length": length("Length of the inner cable.", { group: "Shape", lowest: 300, highest: 5000 }),
    "housing-diameter": length("Outside diameter of the housing.", { group: "Fit", lowest: 3, highest: 7 }),
    "housing-length": length("Length of the housing.", { group: "Shape", lowest: 100, highest: 5000 }),
    "housing-kind": word(
      {
        parallel: "Parallel wires, for indexed shifting; it splits under a brake's pull.",
        spiral: "A spiral wire, for brakes.",
        braided: "Parallel wires in a strong braid, for either.",
      },
      "What its housing is made of.",
      { group: "Fit" },
    ),
  },
});
