import { defineKind } from "../define.ts";
import { codes, length, torque, word, yesNo } from "../fields.ts";
import { wheelPositions } from "../words.ts";

/** A mudguard. */
export const mudguard = defineKind({
  name: "mudguard",
  noun: "a mudguard",
  description: "A guard over one wheel.",
  fields: {
    wheel: word(wheelPositions, "Wheel that it covers.", { essential: true, group: "Fit" }),
    mounts: codes("accessory-mount", "Mounts that it uses.", { group: "Fit" }),
    "widest-tyre": length("Widest tyre, as measured, that it clears.", {
      essential: true,
      group: "Clearance",
      highest: 150,
    }),
    width: length("Width of the guard.", { group: "Clearance", lowest: 20, highest: 150 }),
    "safety-release": yesNo("Whether its stays let go when something jams between it and the tyre.", {
      group: "Limits",
    }),
    "mounting-torque": torque("Torque of its bolts.", { highest: 12 }),
  },
});
