import { fact } from "../../model/need.ts";
import { count, length, number } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** How far a mixture of controller, derailleur and cassette drifts out of step. */
export default defineCalculation({
  name: "indexing-error",
  title: "Indexing error of a cable set-up",
  description:
    "Sideways movement of the guide pulley for one click against the distance between cogs, and what that adds up to over all clicks. Published pulls and ratios are rounded, so the sum says little about parts of one family.",
  inputs: {
    "pull-per-click": input(length("Cable pulled by one click, on average.")),
    "actuation-ratio": input(
      number("Sideways movement of the guide pulley for each millimetre of cable.", { lowest: 0.1, highest: 5 }),
    ),
    "cog-pitch": input(length("Between the middles of neighbouring cogs.")),
    clicks: input(count("Clicks from one end to the other: one fewer than the cogs.", { lowest: 1, highest: 13 })),
  },
  results: {
    "movement-per-click": {
      unit: "mm",
      digits: 3,
      description: "Sideways movement of the guide pulley for one click.",
    },
    "indexing-error-per-click": { unit: "mm", digits: 3, description: "That less the distance between cogs." },
    "indexing-error": {
      unit: "mm",
      digits: 2,
      description: "Error added up over all clicks; positive for too much movement.",
    },
    "indexing-error-share": { unit: "%", digits: 0, description: "The same, as a share of the distance between cogs." },
  },
  formula: "error per click = pull × ratio − cog pitch; added up = error per click × clicks",
  source: "common practice, no source",
  compute({ "pull-per-click": pull, "actuation-ratio": ratio, "cog-pitch": pitch, clicks }, working) {
    const wrong = notPositive({ "pull-per-click": pull, "actuation-ratio": ratio, "cog-pitch": pitch, clicks });
    if (wrong) return wrong;
    const movement = pull * ratio;
    const error = movement - pitch;
    const sum = error * clicks;
    working?.step(`Movement per click: ${say(pull, "mm")} × ${say(ratio)} = ${say(movement, "mm")}`);
    working?.step(`Error per click: ${say(movement, "mm")} − ${say(pitch, "mm")} = ${say(error, "mm")}`);
    working?.step(`Over ${clicks} clicks: ${say(error, "mm")} × ${clicks} = ${say(sum, "mm")}`);
    const share = (100 * sum) / pitch;
    working?.step(`As a share of the cog pitch: ${say(sum, "mm")} ÷ ${say(pitch, "mm")} = ${say(share, "%", 1)}`);
    return {
      "movement-per-click": movement,
      "indexing-error-per-click": error,
      "indexing-error": sum,
      "indexing-error-share": share,
    };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: {
        pull: fact("drivetrain.rear-controller", "pull-per-click"),
        ratio: fact("drivetrain.rear-derailleur", "actuation-ratio"),
        pitch: fact("drivetrain.cassette", "cog-pitch"),
        cogs: fact("drivetrain.cassette", "cogs"),
      },
      inputs: ({ pull, ratio, pitch, cogs }) =>
        known({
          "pull-per-click": pull.value,
          "actuation-ratio": ratio.value,
          "cog-pitch": pitch.value,
          clicks: cogs.value.length - 1,
        }),
    },
  ],
  examples: [
    {
      inputs: { "pull-per-click": 2.8, "actuation-ratio": 1.7, "cog-pitch": 4.8, clicks: 7 },
      results: { "movement-per-click": 4.76, "indexing-error-per-click": -0.04, "indexing-error": -0.28 },
      source: "worked independently by script",
    },
    {
      inputs: { "pull-per-click": 3.6, "actuation-ratio": 1.1, "cog-pitch": 3.95, clicks: 9 },
      results: { "movement-per-click": 3.96, "indexing-error": 0.09 },
      source: "worked independently by script",
    },
  ],
});
