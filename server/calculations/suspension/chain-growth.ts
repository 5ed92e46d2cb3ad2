import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, optionalInput } from "../define.ts";
import { chainPitch } from "../shared/chain-geometry.ts";
import { negative, notFinite } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** How the rear centre of a single-pivot frame changes through its travel. */
export default defineCalculation({
  name: "chain-growth",
  title: "Growth of the rear centre and of the chain",
  description:
    "How much longer the line from crank axis to rear axle gets through the travel of a single-pivot rear end, and what both runs of the chain need for it.",
  inputs: {
    "pivot-forward": input(
      length("Pivot in front of the crank axis; negative behind it.", { lowest: -500, highest: 500 }),
    ),
    "pivot-up": input(length("Pivot above the crank axis.", { lowest: -500, highest: 800 })),
    "axle-back": input(length("Rear axle behind the crank axis, unladen, level.")),
    "axle-up": input(length("Rear axle above the crank axis, unladen.", { lowest: -300, highest: 400 })),
    "rear-travel": input(length("Vertical travel of the rear axle.")),
    sag: optionalInput(length("Vertical movement of the rear axle at sag.")),
  },
  results: {
    "rear-centre": { unit: "mm", digits: 1, description: "From crank axis to rear axle, unladen." },
    "growth-full": {
      unit: "mm",
      digits: 1,
      description: "How much longer it is at full travel; negative when shorter.",
    },
    "growth-greatest": { unit: "mm", digits: 1, description: "How much longer it is at its longest in the travel." },
    "growth-sag": { unit: "mm", digits: 1, description: "How much longer it is at sag." },
    "growth-pitches": {
      unit: "pitches",
      digits: 2,
      description: "Growth of one run at full travel, in half-inch pitches.",
    },
    "loop-growth": {
      unit: "mm",
      digits: 1,
      description: "What both runs together need at the longest: twice the growth.",
    },
  },
  formula:
    "the axle moves on a circle about the pivot until it has risen by the travel; growth = its distance from the crank axis − the distance unladen; the loop needs about twice the growth of one run",
  source: "plane geometry of a single pivot, re-derived",
  compute(given, working) {
    const { "pivot-forward": pivotForward, "pivot-up": pivotUp, "axle-back": back, "axle-up": up, sag } = given;
    const travel = given["rear-travel"];
    const wrong =
      notFinite({ "pivot-forward": pivotForward, "pivot-up": pivotUp, "axle-back": back, "axle-up": up }) ??
      negative({ "rear-travel": travel, sag });
    if (wrong) return wrong;
    const arm = Math.hypot(-back - pivotForward, up - pivotUp);
    if (-back >= pivotForward) return impossible("The axle has to lie behind the pivot.");
    const top = up + Math.max(travel, sag ?? 0);
    if (top - pivotUp >= arm) return impossible("The swing arm is too short for this travel.");
    const centreAt = (rise: number): number => {
      const height = up + rise;
      return Math.hypot(pivotForward - Math.sqrt(arm ** 2 - (height - pivotUp) ** 2), height);
    };
    const unladen = centreAt(0);
    const full = centreAt(travel) - unladen;
    // Longest of all is the line that runs through the pivot; the axle meets it only behind the crank axis.
    const toPivot = Math.hypot(pivotForward, pivotUp);
    const inLine = pivotForward < 0 ? pivotUp * (1 + arm / toPivot) - up : Number.NaN;
    const greatest = inLine > 0 && inLine < travel ? toPivot + arm - unladen : Math.max(0, full);
    working?.step(`Swing arm: ${say(arm, "mm")} from pivot to axle`);
    working?.step(`Rear centre unladen: ${say(unladen, "mm")}`);
    working?.step(
      `At ${say(travel, "mm")} of travel: ${say(unladen + full, "mm")}, a growth of ${say(full, "mm")} or ${say(full / chainPitch)} half-inch pitches`,
    );
    working?.step(`At its longest: ${say(greatest, "mm")} more; both runs need about ${say(2 * greatest, "mm")}`);
    return {
      "rear-centre": unladen,
      "growth-full": full,
      "growth-greatest": greatest,
      ...(sag === undefined ? {} : { "growth-sag": centreAt(sag) - unladen }),
      "growth-pitches": full / chainPitch,
      "loop-growth": 2 * greatest,
    };
  },
  examples: [
    {
      inputs: { "pivot-forward": 0, "pivot-up": 0, "axle-back": 430, "axle-up": 35, "rear-travel": 140, sag: 40 },
      results: { "growth-full": 0, "growth-greatest": 0, "growth-sag": 0, "loop-growth": 0 },
      source: "by hand: an axle that turns about the crank axis keeps its distance",
    },
    {
      inputs: { "pivot-forward": 20, "pivot-up": 60, "axle-back": 430, "axle-up": 35, "rear-travel": 140 },
      results: { "growth-full": 19.68102, "growth-pitches": 1.54969, "rear-centre": Math.hypot(430, 35) },
      tolerance: 5e-6,
      source: "worked independently by script with rotated arm",
    },
  ],
});
