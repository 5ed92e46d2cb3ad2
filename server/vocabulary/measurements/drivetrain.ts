import { length, number, quantity } from "../fields.ts";
import { measurement, practice } from "./define.ts";

/** What is measured on the drivetrain. */
export const drivetrainMeasurements = {
  "drivetrain.chain-gap": measurement(
    length(
      "Chain gap, measured as the derailleur's maker says and on the cog that he names; on a suspended bike at sag.",
      {
        highest: 60,
        example: "7 mm",
      },
    ),
    {
      on: "drivetrain.rear-derailleur",
      comparedWith: "the gap that the derailleur's maker states",
      source: "the derailleur maker's own figure",
    },
  ),
  "drivetrain.chain-wear": measurement(
    quantity("ratio", "How much longer the chain has become, as a share of its length when new.", {
      lowest: -0.5,
      highest: 5,
      example: "0.4 %",
    }),
    {
      on: "drivetrain.chain",
      comparedWith: "the wear limit that the chain's maker states, else that of common practice by its speeds",
      tolerances: {
        narrow: { of: "of a chain for eleven speeds and more", most: 0.5, source: practice },
        wide: { of: "of a chain for ten speeds and fewer", most: 0.75, source: practice },
      },
      source: practice,
    },
  ),
  "drivetrain.hanger-run-out": measurement(
    length("Greatest difference of the alignment gauge's distance from the rim, round the wheel.", {
      highest: 60,
      example: "2 mm",
    }),
    {
      on: "drivetrain.hanger",
      comparedWith: "what the indexing bears",
      tolerances: { limit: { of: "round the rim", most: 4, source: practice } },
      source: practice,
    },
  ),
  "drivetrain.belt-frequency": measurement(
    number("Natural frequency of the belt's free run, in hertz.", { highest: 200, example: "48" }),
    {
      on: "drivetrain.chain",
      comparedWith: "the frequency that the belt's maker states",
      source: "the belt maker's own figure",
    },
  ),
} as const;
