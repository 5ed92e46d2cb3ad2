import { fact, optional, setting } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known, lacking, meaningless } from "../define.ts";
import { negative } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";
import { notThreadless, threadlessNeeds } from "../shared/threadless.ts";

/** Everything that stands on a steerer. */
export default defineCalculation({
  name: "steerer-stack",
  title: "Stack on the steerer",
  description: "Height from the crown-race seat to the top of the stem or of the spacer over it.",
  inputs: {
    "lower-stack": input(length("From the crown-race seat to the head tube's lower edge.")),
    "head-tube-length": input(length("Length of the head tube.")),
    "upper-stack": input(length("Headset above the head tube, its cover included.")),
    "spacers-below": input(length("Spacers under the stem.")),
    "stem-clamp-height": input(length("Height of steerer that the stem takes up.")),
    "spacers-above": input(length("Spacers over the stem.")),
  },
  results: {
    "steerer-stack": { unit: "mm", digits: 1, description: "Crown-race seat to the top of the stem or top spacer." },
  },
  formula: "lower stack + head tube + upper stack + spacers below + stem clamp + spacers above",
  source: "definition",
  compute(given, working) {
    const wrong = negative({ ...given });
    if (wrong) return wrong;
    const parts = [
      given["lower-stack"],
      given["head-tube-length"],
      given["upper-stack"],
      given["spacers-below"],
      given["stem-clamp-height"],
      given["spacers-above"],
    ];
    const sum = parts.reduce((total, part) => total + part, 0);
    working?.step(`${parts.map((part) => say(part)).join(" + ")} = ${say(sum, "mm")}`);
    return { "steerer-stack": sum };
  },
  inBuild: [
    {
      assembly: "steering",
      needs: {
        ...threadlessNeeds,
        lower: optional(fact("headset", "lower-stack")),
        headTube: optional(fact("frame", "head-tube-length")),
        upper: optional(fact("headset", "upper-stack")),
        below: optional(setting("cockpit.stem", "spacers-below")),
        stem: optional(fact("cockpit.stem", "clamp-height")),
        above: optional(setting("cockpit.stem", "spacers-above")),
      },
      inputs: ({ clamping, shape, lower, headTube, upper, below, stem, above }) => {
        const other = notThreadless({ clamping, shape });
        if (other) return meaningless(other);
        const missing = missingOf(lower, headTube, upper, below, stem, above);
        if (missing.length > 0) return lacking(missing);
        const heights = [lower, headTube, upper, below, stem, above].map((one) => stated(one));
        if (heights.includes(undefined)) return meaningless("there is no head tube, no headset or no stem");
        const [lowerStack = 0, tube = 0, upperStack = 0, under = 0, clamp = 0, over = 0] = heights;
        return known({
          "lower-stack": lowerStack,
          "head-tube-length": tube,
          "upper-stack": upperStack,
          "spacers-below": under,
          "stem-clamp-height": clamp,
          "spacers-above": over,
        });
      },
    },
  ],
  examples: [
    {
      inputs: {
        "lower-stack": 2,
        "head-tube-length": 150,
        "upper-stack": 15,
        "spacers-below": 20,
        "stem-clamp-height": 40,
        "spacers-above": 5,
      },
      results: { "steerer-stack": 232 },
      source: "worked by hand",
    },
    {
      inputs: {
        "lower-stack": 12.5,
        "head-tube-length": 110,
        "upper-stack": 8.5,
        "spacers-below": 0,
        "stem-clamp-height": 38,
        "spacers-above": 0,
      },
      results: { "steerer-stack": 169 },
      source: "by hand: no spacers at all",
    },
  ],
});
