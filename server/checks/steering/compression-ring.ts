import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "steering/compression-ring",
  title: "The compression ring has the shape of the steerer",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    headset: slot("headset"),
    ring: optional(fact("headset", "compression-ring")),
    shape: fact("fork", "steerer-shape"),
  }),
  test({ headset, ring, shape }) {
    if (shape.value === "threaded") return notApplicable("a threaded steerer is held by its locknut");
    if (ring.state === "unknown") return cannotTell(ring);
    if (ring.state === "none") return notApplicable(`${ring.path} is none`);
    const keyed = shape.value === "keyed";
    if ((ring.value === "keyed") === keyed) {
      return holds(`${headset.subject} has a ${ring.value} ring, for the ${shape.value} steerer of ${shape.subject}.`);
    }
    return fails(
      keyed
        ? `${headset.subject} has a split ring for a round steerer, but that of ${shape.subject} is flattened or keyed: fit the headset or ring made for it.`
        : `${headset.subject} has a ring for a keyed steerer, but that of ${shape.subject} is round: fit a headset with a split ring.`,
      headset,
      [ring, shape],
      swaps("headset", "fork"),
    );
  },
  explanation:
    "The compression ring is the cone that centres the steerer in the upper bearing and closes on it as the cap is " +
    "tightened. It touches the steerer all round, so it is made for its section. Steerers that leave room for hoses are " +
    "flattened or keyed, and a round ring touches them along two lines, which scores carbon and lets the steerer knock. A " +
    "keyed ring on a round steerer does not close. Headset and fork for hidden hoses are chosen together.",
  source: "common practice, no source",
  caution: "A steerer that is scored or knocks in its bearing breaks without warning.",
  examples: {
    holds: `
part headset example.bearings "Hidden bearings" { compression-ring: keyed }
part fork example.fork "Keyed fork" { steerer-shape: keyed }

build example "A ring for a keyed steerer" {
  fork: example.fork
  headset: example.bearings
}
`,
    fails: `
part headset example.bearings "Bearings" { compression-ring: split }
part fork example.fork "Keyed fork" { steerer-shape: keyed }

build example "A round ring on a flattened steerer" {
  fork: example.fork
  headset: example.bearings
}
`,
  },
});
