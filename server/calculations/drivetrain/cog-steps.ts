import { fact } from "../../model/need.ts";
import { defineCalculation, input, known } from "../define.ts";
import { cogsField, gearSteps } from "../shared/gears.ts";
import { notTeeth } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** How evenly a cluster of cogs is stepped. */
export default defineCalculation({
  name: "cog-steps",
  title: "Steps between cogs",
  description: "How much the gear changes from each cog to the next smaller one, and cogs that occur twice.",
  inputs: { cogs: input(cogsField) },
  results: {
    "cog-steps": { unit: "%", digits: 1, list: true, description: "Step from each cog to the next smaller one." },
    "cog-gaps": { unit: "t", digits: 0, list: true, description: "The same in teeth." },
    "greatest-cog-step": { unit: "%", digits: 1, description: "The greatest of the steps." },
    "repeated-cogs": { unit: "t", digits: 0, list: true, description: "Tooth counts that occur more than once." },
  },
  formula: "step = larger cog ÷ next smaller cog − 1",
  source: "definition",
  compute({ cogs }, working) {
    const wrong = notTeeth({ cogs });
    if (wrong) return wrong;
    const fromLargest = [...cogs].sort((a, b) => b - a);
    const steps = gearSteps(cogs);
    const gaps = fromLargest.slice(1).map((cog, index) => (fromLargest[index] as number) - cog);
    const repeated = [...new Set(fromLargest.filter((cog, index) => fromLargest.indexOf(cog) !== index))];
    if (working) {
      steps.forEach((step, index) => {
        const [larger, smaller] = fromLargest.slice(index, index + 2);
        working.step(
          `${larger} t to ${smaller} t: ${gaps[index]} t, ${larger} ÷ ${smaller} − 1 = ${say(step, "%", 1)}`,
        );
      });
      working.step(repeated.length > 0 ? `Twice: ${repeated.join(", ")} t` : "No cog occurs twice");
    }
    return {
      "cog-steps": steps,
      "cog-gaps": gaps,
      "repeated-cogs": repeated,
      ...(steps.length > 0 ? { "greatest-cog-step": Math.max(...steps) } : {}),
    };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: { cogs: fact("drivetrain.cassette", "cogs") },
      inputs: (facts) => known({ cogs: facts.cogs.value }),
    },
  ],
  examples: [
    {
      inputs: { cogs: [11, 12, 13, 15] },
      results: { "cog-steps": [15.384615, 8.333333, 9.090909], "cog-gaps": [2, 1, 1], "repeated-cogs": [] },
      source: "worked by hand: 12 ÷ 11 is a step of 9.09 %",
    },
    {
      inputs: { cogs: [42, 24, 36, 36] },
      results: { "greatest-cog-step": 50, "repeated-cogs": [36], "cog-gaps": [6, 0, 12] },
      source: "worked by hand: 36 ÷ 24 is a step of 50 %",
    },
  ],
});
