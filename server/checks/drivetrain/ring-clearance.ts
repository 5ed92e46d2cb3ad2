import { fact, type Known, type Maybe, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { statedNone } from "../shared/end.ts";
import { type FittedRing, fittedRings, requiredRingNeeds, withoutRings } from "../shared/fitted-rings.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/ring-clearance",
  title: "The rings clear the frame",
  severity: "error",
  since: 1,
  instances: [{ name: "largest" }, { name: "smallest" }],
  needs: () => ({
    ...requiredRingNeeds,
    frame: slot("frame"),
    single: optional(fact("frame", "largest-ring")),
    outer: optional(fact("frame", "largest-outer-ring")),
    inner: optional(fact("frame", "largest-inner-ring")),
  }),
  test(facts, { name }) {
    const { frame, single, outer, inner } = facts;
    const rings = fittedRings(facts);
    if (rings.state !== "known") return withoutRings(rings);
    const [largest, ...others] = rings.rings;
    if (isKind(largest.part.value, "belt-ring")) {
      return notApplicable("the frame's limit is in teeth of a chain ring, and a belt ring has another pitch");
    }
    if (name === "largest") {
      if (others.length === 0) return clears(largest, "A single ring", single, frame);
      if (outer.state === "none") {
        return fails(
          `${frame.subject} takes a single ring only, but the cranks turn ${others.length + 1} (${rings.rings.map(({ teeth }) => teeth).join("-")} t): fit a crankset with one ring, or another frame.`,
          largest.part,
          [statedNone(frame, outer), largest.fact],
          swaps(largest.slot),
        );
      }
      return clears(largest, "The outer ring", outer, frame);
    }
    const smallest = others[others.length - 1];
    if (!smallest) return notApplicable("there is one ring");
    // A frame for one ring only is found with the largest.
    if (outer.state === "none") return notApplicable("the frame takes a single ring only, which is found as such");
    return clears(smallest, "The inner ring", inner, frame);
  },
  explanation:
    "The ring passes the right chainstay with a few millimetres to spare, and the stay is widest where the largest ring's " +
    "teeth go by. A ring larger than the frame's maker allows saws into the stay, at the latest when the frame flexes " +
    "under the rider. A single ring, the outer and the inner one of two stand at different distances from the centre, so " +
    "frames have a limit for each. Limits are counted in teeth at the chainline that the frame is designed for.",
  source: "common practice, no source; the limits are the frame maker's own figures",
  caution: "A ring that touches the chainstay can jam the cranks and cuts into the frame.",
  examples: {
    holds: `
part frame example.frame "Frame" { largest-outer-ring: 48 t; largest-inner-ring: 34 t }
part crankset example.crank "Crank" { rings: 46-33 t; ring-profile: ramped }

build example "Both rings clear" {
  frame: example.frame
  drivetrain.crankset: example.crank
}
`,
    fails: `
part frame example.frame "Frame" { largest-outer-ring: 48 t; largest-inner-ring: 34 t }
part crankset example.crank "Crank" { rings: 50-34 t; ring-profile: ramped }

build example "The outer ring touches" {
  frame: example.frame
  drivetrain.crankset: example.crank
}
`,
  },
});

function clears(ring: FittedRing, what: string, limit: Maybe<number>, frame: Known) {
  if (limit.state === "unknown") return cannotTell(limit);
  if (limit.state === "none") return notApplicable(`${frame.subject} states no limit for it`);
  const most = limit.value;
  if (ring.teeth <= most) {
    return holds(
      `${what} has ${ring.teeth} t, and ${frame.subject} takes up to ${most} t.`,
      (most - ring.teeth) / most,
    );
  }
  return fails(
    `${what} has ${ring.teeth} t (${ring.part.subject}), but ${frame.subject} takes at most ${most} t there: fit a ring of ${most} t or fewer.`,
    ring.part,
    [limit, ring.fact],
    swaps(ring.slot),
  );
}
