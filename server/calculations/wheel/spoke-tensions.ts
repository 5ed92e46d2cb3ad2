import { type Facts, fact, setting, worked } from "../../model/need.ts";
import { count, quantity, word } from "../../vocabulary/fields.ts";
import { type BuildInputs, defineCalculation, impossible, input, known } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";
import { ofWheel, type Wheel, wheels } from "../shared/wheels.ts";

const inputs = {
  tension: input(quantity("force", "Tension of a spoke on the tighter side.", { lowest: 1 })),
  "tension-ratio": input(
    quantity("ratio", "Tension of the slacker side as a share of the tighter one's.", { lowest: 1, highest: 100 }),
  ),
  "tighter-side": input(
    word(
      { "drive-side": "The drive side.", "non-drive-side": "The non-drive side.", equal: "Both alike." },
      "Side of the flatter bracing angle.",
    ),
  ),
  "spoke-holes": input(count("Spokes of the whole wheel, half of them on either side.", { lowest: 8, highest: 96 })),
};

function needsOf(wheel: Wheel) {
  return {
    tension: setting(ofWheel(wheel, "spokes"), "tension"),
    ratio: worked<number>(`${wheel}.tension-ratio`),
    side: worked<string>(`${wheel}.tighter-side`),
    holes: fact(ofWheel(wheel, "hub"), "spoke-holes"),
  };
}

function feed({ tension, ratio, side, holes }: Facts<ReturnType<typeof needsOf>>): BuildInputs<typeof inputs> {
  return known({
    tension: tension.value,
    "tension-ratio": ratio.value,
    "tighter-side": side.value as "drive-side" | "non-drive-side" | "equal",
    "spoke-holes": holes.value,
  });
}

/** What the aimed-at tension means for either side and for the rim. */
export default defineCalculation({
  name: "spoke-tensions",
  title: "Spoke tension of both sides and rim compression",
  description:
    "Tension of either side in balance, from the one aimed at on the tighter side, and the force that all spokes together squeeze the rim with.",
  inputs,
  results: {
    "tension-drive-side": { unit: "N", digits: 0, description: "Tension of a drive-side spoke." },
    "tension-non-drive-side": { unit: "N", digits: 0, description: "Tension of a non-drive-side spoke." },
    "rim-compression": { unit: "N", digits: 0, description: "Force along the rim by which the spokes squeeze it." },
  },
  formula:
    "slacker side = tension × ratio; rim compression = sum of all tensions ÷ 2π, the spokes taken as evenly spread and square to the rim",
  source: "statics, re-derived; rim compression as in Brandt, The Bicycle Wheel, third edition",
  compute({ tension, "tension-ratio": ratio, "tighter-side": side, "spoke-holes": holes }, working) {
    const wrong = notPositive({ tension, "tension-ratio": ratio, "spoke-holes": holes });
    if (wrong) return wrong;
    if (ratio > 100) return impossible("The slacker side cannot be tighter than the tighter one.");
    const slacker = (tension * ratio) / 100;
    const drive = side === "non-drive-side" ? slacker : tension;
    const nonDrive = side === "non-drive-side" ? tension : slacker;
    const compression = ((drive + nonDrive) * holes) / 2 / (2 * Math.PI);
    working?.step(`Slacker side: ${say(tension, "N")} × ${say(ratio, "%", 2)} = ${say(slacker, "N")}`);
    working?.step(
      `Rim compression: ${say(holes / 2)} × (${say(drive, "N", 1)} + ${say(nonDrive, "N", 1)}) ÷ 2π = ${say(compression, "N", 1)}`,
    );
    return { "tension-drive-side": drive, "tension-non-drive-side": nonDrive, "rim-compression": compression };
  },
  inBuild: wheels.map((wheel) => ({ assembly: wheel, needs: needsOf(wheel), inputs: feed })),
  examples: [
    {
      inputs: { tension: 1200, "tension-ratio": 48.94451, "tighter-side": "drive-side", "spoke-holes": 32 },
      results: { "tension-drive-side": 1200, "tension-non-drive-side": 587.334 },
      source: "worked independently by script, for flange offsets of 18 and 37 mm",
    },
    {
      inputs: { tension: 1000, "tension-ratio": 100, "tighter-side": "equal", "spoke-holes": 36 },
      results: { "rim-compression": 5729.578, "tension-non-drive-side": 1000 },
      source: "36 spokes at 1000 N: 5729.6 N; Brandt, The Bicycle Wheel, quotes about 5700 N",
    },
    {
      inputs: { tension: 900, "tension-ratio": 50, "tighter-side": "non-drive-side", "spoke-holes": 28 },
      results: { "tension-drive-side": 450, "tension-non-drive-side": 900, "rim-compression": 3008.0284 },
      source: "worked by hand: 14 × 1350 ÷ 2π",
    },
  ],
});
