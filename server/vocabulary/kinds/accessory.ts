import { defineKind } from "../define.ts";
import { codes, quantity, torque } from "../fields.ts";

/** Anything else. */
export const accessory = defineKind({
  name: "accessory",
  noun: "an accessory",
  description: "Anything else that is fixed to a bicycle: a bottle cage, a bag, a computer, a bar end.",
  fields: {
    mounts: codes("accessory-mount", "Mounts that it uses.", { group: "Fit", omitted: "none" }),
    "load-limit": quantity("mass", "Greatest load that it carries.", {
      group: "Limits",
      unit: "kg",
      highest: 100_000,
      omitted: "none",
    }),
    "mounting-torque": torque("Torque of its bolts.", { highest: 20 }),
  },
});
