import { buildField, fact, optional } from "../../model/need.ts";
import { angle, length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, optionalInput } from "../define.ts";
import { sine } from "../shared/angles.ts";
import { negative, notBetween, notFinite, notPositive } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { postLength, postLengthNeeds } from "../shared/post-length.ts";
import { alongForHeight } from "../shared/saddle-position.ts";
import { say } from "../shared/say.ts";

/** How deep a post stands for a saddle height. */
export default defineCalculation({
  name: "post-insertion",
  title: "Seatpost insertion for a saddle height",
  description: "Depth of the post in the seat tube for a wanted saddle height.",
  inputs: {
    "saddle-height": input(length("Wanted height from the crank axis to the saddle's top along the seat tube.")),
    "seat-angle": input(angle("Actual angle of the seat tube.")),
    "seat-tube-offset": optionalInput(
      length("Distance of the seat tube's axis in front of the crank axis, square to it; 0 when left out.", {
        lowest: -200,
        highest: 250,
      }),
    ),
    "seat-tube-length": input(length("From the crank axis to the seat tube's top, along it.")),
    "post-length": input(length("Length of the post from its lower end to the rails' middle.")),
    "post-setback": optionalInput(
      length("From the post's axis back to the middle of the rail clamp; 0 when left out.", {
        lowest: -100,
        highest: 150,
      }),
    ),
    "saddle-height-above-rails": input(length("From the rails' middle to the saddle's top.")),
  },
  results: {
    "insertion-for-height": { unit: "mm", digits: 1, description: "Depth in the seat tube for the wanted height." },
  },
  formula: "insertion = seat-tube length + post length − place of the rails along the seat tube",
  source: "plane geometry, re-derived",
  compute(given, working) {
    const { "saddle-height": wanted, "seat-angle": seatAngle, "seat-tube-length": tube, "post-length": post } = given;
    const { "saddle-height-above-rails": above, "post-setback": setback = 0, "seat-tube-offset": offset = 0 } = given;
    const wrong =
      notPositive({ "saddle-height": wanted, "seat-tube-length": tube, "post-length": post }) ??
      negative({ "saddle-height-above-rails": above }) ??
      notFinite({ "post-setback": setback, "seat-tube-offset": offset }) ??
      notBetween(20, 120, "°", { "seat-angle": seatAngle });
    if (wrong) return wrong;
    const sin = sine(seatAngle);
    const along = alongForHeight({ seatAngle, offset }, wanted * sin - above, setback);
    const insertion = tube + post - along;
    working?.step(
      `Saddle top: ${say(wanted, "mm")} × sin ${say(seatAngle, "°")} = ${say(wanted * sin, "mm")} above the crank axis`,
    );
    working?.step(`Rails: ${say(along, "mm")} up the seat tube`);
    working?.step(`Insertion: ${say(tube, "mm")} + ${say(post, "mm")} − ${say(along, "mm")} = ${say(insertion, "mm")}`);
    if (insertion < 0) return impossible(`The post is ${say(-insertion, "mm")} too short for this height.`);
    if (insertion > post) return impossible("The seat tube alone is higher than this.");
    return { "insertion-for-height": insertion };
  },
  inBuild: [
    {
      assembly: "seat",
      needs: {
        wanted: buildField("fit.saddle-height"),
        seatAngle: fact("frame", "seat-angle"),
        offset: optional(fact("frame", "seat-tube-offset")),
        tube: fact("frame", "seat-tube-length"),
        ...postLengthNeeds,
        setback: optional(fact("seat.post", "setback")),
        height: fact("seat.saddle", "height"),
      },
      inputs: (facts) => {
        const missing = missingOf(facts.offset, facts.setback);
        if (missing.length > 0) return lacking(missing);
        return known({
          "saddle-height": facts.wanted.value,
          "seat-angle": facts.seatAngle.value,
          "seat-tube-offset": stated(facts.offset),
          "seat-tube-length": facts.tube.value,
          "post-length": postLength(facts),
          "post-setback": stated(facts.setback),
          "saddle-height-above-rails": facts.height.value,
        });
      },
    },
  ],
  examples: [
    {
      inputs: {
        "saddle-height": 733,
        "seat-angle": 73.5,
        "seat-tube-length": 500,
        "post-length": 350,
        "saddle-height-above-rails": 0,
      },
      results: { "insertion-for-height": 117 },
      source: "by hand: 850 − 733",
    },
    {
      inputs: {
        "saddle-height": 700,
        "seat-angle": 90,
        "seat-tube-length": 450,
        "post-length": 400,
        "post-setback": 25,
        "saddle-height-above-rails": 50,
      },
      results: { "insertion-for-height": 200 },
      source: "by hand on an upright tube: 450 + 400 − 650",
    },
  ],
});
