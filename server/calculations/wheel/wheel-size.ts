import { type Facts, fact, optional } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import { type BuildInputs, defineCalculation, input, known, meaningless, optionalInput } from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";
import { tyreSize } from "../shared/tyre-size.ts";
import { ofWheel, type Wheel, wheels } from "../shared/wheels.ts";

const inputs = {
  "bead-seat": input(length("Bead-seat diameter.", { lowest: 80, highest: 700 })),
  "tyre-width": input(length("Section width of the tyre, which stands in for its height.")),
  "tyre-height": optionalInput(length("Height from bead seat to tread as measured, where that is known.")),
};

function needsOf(wheel: Wheel) {
  return {
    size: fact(ofWheel(wheel, "tyre"), "size"),
    width: optional(fact(ofWheel(wheel, "tyre"), "measured-width")),
    height: optional(fact(ofWheel(wheel, "tyre"), "measured-height")),
  };
}

function feed({ size, width, height }: Facts<ReturnType<typeof needsOf>>): BuildInputs<typeof inputs> {
  const labelled = tyreSize(size.value);
  if (labelled?.beadSeat === undefined) return meaningless(`${size.written} does not say a width and a bead seat`);
  return known({
    "bead-seat": labelled.beadSeat,
    "tyre-width": stated(width) ?? labelled.width,
    "tyre-height": stated(height),
  });
}

/** Size of a wheel over its tyre, unloaded. */
export default defineCalculation({
  name: "wheel-size",
  title: "Diameter and circumference over the tyre",
  description:
    "Diameter, radius and circumference of a wheel over its tyre, unloaded; the loaded way of one turn is about one per cent shorter.",
  inputs,
  results: {
    "wheel-diameter": { unit: "mm", digits: 1, description: "Diameter over the tyre." },
    "wheel-radius": { unit: "mm", digits: 1, description: "Half of it." },
    circumference: { unit: "mm", digits: 1, description: "π times the diameter." },
  },
  formula:
    "diameter = bead seat + 2 × section height, the height taken as the section width; circumference = π × diameter",
  source: "ISO 5775 as summarised in the Wikipedia article ISO 5775",
  compute({ "bead-seat": beadSeat, "tyre-width": width, "tyre-height": measured }, working) {
    const wrong = notPositive({ "bead-seat": beadSeat, "tyre-width": width, "tyre-height": measured });
    if (wrong) return wrong;
    const height = measured ?? width;
    const diameter = beadSeat + 2 * height;
    const circumference = Math.PI * diameter;
    working?.step(
      `Diameter: ${say(beadSeat, "mm")} + 2 × ${say(height, "mm")} = ${say(diameter, "mm")}${measured === undefined ? " (height taken as the section width)" : ""}`,
    );
    working?.step(`Radius: ${say(diameter, "mm")} ÷ 2 = ${say(diameter / 2, "mm")}`);
    working?.step(`Circumference: π × ${say(diameter, "mm")} = ${say(circumference, "mm", 1)}`);
    return { "wheel-diameter": diameter, "wheel-radius": diameter / 2, circumference };
  },
  inBuild: wheels.map((wheel) => ({ assembly: wheel, needs: needsOf(wheel), inputs: feed })),
  examples: [
    {
      inputs: { "bead-seat": 559, "tyre-width": 47 },
      results: { "wheel-diameter": 653, "wheel-radius": 326.5, circumference: 2051.46 },
      source: "independent trade glossary's size table: 47-559 has a diameter of 653 mm",
    },
    {
      inputs: { "bead-seat": 406, "tyre-width": 28 },
      results: { "wheel-diameter": 462, circumference: 1451.4158 },
      source: "independent trade glossary's size table: 28-406 has a diameter of 462 mm",
    },
    {
      inputs: { "bead-seat": 622, "tyre-width": 23, "tyre-height": 25.5 },
      results: { "wheel-diameter": 673, circumference: 2114.2919 },
      source: "older ISO 5775 rule that narrow tyres stand 2.5 mm taller, worked by hand",
    },
  ],
});
