import { fact, worked } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known } from "../define.ts";
import { cogsField, gearsOf, ringsField } from "../shared/gears.ts";
import { gearNeeds, withGears } from "../shared/gears-in-use.ts";
import { notPositive, notTeeth } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** How far the bicycle goes for each bit of way that the pedal goes: gearing with the crank's length in it. */
export default defineCalculation({
  name: "gain-ratios",
  title: "Gain ratio of every gear",
  description: "Way of the bicycle over way of the pedal in every gear, so that cranks of different lengths compare.",
  inputs: {
    rings: input(ringsField),
    cogs: input(cogsField),
    "wheel-circumference": input(length("Circumference of the driven wheel over its tyre.")),
    "crank-length": input(length("From the middle of the spindle to the middle of the pedal axle.")),
  },
  results: {
    "gain-ratios": { unit: "", digits: 2, list: true, description: "Way of the bicycle over way of the pedal." },
  },
  formula: "(wheel radius ÷ crank length) × ring ÷ cog, with wheel radius = circumference ÷ 2π",
  source: "from memory",
  compute({ rings, cogs, "wheel-circumference": circumference, "crank-length": crank }, working) {
    const wrong =
      notTeeth({ rings, cogs }) ?? notPositive({ "wheel-circumference": circumference, "crank-length": crank });
    if (wrong) return wrong;
    const radius = circumference / (2 * Math.PI);
    working?.step(`Wheel radius: ${say(circumference, "mm", 1)} ÷ 2π = ${say(radius, "mm")}`);
    const gains = gearsOf(rings, cogs).map(({ name, ratio }) => {
      const gain = (radius / crank) * ratio;
      working?.step(`${name}: ${say(radius, "mm")} ÷ ${say(crank, "mm")} × ${say(ratio)} = ${say(gain)}`);
      return gain;
    });
    return { "gain-ratios": gains };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: {
        ...gearNeeds,
        crank: fact("drivetrain.crankset", "crank-length"),
        circumference: worked<number>("rear-wheel.circumference"),
      },
      inputs: (facts) =>
        withGears(facts, (gears) =>
          known({
            ...gears,
            "wheel-circumference": facts.circumference.value,
            "crank-length": facts.crank.value,
          }),
        ),
    },
  ],
  examples: [
    {
      inputs: { rings: [50], cogs: [17], "wheel-circumference": 2105, "crank-length": 172.5 },
      results: { "gain-ratios": [5.712211] },
      source: "worked independently: 2105 ÷ 2π ÷ 172.5 × 50 ÷ 17",
    },
    {
      inputs: { rings: [32], cogs: [51], "wheel-circumference": 2300, "crank-length": 175 },
      results: { "gain-ratios": [1.312471] },
      source: "worked independently: 2300 ÷ 2π ÷ 175 × 32 ÷ 51",
    },
  ],
});
