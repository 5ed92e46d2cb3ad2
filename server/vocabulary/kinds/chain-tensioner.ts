import { defineKind } from "../define.ts";
import { code, count, torque, word } from "../fields.ts";

/** Takes up the slack of a single-speed or gear-hub chain. */
export const chainTensioner = defineKind({
  name: "chain-tensioner",
  noun: "a chain tensioner",
  description: "An arm with one or two pulleys that takes up the slack of a chain where no axle can be moved.",
  caution: "A sprung tensioner never goes with a coaster brake or a fixed cog: back-pressure pulls it out of place.",
  fields: {
    mount: code("derailleur-mount", "What it is fixed to, usually the thread of a hanger.", {
      essential: true,
      group: "Fit",
    }),
    tension: word(
      { sprung: "A spring presses it.", fixed: "It is set once and clamped." },
      "What holds it against the chain.",
      { essential: true, group: "Set-up" },
    ),
    "total-capacity": count("Difference in teeth whose slack it takes up.", {
      group: "Gearing",
      unit: "t",
      lowest: 0,
      highest: 60,
    }),
    "drive-family": code("drive-family", "Roller and tooth family of chain to which its maker limits its pulley.", {
      group: "Fit",
      omitted: "none",
    }),
    "mounting-torque": torque("Torque of its mounting bolt.", { highest: 30 }),
  },
});
