import { defineKind } from "../define.ts";
import { code, quantity, quantityRange, text, word } from "../fields.ts";
import { wheelPositions } from "../words.ts";

/** A lamp. */
export const lamp = defineKind({
  name: "lamp",
  noun: "a lamp",
  description: "A front or rear lamp.",
  fields: {
    place: word(wheelPositions, "End of the bicycle that it lights: front is white, rear is red.", {
      essential: true,
      group: "Fit",
    }),
    power: word(
      { dynamo: "A dynamo.", battery: "A battery.", shared: "The battery of another part." },
      "What feeds it.",
      {
        essential: true,
        group: "Electronics",
      },
    ),
    voltage: quantityRange("voltage", "allowed", "Voltages that it bears.", { group: "Electronics", highest: 100 }),
    current: quantity("current", "Current that it draws.", { group: "Electronics", highest: 10 }),
    connector: code("connector", "Connector of its lead.", { group: "Electronics" }),
    illuminance: quantity("illuminance", "Illuminance at ten metres, as its maker measures it.", {
      group: "Limits",
      highest: 1000,
    }),
    approval: text("Approval mark, where the law of the road asks for one.", { group: "Limits", omitted: "none" }),
  },
});
