import { defineKind } from "../define.ts";
import { code, count, length, teeth, torque, yesNo } from "../fields.ts";

/** Several cogs on one freehub body. */
export const cassette = defineKind({
  name: "cassette",
  noun: "a cassette",
  description: "A cluster of cogs that slides onto a freehub body and is held by a lock-ring.",
  fields: {
    speeds: count("Number of cogs.", { lowest: 1, highest: 14, essential: true, group: "Gearing" }),
    cogs: teeth("Teeth of every cog, from the smallest to the largest.", {
      essential: true,
      group: "Gearing",
      example: "11-13-15-17-19-21-24-28 t",
    }),
    freehub: code("freehub-body", "Freehub body it slides onto.", { essential: true, group: "Fit" }),
    "drive-family": code("drive-family", "Roller and tooth family that chain, rings and cogs share.", {
      group: "Fit",
      essential: true,
    }),
    "cog-pitch": length("Distance between the middles of neighbouring cogs.", {
      group: "Fit",
      lowest: 3,
      highest: 8,
      example: "3.65 mm",
    }),
    "stack-width": length("From the outer face of the smallest cog to the inner face of the largest.", {
      group: "Fit",
      lowest: 1,
      highest: 60,
    }),
    "body-spacer": length(
      "Thickness of the spacer it needs behind it on the very freehub body that it names; left out, it needs none there.",
      { group: "Fit", lowest: 0.2, highest: 15, example: "1 mm", omitted: "none" },
    ),
    "single-cogs": yesNo("Whether single steel cogs bear on the body's splines, which marks a soft body.", {
      group: "Fit",
    }),
    "lockring-torque": torque("Torque of the lock-ring.", { lowest: 5, highest: 80, example: "40 N·m" }),
  },
});
