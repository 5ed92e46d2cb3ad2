import { defineKind } from "../define.ts";
import { code, count, length, toothCount, torque, word } from "../fields.ts";

/** A toothed ring for a chain. */
export const chainring = defineKind({
  name: "chainring",
  noun: "a chainring",
  description: "A toothed ring that fits the crank and drives the chain.",
  fields: {
    teeth: toothCount("Teeth of the ring.", { essential: true, group: "Gearing", example: "32 t" }),
    "ring-mount": code("ring-mount", "How it is fixed to the crank.", { essential: true, group: "Fit" }),
    "drive-family": code("drive-family", "Roller and tooth family that chain, rings and cogs share.", {
      essential: true,
      group: "Fit",
    }),
    speeds: count("Number of cogs of the drivetrains it is made for.", { lowest: 1, highest: 14, group: "Gearing" }),
    "ring-profile": word(
      {
        even: "All teeth alike, for a chain that a derailleur or guide keeps on.",
        alternating: "Wide and narrow teeth in turn, which hold the chain on a single ring.",
        ramped: "Ramps and pins that lift the chain from one ring to the next.",
      },
      "Shape of its teeth.",
      { group: "Fit" },
    ),
    "ring-offset": length("From its mounting face to the middle of its teeth, positive outward to the drive side.", {
      group: "Geometry",
      lowest: -12,
      highest: 12,
      example: "-3 mm",
    }),
    "ring-chainline": length("Chainline it gives on the crank it is made for, positive to the drive side.", {
      group: "Geometry",
      lowest: 30,
      highest: 80,
    }),
    "ring-place": word(
      {
        single: "The only ring.",
        outer: "The outer ring of several.",
        middle: "The middle ring of three.",
        inner: "The inner ring of several.",
      },
      "Where it is made to stand.",
      { group: "Fit" },
    ),
    "paired-ring": count("Teeth of the other ring that its shifting aids are made for.", {
      group: "Fit",
      unit: "t",
      lowest: 16,
      highest: 70,
      omitted: "none",
    }),
    "ring-bolt-torque": torque("Torque of the bolts or lock-ring that hold it.", { highest: 60 }),
  },
});
