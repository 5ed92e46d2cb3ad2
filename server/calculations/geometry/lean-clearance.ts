import { fact, worked } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, optionalInput } from "../define.ts";
import { degrees } from "../shared/angles.ts";
import { negative, notFinite, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** How far a bicycle leans before a pedal strikes. */
export default defineCalculation({
  name: "lean-clearance",
  title: "Lean until the pedal touches",
  description: "Angle of lean at which the level pedal at its lowest touches the ground, suspension unloaded.",
  inputs: {
    "crank-axis-height": input(length("Crank axis above the ground.")),
    "crank-length": input(length("From the middle of the spindle to the middle of the pedal axle.")),
    "pedal-underside": input(length("From the pedal axle's middle down to the pedal's lowest part.", { lowest: -30 })),
    "pedal-outer-edge": input(length("From the centre plane to the pedal's outer edge.")),
    "tyre-radius": optionalInput(length("Radius of the tyre's section, on which the bicycle rolls as it leans.")),
  },
  results: {
    "lean-angle": {
      unit: "°",
      digits: 1,
      description: "Lean at which the pedal touches, on a round tyre where given.",
    },
    "lean-angle-knife-edge": { unit: "°", digits: 1, description: "The same for a tyre without width." },
    "pedal-ground-clearance": { unit: "mm", digits: 1, description: "Height of the pedal's lowest part, upright." },
  },
  formula:
    "knife edge: arctangent of pedal height ÷ its outer edge; round tyre of radius q: arctangent of (height − q) ÷ edge + arcsine of q ÷ √(edge² + (height − q)²)",
  source: "what is measured: 16 CFR 1512.17(c); geometry re-derived",
  compute(given, working) {
    const { "crank-axis-height": height, "crank-length": crank, "pedal-underside": under, "tyre-radius": tyre } = given;
    const edge = given["pedal-outer-edge"];
    const wrong =
      notPositive({ "crank-axis-height": height, "crank-length": crank, "pedal-outer-edge": edge }) ??
      notFinite({ "pedal-underside": under }) ??
      negative({ "tyre-radius": tyre });
    if (wrong) return wrong;
    const clearance = height - crank - under;
    if (clearance <= 0) return impossible("The pedal touches the ground with the bicycle upright.");
    const knife = degrees(Math.atan2(clearance, edge));
    const q = tyre ?? 0;
    if (q >= edge) return impossible("The tyre is wider than the pedal reaches.");
    const round = degrees(Math.atan2(clearance - q, edge) + Math.asin(q / Math.hypot(edge, clearance - q)));
    working?.step(
      `Pedal upright: ${say(height, "mm")} − ${say(crank, "mm")} − ${say(under, "mm")} = ${say(clearance, "mm")} above the ground`,
    );
    working?.step(`Knife edge: arctangent of ${say(clearance)} ÷ ${say(edge)} = ${say(knife, "°")}`);
    if (tyre !== undefined) {
      working?.step(
        `Round tyre: arctangent of ${say(clearance - q)} ÷ ${say(edge)} + arcsine of ${say(q)} ÷ ${say(Math.hypot(edge, clearance - q))} = ${say(round, "°")}`,
      );
    }
    return { "lean-angle": round, "lean-angle-knife-edge": knife, "pedal-ground-clearance": clearance };
  },
  inBuild: [
    {
      assembly: "geometry",
      needs: {
        height: worked<number>("geometry.crank-axis-height"),
        crank: fact("drivetrain.crankset", "crank-length"),
        qFactor: fact("drivetrain.crankset", "q-factor"),
        outerEdge: fact("drivetrain.pedals", "outer-edge"),
        under: fact("drivetrain.pedals", "underside-height"),
        width: worked<number>("rear-wheel.tyre-width-on-rim"),
      },
      inputs: ({ height, crank, qFactor, outerEdge, under, width }) =>
        known({
          "crank-axis-height": height.value,
          "crank-length": crank.value,
          "pedal-underside": under.value,
          "pedal-outer-edge": qFactor.value / 2 + outerEdge.value,
          "tyre-radius": width.value / 2,
        }),
    },
  ],
  examples: [
    {
      inputs: {
        "crank-axis-height": 270,
        "crank-length": 170,
        "pedal-underside": 15,
        "pedal-outer-edge": 173,
        "tyre-radius": 16,
      },
      results: { "lean-angle-knife-edge": 26.16625, "lean-angle": 26.67235, "pedal-ground-clearance": 85 },
      source: "worked independently by script",
    },
    {
      inputs: {
        "crank-axis-height": 262,
        "crank-length": 175,
        "pedal-underside": 15,
        "pedal-outer-edge": 178,
        "tyre-radius": 14,
      },
      results: { "lean-angle-knife-edge": 22.02306, "lean-angle": 22.33651 },
      source: "worked independently by script",
    },
  ],
});
