import { length, quantity } from "../fields.ts";
import { type Measurement, measurement, practice } from "./define.ts";

const fromAim = {
  comparedWith: "the aim of the build",
  tolerances: { aim: { of: "from the aim, where the build states no `fit.tolerance`", by: 5, source: practice } },
  source: practice,
} as const;

/** What is measured on the bicycle as a whole. */
export const wholeBikeMeasurements = {
  "fit.saddle-height": measurement(
    length("From the crank axis to the saddle's top along the seat tube.", { highest: 1000, example: "746 mm" }),
    fromAim,
  ),
  "fit.saddle-setback": measurement(
    length("From the crank axis back to where the rider sits, positive backward.", { lowest: -150, highest: 400 }),
    fromAim,
  ),
  "fit.grip-reach": measurement(length("From the crank axis forward to the hands.", { highest: 900 }), fromAim),
  "fit.grip-stack": measurement(length("Height of the hands above the crank axis.", { highest: 1300 }), fromAim),
  "fit.saddle-to-bar-drop": measurement(
    length("Height of the saddle's top above the bar clamp, positive with the bar lower.", {
      lowest: -400,
      highest: 250,
    }),
    fromAim,
  ),
  "whole.mass": measurement(
    quantity("mass", "Mass of the whole bicycle, as it is handed over.", {
      unit: "kg",
      highest: 300_000,
      example: "12.4 kg",
    }),
    {
      comparedWith: "the sum of the parts' masses, and the build's budget",
      tolerances: { worked: { of: "from the sum of the parts' masses", share: 0.05, source: practice } },
      source: "the build's own budget",
    },
  ),
  "whole.test-ride": measurement(
    quantity("time", "Time ridden for trial.", { unit: "min", highest: 36_000, example: "15 min" }),
    { comparedWith: "nothing: it is kept as it is", source: practice },
  ),
} as const satisfies Readonly<Record<string, Measurement>>;
