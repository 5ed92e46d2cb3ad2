import { defineKind } from "../define.ts";
import { codes, quantity, torque, word } from "../fields.ts";
import { wheelPositions } from "../words.ts";

/** A luggage rack. */
export const rack = defineKind({
  name: "rack",
  noun: "a luggage rack",
  description: "A rack for luggage over or beside one wheel.",
  fields: {
    wheel: word(wheelPositions, "Wheel that it stands over.", { essential: true, group: "Fit" }),
    mounts: codes("accessory-mount", "Mounts that it uses.", { essential: true, group: "Fit" }),
    "load-limit": quantity("mass", "Greatest load.", {
      essential: true,
      group: "Limits",
      unit: "kg",
      highest: 200_000,
    }),
    "mounting-torque": torque("Torque of its bolts.", { highest: 20 }),
  },
});
