import { defineKind } from "../define.ts";
import { code, length, toothCount, torque } from "../fields.ts";

/** A toothed ring for a belt. */
export const beltRing = defineKind({
  name: "belt-ring",
  noun: "a belt ring",
  description: "A toothed ring that fits the crank and drives a belt.",
  fields: {
    teeth: toothCount("Teeth of the ring.", { essential: true, group: "Gearing", example: "55 t" }),
    "ring-mount": code("ring-mount", "How it is fixed to the crank.", { essential: true, group: "Fit" }),
    "drive-family": code("drive-family", "Pitch and tooth profile that belt, ring and sprocket share.", {
      essential: true,
      group: "Fit",
    }),
    "ring-offset": length("From its mounting face to the middle of its teeth, positive outward to the drive side.", {
      group: "Geometry",
      lowest: -12,
      highest: 12,
    }),
    "ring-chainline": length("Belt line it gives on the crank it is made for, positive to the drive side.", {
      group: "Geometry",
      lowest: 30,
      highest: 80,
    }),
    "ring-bolt-torque": torque("Torque of the bolts or lock-ring that hold it.", { highest: 60 }),
  },
});
