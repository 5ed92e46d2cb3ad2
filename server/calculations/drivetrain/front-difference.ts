import { defineCalculation, input, known } from "../define.ts";
import { ringsField } from "../shared/gears.ts";
import { notTeeth } from "../shared/guards.ts";
import { ringNeeds, withRings } from "../shared/rings-in-use.ts";

/** The step between the rings, which both derailleurs limit. */
export default defineCalculation({
  name: "front-difference",
  title: "Difference of the rings",
  description: "How many teeth the largest ring has more than the smallest; nothing for a single ring.",
  inputs: { rings: input(ringsField) },
  results: { "front-difference": { unit: "t", digits: 0, description: "Largest ring less the smallest." } },
  formula: "largest ring − smallest ring",
  source: "common practice, no source",
  compute({ rings }, working) {
    const wrong = notTeeth({ rings });
    if (wrong) return wrong;
    const largest = Math.max(...rings);
    const smallest = Math.min(...rings);
    working?.step(`Rings: ${largest} t − ${smallest} t = ${largest - smallest} t`);
    return { "front-difference": largest - smallest };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: ringNeeds,
      inputs: (facts) => withRings(facts, (rings) => known({ rings })),
    },
  ],
  examples: [
    {
      inputs: { rings: [50, 34] },
      results: { "front-difference": 16 },
      source: "common practice, no source (50/34 is known as a 16-tooth difference)",
    },
    {
      inputs: { rings: [24, 44, 32] },
      results: { "front-difference": 20 },
      source: "worked by hand: 44 − 24, whatever the order",
    },
  ],
});
