import { fact } from "../../model/need.ts";
import { angle, length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known } from "../define.ts";
import { degrees, radians } from "../shared/angles.ts";
import { notBetween, notFinite, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** The horizontal top tube that a sloping one stands for. */
export default defineCalculation({
  name: "effective-top-tube",
  title: "Effective top tube",
  description: "Level distance from the head tube's top back to the line of the effective seat angle.",
  inputs: {
    reach: input(length("Head tube's top in front of the crank axis.", { lowest: -100 })),
    stack: input(length("Head tube's top above the crank axis.")),
    "seat-angle": input(angle("Effective seat angle, of the line from the crank axis.")),
  },
  results: {
    "effective-top-tube": {
      unit: "mm",
      digits: 1,
      description: "Level distance at the height of the head tube's top.",
    },
  },
  formula: "reach + stack ÷ tan(seat angle)",
  source: "plane geometry, re-derived",
  compute({ reach, stack, "seat-angle": seatAngle }, working) {
    const wrong =
      notFinite({ reach }) ?? notPositive({ stack }) ?? notBetween(20, 120, "°", { "seat-angle": seatAngle });
    if (wrong) return wrong;
    const behind = stack / Math.tan(radians(seatAngle));
    working?.step(
      `${say(reach, "mm")} + ${say(stack, "mm")} ÷ tan ${say(degrees(radians(seatAngle)), "°")} = ${say(reach, "mm")} + ${say(behind, "mm")} = ${say(reach + behind, "mm")}`,
    );
    return { "effective-top-tube": reach + behind };
  },
  inBuild: [
    {
      assembly: "geometry",
      needs: {
        reach: fact("frame", "reach"),
        stack: fact("frame", "stack"),
        seatAngle: fact("frame", "effective-seat-angle"),
      },
      inputs: ({ reach, stack, seatAngle }) =>
        known({ reach: reach.value, stack: stack.value, "seat-angle": seatAngle.value }),
    },
  ],
  examples: [
    {
      inputs: { reach: 385, stack: 560, "seat-angle": 73.5 },
      results: { "effective-top-tube": 550.8796 },
      source: "worked independently: 385 + 560 ÷ tan 73.5°",
    },
    {
      inputs: { reach: 450, stack: 620, "seat-angle": 76 },
      results: { "effective-top-tube": 604.5834 },
      source: "worked independently: 450 + 620 ÷ tan 76°",
    },
  ],
});
