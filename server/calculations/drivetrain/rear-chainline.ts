import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input } from "../define.ts";
import { negative, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** The chainline of the cogs from the hub's width. */
export default defineCalculation({
  name: "rear-chainline",
  title: "Chainline at the cogs",
  description: "From the centre plane to the middle of the cassette, or to a single cog.",
  inputs: {
    "over-locknut-width": input(length("Between the faces of the hub that meet the dropouts.")),
    "locknut-to-cog": input(length("From the drive-side face to the outer face of the smallest cog.")),
    "stack-width": input(length("From the outer face of the smallest cog to the inner face of the largest.")),
  },
  results: { "cog-line": { unit: "mm", digits: 2, description: "Chainline of the cogs, positive to the drive side." } },
  formula: "over-locknut width ÷ 2 − locknut to smallest cog − stack width ÷ 2",
  source: "common practice, no source",
  compute({ "over-locknut-width": width, "locknut-to-cog": gap, "stack-width": stack }, working) {
    const wrong =
      notPositive({ "over-locknut-width": width, "stack-width": stack }) ?? negative({ "locknut-to-cog": gap });
    if (wrong) return wrong;
    if (gap + stack > width) return impossible("The cogs are wider than the hub.");
    const line = width / 2 - gap - stack / 2;
    working?.step(`${say(width, "mm")} ÷ 2 − ${say(gap, "mm")} − ${say(stack, "mm")} ÷ 2 = ${say(line, "mm")}`);
    return { "cog-line": line };
  },
  examples: [
    {
      inputs: { "over-locknut-width": 130, "locknut-to-cog": 3, "stack-width": 36.6 },
      results: { "cog-line": 43.7 },
      source: "worked independently: 65 − 3 − 18.3",
    },
    {
      inputs: { "over-locknut-width": 135, "locknut-to-cog": 3.8, "stack-width": 35.4 },
      results: { "cog-line": 46 },
      source: "worked independently: 67.5 − 3.8 − 17.7",
    },
  ],
});
