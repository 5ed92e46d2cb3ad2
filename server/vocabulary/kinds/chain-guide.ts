import { defineKind } from "../define.ts";
import { code, quantityRange, toothCount, torque, word } from "../fields.ts";

/** Keeps the chain on its ring. */
export const chainGuide = defineKind({
  name: "chain-guide",
  noun: "a chain guide",
  description: "Keeps the chain on a ring, with or without a plate that guards the ring.",
  fields: {
    mount: code("chain-guide-mount", "How it is fixed to the frame.", { essential: true, group: "Fit" }),
    "largest-ring": toothCount("Most teeth of a ring it clears.", { essential: true, group: "Gearing" }),
    "smallest-ring": toothCount("Fewest teeth of a ring it follows; left out, its maker names none.", {
      group: "Gearing",
      omitted: "none",
    }),
    chainline: quantityRange("length", "allowed", "Chainlines that it can be set to.", {
      group: "Fit",
      lowest: 30,
      highest: 80,
    }),
    guards: word(
      { upper: "The upper run only.", both: "Both runs.", ring: "Both runs, and the ring behind a plate." },
      "What it guards.",
      { group: "Shape" },
    ),
    "mounting-torque": torque("Torque of its mounting bolts.", { highest: 25 }),
  },
});
