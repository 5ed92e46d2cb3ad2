import { defineKind } from "../define.ts";
import { quantity, quantityRange } from "../fields.ts";

/** Seals a tyre without a tube. */
export const sealant = defineKind({
  name: "sealant",
  noun: "tyre sealant",
  description: "Liquid that seals a tyre from inside.",
  fields: {
    "bottle-volume": quantity("volume", "Volume of the bottle.", { group: "Shape", highest: 10_000 }),
    "renewal-interval": quantityRange("time", "tolerance", "Time after which it is renewed.", {
      group: "Limits",
      unit: "d",
      highest: 63_072_000,
    }),
  },
});
