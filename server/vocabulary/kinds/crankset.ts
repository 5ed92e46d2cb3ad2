import { defineKind } from "../define.ts";
import { code, length, quantityRange, teeth, toothCount, torque, word } from "../fields.ts";

/** Two cranks, with or without rings. */
export const crankset = defineKind({
  name: "crankset",
  noun: "a crankset",
  description: "Both cranks with their spindle or its seat, and the rings when they are sold together.",
  caution: "Pinch bolts go in turns with the safety plate home; a loose crank ruins its seat and can throw the rider.",
  fields: {
    "crank-length": length("From the middle of the spindle to the middle of the pedal axle.", {
      essential: true,
      group: "Geometry",
      lowest: 80,
      highest: 220,
      example: "170 mm",
    }),
    spindle: code("spindle", "Spindle it is built on or fits.", { essential: true, group: "Fit" }),
    "spindle-length": length("Length of its spindle, or of the spindle that it needs.", {
      group: "Fit",
      lowest: 80,
      highest: 240,
    }),
    "shell-widths": quantityRange("length", "allowed", "Widths of bottom-bracket shell that its spindle spans.", {
      group: "Fit",
      lowest: 50,
      highest: 150,
      example: "68 to 73 mm",
    }),
    rings: teeth("Teeth of the rings it is sold with, the largest first; `none` when it is sold without.", {
      group: "Gearing",
      example: "48-31 t",
    }),
    "drive-family": code("drive-family", "Roller and tooth family of the rings it is sold with.", { group: "Fit" }),
    "ring-profile": word(
      {
        even: "All teeth alike, for a chain that a derailleur or guide keeps on.",
        alternating: "Wide and narrow teeth in turn, which hold the chain on a single ring.",
        ramped: "Ramps and pins that lift the chain from one ring to the next.",
      },
      "Teeth of the rings it is sold with.",
      { group: "Fit" },
    ),
    "ring-mount": code("ring-mount", "How a ring is fixed to it.", { essential: true, group: "Fit" }),
    "inner-ring-mount": code("ring-mount", "How its inner ring is fixed, where that differs.", {
      group: "Fit",
      omitted: "none",
    }),
    chainline: length("From the centre plane to the ring, midway between two, or the middle one of three.", {
      essential: true,
      group: "Geometry",
      lowest: 30,
      highest: 80,
      example: "52 mm",
    }),
    "ring-spacing": length("Between the middles of neighbouring rings.", { group: "Geometry", lowest: 3, highest: 15 }),
    "largest-ring": toothCount("Most teeth of a ring it takes; left out, its maker names none.", {
      group: "Limits",
      omitted: "none",
    }),
    "smallest-ring": toothCount("Fewest teeth of a ring it takes; left out, its maker names none.", {
      group: "Limits",
      omitted: "none",
    }),
    "q-factor": length("Between the outer faces of the cranks at the pedal eyes.", {
      group: "Geometry",
      lowest: 110,
      highest: 260,
    }),
    "arm-inside": length("From the centre plane to the inner face of the cranks where they pass the stays.", {
      group: "Clearance",
      lowest: 40,
      highest: 140,
    }),
    "pedal-thread": code("pedal-thread", "Thread of the pedal eyes; the left one is left-handed.", {
      essential: true,
      group: "Fit",
    }),
    "arm-bolt-torque": torque("Torque of the bolt or bolts that hold the crank on the spindle.", {
      highest: 70,
      example: "12 to 14 N·m",
    }),
    "preload-torque": torque("Torque of the cap that takes up bearing play.", { highest: 10 }),
    "ring-bolt-torque": torque("Torque of the bolts or lock-ring that hold the ring.", { highest: 60 }),
    "pedal-torque": torque("Torque of a pedal in its eye.", { highest: 60, example: "35 to 40 N·m" }),
  },
});
