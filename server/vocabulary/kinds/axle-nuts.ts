import { defineKind } from "../define.ts";
import { length, text, torque } from "../fields.ts";

/** Nuts or bolts at a solid axle. */
export const axleNuts = defineKind({
  name: "axle-nuts",
  noun: "a pair of axle nuts",
  description: "Nuts or bolts that hold an axle in open dropouts, with their washers.",
  fields: {
    thread: text("Thread of the axle that they go on.", { group: "Fit", example: '"M10 x 1"' }),
    spanner: length("Size of spanner.", { group: "Assembly", lowest: 4, highest: 32 }),
    "axle-torque": torque("Torque at which they are tightened.", { essential: true, highest: 60 }),
  },
});
