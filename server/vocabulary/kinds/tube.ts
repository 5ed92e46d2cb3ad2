import { defineKind } from "../define.ts";
import { code, codes, length, quantityRange } from "../fields.ts";

/** An inner tube. */
export const tube = defineKind({
  name: "tube",
  noun: "an inner tube",
  description: "An inner tube with its valve.",
  fields: {
    "bead-seats": codes("bead-seat", "Bead seats of the tyres that it fits.", { essential: true, group: "Fit" }),
    "tyre-widths": quantityRange("length", "allowed", "Widths of tyre that it fits.", {
      essential: true,
      group: "Fit",
      lowest: 15,
      highest: 140,
      example: "47 to 62 mm",
    }),
    "valve-kind": code("valve", "Kind of valve, with the hole that it needs.", { essential: true, group: "Fit" }),
    "valve-length": length("Length of the valve.", { essential: true, group: "Fit", lowest: 20, highest: 120 }),
  },
});
