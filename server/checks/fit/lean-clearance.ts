import { slot, worked } from "../../model/need.ts";
import { atLeast } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

/** Lean, in degrees, before a pedal may touch: 16 CFR 1512.17(c); JIS D 9301 asks for the same. */
const leastLean = 25;

export default defineCheck({
  code: "fit/lean-clearance",
  title: "The bicycle leans far enough before a pedal strikes",
  severity: "warning",
  since: 1,
  safety: true,
  needs: () => ({
    cranks: slot("drivetrain.crankset"),
    lean: worked<number>("geometry.lean-angle"),
    clearance: worked<number>("geometry.pedal-ground-clearance"),
  }),
  test({ cranks, lean, clearance }) {
    const [is, least] = showPair(lean.value, leastLean, "angle", { digits: 1 });
    if (atLeast(lean.value, leastLean)) {
      return holds(
        `The bicycle leans ${is} before a pedal touches, and ${least} are asked for.`,
        (lean.value - leastLean) / lean.value,
      );
    }
    return fails(
      `The bicycle leans ${is} before its lower pedal touches the ground, and 16 CFR 1512.17(c) asks for ${least}: the pedal is ${clearance.written} above the ground upright. Shorter cranks, slimmer pedals, taller tyres or a frame with higher cranks give more.`,
      cranks,
      [lean, clearance],
      swaps("drivetrain.crankset", "drivetrain.pedals", "rear-wheel.tyre", "frame"),
    );
  },
  explanation:
    "A rider who pedals through a bend touches the ground with the inner pedal when the bicycle leans too far, and the wheel " +
    "is lifted off. Published rules ask for 25 degrees of lean with the pedal at its lowest, before anything but a tyre " +
    "touches. What counts is how high the cranks are, how long they are, and how far out and down the pedal reaches. " +
    "Suspension takes from it as it sinks. Longer cranks or smaller tyres on the same frame cost it most.",
  source: "16 CFR 1512.17(c); JIS D 9301; geometry re-derived",
  caution: "A pedal that strikes in a bend lifts the rear wheel and throws the rider.",
  examples: {
    holds: `
${bike(165, 60)}
`,
    fails: `
${bike(180, 80)}
`,
  },
});

/** A bicycle that stands on its wheels, with the numbers that make the difference. */
function bike(crank: number, drop: number): string {
  return `part frame example.fell "Fell" {
  reach: 385 mm
  stack: 560 mm
  head-angle: 72°
  head-tube-length: 150 mm
  chainstay: 425 mm
  bottom-bracket-drop: ${drop} mm
}
part fork example.fork "Fork" { axle-to-crown: 380 mm; fork-offset: 45 mm }
part headset example.bearings "Bearings" { lower-stack: 4 mm }
part crankset example.crank "Crank ${crank}" { crank-length: ${crank} mm; q-factor: 150 mm }
part pedals example.pedals "Pedals" { outer-edge: 100 mm; underside-height: 14 mm }
part rim example.rim "Rim" { inner-width: 19 mm }
part tyre example.tyre "Tyre" { size: 28-622; measured-width: 28 mm; measured-on-rim: 19 mm; measured-height: 28 mm }

build example "Cranks of ${crank} mm, ${drop} mm below the axles" {
  frame: example.fell
  fork: example.fork
  headset: example.bearings
  drivetrain { crankset: example.crank; pedals: example.pedals }
  front-wheel { rim: example.rim; tyre: example.tyre }
  rear-wheel { rim: example.rim; tyre: example.tyre }
}`;
}
