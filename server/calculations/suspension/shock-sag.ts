import { fact, setting } from "../../model/need.ts";
import { length, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, meaningless, optionalInput } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";
import { shockSize } from "../shared/shock-size.ts";

/** How far a shock is pressed in by the rider's weight. */
export default defineCalculation({
  name: "shock-sag",
  title: "Sag of the rear shock",
  description:
    "Distance that the shock's ring moves for a share of sag, and what that is at the wheel with constant leverage.",
  inputs: {
    sag: input(quantity("ratio", "Sag as a share of stroke.", { lowest: 1, highest: 100 })),
    stroke: input(length("Stroke of the shock.")),
    "rear-travel": optionalInput(length("Vertical travel of the rear axle.")),
  },
  results: {
    "shock-sag": { unit: "mm", digits: 1, description: "How far the shock is pressed in." },
    "rear-wheel-sag": { unit: "mm", digits: 1, description: "How far the rear axle rises, with constant leverage." },
  },
  formula: "share × stroke; share × travel",
  source: "definition",
  compute({ sag, stroke, "rear-travel": travel }, working) {
    const wrong = notPositive({ sag, stroke, "rear-travel": travel });
    if (wrong) return wrong;
    if (sag > 100) return impossible("Sag is a share of the stroke, and no more than all of it.");
    const shock = (sag / 100) * stroke;
    working?.step(`Shock: ${say(sag, "%")} of ${say(stroke, "mm")} = ${say(shock, "mm")}`);
    if (travel === undefined) return { "shock-sag": shock };
    const wheel = (sag / 100) * travel;
    working?.step(`Wheel, with constant leverage: ${say(sag, "%")} of ${say(travel, "mm")} = ${say(wheel, "mm")}`);
    return { "shock-sag": shock, "rear-wheel-sag": wheel };
  },
  inBuild: [
    {
      assembly: "suspension",
      needs: {
        sag: setting("rear-shock", "sag"),
        size: fact("rear-shock", "size"),
        travel: fact("frame", "rear-travel"),
      },
      inputs: ({ sag, size, travel }) => {
        const shock = shockSize(size.value);
        if (!shock) return meaningless(`${size.written} does not say a stroke`);
        return known({ sag: sag.value, stroke: shock.stroke, "rear-travel": travel.value });
      },
    },
  ],
  examples: [
    {
      inputs: { sag: 30, stroke: 55, "rear-travel": 150 },
      results: { "shock-sag": 16.5, "rear-wheel-sag": 45 },
      source: "worked by hand: 30 % of 55 mm and of 150 mm",
    },
    { inputs: { sag: 25, stroke: 60 }, results: { "shock-sag": 15 }, source: "worked by hand: a quarter of 60 mm" },
  ],
});
