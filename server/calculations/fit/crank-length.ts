import { buildField } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** Range of crank lengths that goes with an inseam. */
export default defineCalculation({
  name: "crank-length",
  title: "Crank length from the inseam",
  description: "The range of crank lengths that habit gives for an inseam; disputed, and long for tall riders.",
  inputs: {
    inseam: input(length("From the floor to the crotch, without shoes.", { lowest: 200, highest: 1300 })),
  },
  results: {
    "crank-length-least": { unit: "mm", digits: 1, description: "0.20 × inseam." },
    "crank-length-greatest": { unit: "mm", digits: 1, description: "0.216 × inseam." },
  },
  formula: "0.20 to 0.216 × inseam",
  source: "common practice, no source; disputed",
  compute({ inseam }, working) {
    const wrong = notPositive({ inseam });
    if (wrong) return wrong;
    working?.step(`0.20 × ${say(inseam, "mm")} = ${say(0.2 * inseam, "mm")}`);
    working?.step(`0.216 × ${say(inseam, "mm")} = ${say(0.216 * inseam, "mm")}`);
    return { "crank-length-least": 0.2 * inseam, "crank-length-greatest": 0.216 * inseam };
  },
  inBuild: [
    {
      assembly: "seat",
      needs: { inseam: buildField("rider.inseam") },
      inputs: ({ inseam }) => known({ inseam: inseam.value }),
    },
  ],
  examples: [
    {
      inputs: { inseam: 780 },
      results: { "crank-length-least": 156, "crank-length-greatest": 168.48 },
      source: "common practice, no source; worked by hand",
    },
    {
      inputs: { inseam: 900 },
      results: { "crank-length-least": 180, "crank-length-greatest": 194.4 },
      source: "common practice, no source; worked by hand",
    },
  ],
});
