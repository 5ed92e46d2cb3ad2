import { stated } from "../../calculations/shared/maybe.ts";
import type { Repair } from "../../model/finding.ts";
import { buildField, fact, optional, setting, slot, worked } from "../../model/need.ts";
import { atLeast, greaterThan, lessThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { heightReach, reachNeeds } from "../shared/height-reach.ts";
import { swaps } from "../shared/swaps.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "seat/height-reachable",
  title: "The post reaches the saddle height that is aimed at",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    ...reachNeeds,
    post: slot("seat.post"),
    target: buildField("fit.saddle-height"),
    highest: worked<number>("seat.highest-saddle"),
    travel: optional(fact("seat.post", "dropper-travel")),
    options: optional(fact("seat.post", "travel-options")),
    travelSet: optional(setting("seat.post", "travel-set")),
  }),
  test({ post, target, highest, travel, options, travelSet, ...reach }) {
    const verdict = heightReach({ ...reach, target, highest });
    const { lowest } = reach;
    if (verdict === "unknown")
      return lowest.state === "unknown" ? cannotTell(lowest) : notApplicable("no limit is known");
    if (verdict === "too-high") {
      const [wants, most] = showPair(target.value, highest.value, "length");
      return fails(
        `The aim is a saddle ${wants} above the crank axis, but ${post.subject} reaches ${most} at its least depth: fit a post at least ${showQuantity(target.value - highest.value, "length", { digits: 0 })} longer, or a larger frame.`,
        post,
        [target, highest],
        swaps("seat.post", "frame"),
      );
    }
    if (verdict === "too-low" && lowest.state === "known") {
      const over = lowest.value - target.value;
      const [wants, least] = showPair(target.value, lowest.value, "length");
      const now = travelSet.state === "known" ? travelSet.value : stated(travel);
      const less = now === undefined ? undefined : now - over;
      const settable = less !== undefined && options.state === "known" && atLeast(less, options.value.least);
      const set: readonly Repair[] =
        settable && less !== undefined
          ? [{ kind: "set-setting", slot: "seat.post", setting: "travel-set", value: millimetres(less, "down") }]
          : [];
      const advice =
        now === undefined
          ? "fit a shorter post, or a frame with a shorter seat tube"
          : settable && less !== undefined
            ? `set its travel to ${millimetres(less, "down")}, or fit a dropper with less`
            : `fit a dropper with at least ${showQuantity(over, "length", { digits: 0 })} less travel`;
      return fails(
        `The aim is a saddle ${wants} above the crank axis, but ${post.subject} pushed in as far as it goes stands at ${least}: ${advice}.`,
        post,
        [target, lowest],
        [...set, ...swaps("seat.post", "frame")],
      );
    }
    const from = lowest.state === "known" ? `from ${showQuantity(lowest.value, "length")} ` : "";
    return holds(
      `The aim is a saddle ${showQuantity(target.value, "length")} above the crank axis, and ${post.subject} reaches ${from}to ${showQuantity(highest.value, "length")}.`,
      margin(target.value, highest.value, stated(lowest)),
    );
  },
  explanation:
    "How high a saddle can stand follows from the seat tube, the post and the saddle: highest with the post at its least " +
    "depth, lowest with it as deep as tube or collar let it. A rider whose saddle belongs outside that range cannot be " +
    "fitted by adjusting. Too high asks for a longer post, and is where posts are drawn beyond their marks. Too low is " +
    "common with droppers, which stand out of the tube by all of their travel. Both are seen here before parts are bought.",
  source: "plane geometry, re-derived; the limits are the makers' own figures",
  caution: "A post is never drawn out beyond its mark to reach a height.",
  examples: {
    holds: `
part frame example.fell "Fell" {
  seat-angle: 74°
  seat-tube-offset: 0 mm
  seat-tube-length: 430 mm
  least-post-insertion: 90 mm
  greatest-post-insertion: 230 mm
}
part seatpost example.drop "Drop 125" {
  overall-length: 400 mm
  least-insertion: 100 mm
  setback: 0 mm
  dropper-travel: 125 mm
  body-length: 230 mm
}
part saddle example.saddle "Saddle" { height: 45 mm }

build example "A dropper for short legs" {
  frame: example.fell
  seat { post: example.drop; saddle: example.saddle }
  fit { saddle-height: 690 mm; tolerance: 5 mm }
}
`,
    fails: `
part frame example.fell "Fell" {
  seat-angle: 74°
  seat-tube-offset: 0 mm
  seat-tube-length: 430 mm
  least-post-insertion: 90 mm
  greatest-post-insertion: 230 mm
}
part seatpost example.drop "Drop 170" {
  overall-length: 480 mm
  least-insertion: 100 mm
  setback: 0 mm
  dropper-travel: 170 mm
  body-length: 268 mm
}
part saddle example.saddle "Saddle" { height: 45 mm }

build example "Too much travel for short legs" {
  frame: example.fell
  seat { post: example.drop; saddle: example.saddle }
  fit { saddle-height: 690 mm; tolerance: 5 mm }
}
`,
  },
});

/** What is left to the nearer end of the reach, as a share of the height. */
function margin(target: number, highest: number, lowest: number | undefined): number {
  const room = Math.min(highest - target, lowest === undefined ? Number.POSITIVE_INFINITY : target - lowest);
  return greaterThan(target, 0) && !lessThan(room, 0) ? room / target : 0;
}
