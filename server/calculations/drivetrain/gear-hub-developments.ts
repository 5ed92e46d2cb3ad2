import { worked } from "../../model/need.ts";
import { length, number } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** How far the lowest and the highest gear of a gear hub carry the bicycle. */
export default defineCalculation({
  name: "gear-hub-developments",
  title: "Development with a gear hub",
  description: "Distance covered for one turn of the cranks in the lowest and the highest gear of a gear hub.",
  inputs: {
    "lowest-hub-ratio": input(
      number("Turns of the wheel for one of the cranks in the lowest gear.", {
        lowest: 0.05,
        highest: 20,
      }),
    ),
    "highest-hub-ratio": input(
      number("Turns of the wheel for one of the cranks in the highest gear.", {
        lowest: 0.05,
        highest: 20,
      }),
    ),
    "wheel-circumference": input(length("Circumference of the driven wheel over its tyre.")),
  },
  results: {
    "lowest-hub-development": { unit: "m", digits: 2, description: "Development of the lowest gear." },
    "highest-hub-development": { unit: "m", digits: 2, description: "Development of the highest gear." },
  },
  formula: "circumference × ratio",
  source: "definition; 16 CFR 1512.5, footnote on gear development",
  compute({ "lowest-hub-ratio": lowest, "highest-hub-ratio": highest, "wheel-circumference": circumference }, working) {
    const wrong = notPositive({
      "lowest-hub-ratio": lowest,
      "highest-hub-ratio": highest,
      "wheel-circumference": circumference,
    });
    if (wrong) return wrong;
    if (highest < lowest) return impossible("The highest gear cannot be lower than the lowest.");
    const developments = [lowest, highest].map((ratio) => (circumference * ratio) / 1000) as [number, number];
    working?.step(`Lowest: ${say(circumference, "mm", 1)} × ${say(lowest)} = ${say(developments[0], "m")}`);
    working?.step(`Highest: ${say(circumference, "mm", 1)} × ${say(highest)} = ${say(developments[1], "m")}`);
    return { "lowest-hub-development": developments[0], "highest-hub-development": developments[1] };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: {
        lowest: worked<number>("drivetrain.lowest-hub-ratio"),
        highest: worked<number>("drivetrain.highest-hub-ratio"),
        circumference: worked<number>("rear-wheel.circumference"),
      },
      inputs: ({ lowest, highest, circumference }) =>
        known({
          "lowest-hub-ratio": lowest.value,
          "highest-hub-ratio": highest.value,
          "wheel-circumference": circumference.value,
        }),
    },
  ],
  examples: [
    {
      inputs: { "lowest-hub-ratio": 1.1, "highest-hub-ratio": 3.3, "wheel-circumference": 2100 },
      results: { "lowest-hub-development": 2.31, "highest-hub-development": 6.93 },
      source: "worked by hand",
    },
    {
      inputs: { "lowest-hub-ratio": 1.5, "highest-hub-ratio": 2.6666667, "wheel-circumference": 2000 },
      results: { "lowest-hub-development": 3, "highest-hub-development": 5.3333334 },
      source: "a three-speed hub of 3/4, 1 and 4/3 (from memory) on 38 and 19 teeth, worked by hand",
    },
  ],
});
