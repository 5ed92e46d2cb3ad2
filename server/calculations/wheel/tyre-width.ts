import { type Facts, fact, optional } from "../../model/need.ts";
import { length } from "../../vocabulary/fields.ts";
import {
  type BuildInputs,
  defineCalculation,
  impossible,
  input,
  known,
  lacking,
  meaningless,
  optionalInput,
} from "../define.ts";
import { notPositive } from "../shared/guards.ts";
import { stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";
import { casingLength, sectionOf } from "../shared/tyre-section.ts";
import { tyreSize } from "../shared/tyre-size.ts";
import { ofWheel, type Wheel, wheels } from "../shared/wheels.ts";

/** How much wider a tyre gets for each millimetre of rim, by common practice. */
const roughGain = 0.4;

const inputs = {
  "tyre-width": input(length("Width of the tyre, as labelled or as measured on the rim stated beside it.")),
  "rim-width": input(length("Inner width of the rim it goes on.")),
  "measured-on-rim": optionalInput(
    length(
      "Inner width of the rim on which it was measured; left out, the label's width on the rim the standard assumes.",
    ),
  ),
};

function needsOf(wheel: Wheel) {
  return {
    size: fact(ofWheel(wheel, "tyre"), "size"),
    measured: optional(fact(ofWheel(wheel, "tyre"), "measured-width")),
    measuredOn: optional(fact(ofWheel(wheel, "tyre"), "measured-on-rim")),
    rim: fact(ofWheel(wheel, "rim"), "inner-width"),
  };
}

function feed({ size, measured, measuredOn, rim }: Facts<ReturnType<typeof needsOf>>): BuildInputs<typeof inputs> {
  if (measured.state === "known") {
    if (measuredOn.state === "unknown") return lacking(measuredOn.missing);
    return known({
      "tyre-width": measured.value,
      "rim-width": rim.value,
      "measured-on-rim": stated(measuredOn),
    });
  }
  const labelled = tyreSize(size.value);
  if (!labelled) return meaningless(`${size.written} does not say a width`);
  return known({ "tyre-width": labelled.width, "rim-width": rim.value });
}

/** How wide and how tall a tyre measures on the rim it is fitted to. */
export default defineCalculation({
  name: "tyre-width",
  title: "Width of a tyre as it measures on a rim",
  description:
    "Width and height of a tyre on a rim of another width than the one it was measured on, its casing keeping its length; the rough rule beside it. Labels differ from what a tyre measures: a caliper decides.",
  inputs,
  results: {
    "tyre-width-on-rim": { unit: "mm", digits: 1, description: "Width as it measures on the rim." },
    "tyre-height-on-rim": { unit: "mm", digits: 1, description: "Height above the line between the beads." },
    "tyre-width-rule-of-thumb": {
      unit: "mm",
      digits: 1,
      description: "What the rough rule gives: 0.4 mm wider for each millimetre of rim; for comparison only.",
    },
    "rim-assumed": { unit: "mm", digits: 1, description: "Inner width of the rim on which the width was taken." },
  },
  formula:
    "the casing is an arc of a circle of fixed length between the bead walls: length = width × (π − arcsin(rim ÷ width)); the rim the label assumes is 0.65 × width below 30 mm, 0.55 × width from there on",
  source:
    "membrane geometry, re-derived; rim widths of the label by older ISO 5775 as summarised in the Wikipedia article ISO 5775; rough rule: common practice, no source",
  compute({ "tyre-width": width, "rim-width": rim, "measured-on-rim": measured }, working) {
    const wrong = notPositive({ "tyre-width": width, "rim-width": rim, "measured-on-rim": measured });
    if (wrong) return wrong;
    const assumed = measured ?? (width < 30 ? 0.65 : 0.55) * width;
    if (measured === undefined) {
      working?.step(
        `Rim that the label assumes: ${width < 30 ? 0.65 : 0.55} × ${say(width, "mm")} = ${say(assumed, "mm")}`,
      );
    }
    if (assumed >= width) return impossible("The rim it was measured on is as wide as the tyre.");
    const casing = casingLength(width, assumed);
    const section = sectionOf(casing, rim);
    if (!section) return impossible(`A casing of ${say(casing, "mm", 1)} does not span a rim of ${say(rim, "mm")}.`);
    const rough = width + roughGain * (rim - assumed);
    working?.step(
      `Casing: ${say(width, "mm")} × (π − arcsin(${say(assumed)} ÷ ${say(width)})) = ${say(casing, "mm", 2)}`,
    );
    working?.step(
      `The same casing on a rim of ${say(rim, "mm")}: ${say(section.width, "mm", 2)} wide, ${say(section.height, "mm", 2)} high`,
    );
    working?.step(
      `Rough rule: ${say(width, "mm")} + ${roughGain} × (${say(rim)} − ${say(assumed)}) = ${say(rough, "mm", 2)}`,
    );
    return {
      "tyre-width-on-rim": section.width,
      "tyre-height-on-rim": section.height,
      "tyre-width-rule-of-thumb": rough,
      "rim-assumed": assumed,
    };
  },
  inBuild: wheels.map((wheel) => ({ assembly: wheel, needs: needsOf(wheel), inputs: feed })),
  examples: [
    {
      inputs: { "tyre-width": 40, "rim-width": 20, "measured-on-rim": 20 },
      results: { "tyre-width-on-rim": 40, "tyre-height-on-rim": 37.320508, "rim-assumed": 20 },
      source: "by hand: on its own rim it keeps its width, and stands 20 + 20 × cos 30° high",
    },
    {
      // 25 mm on a rim of 12.5 mm has a casing of 25 × 5π/6; the half circle of that length spans 125/3 mm.
      inputs: { "tyre-width": 25, "rim-width": 125 / 3, "measured-on-rim": 12.5 },
      results: {
        "tyre-width-on-rim": 125 / 3,
        "tyre-height-on-rim": 125 / 6,
        "tyre-width-rule-of-thumb": 25 + 0.4 * (125 / 3 - 12.5),
      },
      source: "by hand: a casing that makes just half a circle",
    },
    {
      inputs: { "tyre-width": 28, "rim-width": 21 },
      results: { "rim-assumed": 18.2, "tyre-width-on-rim": 29.156795, "tyre-width-rule-of-thumb": 29.12 },
      tolerance: 1e-5,
      source: "solved independently by script; the label's rim 65 % of 28 mm by older ISO 5775",
    },
  ],
});
