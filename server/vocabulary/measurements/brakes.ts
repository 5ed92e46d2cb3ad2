import { length, yesNo } from "../fields.ts";
import type { SlotPath } from "../index.ts";
import { measurement } from "./define.ts";

function ofBrake(brake: "front-brake" | "rear-brake") {
  return {
    [`${brake}.rotor-thickness`]: measurement(
      length("Thickness of the rotor's brake track where it is thinnest.", { highest: 4, example: "1.75 mm" }),
      {
        on: `${brake}.rotor` as SlotPath,
        comparedWith: "the least thickness that the rotor's maker states, and its thickness when new",
        tolerances: {
          fresh: { of: "thicker than when new", by: 0.1, source: "common practice, no source" },
        },
        source: "the rotor maker's own figures",
      },
    ),
    [`${brake}.pad-thickness`]: measurement(
      length("Thickness of pad and backing together where they are thinnest.", { highest: 20, example: "3.2 mm" }),
      {
        on: `${brake}.pads` as SlotPath,
        comparedWith: "the least thickness that the pads' maker states",
        source: "the pad maker's own figure",
      },
    ),
    [`${brake}.static-test`]: measurement(
      yesNo("Whether it held, squeezed hard for ten seconds alone, without a leak."),
      {
        on: `${brake}.caliper` as SlotPath,
        comparedWith: "that a brake has to hold",
        source: "common practice, no source",
      },
    ),
  };
}

/** What is measured on both brakes. */
export const brakeMeasurements = { ...ofBrake("front-brake"), ...ofBrake("rear-brake") };
