import { length, quantities } from "../fields.ts";
import type { SlotPath } from "../index.ts";
import { type Measurement, measurement, practice } from "./define.ts";

const sides = {
  "drive-side": "the drive side (right, seen from the saddle)",
  "non-drive-side": "the non-drive side (left, seen from the saddle)",
} as const;

/** Tension of every spoke of a side. */
function tension(wheel: "front-wheel" | "rear-wheel", side: keyof typeof sides): Measurement {
  return measurement(
    quantities(
      "force",
      `Tension of each spoke of ${sides[side]}, in their order round the wheel, the first one behind the valve first.`,
      { lowest: 0, example: "1180, 1150, 1210 N" },
    ),
    {
      on: `${wheel}.spokes` as SlotPath,
      builtInto: { slot: `${wheel}.hub`, kind: "built-wheel" },
      comparedWith:
        "the tension aimed at, with its balance by the wheel's geometry; the limit of the rim; the other spokes of the side; the other side",
      tolerances: {
        aim: { of: "of the side's mean from the tension aimed at", share: 0.1, source: practice },
        spread: { of: "of one spoke from what the others of its side average", share: 0.2, source: practice },
        good: {
          of: "of one spoke from what the others of its side average, in good work",
          share: 0.1,
          source: practice,
        },
        balance: {
          of: "of the slacker side's mean from what the geometry makes of the other one's",
          share: 0.1,
          source: practice,
        },
        spoke: {
          of: "of any spoke",
          least: 150,
          source: "JIS D 9301:2019 as described by the Japan Bicycle Promotion Institute: none at 150 N or less",
        },
      },
      source: "balance by statics; the rim maker's limit; JIS D 9301:2019 for the least tensions",
    },
  );
}

/** What is measured on a wheel. */
function ofWheel(wheel: "front-wheel" | "rear-wheel") {
  const [rim, tyre] = [`${wheel}.rim` as SlotPath, `${wheel}.tyre` as SlotPath];
  const runOut = {
    on: rim,
    comparedWith: "what a brake and a frame bear",
    tolerances: { limit: { of: "all the way round", most: 1, source: practice } },
    source: practice,
  } as const;
  return {
    [`${wheel}.tension.drive-side`]: tension(wheel, "drive-side"),
    [`${wheel}.tension.non-drive-side`]: tension(wheel, "non-drive-side"),
    [`${wheel}.run-out.lateral`]: measurement(
      length("Sideways run-out of the rim, from one extreme to the other.", { highest: 30, example: "0.4 mm" }),
      runOut,
    ),
    [`${wheel}.run-out.radial`]: measurement(
      length("Run-out of the rim up and down, from one extreme to the other.", { highest: 30, example: "0.4 mm" }),
      runOut,
    ),
    [`${wheel}.dish`]: measurement(
      length("How far the rim stands out of the middle between the locknuts, positive toward the drive side.", {
        lowest: -30,
        highest: 30,
        example: "0.5 mm",
      }),
      {
        on: rim,
        comparedWith: "the middle",
        tolerances: { limit: { of: "to either side", by: 1, source: practice } },
        source: practice,
      },
    ),
    [`${wheel}.tyre-width`]: measurement(
      length("Width of the tyre as mounted and inflated, over its widest place.", { highest: 150, example: "61 mm" }),
      {
        on: tyre,
        comparedWith: "the width worked out for its rim, and the widest tyre that frame or fork takes",
        tolerances: { worked: { of: "from the width worked out", by: 2, share: 0.03, source: practice } },
        source: "the frame's or fork's maker for the widest tyre",
      },
    ),
    [`${wheel}.circumference`]: measurement(
      length("Rolling circumference, measured over whole turns with the rider on.", {
        lowest: 500,
        highest: 3000,
        example: "2290 mm",
      }),
      {
        on: tyre,
        comparedWith: "the circumference worked out for a tyre without load",
        tolerances: { worked: { of: "from the circumference worked out", share: 0.03, source: practice } },
        source: "definition of the circumference; a loaded tyre rolls somewhat shorter",
      },
    ),
  };
}

/** What is measured on both wheels. */
export const wheelMeasurements = { ...ofWheel("front-wheel"), ...ofWheel("rear-wheel") };
