import { fact, type Maybe, optional } from "../../model/need.ts";
import { angle, length } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, known, lacking, optionalInput } from "../define.ts";
import { sine } from "../shared/angles.ts";
import { negative, notBetween, notFinite, notPositive } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { postLength, postLengthNeeds } from "../shared/post-length.ts";
import { alongSeatTube } from "../shared/saddle-position.ts";
import { say } from "../shared/say.ts";

/** Which saddle heights a post reaches in a frame. */
export default defineCalculation({
  name: "saddle-range",
  title: "Saddle heights within reach",
  description:
    "The highest and the lowest saddle that the limits of post and frame allow, from the crank axis along the seat tube.",
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
    "post-setback": optionalInput(
      length("From the post's axis back to the middle of the rail clamp; 0 when left out.", {
        lowest: -100,
        highest: 150,
      }),
    ),
    "saddle-height-above-rails": input(length("From the rails' middle to the saddle's top.")),
    "post-least-insertion": optionalInput(length("Least depth by the post's own mark.")),
    "frame-least-insertion": optionalInput(length("Least depth that the frame asks for.")),
    "greatest-insertion": optionalInput(length("Greatest depth, before a bend or boss stops the post.")),
  },
  results: {
    "least-insertion-needed": {
      unit: "mm",
      digits: 1,
      description: "The greater of the post's and the frame's least depth.",
    },
    "highest-saddle": { unit: "mm", digits: 1, description: "Highest saddle at the least depth." },
    "lowest-saddle": { unit: "mm", digits: 1, description: "Lowest saddle at the greatest depth." },
  },
  formula:
    "height = (place of the rails above the crank axis + saddle's height) ÷ sin seat angle, the rails at seat-tube length + post length − depth along the seat tube; least depth = the greater of post's mark and frame's minimum",
  source: "plane geometry, re-derived; least depth: common practice, no source",
  compute(given, working) {
    const { "seat-angle": seatAngle, "seat-tube-length": tube, "post-length": post } = given;
    const { "saddle-height-above-rails": above, "post-setback": setback = 0, "seat-tube-offset": offset = 0 } = given;
    const { "post-least-insertion": byPost, "frame-least-insertion": byFrame, "greatest-insertion": greatest } = given;
    const wrong =
      notPositive({ "seat-tube-length": tube, "post-length": post }) ??
      negative({
        "saddle-height-above-rails": above,
        "post-least-insertion": byPost,
        "frame-least-insertion": byFrame,
        "greatest-insertion": greatest,
      }) ??
      notFinite({ "post-setback": setback, "seat-tube-offset": offset }) ??
      notBetween(20, 120, "°", { "seat-angle": seatAngle });
    if (wrong) return wrong;
    const railsAt = (depth: number): number => alongSeatTube({ seatAngle, offset }, tube + post - depth, setback).up;
    const heightAt = (depth: number): number => (railsAt(depth) + above) / sine(seatAngle);
    const sayHeight = (depth: number): string =>
      `(${say(railsAt(depth), "mm")} + ${say(above, "mm")}) ÷ sin ${say(seatAngle, "°")} = ${say(heightAt(depth), "mm")}`;
    const depths = [byPost, byFrame].filter((depth) => depth !== undefined);
    const least = Math.max(0, ...depths);
    if (least > post) return impossible("The least depth is more than the post is long.");
    working?.step(
      `Least depth: ${depths.length === 0 ? "none is stated" : depths.map((depth) => say(depth, "mm")).join(" or ")}${depths.length > 1 ? `, the greater: ${say(least, "mm")}` : ""}`,
    );
    working?.step(`Highest saddle: ${sayHeight(least)}`);
    const deepest = greatest === undefined ? undefined : Math.min(greatest, post);
    if (deepest !== undefined) {
      working?.step(`Lowest saddle, at a depth of ${say(deepest, "mm")}: ${sayHeight(deepest)}`);
      if (deepest < least) working?.step("The greatest depth is less than the least, so that no depth is right");
    }
    return {
      "least-insertion-needed": least,
      "highest-saddle": heightAt(least),
      ...(deepest === undefined ? {} : { "lowest-saddle": heightAt(deepest) }),
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
        setback: optional(fact("seat.post", "setback")),
        height: fact("seat.saddle", "height"),
        byPost: fact("seat.post", "least-insertion"),
        byFrame: optional(fact("frame", "least-post-insertion")),
        greatest: optional(fact("frame", "greatest-post-insertion")),
        body: optional(fact("seat.post", "body-length")),
      },
      inputs: (facts) => {
        const missing = missingOf(facts.offset, facts.setback, facts.byFrame);
        if (missing.length > 0) return lacking(missing);
        return known(
          {
            "seat-angle": facts.seatAngle.value,
            "seat-tube-offset": stated(facts.offset),
            "seat-tube-length": facts.tube.value,
            "post-length": postLength(facts),
            "post-setback": stated(facts.setback),
            "saddle-height-above-rails": facts.height.value,
            "post-least-insertion": facts.byPost.value,
            "frame-least-insertion": stated(facts.byFrame),
            "greatest-insertion": greatestDepth(facts.greatest, facts.body),
          },
          { "lowest-saddle": missingOf(facts.greatest) },
        );
      },
    },
  ],
  examples: [
    {
      inputs: {
        "seat-angle": 73.5,
        "seat-tube-length": 500,
        "post-length": 350,
        "saddle-height-above-rails": 0,
        "post-least-insertion": 54.4,
        "frame-least-insertion": 80,
        "greatest-insertion": 200,
      },
      results: { "least-insertion-needed": 80, "highest-saddle": 770, "lowest-saddle": 650 },
      source: "by hand: 850 mm less the depth; two diameters of a 27.2 mm post are 54.4 mm (16 CFR 1512.15(b))",
    },
    {
      inputs: {
        "seat-angle": 90,
        "seat-tube-length": 450,
        "post-length": 400,
        "post-setback": 25,
        "saddle-height-above-rails": 50,
        "post-least-insertion": 100,
      },
      results: { "least-insertion-needed": 100, "highest-saddle": 800 },
      source: "by hand on an upright tube: 450 + 400 − 100 + 50",
    },
  ],
});

/** A post stops at a bend of the tube, and a dropper at its collar. */
function greatestDepth(tube: Maybe<number>, body: Maybe<number>): number | undefined {
  const limits = [stated(tube), stated(body)].filter((depth) => depth !== undefined);
  return tube.state === "unknown" || limits.length === 0 ? undefined : Math.min(...limits);
}
