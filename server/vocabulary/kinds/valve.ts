import { defineKind } from "../define.ts";
import { code, length, torque } from "../fields.ts";

/** A valve for a tyre without a tube. */
export const valve = defineKind({
  name: "valve",
  noun: "a tubeless valve",
  description: "A valve for a tyre without a tube.",
  fields: {
    "valve-kind": code("valve", "Kind of valve, with the hole that it needs.", { essential: true, group: "Fit" }),
    "valve-length": length("Length of the valve.", { essential: true, group: "Fit", lowest: 20, highest: 150 }),
    "nut-torque": torque("Torque of its nut, by hand.", { highest: 3 }),
  },
});
