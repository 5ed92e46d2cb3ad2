import { fact, optional } from "../../model/need.ts";
import { count, number, toothCount } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, meaningless, optionalInput } from "../define.ts";
import { notPositive, notTeeth } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { ringNeeds, withRings } from "../shared/rings-in-use.ts";
import { say } from "../shared/say.ts";

/** Gears of a hub that changes them inside. */
export default defineCalculation({
  name: "gear-hub",
  title: "Ratios with a gear hub",
  description:
    "Primary ratio of ring and sprocket, the lowest and highest gear through the hub, and the average step; the primary ratio must not fall below what the hub's maker allows.",
  inputs: {
    ring: input(toothCount("Teeth of the ring.", { highest: 200 })),
    sprocket: input(toothCount("Teeth of the sprocket.", { highest: 200 })),
    "lowest-gear": input(
      number("Ratio inside the hub in its lowest gear: turns of the wheel for one of the sprocket.", {
        lowest: 0.05,
        highest: 5,
      }),
    ),
    "gear-range": input(number("Highest ratio inside divided by the lowest.", { lowest: 1, highest: 20 })),
    gears: optionalInput(count("Number of gears inside.", { lowest: 2, highest: 30 })),
    "least-primary-ratio": optionalInput(
      number("Least ratio of ring to sprocket allowed.", { lowest: 0.1, highest: 10 }),
    ),
  },
  results: {
    "primary-ratio": { unit: "", digits: 3, description: "Teeth of the ring over teeth of the sprocket." },
    "lowest-hub-ratio": {
      unit: "",
      digits: 3,
      description: "Turns of the wheel for one of the cranks in the lowest gear.",
    },
    "highest-hub-ratio": { unit: "", digits: 3, description: "The same in the highest gear." },
    "average-hub-step": { unit: "%", digits: 1, description: "Average step from one gear to the next." },
    "primary-ratio-margin": {
      unit: "%",
      digits: 1,
      description: "How far the primary ratio lies above the least allowed.",
    },
    "largest-sprocket": {
      unit: "t",
      digits: 0,
      description: "Largest sprocket that the least primary ratio allows with this ring.",
    },
  },
  formula:
    "primary = ring ÷ sprocket; lowest = primary × lowest inside; highest = lowest × range; average step = range to the power of 1 ÷ (gears − 1), less 1",
  source: "definition",
  compute(given, working) {
    const { ring, sprocket, gears, "lowest-gear": lowestInside, "gear-range": range } = given;
    const least = given["least-primary-ratio"];
    const wrong =
      notTeeth({ ring: [ring], sprocket: [sprocket] }) ??
      notPositive({ "lowest-gear": lowestInside, "gear-range": range, gears, "least-primary-ratio": least });
    if (wrong) return wrong;
    if (range < 1) return impossible("The highest gear cannot be lower than the lowest.");
    const primary = ring / sprocket;
    const lowest = primary * lowestInside;
    working?.step(`Primary: ${ring} ÷ ${sprocket} = ${say(primary)}`);
    working?.step(`Lowest: ${say(primary)} × ${say(lowestInside)} = ${say(lowest)}`);
    working?.step(`Highest: ${say(lowest)} × ${say(range)} = ${say(lowest * range)}`);
    const step = gears !== undefined && gears > 1 ? 100 * (range ** (1 / (gears - 1)) - 1) : undefined;
    if (step !== undefined) working?.step(`Average step over ${gears} gears: ${say(step, "%", 1)}`);
    if (least !== undefined) {
      working?.step(`Largest sprocket for it: ${ring} ÷ ${say(least)}, down to ${Math.floor(ring / least + 1e-9)} t`);
      working?.step(`Against the least of ${say(least)}: ${say(100 * (primary / least - 1), "%", 1)} above it`);
    }
    return {
      "primary-ratio": primary,
      "lowest-hub-ratio": lowest,
      "highest-hub-ratio": lowest * range,
      ...(step === undefined ? {} : { "average-hub-step": step }),
      ...(least === undefined
        ? {}
        : {
            "primary-ratio-margin": 100 * (primary / least - 1),
            "largest-sprocket": Math.floor(ring / least + 1e-9),
          }),
    };
  },
  inBuild: [
    {
      assembly: "drivetrain",
      needs: {
        ...ringNeeds,
        cogs: fact("drivetrain.cassette", "cogs"),
        gears: fact("rear-wheel.hub", "gears"),
        lowest: fact("rear-wheel.hub", "lowest-gear"),
        range: fact("rear-wheel.hub", "gear-range"),
        least: optional(fact("rear-wheel.hub", "least-primary-ratio")),
      },
      inputs: (facts) =>
        withRings(facts, (rings) => {
          const [ring] = rings;
          const [sprocket] = facts.cogs.value;
          if (rings.length > 1 || facts.cogs.value.length > 1 || ring === undefined || sprocket === undefined) {
            return meaningless("there is more than one ring or sprocket");
          }
          return known(
            {
              ring,
              sprocket,
              "lowest-gear": facts.lowest.value,
              "gear-range": facts.range.value,
              gears: facts.gears.value,
              "least-primary-ratio": stated(facts.least),
            },
            { "primary-ratio-margin": missingOf(facts.least), "largest-sprocket": missingOf(facts.least) },
          );
        }),
    },
  ],
  examples: [
    {
      inputs: {
        ring: 44,
        sprocket: 20,
        "lowest-gear": 0.5,
        "gear-range": 3,
        gears: 8,
        "least-primary-ratio": 2,
      },
      results: {
        "primary-ratio": 2.2,
        "lowest-hub-ratio": 1.1,
        "highest-hub-ratio": 3.3,
        "average-hub-step": 16.993081,
        "primary-ratio-margin": 10,
        "largest-sprocket": 22,
      },
      source: "worked by hand; the average step is the seventh root of 3",
    },
    {
      inputs: { ring: 38, sprocket: 19, "lowest-gear": 0.75, "gear-range": 1.7777778, gears: 3 },
      results: {
        "primary-ratio": 2,
        "lowest-hub-ratio": 1.5,
        "highest-hub-ratio": 2.6666667,
        "average-hub-step": 33.333334,
      },
      source: "a three-speed hub of 3/4, 1 and 4/3 (from memory), worked by hand",
    },
  ],
});
