import { angle, length, quantities } from "../../vocabulary/fields.ts";
import { defineCalculation, impossible, input, optionalInput, unusable } from "../define.ts";
import { barClamp, stemFor } from "../shared/bar-position.ts";
import { negative, notBetween, notFinite, notPositive } from "../shared/guards.ts";
import { say } from "../shared/say.ts";

/** Stem angles that are commonly made, and the step in which spacers are stacked. */
const usualAngles = [-17, -10, -6, 0, 6, 10, 17];
const usualLengths = [30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 120, 130, 140];
const spacerStep = 2.5;
const usualGreatestSpacers = 30;
/** More combinations than this are not tried: nobody keeps so many stems. */
const mostCombinations = 20_000;

/** Stems and spacers that bring the bar to a place. */
export default defineCalculation({
  name: "stem-solutions",
  title: "Stem and spacers for a target",
  description:
    "For each stem angle the length and spacers that bring the bar clamp exactly to its target, and the best of the stems at hand with spacers in steps of 2.5 mm.",
  inputs: {
    reach: input(length("Head tube's top in front of the crank axis.")),
    stack: input(length("Head tube's top above the crank axis.")),
    "head-angle": input(angle("Angle of the steering axis from the horizontal.")),
    "upper-stack": input(length("Headset above the head tube, its cover included.")),
    "stem-clamp-height": input(length("Height of steerer that the stem takes up.")),
    "target-forward": input(length("Wanted place of the bar clamp in front of the crank axis.")),
    "target-height": input(length("Wanted height of the bar clamp above the crank axis.")),
    "stem-angles": optionalInput(
      quantities("angle", "Stem angles to try; -17, -10, -6, 0, 6, 10 and 17° when left out."),
    ),
    "stem-lengths": optionalInput(quantities("length", "Stem lengths at hand; the usual ones when left out.")),
    "greatest-spacers": optionalInput(length("Greatest height of spacers under the stem; 30 mm when left out.")),
  },
  results: {
    "stem-angles-tried": {
      unit: "°",
      digits: 1,
      list: true,
      description: "The angles, in the order of the next two lists.",
    },
    "exact-stem-lengths": {
      unit: "mm",
      digits: 1,
      list: true,
      description: "Stem length that meets the target exactly; below zero where that lies behind the steering axis.",
    },
    "exact-spacers": {
      unit: "mm",
      digits: 1,
      list: true,
      description: "Spacers that go with it; below zero where that angle cannot come down far enough.",
    },
    "best-stem-length": { unit: "mm", digits: 0, description: "Length of the best stem at hand." },
    "best-stem-angle": { unit: "°", digits: 1, description: "Its angle." },
    "best-spacers": { unit: "mm", digits: 1, description: "Spacers under it." },
    "best-miss": { unit: "mm", digits: 1, description: "How far it leaves the bar clamp from the target." },
  },
  formula:
    "square to the steering axis the target asks for stem length × cos stem angle; along it for the height of the clamp's middle + stem length × sin stem angle",
  source: "plane geometry, re-derived; the sizes tried: common practice, no source",
  compute(given, working) {
    const { reach, stack, "head-angle": headAngle, "upper-stack": upperStack } = given;
    const { "stem-clamp-height": clampHeight, "target-forward": forward, "target-height": up } = given;
    const angles = given["stem-angles"] ?? usualAngles;
    const lengths = given["stem-lengths"] ?? usualLengths;
    const greatest = given["greatest-spacers"] ?? usualGreatestSpacers;
    const wrong =
      notFinite({ reach, "target-forward": forward, "target-height": up }) ??
      notPositive({ stack }) ??
      negative({ "upper-stack": upperStack, "stem-clamp-height": clampHeight, "greatest-spacers": greatest }) ??
      notBetween(20, 90.000001, "°", { "head-angle": headAngle });
    if (wrong) return wrong;
    if (angles.length === 0 || lengths.length === 0) return unusable("No stem is given to try.");
    if (!angles.every((one) => Math.abs(one) < 80)) return unusable("A stem angle lies between -80 and 80°.");
    if (!lengths.every((one) => one >= 0 && one < 1000)) return unusable("A stem length lies between 0 and 1000 mm.");
    const heights = Math.floor(greatest / spacerStep) + 1;
    if (angles.length * lengths.length * heights > mostCombinations) return impossible("Too many stems to try.");
    const frame = { reach, stack, headAngle };
    const base = upperStack + clampHeight / 2;
    const exact = angles.map((stemAngle) => {
      const { stemLength, upAxis } = stemFor(frame, stemAngle, { forward, up });
      working?.step(
        `${say(stemAngle, "°")}: ${say(stemLength, "mm", 1)} long with ${say(upAxis - base, "mm", 1)} of spacers meets the target exactly`,
      );
      return { stemLength, spacers: upAxis - base };
    });
    let best = { miss: Number.POSITIVE_INFINITY, stemLength: 0, stemAngle: 0, spacers: 0 };
    for (const stemAngle of angles) {
      for (const stemLength of lengths) {
        for (let step = 0; step < heights; step++) {
          const spacers = step * spacerStep;
          const clamp = barClamp({ ...frame, upAxis: base + spacers, stemLength, stemAngle });
          const miss = Math.hypot(clamp.forward - forward, clamp.up - up);
          if (miss < best.miss - 1e-9) best = { miss, stemLength, stemAngle, spacers };
        }
      }
    }
    working?.step(
      `Best at hand: ${say(best.stemLength, "mm")} at ${say(best.stemAngle, "°")} with ${say(best.spacers, "mm")} of spacers, ${say(best.miss, "mm", 1)} from the target`,
    );
    return {
      "stem-angles-tried": angles,
      "exact-stem-lengths": exact.map(({ stemLength }) => stemLength),
      "exact-spacers": exact.map(({ spacers }) => spacers),
      "best-stem-length": best.stemLength,
      "best-stem-angle": best.stemAngle,
      "best-spacers": best.spacers,
      "best-miss": best.miss,
    };
  },
  examples: [
    {
      inputs: {
        reach: 385,
        stack: 560,
        "head-angle": 73,
        "upper-stack": 15,
        "stem-clamp-height": 40,
        "target-forward": 467.08227,
        "target-height": 631.67766,
        "stem-angles": [-6],
      },
      results: {
        "exact-stem-lengths": [100],
        "exact-spacers": [20],
        "best-stem-length": 100,
        "best-stem-angle": -6,
        "best-spacers": 20,
        "stem-angles-tried": [-6],
      },
      source: "inverse of the bar position worked independently by script",
    },
    {
      inputs: {
        reach: 400,
        stack: 600,
        "head-angle": 90,
        "upper-stack": 10,
        "stem-clamp-height": 40,
        "target-forward": 483,
        "target-height": 651,
        "stem-angles": [0],
        "stem-lengths": [70, 80, 90],
      },
      results: {
        "exact-stem-lengths": [83],
        "exact-spacers": [21],
        "best-stem-length": 80,
        "best-spacers": 20,
        "best-miss": Math.hypot(3, 1),
      },
      source: "by hand on an upright steering axis: 83 mm out and 30 + 21 mm up",
    },
  ],
});
