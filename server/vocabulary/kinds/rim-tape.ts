import { defineKind } from "../define.ts";
import { length, yesNo } from "../fields.ts";

/** Covers the spoke holes. */
export const rimTape = defineKind({
  name: "rim-tape",
  noun: "rim tape",
  description: "Covers the spoke holes inside the rim.",
  fields: {
    width: length("Width of the tape.", { essential: true, group: "Fit", lowest: 8, highest: 110 }),
    airtight: yesNo("Whether it seals a rim for a tyre without a tube.", { essential: true, group: "Fit" }),
    length: length("Length of the roll.", { group: "Shape", highest: 100_000 }),
  },
});
