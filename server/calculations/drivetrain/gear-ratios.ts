import { defineCalculation, input, known } from "../define.ts";
import { cogsField, gearOverlaps, gearRange, gearSteps, gearsOf, ringsField } from "../shared/gears.ts";
import { gearNeeds, withGears } from "../shared/gears-in-use.ts";
import { notTeeth } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** What the teeth alone say about the gears. */
export default defineCalculation({
  name: "gear-ratios",
  title: "Ratios of every gear",
  description: "Ratio of every gear, the steps between them, the range, and the gears that two rings share.",
  inputs: { rings: input(ringsField), cogs: input(cogsField) },
  results: {
    gears: {
      unit: "",
      digits: 0,
      list: true,
      description: "Ring × cog of every gear, from the smallest ring and largest cog on: the order of all the lists.",
    },
    "gear-ratios": { unit: "", digits: 3, list: true, description: "Turns of the wheel for one turn of the cranks." },
    "gear-steps": {
      unit: "%",
      digits: 1,
      list: true,
      description: "How much higher each gear is than the one before it on the same ring, largest cog to smallest.",
    },
    "lowest-ratio": { unit: "", digits: 3, description: "Ratio of the lowest gear." },
    "highest-ratio": { unit: "", digits: 3, description: "Ratio of the highest gear." },
    "gear-range": { unit: "%", digits: 1, description: "Highest gear over the lowest." },
    "ring-overlaps": {
      unit: "",
      digits: 0,
      list: true,
      description: "For each ring and the next larger one, how many of the larger ring's gears both rings serve.",
    },
  },
  formula:
    "ratio = teeth of the ring ÷ teeth of the cog; step = ratio ÷ the ratio before − 1; range = highest ÷ lowest",
  source: "definition, as in the Wikipedia article Gear inches",
  compute({ rings, cogs }, working) {
    const wrong = notTeeth({ rings, cogs });
    if (wrong) return wrong;
    const gears = gearsOf(rings, cogs);
    const ratios = gears.map(({ ratio }) => ratio);
    const lowest = Math.min(...ratios);
    const highest = Math.max(...ratios);
    const range = gearRange(gears);
    if (working) {
      for (const { name, ring, cog, ratio } of gears) working.step(`${name}: ${ring} ÷ ${cog} = ${say(ratio)}`);
      working.step(
        `Steps on a ring: ${
          gearSteps(cogs)
            .map((step) => say(step, "%", 1))
            .join(", ") || "none"
        }`,
      );
      working.step(`Gears that two rings share: ${gearOverlaps(rings, cogs).join(", ") || "none, for a single ring"}`);
      working.step(`Range: ${say(highest)} ÷ ${say(lowest)} = ${say(range, "%", 1)}`);
    }
    return {
      gears: gears.map(({ name }) => name),
      "gear-ratios": ratios,
      "gear-steps": gearSteps(cogs),
      "lowest-ratio": lowest,
      "highest-ratio": highest,
      "gear-range": range,
      "ring-overlaps": gearOverlaps(rings, cogs),
    };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: gearNeeds,
      inputs: (facts) => withGears(facts, (gears) => known(gears)),
    },
  ],
  examples: [
    {
      inputs: { rings: [50, 34], cogs: [11, 34] },
      results: {
        gears: ["34×34", "34×11", "50×34", "50×11"],
        "gear-ratios": [1, 34 / 11, 50 / 34, 50 / 11],
        "gear-range": 454.5455,
        "ring-overlaps": [1],
      },
      source: "worked by hand: (50 ÷ 11) ÷ (34 ÷ 34) = 4.545455",
    },
    {
      inputs: { rings: [32], cogs: [10, 11, 12, 51] },
      results: { "gear-range": 510, "gear-steps": [100 * (51 / 12 - 1), 9.090909, 10], "ring-overlaps": [] },
      source: "worked by hand: a single ring's range is 51 ÷ 10; 12 to 11 is a step of 9.09 %",
    },
  ],
});
