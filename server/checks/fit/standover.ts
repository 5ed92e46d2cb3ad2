import { buildField, fact, optional, slot } from "../../model/need.ts";
import { atLeast, greaterThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "fit/standover",
  title: "The rider can stand over the top tube",
  severity: "warning",
  since: 1,
  needs: () => ({
    frame: slot("frame"),
    inseam: buildField("rider.inseam"),
    standover: fact("frame", "standover"),
    asked: optional(buildField("fit.standover-clearance")),
  }),
  test({ frame, inseam, standover, asked }) {
    const room = inseam.value - standover.value;
    const [legs, tube] = showPair(inseam.value, standover.value, "length");
    const compared = `the inseam is ${legs}, and the top tube of ${frame.subject} is ${tube} high`;
    if (!greaterThan(room, 0)) {
      return fails(
        `The rider cannot stand over it: ${compared}. Fit a smaller frame, or one whose top tube slopes more.`,
        frame,
        [inseam, standover],
        swaps("frame"),
      );
    }
    if (asked.state === "unknown") return cannotTell(asked);
    if (asked.state === "known" && !atLeast(room, asked.value)) {
      const [is, wants] = showPair(room, asked.value, "length");
      return fails(
        `There are ${is} over the top tube, and ${wants} are asked for: ${compared}. Fit a frame whose top tube is ${showQuantity(asked.value - room, "length")} lower.`,
        frame,
        [inseam, standover, asked],
        swaps("frame"),
      );
    }
    const wants = asked.state === "known" ? `, and ${showQuantity(asked.value, "length")} are asked for` : "";
    return holds(
      `There are ${showQuantity(room, "length")} over the top tube${wants}: ${compared}.`,
      room / inseam.value,
    );
  },
  explanation:
    "Whoever stops has to get both feet on the ground in front of the saddle. The clearance is the inseam less the height of " +
    "the top tube where the rider stands. The frame's maker gives that height on the tyres it assumes; taller tyres or a " +
    "longer fork take from it. Some 25 mm are usual on roads and 50 mm or more on rough ground, where feet come down in " +
    "holes. What is asked for is stated in the build; without it the tube must only be lower than the legs are long.",
  source: "common practice, no source; what is asked for is the build's own",
  caution: "A rider who cannot stand over the top tube falls on it.",
  examples: {
    holds: `
part frame example.fell "Fell" { standover: 755 mm }

build example "Room over a sloping tube" {
  frame: example.fell
  rider.inseam: 810 mm
  fit.standover-clearance: 50 mm
}
`,
    fails: `
part frame example.high "High" { standover: 795 mm }

build example "Too little on rough ground" {
  frame: example.high
  rider.inseam: 810 mm
  fit.standover-clearance: 50 mm
}
`,
  },
});
