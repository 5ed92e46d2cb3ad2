import { optional, slot } from "../../model/need.ts";
import { showQuantity } from "../../values/show.ts";
import { defineCheck, fails } from "../define.ts";
import { anyFact, anySlot, readEnd } from "../shared/end.ts";
import { jointNamed } from "../shared/mating.ts";
import { judgeSizes } from "../shared/size-mating.ts";

const joint = jointNamed("seat-clamp");

export default defineCheck({
  code: "seat/clamp-diameter",
  title: "The seat clamp fits the outside of the seat tube",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    clamp: anySlot("seat.clamp"),
    inside: anyFact<number>("seat.clamp", "inside-diameter"),
    frame: anySlot("frame"),
    outside: anyFact<number>("frame", "seat-clamp-diameter"),
    post: optional(slot("seat.post")),
  }),
  test({ clamp, inside, frame, outside, post }) {
    const other = readEnd(frame, outside, "seat-clamp-diameter");
    if (clamp.state === "none" && post.state === "known" && other.state === "known") {
      const needs = showQuantity(other.fact.value, "length");
      return fails(
        `Nothing holds ${post.subject}: the build has no seat clamp, and ${other.part.subject} is ${needs} at the clamp and has none built in. Fit a clamp of ${needs}.`,
        post,
        [{ ...other.fact }],
        [
          { kind: "insert-part", slot: "seat.clamp" },
          { kind: "set-fact", slot: "frame", fact: "seat-clamp-diameter", value: "none" },
        ],
      );
    }
    return judgeSizes(
      joint,
      {
        one: "fits a tube of",
        other: "has a seat tube of",
        nothing: "has its seat clamp built in",
        remedy: (_, tube) => (tube === "none" ? "leave the clamp out." : `fit a clamp of ${tube}.`),
        tolerance: 0.2,
      },
      readEnd(clamp, inside, "inside-diameter"),
      other,
    );
  },
  explanation:
    "A seat clamp closes round the outside of the seat tube and is made for one diameter: 28.6, 30.0, 31.8 and 34.9 mm are " +
    "the usual ones. It is not the diameter of the post, which is the tube's bore. A clamp that is too wide bends as it is " +
    "tightened and does not close the tube, so that the post slips; one that is too narrow does not go on. Sizes that " +
    "are rounded differently, such as 34.9 and 35.0, are one. Some frames have the clamp built in.",
  source: "common practice, no source",
  caution: "A post that slips drops the rider onto the frame.",
  examples: {
    holds: `
part frame example.fell "Fell" { seat-clamp-diameter: 31.8 mm }
part seat-clamp example.collar "Collar 31.8" { inside-diameter: 31.8 mm }

build example "A clamp of the tube's diameter" {
  frame: example.fell
  seat.clamp: example.collar
}
`,
    fails: `
part frame example.fell "Fell" { seat-clamp-diameter: 31.8 mm }
part seat-clamp example.collar "Collar 34.9" { inside-diameter: 34.9 mm }

build example "A clamp that bends before it holds" {
  frame: example.fell
  seat.clamp: example.collar
}
`,
  },
});
