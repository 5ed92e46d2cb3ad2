import { quantities } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input } from "../define.ts";
import { say } from "../shared/say.ts";

/** Where several masses balance. */
export default defineCalculation({
  name: "centre-of-mass",
  title: "Centre of mass",
  description: "Place where masses at given places balance, seen from the side.",
  inputs: {
    masses: input(quantities("mass", "The masses, separated by commas.", { example: "2, 85, 4, 3 kg" })),
    forward: input(quantities("length", "How far each lies in front of the rear wheel's contact, in the same order.")),
    heights: input(quantities("length", "How high each lies above the ground, in the same order.")),
  },
  results: {
    "total-mass": { unit: "kg", digits: 2, description: "All of them together." },
    "centre-forward": { unit: "mm", digits: 1, description: "Centre of mass in front of the rear wheel's contact." },
    "centre-height": { unit: "mm", digits: 1, description: "Centre of mass above the ground." },
  },
  formula: "sum of mass × distance ÷ sum of masses, along the ground and upward",
  source: "definition",
  compute({ masses, forward, heights }, working) {
    if (masses.length === 0) return impossible("No mass is given.");
    if (forward.length !== masses.length || heights.length !== masses.length) {
      return impossible(`${masses.length} masses need as many distances and heights.`);
    }
    if (![...masses, ...forward, ...heights].every(Number.isFinite) || masses.some((mass) => mass < 0)) {
      return impossible("Masses and distances must be numbers, and no mass less than zero.");
    }
    const total = masses.reduce((sum, mass) => sum + mass, 0);
    if (total <= 0) return impossible("All masses are zero.");
    const balance = (places: readonly number[]): number =>
      masses.reduce((sum, mass, index) => sum + mass * (places[index] as number), 0) / total;
    const [x, y] = [balance(forward), balance(heights)];
    masses.forEach((mass, index) => {
      working?.step(
        `${say(mass / 1000, "kg")} at ${say(forward[index] as number, "mm")} forward, ${say(heights[index] as number, "mm")} up`,
      );
    });
    working?.step(`Together ${say(total / 1000, "kg")}: centre ${say(x, "mm")} forward, ${say(y, "mm")} up`);
    return { "total-mass": total / 1000, "centre-forward": x, "centre-height": y };
  },
  examples: [
    {
      inputs: {
        masses: [2000, 85_000, 4000, 3000],
        forward: [0, 300, 900, 1020],
        heights: [300, 900, 700, 350],
      },
      results: { "total-mass": 94, "centre-forward": 342.1277, "centre-height": 861.1702 },
      source:
        "benchmark bicycle of Meijaard, Papadopoulos, Ruina and Schwab (2007), Table 1; centre worked independently",
    },
    {
      inputs: { masses: [1000, 3000], forward: [0, 400], heights: [100, 300] },
      results: { "total-mass": 4, "centre-forward": 300, "centre-height": 250 },
      source: "worked by hand: three quarters of the way",
    },
  ],
});
