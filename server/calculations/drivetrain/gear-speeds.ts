import { buildField, worked } from "../../model/need.ts";
import { length, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known } from "../define.ts";
import { cogsField, gearsOf, ringsField } from "../shared/gears.ts";
import { gearNeeds, withGears } from "../shared/gears-in-use.ts";
import { notPositive, notTeeth } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** How fast every gear is at a cadence. */
export default defineCalculation({
  name: "gear-speeds",
  title: "Speed in every gear",
  description: "Speed at a cadence in every gear.",
  inputs: {
    rings: input(ringsField),
    cogs: input(cogsField),
    "wheel-circumference": input(length("Circumference of the driven wheel over its tyre.")),
    cadence: input(quantity("cadence", "Turns of the cranks in a minute.", { lowest: 1, highest: 300 })),
  },
  results: { "gear-speeds": { unit: "km/h", digits: 1, list: true, description: "Speed in every gear." } },
  formula: "development in metres × cadence × 60 ÷ 1000",
  source: "definition; 16 CFR 1512.5, footnote on gear development",
  compute({ rings, cogs, "wheel-circumference": circumference, cadence }, working) {
    const wrong = notTeeth({ rings, cogs }) ?? notPositive({ "wheel-circumference": circumference, cadence });
    if (wrong) return wrong;
    const speeds = gearsOf(rings, cogs).map(({ name, ratio }) => {
      const development = (circumference * ratio) / 1000;
      const speed = development * cadence * 0.06;
      working?.step(`${name}: ${say(development, "m")} × ${say(cadence, "rpm")} × 0.06 = ${say(speed, "km/h", 2)}`);
      return speed;
    });
    return { "gear-speeds": speeds };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: {
        ...gearNeeds,
        circumference: worked<number>("rear-wheel.circumference"),
        cadence: buildField("rider.cadence"),
      },
      inputs: (facts) =>
        withGears(facts, (gears) =>
          known({
            ...gears,
            "wheel-circumference": facts.circumference.value,
            cadence: facts.cadence.value,
          }),
        ),
    },
  ],
  examples: [
    {
      inputs: { rings: [50], cogs: [17], "wheel-circumference": 2105, cadence: 90 },
      results: { "gear-speeds": [33.43235] },
      source: "worked independently by script from the definitions",
    },
    {
      inputs: { rings: [20], cogs: [20], "wheel-circumference": 2000, cadence: 75 },
      results: { "gear-speeds": [9] },
      source: "common practice, no source: a development of 2 m at 75 rpm is 9 km/h",
    },
    {
      inputs: { rings: [40], cogs: [12], "wheel-circumference": 2000, cadence: 60 },
      results: { "gear-speeds": [24] },
      source: "16 CFR 1512.5, footnote: a development of 6.67 m (the pairing of 24 km/h with 60 rpm from memory)",
    },
  ],
});
