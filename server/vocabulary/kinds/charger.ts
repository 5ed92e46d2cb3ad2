import { defineKind } from "../define.ts";
import { codes, quantity } from "../fields.ts";

/** A charger. */
export const charger = defineKind({
  name: "charger",
  noun: "a charger",
  description: "A charger for the batteries of a build.",
  fields: {
    "battery-types": codes("battery-type", "Types of battery that it charges.", {
      essential: true,
      group: "Electronics",
    }),
    current: quantity("current", "Charging current.", { group: "Electronics", highest: 50 }),
  },
});
