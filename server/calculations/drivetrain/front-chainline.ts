import { count, length } from "../../vocabulary/fields.ts";
import { defineCalculation, input, optionalInput, unusable } from "../define.ts";
import { negative, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** The chainline of cranks as measured on the bicycle. */
export default defineCalculation({
  name: "front-chainline",
  title: "Chainline at the cranks, measured",
  description:
    "From the centre plane to the ring (midway between two, the middle one of three), measured from a round tube that stands on the centre plane.",
  inputs: {
    "tube-diameter": input(length("Diameter of the seat tube where it is measured.")),
    "tube-to-outer-ring": input(length("From the tube's drive-side face to the middle of the outer ring's teeth.")),
    rings: optionalInput(count("Number of rings; one when left out.", { lowest: 1, highest: 3 })),
    "ring-spacing": optionalInput(length("Between the middles of neighbouring rings; needed for several.")),
  },
  results: { chainline: { unit: "mm", digits: 2, description: "Chainline, positive to the drive side." } },
  formula: "tube diameter ÷ 2 + tube to outer ring − (rings − 1) ÷ 2 × spacing of the rings",
  source: "definition, as in the Wikipedia article Chainline; the measurement is common practice, no source",
  compute(inputs, working) {
    const { "tube-diameter": tube, "tube-to-outer-ring": gap, rings = 1, "ring-spacing": spacing = 0 } = inputs;
    const wrong =
      notPositive({ "tube-diameter": tube, rings, "ring-spacing": inputs["ring-spacing"] }) ??
      negative({ "tube-to-outer-ring": gap });
    if (wrong) return wrong;
    if (rings > 1 && inputs["ring-spacing"] === undefined) return unusable("Several rings need their ring-spacing.");
    const outer = tube / 2 + gap;
    const chainline = outer - ((rings - 1) / 2) * spacing;
    working?.step(`Outer ring: ${say(tube, "mm")} ÷ 2 + ${say(gap, "mm")} = ${say(outer, "mm")}`);
    working?.step(
      `Chainline: ${say(outer, "mm")} − ${say((rings - 1) / 2)} × ${say(spacing, "mm")} = ${say(chainline, "mm")}`,
    );
    return { chainline };
  },
  examples: [
    {
      inputs: { "tube-diameter": 28.6, "tube-to-outer-ring": 33.2, rings: 2, "ring-spacing": 8 },
      results: { chainline: 43.5 },
      source: "worked by hand; 43.5 mm is the usual chainline of a road double",
    },
    {
      inputs: { "tube-diameter": 34.9, "tube-to-outer-ring": 34.55 },
      results: { chainline: 52 },
      source: "worked by hand: 17.45 + 34.55",
    },
  ],
});
