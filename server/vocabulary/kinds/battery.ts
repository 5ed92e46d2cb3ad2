import { defineKind } from "../define.ts";
import { code, codes, quantity } from "../fields.ts";

/** A battery for shifting or lighting. */
export const battery = defineKind({
  name: "battery",
  noun: "a battery",
  description: "A battery for electronic shifting, a dropper or lamps.",
  caution: "A damaged or wet lithium battery is not charged, and none is charged unattended.",
  fields: {
    "battery-type": code("battery-type", "Type, which the part that it feeds has to take.", {
      essential: true,
      group: "Electronics",
    }),
    "serves-families": codes("shift-family", "Families of electronic parts that it feeds.", { group: "Control" }),
    voltage: quantity("voltage", "Nominal voltage.", { group: "Electronics", highest: 100 }),
    charge: quantity("charge", "Charge it holds.", { group: "Electronics", highest: 100 }),
    energy: quantity("energy", "Energy it holds.", { group: "Electronics", highest: 5000 }),
    connector: code("connector", "Connector of its lead.", { group: "Electronics", omitted: "none" }),
  },
});
