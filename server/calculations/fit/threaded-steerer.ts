import { fact, optional, setting } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, meaningless, optionalInput } from "../define.ts";
import { negative } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";
import { notThreaded, threadedNeeds, usualLocknutGap } from "../shared/threaded-steerer.ts";

/** Where a steerer that carries a locknut is cut. */
export default defineCalculation({
  name: "threaded-steerer",
  title: "Length of a threaded steerer",
  description:
    "Height from the crown-race seat to the top of the locknut, and the length to which the steerer is cut so that it ends a little below it.",
  inputs: {
    "lower-stack": input(length("From the crown-race seat to the head tube's lower edge.")),
    "head-tube-length": input(length("Length of the head tube.")),
    "upper-stack": input(length("From the head tube's top to the top of the locknut.")),
    "locknut-spacers": optionalInput(
      length("Washers, spacers and cable hanger under the locknut, beyond those of the headset's own stack."),
    ),
    "locknut-gap": optionalInput(
      length(`How far the steerer is to end below the locknut's top; ${usualLocknutGap} mm when left out.`),
    ),
  },
  results: {
    "locknut-height": { unit: "mm", digits: 1, description: "Crown-race seat to the top of the locknut." },
    "threaded-steerer-cut": {
      unit: "mm",
      digits: 1,
      description: "Length of the steerer, from the crown-race seat.",
    },
  },
  formula: "lower stack + head tube + upper stack + spacers under the locknut; less the gap",
  source:
    "Wikipedia, Headset (bicycle part): the stack of frame and fork is the steerer's length less the head tube's; the gap is common practice, no source",
  compute(given, working) {
    const { "locknut-spacers": spacers = 0, "locknut-gap": gap = usualLocknutGap } = given;
    const { "lower-stack": lower, "head-tube-length": headTube, "upper-stack": upper } = given;
    const wrong = negative({
      "lower-stack": lower,
      "head-tube-length": headTube,
      "upper-stack": upper,
      "locknut-spacers": spacers,
      "locknut-gap": gap,
    });
    if (wrong) return wrong;
    const height = lower + headTube + upper + spacers;
    if (gap >= height) return impossible("The gap leaves no steerer.");
    const terms = [lower, headTube, upper, ...(spacers === 0 ? [] : [spacers])];
    working?.step(`Top of the locknut: ${terms.map((term) => say(term)).join(" + ")} = ${say(height, "mm")}`);
    working?.step(`Cut to: ${say(height, "mm")} − ${say(gap, "mm")} = ${say(height - gap, "mm")}`);
    return { "locknut-height": height, "threaded-steerer-cut": height - gap };
  },
  inBuild: [
    {
      assembly: "steering",
      needs: {
        ...threadedNeeds,
        lower: optional(fact("headset", "lower-stack")),
        headTube: optional(fact("frame", "head-tube-length")),
        upper: optional(fact("headset", "upper-stack")),
        spacers: optional(setting("headset", "locknut-spacers")),
      },
      inputs: ({ shape, clamping, lower, headTube, upper, spacers }) => {
        const other = notThreaded({ shape, clamping });
        if (other) return meaningless(other);
        const missing = missingOf(lower, headTube, upper, spacers);
        if (missing.length > 0) return lacking(missing);
        if (lower.state !== "known" || headTube.state !== "known" || upper.state !== "known") {
          return meaningless("there is no head tube or no headset");
        }
        return known({
          "lower-stack": lower.value,
          "head-tube-length": headTube.value,
          "upper-stack": upper.value,
          "locknut-spacers": stated(spacers),
        });
      },
    },
  ],
  examples: [
    {
      inputs: { "lower-stack": 13, "head-tube-length": 138, "upper-stack": 24 },
      results: { "locknut-height": 175, "threaded-steerer-cut": 173 },
      source: "by hand: 13 + 138 + 24 = 175; 2 mm below it",
    },
    {
      inputs: {
        "lower-stack": 12.5,
        "head-tube-length": 180,
        "upper-stack": 23,
        "locknut-spacers": 6,
        "locknut-gap": 1.5,
      },
      results: { "locknut-height": 221.5, "threaded-steerer-cut": 220 },
      source: "by hand: 12.5 + 180 + 23 + 6 = 221.5; 1.5 mm below it",
    },
  ],
});
