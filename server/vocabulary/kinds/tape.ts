import { defineKind } from "../define.ts";
import { length, yesNo } from "../fields.ts";

/** Tape for a drop bar. */
export const tape = defineKind({
  name: "tape",
  noun: "bar tape",
  description: "Tape that is wound round a drop bar, with its end plugs.",
  fields: {
    length: length("Length of each roll.", { group: "Shape", lowest: 500, highest: 5000 }),
    width: length("Width of the tape.", { group: "Shape", lowest: 15, highest: 60 }),
    thickness: length("Thickness of the tape.", { group: "Shape", lowest: 0.5, highest: 10 }),
    "plugs-supplied": yesNo("Whether end plugs come with it.", { group: "Fit" }),
  },
});
