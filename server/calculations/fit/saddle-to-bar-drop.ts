import { worked } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known } from "../define.ts";
import { notFinite } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** How much lower the bar is than the saddle, and how far away. */
export default defineCalculation({
  name: "saddle-to-bar-drop",
  title: "Drop and distance from saddle to bar",
  description:
    "Height of the saddle's top above the bar clamp, and the level distance from where the rider sits to it.",
  inputs: {
    "saddle-top-height": input(length("Saddle's top above the crank axis.")),
    "bar-clamp-height": input(length("Bar clamp above the crank axis.")),
    "saddle-setback": input(length("Where the rider sits, behind the crank axis.", { lowest: -300 })),
    "bar-clamp-forward": input(length("Bar clamp in front of the crank axis.", { lowest: -300 })),
  },
  results: {
    "saddle-drop": {
      unit: "mm",
      digits: 0,
      description: "Saddle's top above the bar clamp; negative with the bar higher.",
    },
    "saddle-to-bar": { unit: "mm", digits: 0, description: "Level distance from sitting place to bar clamp." },
  },
  formula: "drop = saddle top − bar clamp; distance = setback + bar clamp forward",
  source: "definition",
  compute(given, working) {
    const wrong = notFinite({ ...given });
    if (wrong) return wrong;
    const drop = given["saddle-top-height"] - given["bar-clamp-height"];
    const distance = given["saddle-setback"] + given["bar-clamp-forward"];
    working?.step(
      `Drop: ${say(given["saddle-top-height"], "mm")} − ${say(given["bar-clamp-height"], "mm")} = ${say(drop, "mm")}`,
    );
    working?.step(
      `Distance: ${say(given["saddle-setback"], "mm")} + ${say(given["bar-clamp-forward"], "mm")} = ${say(distance, "mm")}`,
    );
    return { "saddle-drop": drop, "saddle-to-bar": distance };
  },
  inBuild: [
    {
      assembly: "cockpit",
      needs: {
        top: worked<number>("seat.saddle-top-height"),
        bar: worked<number>("cockpit.bar-clamp-height"),
        setback: worked<number>("seat.saddle-setback"),
        forward: worked<number>("cockpit.bar-clamp-forward"),
      },
      inputs: ({ top, bar, setback, forward }) =>
        known({
          "saddle-top-height": top.value,
          "bar-clamp-height": bar.value,
          "saddle-setback": setback.value,
          "bar-clamp-forward": forward.value,
        }),
    },
  ],
  examples: [
    {
      inputs: {
        "saddle-top-height": 702.8149,
        "bar-clamp-height": 631.67766,
        "saddle-setback": 208.1832,
        "bar-clamp-forward": 467.08227,
      },
      results: { "saddle-drop": 71.13724, "saddle-to-bar": 675.26547 },
      source: "worked independently by script",
    },
    {
      inputs: {
        "saddle-top-height": 650,
        "bar-clamp-height": 700,
        "saddle-setback": 180,
        "bar-clamp-forward": 420,
      },
      results: { "saddle-drop": -50, "saddle-to-bar": 600 },
      source: "by hand: a bar higher than the saddle",
    },
  ],
});
