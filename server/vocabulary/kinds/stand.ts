import { defineKind } from "../define.ts";
import { code, quantity, torque } from "../fields.ts";

/** A stand. */
export const stand = defineKind({
  name: "stand",
  noun: "a stand",
  description: "A kick-stand or centre stand.",
  fields: {
    mount: code("accessory-mount", "Mount that it uses.", { essential: true, group: "Fit" }),
    "load-limit": quantity("mass", "Greatest mass of bicycle and load that it holds.", {
      group: "Limits",
      unit: "kg",
      highest: 400_000,
    }),
    "mounting-torque": torque("Torque of its bolts.", { highest: 70 }),
  },
});
