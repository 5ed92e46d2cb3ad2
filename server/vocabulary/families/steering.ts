import { defineFamily } from "../define.ts";
import { angle, length, quantityRange, text, word } from "../fields.ts";

/** Interfaces of steering and cockpit. */

export const headsetFit = defineFamily({
  name: "headset-fit",
  noun: "a headset fit",
  description: "Bore of a head tube's end and how the bearing sits in it, by the standardised headset identification.",
  fields: {
    form: word(
      {
        external: "Cups pressed in, bearings outside the tube (EC).",
        "semi-integrated": "Cups pressed in, bearings inside the tube (ZS).",
        integrated: "Bearings dropped into a formed seat (IS).",
      },
      "Form.",
    ),
    bore: quantityRange("length", "tolerance", "Bore of the head tube.", { lowest: 25, highest: 70 }),
    "bearing-angle": angle("Angle of a formed seat.", { lowest: 0, highest: 90, omitted: "none" }),
  },
});

export const crownRace = defineFamily({
  name: "crown-race",
  noun: "a crown-race seat",
  description: "Seat of the crown race at the steerer's foot.",
  fields: {
    "seat-diameter": length("Diameter of the seat on the fork.", { lowest: 20, highest: 60 }),
  },
});

export const headsetUpper = defineFamily({
  name: "headset-upper",
  noun: "an upper headset fit",
  description: "Fit of the head tube's top and, after the stroke, diameter of the steerer, such as ZS44/28.6.",
  fields: {},
  composite: {
    separator: "/",
    halves: [
      { name: "fit", family: "headset-fit" },
      { name: "steerer-diameter", dimension: "length", optional: true },
    ],
  },
});

export const headsetLower = defineFamily({
  name: "headset-lower",
  noun: "a lower headset fit",
  description: "Fit of the head tube's bottom and, after the stroke, the crown-race seat, such as ZS56/40.",
  fields: {},
  composite: {
    separator: "/",
    halves: [
      { name: "fit", family: "headset-fit" },
      { name: "crown-race", family: "crown-race", optional: true },
    ],
  },
});

export const routingSystem = defineFamily({
  name: "routing-system",
  noun: "a routing system",
  description: "Headset, spacers, stem and bar that are made for one another to hide hoses and wires.",
  fields: {
    path: text("How hoses run through it."),
  },
});
