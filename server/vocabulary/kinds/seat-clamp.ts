import { defineKind } from "../define.ts";
import { length, torque, yesNo } from "../fields.ts";

/** Holds the post. */
export const seatClamp = defineKind({
  name: "seat-clamp",
  noun: "a seat clamp",
  description: "Closes the seat tube on the post.",
  fields: {
    "inside-diameter": length("Outside diameter of seat tube that it fits.", {
      essential: true,
      group: "Fit",
      lowest: 24,
      highest: 50,
    }),
    "quick-release": yesNo("Whether it closes with a cam lever.", { group: "Fit" }),
    "clamp-torque": torque("Torque of its bolt.", { essential: true, highest: 20, example: "4 to 6 N·m" }),
  },
});
