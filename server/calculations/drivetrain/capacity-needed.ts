import { fact } from "../../model/need.ts";
import { defineCalculation, input, known } from "../define.ts";
import { cogsField, ringsField } from "../shared/gears.ts";
import { notTeeth } from "../shared/guards.ts";
import { ringNeeds, withRings } from "../shared/rings-in-use.ts";

/** The slack that a rear derailleur's cage has to take up. */
export default defineCalculation({
  name: "capacity-needed",
  title: "Capacity needed of the rear derailleur",
  description: "How many teeth of chain wrap the cage has to take up between the largest and the smallest gear.",
  inputs: { rings: input(ringsField), cogs: input(cogsField) },
  results: {
    "capacity-needed": { unit: "t", digits: 0, description: "Total capacity that the rear derailleur needs." },
    "cog-difference": { unit: "t", digits: 0, description: "Largest cog less the smallest." },
  },
  formula: "(largest ring − smallest ring) + (largest cog − smallest cog)",
  source: "common practice, no source",
  compute({ rings, cogs }, working) {
    const wrong = notTeeth({ rings, cogs });
    if (wrong) return wrong;
    const largestRing = Math.max(...rings);
    const smallestRing = Math.min(...rings);
    const largestCog = Math.max(...cogs);
    const smallestCog = Math.min(...cogs);
    const ringDifference = largestRing - smallestRing;
    const cogDifference = largestCog - smallestCog;
    const needed = ringDifference + cogDifference;
    working?.step(`Rings: ${largestRing} t − ${smallestRing} t = ${ringDifference} t`);
    working?.step(`Cogs: ${largestCog} t − ${smallestCog} t = ${cogDifference} t`);
    working?.step(`Capacity needed: ${ringDifference} t + ${cogDifference} t = ${needed} t`);
    return { "capacity-needed": needed, "cog-difference": cogDifference };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: { ...ringNeeds, cogs: fact("drivetrain.cassette", "cogs") },
      inputs: (facts) => withRings(facts, (rings) => known({ rings, cogs: facts.cogs.value })),
    },
  ],
  examples: [
    {
      inputs: { rings: [44, 32, 24], cogs: [12, 34] },
      results: { "capacity-needed": 42, "cog-difference": 22 },
      source: "independent trade glossary, total capacity of 44/32/24 with 12-34: 42",
    },
    {
      inputs: { rings: [53, 39], cogs: [12, 25] },
      results: { "capacity-needed": 27 },
      source: "common practice, no source (53/39 with 12-25 needs 27)",
    },
    {
      inputs: { rings: [32], cogs: [10, 51] },
      results: { "capacity-needed": 41 },
      source: "common practice, no source (a single ring needs the cogs' difference alone)",
    },
  ],
});
