import type { Repair } from "../../model/finding.ts";
import { buildField, optional, setting, slot, worked } from "../../model/need.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { aimed } from "../shared/aim.ts";
import { heightReach, reachNeeds } from "../shared/height-reach.ts";
import { swaps } from "../shared/swaps.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "fit/saddle-height",
  title: "The saddle stands at the height that is aimed at",
  severity: "warning",
  since: 1,
  needs: () => ({
    lowest: reachNeeds.lowest,
    post: slot("seat.post"),
    aim: buildField("fit.saddle-height"),
    tolerance: buildField("fit.tolerance"),
    actual: worked<number>("seat.saddle-height-actual"),
    highest: optional(worked<number>("seat.highest-saddle")),
    insertion: optional(setting("seat.post", "insertion")),
    wanted: optional(worked<number>("seat.insertion-for-height")),
  }),
  test({ lowest, post, aim, tolerance, actual, highest, insertion, wanted }) {
    const { off, is, by, aim: goal, tolerance: near, margin } = aimed(actual, aim, tolerance);
    if (off === undefined)
      return holds(`The saddle stands ${is} above the crank axis; the aim is ${goal}, within ${near}.`, margin);
    if (highest.state === "known") {
      const reach = heightReach({ target: aim, highest, lowest, tolerance });
      if (reach === "too-high" || reach === "too-low")
        return notApplicable("the post does not reach it, which is found as such");
    }
    const depth = wanted.state === "known" ? millimetres(wanted.value) : undefined;
    const set: readonly Repair[] =
      depth === undefined ? [] : [{ kind: "set-setting", slot: "seat.post", setting: "insertion", value: depth }];
    const at = insertion.state === "known" ? insertion : post;
    return fails(
      `The saddle stands ${is} above the crank axis, ${by} too ${off > 0 ? "high" : "low"} for the aim of ${goal} within ${near}: ${depth === undefined ? `${off > 0 ? "lower" : "raise"} the post` : `set the post ${depth} deep`}.`,
      at,
      [aim, tolerance, ...(insertion.state === "known" ? [insertion] : [])],
      [...set, ...swaps("seat.post")],
    );
  },
  explanation:
    "Saddle height is measured from the crank axis along the seat tube to the top of the saddle. It follows from the seat " +
    "tube, the post, how deep it stands, and the saddle. The aim is the rider's own, from a fitting or from a bicycle that " +
    "suits; formulas from the inseam are only a place to begin. A centimetre too high makes the hips rock, and one too low " +
    "hurts the knees. Whether the post can reach the aim is asked about with the post.",
  source: "plane geometry, re-derived; the aim and how near it has to be are the build's own",
  examples: {
    holds: `
part frame example.fell "Fell" { seat-angle: 73°; seat-tube-offset: 0 mm; seat-tube-length: 520 mm }
part seatpost example.post "Post" { overall-length: 350 mm; setback: 20 mm; least-insertion: 90 mm }
part saddle example.saddle "Saddle" { height: 48 mm; clamp-to-sitting: 0 mm }

build example "Three millimetres from the aim" {
  frame: example.fell
  seat { post: example.post { insertion: 180 mm }; saddle: example.saddle { rail-position: 0 mm } }
  fit { saddle-height: 737 mm; tolerance: 5 mm }
}
`,
    fails: `
part frame example.fell "Fell" { seat-angle: 73°; seat-tube-offset: 0 mm; seat-tube-length: 520 mm }
part seatpost example.post "Post" { overall-length: 350 mm; setback: 20 mm; least-insertion: 90 mm }
part saddle example.saddle "Saddle" { height: 48 mm; clamp-to-sitting: 0 mm }

build example "Two centimetres too high" {
  frame: example.fell
  seat { post: example.post { insertion: 160 mm }; saddle: example.saddle { rail-position: 0 mm } }
  fit { saddle-height: 737 mm; tolerance: 5 mm }
}
`,
  },
});
