import { defineKind } from "../define.ts";
import { codes, length, quantityRange, word } from "../fields.ts";

/** A seat for a child. */
export const childSeat = defineKind({
  name: "child-seat",
  noun: "a child seat",
  description: "A seat in which a child rides along.",
  caution:
    "Fitted only where the frame's maker and the law allow it; saddle springs and spokes are covered from fingers and feet.",
  fields: {
    place: word({ front: "In front of the rider.", rear: "Behind the rider." }, "Where it sits.", {
      essential: true,
      group: "Fit",
    }),
    mounts: codes("accessory-mount", "Mounts that it uses.", { group: "Fit" }),
    "seat-tube-diameters": quantityRange("length", "allowed", "Diameters of tube that its block clamps.", {
      group: "Fit",
      lowest: 15,
      highest: 80,
    }),
    "child-mass": quantityRange("mass", "allowed", "Mass of child that it carries.", {
      essential: true,
      group: "Limits",
      unit: "kg",
      lowest: 5000,
      highest: 40_000,
      example: "9 to 22 kg",
    }),
    "clearance-needed": length("Height that it needs free over the rear wheel.", { group: "Clearance", highest: 500 }),
  },
});
