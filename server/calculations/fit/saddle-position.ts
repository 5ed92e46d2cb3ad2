import { fact, optional, setting } from "../../model/need.ts";
import { angle, length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, optionalInput } from "../define.ts";
import { sine } from "../shared/angles.ts";
import { negative, notBetween, notFinite, notPositive } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { postLength, postLengthNeeds } from "../shared/post-length.ts";
import { alongSeatTube } from "../shared/saddle-position.ts";
import { say } from "../shared/say.ts";

/** Where the rider sits, from frame, post and saddle. */
export default defineCalculation({
  name: "saddle-position",
  title: "Position of the saddle",
  description:
    "Height and setback of the saddle's top from the crank axis, from the seat tube, the post as inserted, and the saddle.",
  inputs: {
    "seat-angle": input(angle("Actual angle of the seat tube.")),
    "seat-tube-offset": optionalInput(
      length("Distance of the seat tube's axis in front of the crank axis, square to it; 0 when left out.", {
        lowest: -200,
        highest: 250,
      }),
    ),
    "seat-tube-length": input(length("From the crank axis to the seat tube's top, along it.")),
    "post-length": input(length("Length of the post from its lower end to the rails' middle.")),
    insertion: input(length("Depth of the post in the seat tube.")),
    "post-setback": optionalInput(
      length("From the post's axis back to the middle of the rail clamp; 0 when left out.", {
        lowest: -100,
        highest: 150,
      }),
    ),
    "saddle-height-above-rails": input(length("From the rails' middle to the saddle's top.")),
    "saddle-shift": optionalInput(
      length("From the rail clamp back to where the rider sits; 0 when left out.", { lowest: -200, highest: 300 }),
    ),
  },
  results: {
    "saddle-top-height": { unit: "mm", digits: 1, description: "Saddle's top above the crank axis, upright." },
    "saddle-setback": { unit: "mm", digits: 1, description: "Where the rider sits, behind the crank axis, level." },
    "saddle-height-actual": {
      unit: "mm",
      digits: 1,
      description: "From the crank axis along the seat tube's angle up to the height of the saddle's top.",
    },
    "post-exposed": { unit: "mm", digits: 1, description: "Post above the seat tube, up to the rails." },
  },
  formula:
    "rails: seat-tube length + post length − insertion along the seat tube, less setback square to it; saddle height added upright, shift backward",
  source: "plane geometry, re-derived",
  compute(given, working) {
    const { "seat-angle": seatAngle, "seat-tube-length": tube, "post-length": post, insertion } = given;
    const { "saddle-height-above-rails": above, "saddle-shift": shift = 0, "post-setback": setback = 0 } = given;
    const offset = given["seat-tube-offset"] ?? 0;
    const wrong =
      notPositive({ "seat-tube-length": tube, "post-length": post }) ??
      negative({ insertion, "saddle-height-above-rails": above }) ??
      notFinite({ "saddle-shift": shift, "post-setback": setback, "seat-tube-offset": offset }) ??
      notBetween(20, 120, "°", { "seat-angle": seatAngle });
    if (wrong) return wrong;
    if (insertion > post) return impossible("The post would go deeper than it is long.");
    const exposed = post - insertion;
    const rails = alongSeatTube({ seatAngle, offset }, tube + exposed, setback);
    const top = rails.up + above;
    const behind = shift - rails.forward;
    working?.step(`Post above the tube: ${say(post, "mm")} − ${say(insertion, "mm")} = ${say(exposed, "mm")}`);
    working?.step(
      `Rails: ${say(tube + exposed, "mm")} up the seat tube at ${say(seatAngle, "°")}: ${say(-rails.forward, "mm")} behind the crank axis, ${say(rails.up, "mm")} above it`,
    );
    working?.step(`Saddle top: ${say(rails.up, "mm")} + ${say(above, "mm")} = ${say(top, "mm")} above the crank axis`);
    working?.step(`Setback: ${say(-rails.forward, "mm")} + ${say(shift, "mm")} = ${say(behind, "mm")}`);
    working?.step(
      `Along the seat tube: ${say(top, "mm")} ÷ sin ${say(seatAngle, "°")} = ${say(top / sine(seatAngle), "mm")}`,
    );
    return {
      "saddle-top-height": top,
      "saddle-setback": behind,
      "saddle-height-actual": top / sine(seatAngle),
      "post-exposed": exposed,
    };
  },
  inBuild: [
    {
      assembly: "seat",
      needs: {
        seatAngle: fact("frame", "seat-angle"),
        offset: optional(fact("frame", "seat-tube-offset")),
        tube: fact("frame", "seat-tube-length"),
        ...postLengthNeeds,
        insertion: setting("seat.post", "insertion"),
        setback: optional(fact("seat.post", "setback")),
        height: fact("seat.saddle", "height"),
        sitting: optional(fact("seat.saddle", "clamp-to-sitting")),
        rails: optional(setting("seat.saddle", "rail-position")),
      },
      inputs: (facts) => {
        const missing = missingOf(facts.offset, facts.setback, facts.sitting, facts.rails);
        if (missing.length > 0) return lacking(missing);
        return known({
          "seat-angle": facts.seatAngle.value,
          "seat-tube-offset": stated(facts.offset),
          "seat-tube-length": facts.tube.value,
          "post-length": postLength(facts),
          insertion: facts.insertion.value,
          "post-setback": stated(facts.setback),
          "saddle-height-above-rails": facts.height.value,
          "saddle-shift": (stated(facts.sitting) ?? 0) + (stated(facts.rails) ?? 0),
        });
      },
    },
  ],
  examples: [
    {
      // 733 mm along a tube of 73.5°, as if the rails were the saddle's top.
      inputs: {
        "seat-angle": 73.5,
        "seat-tube-length": 500,
        "post-length": 350,
        insertion: 117,
        "saddle-height-above-rails": 0,
      },
      results: {
        "saddle-top-height": 702.8149,
        "saddle-setback": 208.1832,
        "saddle-height-actual": 733,
        "post-exposed": 233,
      },
      source: "worked independently: 733 × sin and cos of 73.5°",
    },
    {
      inputs: {
        "seat-angle": 90,
        "seat-tube-offset": 30,
        "seat-tube-length": 450,
        "post-length": 400,
        insertion: 150,
        "post-setback": 25,
        "saddle-height-above-rails": 45,
        "saddle-shift": 10,
      },
      results: { "saddle-top-height": 745, "saddle-setback": 5, "saddle-height-actual": 745 },
      source: "by hand on an upright tube: 450 + 250 + 45 up; 25 + 10 − 30 back",
    },
  ],
});
