import { length, number, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, input } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** What a torque does to a bolt. */
export default defineCalculation({
  name: "clamp-force",
  title: "Clamp force from a torque",
  description:
    "Force with which a bolt clamps at a torque and a friction; a figure to understand by, never a component's torque: that is its maker's to say.",
  inputs: {
    torque: input(quantity("torque", "Torque on the bolt.", { lowest: 0.01 })),
    "bolt-diameter": input(length("Nominal diameter of the thread.")),
    "friction-factor": input(
      number("Nut factor K: about 0.20 plain and dry, 0.17 zinc-plated, 0.15 oiled.", {
        lowest: 0.05,
        highest: 0.6,
      }),
    ),
  },
  results: { "clamp-force": { unit: "N", digits: 0, description: "Tension of the bolt, which clamps the parts." } },
  formula: "force = torque ÷ (K × diameter)",
  source: "torque equation T = K D F as in fastener dealers' tables; common practice, no source",
  compute({ torque, "bolt-diameter": diameter, "friction-factor": friction }, working) {
    const wrong = notPositive({ torque, "bolt-diameter": diameter, "friction-factor": friction });
    if (wrong) return wrong;
    const force = (1000 * torque) / (friction * diameter);
    working?.step(`${say(torque, "N·m")} ÷ (${say(friction)} × ${say(diameter, "mm")}) = ${say(force, "N", 1)}`);
    return { "clamp-force": force };
  },
  examples: [
    {
      inputs: { torque: 5, "bolt-diameter": 5, "friction-factor": 0.2 },
      results: { "clamp-force": 5000 },
      source: "worked by hand: 5 ÷ (0.2 × 0.005)",
    },
    {
      inputs: { torque: 5, "bolt-diameter": 5, "friction-factor": 0.15 },
      results: { "clamp-force": 6666.667 },
      source: "worked by hand: greasing raises the clamp by a third",
    },
    {
      inputs: { torque: 10.3946, "bolt-diameter": 6, "friction-factor": 0.2 },
      results: { "clamp-force": 8753.65 },
      tolerance: 0.02,
      source: "fastener dealers' table: M6 of class 8.8, dry, 92 lbf·in for 75 % of proof",
    },
  ],
});
