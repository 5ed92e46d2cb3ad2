import { fact, worked } from "../../model/need.ts";
import { angle, length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known } from "../define.ts";
import { cosine, sine } from "../shared/angles.ts";
import { notBetween, notFinite, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";
import { trailOf } from "../shared/trail.ts";

/** Trail, and what follows from it. */
export default defineCalculation({
  name: "trail",
  title: "Trail, mechanical trail and wheel flop",
  description:
    "How far the front wheel's contact trails behind the steering axis, and how the wheel tends to flop over.",
  inputs: {
    "wheel-radius": input(length("Radius of the front wheel over its tyre.")),
    "head-angle": input(angle("Angle of the steering axis from the horizontal.")),
    "fork-offset": input(
      length("Offset of the axle, square to the steering axis, positive forward.", { lowest: -100, highest: 300 }),
    ),
  },
  results: {
    trail: { unit: "mm", digits: 1, description: "Trail along the ground." },
    "mechanical-trail": { unit: "mm", digits: 1, description: "Trail square to the steering axis." },
    "wheel-flop": {
      unit: "mm",
      digits: 1,
      description:
        "Wheel flop factor: trail × sine × cosine of the head angle; the curvature of the front end's fall, not the fall at a right angle.",
    },
    "axis-height-share": {
      unit: "%",
      digits: 1,
      description:
        "Height at which the steering axis crosses the vertical through the front axle, as a share of the wheel's radius.",
    },
  },
  formula:
    "trail = (radius × cos head angle − offset) ÷ sin head angle; mechanical trail = radius × cos head angle − offset; flop = trail × sin × cos of the head angle",
  source: "Wikipedia, Bicycle and motorcycle geometry",
  compute({ "wheel-radius": radius, "head-angle": headAngle, "fork-offset": offset }, working) {
    const wrong =
      notPositive({ "wheel-radius": radius }) ??
      notBetween(20, 90, "°", { "head-angle": headAngle }) ??
      notFinite({ "fork-offset": offset });
    if (wrong) return wrong;
    const mechanical = radius * cosine(headAngle) - offset;
    const trail = trailOf(radius, headAngle, offset);
    const flop = trail * sine(headAngle) * cosine(headAngle);
    const crossing = radius - offset / cosine(headAngle);
    working?.step(
      `Mechanical trail: ${say(radius, "mm")} × cos ${say(headAngle, "°")} − ${say(offset, "mm")} = ${say(mechanical, "mm")}`,
    );
    working?.step(`Trail: ${say(mechanical, "mm")} ÷ sin ${say(headAngle, "°")} = ${say(trail, "mm")}`);
    working?.step(
      `Flop: ${say(trail, "mm")} × sin ${say(headAngle, "°")} × cos ${say(headAngle, "°")} = ${say(flop, "mm")}`,
    );
    working?.step(
      `The axis crosses the vertical through the axle ${say(crossing, "mm")} above the ground: ${say((100 * crossing) / radius, "%", 1)} of the radius`,
    );
    return {
      trail,
      "mechanical-trail": mechanical,
      "wheel-flop": flop,
      "axis-height-share": (100 * crossing) / radius,
    };
  },
  inBuild: [
    {
      assembly: "steering",
      needs: {
        radius: worked<number>("front-wheel.wheel-radius"),
        headAngle: worked<number>("geometry.actual-head-angle"),
        offset: fact("fork", "fork-offset"),
      },
      inputs: ({ radius, headAngle, offset }) =>
        known({ "wheel-radius": radius.value, "head-angle": headAngle.value, "fork-offset": offset.value }),
    },
  ],
  examples: [
    {
      inputs: { "wheel-radius": 336, "head-angle": 73, "fork-offset": 45 },
      results: { trail: 55.66938, "mechanical-trail": 53.23689, "wheel-flop": 15.56496, "axis-height-share": 54.192 },
      tolerance: 1e-5,
      source: "formulas of the Wikipedia article Bicycle and motorcycle geometry, worked independently",
    },
    {
      inputs: { "wheel-radius": 372, "head-angle": 65, "fork-offset": 44 },
      results: { trail: 124.91782, "mechanical-trail": 113.21399, "wheel-flop": 47.8463, "axis-height-share": 72.013 },
      tolerance: 1e-5,
      source: "formulas of the Wikipedia article Bicycle and motorcycle geometry, worked independently",
    },
    {
      inputs: { "wheel-radius": 350, "head-angle": 72, "fork-offset": 32.0714 },
      results: { trail: 80, "mechanical-trail": 76.0845, "wheel-flop": 23.5114 },
      tolerance: 1e-5,
      source:
        "benchmark bicycle of Meijaard, Papadopoulos, Ruina and Schwab (2007), Table 1: trail 0.08 m, tilt π/10, radius 0.35 m",
    },
  ],
});
