import type { Installed } from "../../model/assembly.ts";
import type { Need } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { mate } from "../../model/standard.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionFact, dimensionOf, lacksDimension, showCode } from "../shared/codes.ts";
import { anyFact, anySlot } from "../shared/end.ts";
import { halfCode } from "../shared/half-mating.ts";
import { swaps } from "../shared/swaps.ts";

type AngleNeeds = {
  readonly headset: Need<Installed, true>;
  readonly code: Need<ResolvedCode, true>;
  readonly bearing: Need<number, true>;
  readonly tube: Need<ResolvedCode, true>;
  readonly seat: Need<number, true>;
};

/** Angles that differ by less than this, in degrees, are one angle that somebody rounded. */
const tolerance = 0.5;

export default defineCheck({
  code: "steering/bearing-angle",
  title: "An integrated bearing has the angle of the seat it drops into",
  severity: "error",
  since: 1,
  instances: [{ name: "upper" }, { name: "lower" }],
  needs: ({ name: end }): AngleNeeds => ({
    headset: anySlot("headset"),
    code: anyFact("headset", end),
    bearing: anyFact("headset", `${end}-bearing-angle`),
    tube: anyFact("frame", `head-tube-${end}`),
    seat: anyFact("frame", `head-tube-${end}-angle`),
  }),
  test({ headset, code, bearing, tube, seat }, { name: end }) {
    if (headset.state === "none") return notApplicable("headset is none");
    if (tube.state === "none") return notApplicable(`the frame takes no ${end} headset`);
    const open = [headset, tube].flatMap((one) => (one.state === "unknown" ? [one] : []));
    if (headset.state !== "known" || tube.state !== "known") return cannotTell(...open);
    const fit = halfCode(tube.value, "fit");
    if (!fit) return notApplicable("the frame's code names no fit");
    const form = dimensionOf<string>(fit, "form");
    if (form === undefined) return cannotTell(lacksDimension(fit, "form"));
    if (form !== "integrated") return notApplicable(`${fit.code} has no formed seat: the cups bring their own`);
    const brings = code.state === "known" ? halfCode(code.value, "fit") : undefined;
    if (brings && !mate(brings, fit)) return notApplicable("headset and frame are of two fits, which is found as such");

    const formed = seat.state === "known" ? seat : dimensionFact<number>(fit, "bearing-angle");
    const unknown = [bearing, ...(formed ? [] : [seat])].flatMap((one) => (one.state === "unknown" ? [one] : []));
    if (unknown.length > 0) return cannotTell(...unknown);
    if (bearing.state !== "known" || !formed) return notApplicable("bearing or seat has no angle");
    if (atMost(Math.abs(bearing.value - formed.value), tolerance)) {
      return holds(
        `The ${end} bearing of ${headset.subject} is cut at ${showQuantity(bearing.value, "angle")}, as its seat ${showCode(fit)} is.`,
      );
    }
    const [cut, seated] = showPair(bearing.value, formed.value, "angle");
    return fails(
      `The ${end} bearing of ${headset.subject} is cut at ${cut}, but the seat ${showCode(fit)} of ${tube.subject} is formed at ${seated}: fit a bearing of ${seated}.`,
      headset,
      [bearing, formed, tube],
      swaps("headset"),
    );
  },
  explanation:
    "An integrated bearing is not pressed in: it drops into a seat that is part of the frame, and the two cones centre each " +
    "other. Bearings are made with seats of 36 and of 45 degrees that otherwise look the same. One of the wrong angle " +
    "rests on an edge: it rocks, cannot be adjusted, and cuts into the frame. The angle meant is the one of the outer " +
    "face, second in a marking such as 36 x 45. Headsets with cups bring their own seats and are not asked.",
  source: "common practice, no source; the angles of the integrated fits from memory",
  caution: "A bearing that rocks in its seat works loose while riding, and ruins the head tube.",
  examples: {
    holds: `
part frame example.fell "Fell" { head-tube-upper: IS42; head-tube-lower: ZS56 }
part headset example.bearings "Bearings" { upper: IS42/28.6; upper-bearing-angle: 45° }

build example "The bearing of the seat" {
  frame: example.fell
  headset: example.bearings
}
`,
    fails: `
part frame example.fell "Fell" { head-tube-upper: IS52; head-tube-upper-angle: 36°; head-tube-lower: ZS56 }
part headset example.bearings "Bearings" { upper: IS52/38.1; upper-bearing-angle: 45° }

build example "A bearing that rests on an edge" {
  frame: example.fell
  headset: example.bearings
}
`,
  },
});
