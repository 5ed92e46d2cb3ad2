import { fact } from "../../model/need.ts";
import { quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known, lacking, meaningless } from "../define.ts";
import { chainlineNeeds, frontChainline } from "../shared/front-chainline.ts";
import { notFinite } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** How far ring and cogs are out of line. */
export default defineCalculation({
  name: "chainline-offset",
  title: "Chainline of the rings against that of the cogs",
  description:
    "How much farther out the rings stand than the middle of the cogs; single rings normally stand some millimetres farther out.",
  inputs: {
    chainline: input(
      quantity("length", "Chainline of the rings, positive to the drive side.", { lowest: 20, highest: 90 }),
    ),
    "cog-line": input(
      quantity("length", "Chainline of the cogs, positive to the drive side.", { lowest: 20, highest: 90 }),
    ),
  },
  results: {
    "front-chainline": { unit: "mm", digits: 2, description: "Chainline of the rings." },
    "chainline-offset": {
      unit: "mm",
      digits: 2,
      description: "Rings less cogs; positive when the rings stand farther out.",
    },
  },
  formula: "chainline of the rings − chainline of the cogs",
  source: "definition, as in the Wikipedia article Chainline",
  compute({ chainline, "cog-line": cogLine }, working) {
    const wrong = notFinite({ chainline, "cog-line": cogLine });
    if (wrong) return wrong;
    working?.step(`${say(chainline, "mm")} − ${say(cogLine, "mm")} = ${say(chainline - cogLine, "mm")}`);
    return { "front-chainline": chainline, "chainline-offset": chainline - cogLine };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: { ...chainlineNeeds, cogLine: fact("rear-wheel.hub", "cog-line") },
      inputs: (facts) => {
        const front = frontChainline(facts);
        if (front.state === "unknown") return lacking(front.missing);
        if (front.state === "none") return meaningless("no chainline is stated for the cranks");
        return known({ chainline: front.chainline, "cog-line": facts.cogLine.value });
      },
    },
  ],
  examples: [
    {
      inputs: { chainline: 52, "cog-line": 46.5 },
      results: { "front-chainline": 52, "chainline-offset": 5.5 },
      source: "worked by hand",
    },
    {
      inputs: { chainline: 43.5, "cog-line": 43.7 },
      results: { "chainline-offset": -0.2 },
      source: "worked by hand; road double against a 130 mm hub",
    },
  ],
});
