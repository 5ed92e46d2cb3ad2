import { quantities, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, input, unusable } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";
import { unevenSpokes } from "../shared/uneven-spokes.ts";

/** How even the measured tensions of one side of a wheel are. */
export default defineCalculation({
  name: "tension-spread",
  title: "Mean and spread of measured spoke tensions",
  description:
    "Mean of the tensions measured on one side of a wheel, the greatest deviation from it, and the spokes that differ from the others by more than a tolerance.",
  inputs: {
    tensions: input(quantities("force", "Tension of each spoke of one side, in their order round the wheel.")),
    "spread-tolerance": input(
      quantity("ratio", "How far a spoke may be from what the others average.", {
        lowest: 1,
        highest: 99,
      }),
    ),
  },
  results: {
    "mean-tension": { unit: "N", digits: 0, description: "Mean of all spokes measured." },
    "lowest-tension": { unit: "N", digits: 0, description: "Tension of the slackest spoke." },
    "highest-tension": { unit: "N", digits: 0, description: "Tension of the tightest spoke." },
    "greatest-deviation": { unit: "%", digits: 1, description: "Of the spoke that is furthest from the mean of all." },
    "uneven-spokes": {
      unit: "",
      digits: 0,
      list: true,
      description: "Places in the list, the first one 1, of spokes beyond the tolerance.",
    },
    "mean-of-even-spokes": { unit: "N", digits: 0, description: "Mean of the spokes within the tolerance." },
  },
  formula:
    "mean = sum ÷ count; deviation = greatest |tension − mean| ÷ mean; a spoke is uneven when it differs by more than the tolerance from the mean of the others, the worst one set aside first",
  source: "definition of the mean; 20 % as the limit and 10 % for good work: common practice, no source",
  compute({ tensions, "spread-tolerance": tolerance }, working) {
    const wrong = notPositive({
      ...Object.fromEntries(tensions.map((tension, index) => [`tension ${index + 1}`, tension])),
      "spread-tolerance": tolerance,
    });
    if (wrong) return wrong;
    if (tensions.length === 0) return unusable("No spoke was measured.");
    const { mean, uneven, evenMean } = unevenSpokes(tensions, tolerance / 100);
    const deviation = Math.max(...tensions.map((tension) => Math.abs(tension - mean))) / mean;
    working?.step(
      `Mean: (${tensions.map((tension) => say(tension)).join(" + ")}) ÷ ${tensions.length} = ${say(mean, "N", 1)}`,
    );
    working?.step(`Greatest deviation from the mean: ${say(100 * deviation, "%", 1)}`);
    for (const { position, tension } of uneven) {
      working?.step(
        `Spoke ${position}: ${say(tension, "N")} ÷ ${say(evenMean, "N", 1)} − 1 = ${say(100 * (tension / evenMean - 1), "%", 1)}, beyond ${say(tolerance, "%")}`,
      );
    }
    return {
      "mean-tension": mean,
      "lowest-tension": Math.min(...tensions),
      "highest-tension": Math.max(...tensions),
      "greatest-deviation": 100 * deviation,
      "uneven-spokes": uneven.map(({ position }) => position),
      "mean-of-even-spokes": evenMean,
    };
  },
  examples: [
    {
      inputs: { tensions: [1000, 1040, 980, 1010, 960, 1020, 990, 1000], "spread-tolerance": 20 },
      results: {
        "mean-tension": 1000,
        "lowest-tension": 960,
        "highest-tension": 1040,
        "greatest-deviation": 4,
        "uneven-spokes": [],
        "mean-of-even-spokes": 1000,
      },
      source: "worked by hand: 8000 ÷ 8, and 40 of 1000",
    },
    {
      inputs: { tensions: [1000, 1040, 980, 780, 960, 1020, 990, 1010], "spread-tolerance": 20 },
      results: {
        "mean-tension": 972.5,
        "greatest-deviation": 19.794344,
        "uneven-spokes": [4],
        "mean-of-even-spokes": 1000,
      },
      source: "worked by hand: the seven others sum to 7000, and 780 is 22 % below their 1000",
    },
  ],
});
