import { fact, optional, setting } from "../../model/need.ts";
import { angle, length, yesNo } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known, optionalInput } from "../define.ts";
import { barClamp } from "../shared/bar-position.ts";
import { negative, notBetween, notFinite, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** Where the middle of the bar clamp lies. */
export default defineCalculation({
  name: "bar-position",
  title: "Position of the bar clamp",
  description: "Middle of the stem's bar clamp, in front of and above the crank axis, by the frame's chart.",
  inputs: {
    reach: input(length("Head tube's top in front of the crank axis.", { example: "385 mm" })),
    stack: input(length("Head tube's top above the crank axis.", { example: "560 mm" })),
    "head-angle": input(angle("Angle of the steering axis from the horizontal.", { example: "73°" })),
    "upper-stack": input(length("Headset above the head tube, its cover included.", { example: "15 mm" })),
    "spacers-below": input(length("Spacers under the stem.", { example: "20 mm" })),
    "stem-clamp-height": input(length("Height of steerer that the stem takes up.", { example: "40 mm" })),
    "stem-length": input(length("From the steerer's axis to the bar clamp's middle.", { example: "100 mm" })),
    "stem-angle": input(
      angle("Deviation from square to the steerer, positive up; not the angle between stem and steerer.", {
        lowest: -60,
        highest: 60,
        example: "-6°",
      }),
    ),
    flipped: optionalInput(yesNo("Whether the stem is turned upside down, so that its angle points the other way.")),
  },
  results: {
    "bar-clamp-forward": { unit: "mm", digits: 1, description: "Bar clamp in front of the crank axis." },
    "bar-clamp-height": { unit: "mm", digits: 1, description: "Bar clamp above the crank axis." },
    "stem-inclination": { unit: "°", digits: 1, description: "Slope of the stem from the horizontal, positive up." },
  },
  formula:
    "up the steering axis by upper stack + spacers + half the stem's clamp height, then along the stem at 90° − head angle + stem angle",
  source: "plane geometry, re-derived",
  compute(given, working) {
    const { reach, stack, "head-angle": headAngle, "stem-length": stemLength } = given;
    const { "upper-stack": upperStack, "spacers-below": spacers, "stem-clamp-height": clampHeight } = given;
    const stemAngle = given.flipped ? -given["stem-angle"] : given["stem-angle"];
    const wrong =
      notFinite({ reach }) ??
      notPositive({ stack }) ??
      negative({
        "upper-stack": upperStack,
        "spacers-below": spacers,
        "stem-clamp-height": clampHeight,
        "stem-length": stemLength,
      }) ??
      notBetween(20, 90.000001, "°", { "head-angle": headAngle }) ??
      notBetween(-90, 90, "°", { "stem-angle": stemAngle });
    if (wrong) return wrong;
    const upAxis = upperStack + spacers + clampHeight / 2;
    const inclination = 90 - headAngle + stemAngle;
    const clamp = barClamp({ reach, stack, headAngle, upAxis, stemLength, stemAngle });
    working?.step(
      `Up the steering axis: ${say(upperStack, "mm")} + ${say(spacers, "mm")} + ${say(clampHeight, "mm")} ÷ 2 = ${say(upAxis, "mm")}`,
    );
    working?.step(
      `Slope of the stem: 90° − ${say(headAngle, "°")} + ${say(stemAngle, "°")} = ${say(inclination, "°")}`,
    );
    working?.step(
      `Forward: ${say(reach)} − ${say(upAxis)} × cos ${say(headAngle, "°")} + ${say(stemLength)} × cos ${say(inclination, "°")} = ${say(clamp.forward, "mm")}`,
    );
    working?.step(
      `Up: ${say(stack)} + ${say(upAxis)} × sin ${say(headAngle, "°")} + ${say(stemLength)} × sin ${say(inclination, "°")} = ${say(clamp.up, "mm")}`,
    );
    return {
      "bar-clamp-forward": clamp.forward,
      "bar-clamp-height": clamp.up,
      "stem-inclination": inclination,
    };
  },
  inBuild: [
    {
      assembly: "cockpit",
      needs: {
        reach: fact("frame", "reach"),
        stack: fact("frame", "stack"),
        headAngle: fact("frame", "head-angle"),
        upperStack: fact("headset", "upper-stack"),
        spacers: setting("cockpit.stem", "spacers-below"),
        clampHeight: fact("cockpit.stem", "clamp-height"),
        stemLength: fact("cockpit.stem", "length"),
        stemAngle: fact("cockpit.stem", "angle"),
        flipped: optional(setting("cockpit.stem", "flipped")),
      },
      inputs: (facts) =>
        known({
          reach: facts.reach.value,
          stack: facts.stack.value,
          "head-angle": facts.headAngle.value,
          "upper-stack": facts.upperStack.value,
          "spacers-below": facts.spacers.value,
          "stem-clamp-height": facts.clampHeight.value,
          "stem-length": facts.stemLength.value,
          "stem-angle": facts.stemAngle.value,
          flipped: facts.flipped.state === "known" && facts.flipped.value,
        }),
    },
  ],
  examples: [
    {
      inputs: {
        reach: 385,
        stack: 560,
        "head-angle": 73,
        "upper-stack": 15,
        "spacers-below": 20,
        "stem-clamp-height": 40,
        "stem-length": 100,
        "stem-angle": -6,
      },
      results: { "bar-clamp-forward": 467.08227, "bar-clamp-height": 631.67766, "stem-inclination": 11 },
      source: "worked independently by script with rotated axes",
    },
    {
      inputs: {
        reach: 385,
        stack: 560,
        "head-angle": 73,
        "upper-stack": 15,
        "spacers-below": 20,
        "stem-clamp-height": 40,
        "stem-length": 100,
        "stem-angle": -6,
        flipped: true,
      },
      results: { "bar-clamp-forward": 460.97004, "bar-clamp-height": 651.66987, "stem-inclination": 23 },
      source: "the same stem turned over, as one of +6°; worked independently by script",
    },
  ],
});
