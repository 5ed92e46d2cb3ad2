import { setting, worked } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known } from "../define.ts";
import { negative, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** Where a steerer is cut. */
export default defineCalculation({
  name: "steerer-length",
  title: "Steerer length to cut to",
  description:
    "Length from the crown-race seat: a little less than what stands on it, so that the cap can take up the play. Cut after the fit is settled, and by the fork maker's word.",
  inputs: {
    "steerer-stack": input(length("From the crown-race seat to the top of the stem or of the spacer over it.")),
    "cap-gap": input(length("How far the steerer ends below that.", { highest: 20 })),
  },
  results: {
    "steerer-cut": { unit: "mm", digits: 1, description: "Length of the steerer, from the crown-race seat." },
  },
  formula: "stack on the steerer − gap under the cap",
  source: "definition; the gap at most 5 mm by TBIS 4210-2:2018, clause 4.7.4, the adoption of ISO 4210-2",
  compute({ "steerer-stack": stack, "cap-gap": gap }, working) {
    const wrong = notPositive({ "steerer-stack": stack }) ?? negative({ "cap-gap": gap });
    if (wrong) return wrong;
    if (gap >= stack) return impossible("The gap leaves no steerer.");
    working?.step(`${say(stack, "mm")} − ${say(gap, "mm")} = ${say(stack - gap, "mm")}`);
    if (gap > 5) working?.step("More than 5 mm of gap is more than ISO 4210-2 allows");
    return { "steerer-cut": stack - gap };
  },
  inBuild: [
    {
      assembly: "steering",
      needs: { stack: worked<number>("steering.steerer-stack"), gap: setting("cockpit.stem", "cap-gap") },
      inputs: ({ stack, gap }) => known({ "steerer-stack": stack.value, "cap-gap": gap.value }),
    },
  ],
  examples: [
    {
      inputs: { "steerer-stack": 232, "cap-gap": 3 },
      results: { "steerer-cut": 229 },
      source: "worked by hand",
    },
    {
      inputs: { "steerer-stack": 169, "cap-gap": 2.5 },
      results: { "steerer-cut": 166.5 },
      source: "worked by hand",
    },
  ],
});
