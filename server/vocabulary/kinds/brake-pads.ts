import { defineKind } from "../define.ts";
import { code, length, word } from "../fields.ts";
import { padCompounds } from "../words.ts";

/** A pair of pads for a disc brake, or blocks for a rim brake. */
export const brakePads = defineKind({
  name: "brake-pads",
  noun: "a pair of brake pads",
  description: "A pair of pads for a caliper, or of blocks for a rim brake.",
  fields: {
    "pad-shape": code("pad-shape", "Shape, which is that of the caliper.", { essential: true, group: "Brakes" }),
    compound: word(padCompounds, "Friction material.", { essential: true, group: "Brakes" }),
    "least-thickness": length("Thickness of pad and backing together at which it is replaced.", {
      group: "Limits",
      highest: 10,
    }),
  },
});
