import { length, quantity } from "../../vocabulary/fields.ts";
import { defineCalculation, input, optionalInput } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** Modulus of elasticity of spoke steel, in newtons per square millimetre. */
const steel = 200_000;

/** How a spoke bears its tension. */
export default defineCalculation({
  name: "spoke-stretch",
  title: "Stress and stretch of a spoke",
  description: "Stress in the middle of a round steel spoke at a tension, and how much it stretches.",
  inputs: {
    tension: input(quantity("force", "Tension of the spoke.", { lowest: 1 })),
    "middle-diameter": input(length("Diameter in the middle.")),
    "spoke-length": optionalInput(length("Length that stretches.")),
  },
  results: {
    stress: { unit: "MPa", digits: 0, description: "Tension over the area of the section." },
    stretch: { unit: "mm", digits: 2, description: "Lengthening, for steel of 200 GPa." },
  },
  formula: "stress = tension ÷ (π ÷ 4 × diameter²); stretch = stress ÷ 200 GPa × length",
  source: "definition of stress; modulus of steel from memory",
  compute({ tension, "middle-diameter": diameter, "spoke-length": spokeLength }, working) {
    const wrong = notPositive({ tension, "middle-diameter": diameter, "spoke-length": spokeLength });
    if (wrong) return wrong;
    const stress = tension / ((Math.PI / 4) * diameter ** 2);
    working?.step(`Stress: ${say(tension, "N")} ÷ (π ÷ 4 × ${say(diameter)}²) = ${say(stress, "MPa")}`);
    if (spokeLength === undefined) return { stress };
    const stretch = (stress / steel) * spokeLength;
    working?.step(`Stretch: ${say(stress, "MPa")} ÷ 200 GPa × ${say(spokeLength, "mm")} = ${say(stretch, "mm")}`);
    return { stress, stretch };
  },
  examples: [
    {
      inputs: { tension: 1000, "middle-diameter": 2, "spoke-length": 290 },
      results: { stress: 318.31, stretch: 0.46155 },
      tolerance: 1e-5,
      source: "worked independently: 1000 ÷ π",
    },
    {
      inputs: { tension: 1000, "middle-diameter": 1.5, "spoke-length": 290 },
      results: { stress: 565.884, stretch: 0.82053 },
      tolerance: 1e-5,
      source: "worked independently by script",
    },
  ],
});
