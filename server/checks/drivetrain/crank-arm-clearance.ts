import { fact, slot } from "../../model/need.ts";
import { atLeast, greaterThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

/** Frame and cranks flex under a rider by a millimetre or more. */
const usualGap = 2;

export default defineCheck({
  code: "drivetrain/crank-arm-clearance",
  title: "The cranks clear the chainstays",
  severity: "error",
  since: 1,
  needs: () => ({
    cranks: slot("drivetrain.crankset"),
    inside: fact("drivetrain.crankset", "arm-inside"),
    stays: fact("frame", "crank-clearance"),
  }),
  test({ cranks, inside, stays }) {
    const gap = inside.value - stays.value;
    const [arm, stay] = showPair(inside.value, stays.value, "length");
    const compared = `the arms of ${cranks.subject} pass ${arm} from the centre plane, and the stays of ${stays.subject} reach out to ${stay}`;
    if (atLeast(gap, usualGap)) {
      return holds(`There are ${showQuantity(gap, "length")} to spare: ${compared}.`, gap / inside.value);
    }
    return fails(
      greaterThan(gap, 0)
        ? `Only ${showQuantity(gap, "length")} to spare: ${compared}. Frame and cranks flex by more than that under a strong rider: ${showQuantity(usualGap, "length")} is usual. Fit cranks that stand further out.`
        : `The cranks meet the frame: ${compared}. Fit cranks that stand further out, or a frame with narrower stays.`,
      cranks,
      [inside, stays],
      swaps("drivetrain.crankset", "frame"),
      greaterThan(gap, 0) ? { severity: "warning" } : {},
    );
  },
  explanation:
    "The inner faces of the cranks pass the chainstays once in every turn. Frames for wide tyres spread their stays, and " +
    "cranks made for narrow ones then touch them. What counts is the distance of the arm's inner face from the centre " +
    "plane where it passes, against how far the stay reaches out there. Some 2 mm are usually left, since both flex. " +
    "Heels are wider than cranks and depend on the rider.",
  source: "common practice, no source",
  caution: "A crank that catches on the frame stops the pedals suddenly.",
  examples: {
    holds: `
part frame example.fell "Fell" { crank-clearance: 66 mm }
part crankset example.crank "Crank" { arm-inside: 70 mm }

build example "Cranks clear of the stays" {
  frame: example.fell
  drivetrain.crankset: example.crank
}
`,
    fails: `
part frame example.fat "Wide" { crank-clearance: 74 mm }
part crankset example.crank "Crank" { arm-inside: 71 mm }

build example "Cranks that meet the stays" {
  frame: example.fat
  drivetrain.crankset: example.crank
}
`,
  },
});
