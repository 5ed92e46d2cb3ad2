import { worked } from "../../model/need.ts";
import { length, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, optionalInput } from "../define.ts";
import { gravity } from "../shared/gravity.ts";
import { notFinite, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** How a mass rests on two wheels. */
export default defineCalculation({
  name: "wheel-loads",
  title: "Loads on the wheels",
  description:
    "Share and force on either wheel from the place of the centre of mass, and the braking at which the rear wheel lifts.",
  inputs: {
    mass: input(quantity("mass", "All that rests on the wheels.", { unit: "kg", lowest: 1 })),
    wheelbase: input(length("Distance between the axles along the ground.")),
    "centre-forward": input(length("Centre of mass in front of the rear wheel's contact.", { lowest: -1000 })),
    "centre-height": optionalInput(length("Centre of mass above the ground.")),
  },
  results: {
    "front-share": { unit: "%", digits: 1, description: "Share on the front wheel." },
    "rear-share": { unit: "%", digits: 1, description: "Share on the rear wheel." },
    "front-force": { unit: "N", digits: 0, description: "Force on the front wheel." },
    "rear-force": { unit: "N", digits: 0, description: "Force on the rear wheel." },
    "pitch-over-share": {
      unit: "%",
      digits: 1,
      description: "Braking at which the rear wheel lifts, as a share of gravity.",
    },
    "pitch-over-deceleration": { unit: "m/s²", digits: 2, description: "The same as a deceleration." },
    "centre-for-quarter": {
      unit: "mm",
      digits: 0,
      description: "Place of the centre at which the front wheel carries 25 %.",
    },
  },
  formula:
    "front share = centre forward ÷ wheelbase; braking limit = (wheelbase − centre forward) ÷ centre height × gravity",
  source: "statics, re-derived; 25 % on the front wheel: TBIS 4210-2:2018, clause 4.7.5, the adoption of ISO 4210-2",
  compute({ mass, wheelbase, "centre-forward": forward, "centre-height": height }, working) {
    const wrong = notPositive({ mass, wheelbase, "centre-height": height }) ?? notFinite({ "centre-forward": forward });
    if (wrong) return wrong;
    if (forward < 0 || forward > wheelbase) {
      return impossible("The centre of mass does not lie between the wheels: the bicycle would tip over.");
    }
    const weight = (mass / 1000) * gravity;
    const front = forward / wheelbase;
    working?.step(
      `Front: ${say(forward, "mm")} ÷ ${say(wheelbase, "mm")} = ${say(100 * front, "%", 2)}; rear the rest, ${say(100 * (1 - front), "%", 2)}`,
    );
    working?.step(
      `Weight: ${say(mass / 1000, "kg")} × ${gravity} m/s² = ${say(weight, "N", 1)}: ${say(front * weight, "N", 1)} in front, ${say((1 - front) * weight, "N", 1)} behind`,
    );
    working?.step(`A quarter in front needs the centre at ${say(wheelbase, "mm")} ÷ 4 = ${say(wheelbase / 4, "mm")}`);
    const limit = height === undefined ? undefined : (wheelbase - forward) / height;
    if (limit !== undefined) {
      working?.step(
        `Rear wheel lifts at (${say(wheelbase)} − ${say(forward)}) ÷ ${say(height as number)} = ${say(100 * limit, "%", 1)} of gravity, ${say(limit * gravity, "m/s²", 2)}`,
      );
    }
    return {
      "front-share": 100 * front,
      "rear-share": 100 * (1 - front),
      "front-force": front * weight,
      "rear-force": (1 - front) * weight,
      "centre-for-quarter": wheelbase / 4,
      ...(limit === undefined ? {} : { "pitch-over-share": 100 * limit, "pitch-over-deceleration": limit * gravity }),
    };
  },
  inBuild: [
    {
      assembly: "bike",
      needs: {
        mass: worked<number>("bike.total-mass"),
        wheelbase: worked<number>("geometry.wheelbase"),
        forward: worked<number>("bike.centre-forward"),
        height: worked<number>("bike.centre-height"),
      },
      inputs: ({ mass, wheelbase, forward, height }) =>
        known({
          // Worked out in kilograms, taken in grams.
          mass: mass.value * 1000,
          wheelbase: wheelbase.value,
          "centre-forward": forward.value,
          "centre-height": height.value,
        }),
    },
  ],
  examples: [
    {
      inputs: { mass: 94_000, wheelbase: 1020, "centre-forward": 342.1276596, "centre-height": 861.1702128 },
      results: {
        "front-share": 33.54193,
        "rear-share": 66.45807,
        // The paper's gravity is 9.81 m/s²; standard gravity is used here.
        "front-force": (309.3035 * 9.80665) / 9.81,
        "rear-force": (612.8365 * 9.80665) / 9.81,
        "pitch-over-share": 78.7153,
        "pitch-over-deceleration": (7.72197 * 9.80665) / 9.81,
        "centre-for-quarter": 255,
      },
      tolerance: 2e-6,
      source:
        "benchmark bicycle of Meijaard, Papadopoulos, Ruina and Schwab (2007), Table 1; loads worked independently",
    },
    {
      inputs: { mass: 100_000, wheelbase: 1000, "centre-forward": 450 },
      results: { "front-share": 45, "front-force": 441.29925, "rear-force": 539.36575 },
      source: "worked by hand with standard gravity",
    },
  ],
});
