import { stated } from "../../calculations/shared/maybe.ts";
import type { Repair } from "../../model/finding.ts";
import { fact, optional } from "../../model/need.ts";
import { lessThan } from "../../values/compare.ts";
import { defineCheck, notApplicable } from "../define.ts";
import { anyFact, anySlot, readEnd } from "../shared/end.ts";
import { jointNamed } from "../shared/mating.ts";
import { judgeSizes } from "../shared/size-mating.ts";
import { swaps } from "../shared/swaps.ts";

const joint = jointNamed("post-frame");

export default defineCheck({
  code: "seat/post-diameter",
  title: "The seatpost is of the seat tube's bore",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    post: anySlot("seat.post"),
    diameter: anyFact<number>("seat.post", "post-diameter"),
    frame: anySlot("frame"),
    bore: anyFact<number>("frame", "seat-tube-bore"),
    shim: anySlot("seat.shim"),
    shimAllowed: optional(fact("frame", "forbids")),
  }),
  test({ post, diameter, frame, bore, shim, shimAllowed }) {
    if (shim.state !== "none") return notApplicable("a shim stands between post and frame, which is asked as such");
    const one = readEnd(post, diameter, "post-diameter");
    const other = readEnd(frame, bore, "seat-tube-bore");
    const thin = one.state === "known" && other.state === "known" && lessThan(one.fact.value, other.fact.value);
    const mayShim = thin && !stated(shimAllowed)?.includes("seat-shim");
    const repairs: readonly Repair[] = [
      ...swaps("seat.post"),
      ...(mayShim ? [{ kind: "insert-part", slot: "seat.shim" } as const] : []),
      ...swaps("frame"),
    ];
    return judgeSizes(
      joint,
      {
        one: "is",
        other: "takes",
        nothing: "takes no seatpost",
        remedy: (is, takes) =>
          mayShim ? `fit a post of ${takes}, or a shim from ${is} to ${takes}.` : `fit a post of ${takes}.`,
        tolerance: 0.05,
      },
      one,
      other,
      repairs,
    );
  },
  explanation:
    "Seatposts are made in steps of two tenths of a millimetre, from about 21 to 35 mm, and a seat tube takes one size. A " +
    "post one step too thin is not held by the clamp: it turns, sinks, and works the tube until it cracks. One step too " +
    "thick does not go in, or seizes. A thinner post can be fitted with a shim where the frame's maker allows one; " +
    "nothing makes a thick one thinner. A tube that seems to take an odd size is often out of round or full of paint.",
  source: "Wikipedia, Seatpost, for the sizes; common practice, no source",
  caution: "A post that is not held drops or breaks under the rider. The part makers' instructions come first.",
  examples: {
    holds: `
part frame example.fell "Fell" { seat-tube-bore: 30.9 mm }
part seatpost example.post "Post 30.9" { post-diameter: 30.9 mm }

build example "A post of the tube's bore" {
  frame: example.fell
  seat.post: example.post
}
`,
    fails: `
part frame example.town "Town" { seat-tube-bore: 26.8 mm }
part seatpost example.post "Post 27.2" { post-diameter: 27.2 mm }

build example "Two steps too thick" {
  frame: example.town
  seat.post: example.post
}
`,
  },
});
