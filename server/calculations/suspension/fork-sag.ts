import { fact, optional, setting } from "../../model/need.ts";
import { angle, length, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, optionalInput } from "../define.ts";
import { sine } from "../shared/angles.ts";
import { notBetween, notPositive } from "../shared/guards.ts";
import { stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";

/** How far a fork is pressed in by the rider's weight. */
export default defineCalculation({
  name: "fork-sag",
  title: "Sag of the fork",
  description: "Distance that the fork's ring moves for a share of sag, and how far the front sinks by it.",
  inputs: {
    sag: input(quantity("ratio", "Sag as a share of travel.", { lowest: 1, highest: 100 })),
    travel: input(length("Travel of the fork.")),
    "head-angle": optionalInput(angle("Angle of the steering axis from the horizontal.")),
  },
  results: {
    "fork-sag": { unit: "mm", digits: 1, description: "How far the fork is pressed in, along its legs." },
    "front-sinks": { unit: "mm", digits: 1, description: "How far the steering head comes down by it." },
  },
  formula: "share × travel; down by that × sin head angle",
  source: "definition; plane geometry",
  compute({ sag, travel, "head-angle": headAngle }, working) {
    const wrong = notPositive({ sag, travel }) ?? notBetween(20, 90.000001, "°", { "head-angle": headAngle });
    if (wrong) return wrong;
    if (sag > 100) return impossible("Sag is a share of the travel, and no more than all of it.");
    const fork = (sag / 100) * travel;
    working?.step(`Fork: ${say(sag, "%")} of ${say(travel, "mm")} = ${say(fork, "mm")}`);
    if (headAngle === undefined) return { "fork-sag": fork };
    const down = fork * sine(headAngle);
    working?.step(`Front: ${say(fork, "mm")} × sin ${say(headAngle, "°")} = ${say(down, "mm")} lower`);
    return { "fork-sag": fork, "front-sinks": down };
  },
  inBuild: [
    {
      assembly: "suspension",
      needs: {
        sag: setting("fork", "sag"),
        travel: fact("fork", "travel"),
        set: optional(setting("fork", "travel-set")),
        headAngle: fact("frame", "head-angle"),
      },
      inputs: ({ sag, travel, set, headAngle }) =>
        known({ sag: sag.value, travel: stated(set) ?? travel.value, "head-angle": headAngle.value }),
    },
  ],
  examples: [
    {
      inputs: { sag: 20, travel: 130, "head-angle": 90 },
      results: { "fork-sag": 26, "front-sinks": 26 },
      source: "worked by hand: a fifth of 130 mm, on an upright axis",
    },
    {
      inputs: { sag: 15, travel: 120, "head-angle": 65 },
      results: { "fork-sag": 18, "front-sinks": 16.31354 },
      source: "worked by hand: 18 × sin 65°",
    },
  ],
});
