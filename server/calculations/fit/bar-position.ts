import { fact, optional, setting } from "../../model/need.ts";
import { angle, length, yesNo } from "../../vocabulary/fields.ts";
import { defineCalculation, input, known, lacking, meaningless, optionalInput, unusable } from "../define.ts";
import { barClamp } from "../shared/bar-position.ts";
import { negative, notBetween, notFinite, notPositive } from "../shared/guards.ts";
import { missingOf, stated } from "../shared/maybe.ts";
import { say } from "../shared/say.ts";

/** Where the middle of the bar clamp lies. */
export default defineCalculation({
  name: "bar-position",
  title: "Position of the bar clamp",
  description: "Middle of the stem's bar clamp, in front of and above the crank axis, by the frame's chart.",
  inputs: {
    reach: input(length("Head tube's top in front of the crank axis.")),
    stack: input(length("Head tube's top above the crank axis.")),
    "head-angle": input(angle("Angle of the steering axis from the horizontal.")),
    "upper-stack": input(length("Headset above the head tube, its cover included.")),
    "spacers-below": optionalInput(length("Spacers under a stem that clamps the steerer.")),
    "stem-clamp-height": optionalInput(length("Height of steerer that such a stem takes up.")),
    "quill-rise": optionalInput(
      length("Of a quill, in place of the two: from the headset's top up to the middle of its arm."),
    ),
    "stem-length": input(length("From the steerer's axis to the bar clamp's middle.")),
    "stem-angle": input(
      angle("Deviation from square to the steerer, positive up; not the angle between stem and steerer.", {
        lowest: -60,
        highest: 60,
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
    "up the steering axis by upper stack + spacers + half the stem's clamp height, or by upper stack + the rise of a quill, then along the stem at 90° − head angle + stem angle",
  source: "plane geometry, re-derived",
  compute(given, working) {
    const { reach, stack, "head-angle": headAngle, "stem-length": stemLength } = given;
    const { "upper-stack": upperStack, "spacers-below": spacers, "stem-clamp-height": clampHeight } = given;
    const { "quill-rise": quillRise } = given;
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
      notFinite({ "quill-rise": quillRise }) ??
      notBetween(20, 90.000001, "°", { "head-angle": headAngle }) ??
      notBetween(-90, 90, "°", { "stem-angle": stemAngle });
    if (wrong) return wrong;
    const above = quillRise ?? middleOfClamp(spacers, clampHeight);
    if (above === undefined) {
      return unusable("Give the spacers and the height of the stem's clamp, or the rise of a quill.");
    }
    const upAxis = upperStack + above;
    const inclination = 90 - headAngle + stemAngle;
    const clamp = barClamp({ reach, stack, headAngle, upAxis, stemLength, stemAngle });
    const parts =
      quillRise === undefined
        ? `${say(spacers ?? 0, "mm")} + ${say(clampHeight ?? 0, "mm")} ÷ 2`
        : `${say(quillRise, "mm")} of the quill`;
    working?.step(`Up the steering axis: ${say(upperStack, "mm")} + ${parts} = ${say(upAxis, "mm")}`);
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
        clamping: optional(fact("cockpit.stem", "clamping")),
        spacers: optional(setting("cockpit.stem", "spacers-below")),
        locknutSpacers: optional(setting("headset", "locknut-spacers")),
        clampHeight: optional(fact("cockpit.stem", "clamp-height")),
        quillLength: optional(fact("cockpit.stem", "quill-length")),
        insertion: optional(setting("cockpit.stem", "quill-insertion")),
        stemLength: fact("cockpit.stem", "length"),
        stemAngle: fact("cockpit.stem", "angle"),
        flipped: optional(setting("cockpit.stem", "flipped")),
      },
      inputs: (facts) => {
        const { clamping, spacers, clampHeight, quillLength, insertion } = facts;
        const given = {
          reach: facts.reach.value,
          stack: facts.stack.value,
          "head-angle": facts.headAngle.value,
          "upper-stack": facts.upperStack.value,
          "stem-length": facts.stemLength.value,
          "stem-angle": facts.stemAngle.value,
          flipped: facts.flipped.state === "known" && facts.flipped.value,
        };
        const isQuill = clamping.state === "known" && clamping.value === "quill";
        const [whole, inside] = isQuill ? [quillLength, insertion] : [clampHeight, spacers];
        if (whole.state === "known" && inside.state === "known") {
          return known(
            isQuill
              ? {
                  ...given,
                  "upper-stack": given["upper-stack"] + (stated(facts.locknutSpacers) ?? 0),
                  "quill-rise": whole.value - inside.value,
                }
              : { ...given, "spacers-below": inside.value, "stem-clamp-height": whole.value },
          );
        }
        const missing = missingOf(whole, inside);
        return missing.length > 0 ? lacking(missing) : meaningless("nothing says how high the stem stands");
      },
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
    {
      inputs: {
        reach: 400,
        stack: 500,
        "head-angle": 90,
        "upper-stack": 25,
        "quill-rise": 65,
        "stem-length": 90,
        "stem-angle": 0,
      },
      results: { "bar-clamp-forward": 490, "bar-clamp-height": 590, "stem-inclination": 0 },
      source: "by hand on an upright steering axis: a quill 140 mm long that stands 75 mm deep",
    },
  ],
});

/** From the headset's top to the middle of the clamp of a stem on a plain steerer. */
function middleOfClamp(spacers: number | undefined, clampHeight: number | undefined): number | undefined {
  return spacers === undefined || clampHeight === undefined ? undefined : spacers + clampHeight / 2;
}
