import { worked } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known } from "../define.ts";
import { cogsField, gearsOf, ringsField } from "../shared/gears.ts";
import { gearNeeds, withGears } from "../shared/gears-in-use.ts";
import { notPositive, notTeeth } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** How far every gear carries the bicycle for one turn of the cranks. */
export default defineCalculation({
  name: "gear-developments",
  title: "Development and gear inches",
  description: "Distance covered for one turn of the cranks in every gear, and the same as the old wheel diameter.",
  inputs: {
    rings: input(ringsField),
    cogs: input(cogsField),
    "wheel-circumference": input(length("Circumference of the driven wheel over its tyre.")),
  },
  results: {
    developments: { unit: "m", digits: 2, list: true, description: "Distance for one turn of the cranks, per gear." },
    "gear-inches": {
      unit: "in",
      digits: 1,
      list: true,
      description: "Diameter of a wheel driven without gearing that would go as far, per gear.",
    },
    "lowest-development": { unit: "m", digits: 2, description: "Development of the lowest gear." },
    "highest-development": { unit: "m", digits: 2, description: "Development of the highest gear." },
  },
  formula: "development = circumference × ring ÷ cog; gear inches = circumference ÷ π in inches × ring ÷ cog",
  source: "Wikipedia, Gear inches; 16 CFR 1512.5, footnote on gear development",
  compute({ rings, cogs, "wheel-circumference": circumference }, working) {
    const wrong = notTeeth({ rings, cogs }) ?? notPositive({ "wheel-circumference": circumference });
    if (wrong) return wrong;
    const gears = gearsOf(rings, cogs);
    const developments = gears.map(({ ratio }) => (circumference * ratio) / 1000);
    const inches = gears.map(({ ratio }) => (circumference / (Math.PI * 25.4)) * ratio);
    if (working) {
      gears.forEach(({ name, ratio }, index) => {
        working.step(
          `${name}: ${say(circumference, "mm", 1)} × ${say(ratio)} = ${say(developments[index] as number, "m")}; ` +
            `÷ π = ${say(inches[index] as number, "gear inches", 1)}`,
        );
      });
    }
    return {
      developments,
      "gear-inches": inches,
      "lowest-development": Math.min(...developments),
      "highest-development": Math.max(...developments),
    };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: {
        ...gearNeeds,
        circumference: worked<number>("rear-wheel.circumference"),
      },
      inputs: (facts) =>
        withGears(facts, (gears) => known({ ...gears, "wheel-circumference": facts.circumference.value })),
    },
  ],
  examples: [
    {
      inputs: { rings: [50], cogs: [17], "wheel-circumference": 2105 },
      results: { developments: [6.191176], "gear-inches": [77.58711] },
      source: "worked independently: 2105 mm × 50 ÷ 17",
    },
    {
      inputs: { rings: [48], cogs: [24, 34], "wheel-circumference": Math.PI * 26 * 25.4 },
      results: { "gear-inches": [36.7059, 52] },
      tolerance: 1e-5,
      source: "Wikipedia, Gear inches: 26 in wheel with 48/24 gives 52, with 48/34 gives 36.7",
    },
    {
      inputs: { rings: [46, 48], cogs: [18], "wheel-circumference": Math.PI * 27 * 25.4 },
      results: { "gear-inches": [69, 72] },
      source: "Wikipedia, Gear inches: nominal 27 in wheel, 46/18 and 48/18",
    },
  ],
});
