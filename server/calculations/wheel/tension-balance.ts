import { quantity, word } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

const names = { "drive-side": "drive side", "non-drive-side": "non-drive side" } as const;

/** How the measured tensions of the two sides of a wheel agree with its geometry. */
export default defineCalculation({
  name: "tension-balance",
  title: "Balance of measured spoke tensions",
  description:
    "What the mean tension of the slacker side should be for that of the tighter one, by the bracing angles of both, and how far the measured one is from it.",
  inputs: {
    "mean-drive-side": input(quantity("force", "Mean tension of the drive side's spokes.", { lowest: 1 })),
    "mean-non-drive-side": input(quantity("force", "Mean tension of the non-drive side's spokes.", { lowest: 1 })),
    "tension-ratio": input(
      quantity("ratio", "Tension of the slacker side as a share of the tighter one's, in balance.", {
        lowest: 1,
        highest: 100,
      }),
    ),
    "tighter-side": input(
      word(
        { "drive-side": "The drive side.", "non-drive-side": "The non-drive side.", equal: "Both alike." },
        "Side of the flatter bracing angle.",
      ),
    ),
  },
  results: {
    "slacker-side": {
      unit: "",
      digits: 0,
      description: "`drive-side` or `non-drive-side`; the latter where both are alike.",
    },
    "expected-slacker-tension": { unit: "N", digits: 0, description: "What the slacker side's mean should be." },
    "measured-ratio": {
      unit: "%",
      digits: 1,
      description: "Measured mean of the slacker side as a share of the other.",
    },
    "off-balance": {
      unit: "%",
      digits: 1,
      description: "How far the slacker side's mean is from what it should be; positive when it is too tight.",
    },
  },
  formula: "expected = mean of the tighter side × ratio; off balance = measured ÷ expected − 1",
  source: "statics, re-derived: tension × sin of the bracing angle is equal on both sides of evenly shared spokes",
  compute(given, working) {
    const { "mean-drive-side": drive, "mean-non-drive-side": nonDrive, "tension-ratio": ratio } = given;
    const wrong = notPositive({ "mean-drive-side": drive, "mean-non-drive-side": nonDrive, "tension-ratio": ratio });
    if (wrong) return wrong;
    if (ratio > 100) return impossible("The slacker side cannot be tighter than the tighter one.");
    const slacker = given["tighter-side"] === "non-drive-side" ? "drive-side" : "non-drive-side";
    const [tight, slack] = slacker === "drive-side" ? [nonDrive, drive] : [drive, nonDrive];
    const expected = (tight * ratio) / 100;
    working?.step(
      `Expected on the ${names[slacker]}: ${say(tight, "N", 1)} × ${say(ratio, "%", 2)} = ${say(expected, "N", 1)}`,
    );
    working?.step(`Measured: ${say(slack, "N", 1)} ÷ ${say(tight, "N", 1)} = ${say((100 * slack) / tight, "%", 1)}`);
    working?.step(
      `Off balance: ${say(slack, "N", 1)} ÷ ${say(expected, "N", 1)} − 1 = ${say(100 * (slack / expected - 1), "%", 1)}`,
    );
    return {
      "slacker-side": slacker,
      "expected-slacker-tension": expected,
      "measured-ratio": (100 * slack) / tight,
      "off-balance": 100 * (slack / expected - 1),
    };
  },
  examples: [
    {
      inputs: {
        "mean-drive-side": 1200,
        "mean-non-drive-side": 587.334,
        "tension-ratio": 48.94451,
        "tighter-side": "drive-side",
      },
      results: {
        "slacker-side": "non-drive-side",
        "expected-slacker-tension": 587.334,
        "measured-ratio": 48.9445,
      },
      // The published tension is rounded to a thousandth of a newton.
      tolerance: 2e-6,
      source: "flange offsets of 37 and 18 mm, worked independently by script: 1200 N against 587.334 N",
    },
    {
      inputs: {
        "mean-drive-side": 540,
        "mean-non-drive-side": 1000,
        "tension-ratio": 60,
        "tighter-side": "non-drive-side",
      },
      results: {
        "slacker-side": "drive-side",
        "expected-slacker-tension": 600,
        "measured-ratio": 54,
        "off-balance": -10,
      },
      source: "worked by hand: 60 % of 1000 N, and 540 is a tenth below 600",
    },
    {
      inputs: { "mean-drive-side": 1000, "mean-non-drive-side": 1050, "tension-ratio": 100, "tighter-side": "equal" },
      results: { "slacker-side": "non-drive-side", "expected-slacker-tension": 1000, "off-balance": 5 },
      source: "by symmetry, worked by hand",
    },
  ],
});
