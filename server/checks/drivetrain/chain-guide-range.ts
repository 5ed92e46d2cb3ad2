import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { fittedRings, requiredRingNeeds, withoutRings } from "../shared/fitted-rings.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/chain-guide-range",
  title: "The chain guide can be set to the ring",
  severity: "error",
  since: 1,
  instances: [
    { name: "largest", field: "largest-ring" },
    { name: "smallest", field: "smallest-ring" },
  ] as const,
  needs: (instance) => ({
    ...requiredRingNeeds,
    guide: slot("drivetrain.chain-guide"),
    limit: fact("drivetrain.chain-guide", instance.field),
  }),
  test(facts, { name }) {
    const { guide, limit } = facts;
    const rings = fittedRings(facts);
    if (rings.state !== "known") return withoutRings(rings);
    const ring = rings.rings[0];
    const bound = limit.value;
    const most = name === "largest";
    if (most ? ring.teeth <= bound : ring.teeth >= bound) {
      return holds(
        `Ring ${ring.teeth} t, and ${limit.subject} can be set ${most ? `up to ${bound} t` : `down to ${bound} t`}.`,
        Math.abs(bound - ring.teeth) / bound,
      );
    }
    return fails(
      `Ring ${ring.teeth} t, but ${limit.subject} can be set ${most ? `to ${bound} t at most` : `down to ${bound} t only`}: fit a guide for ${ring.teeth} t, or a ring of ${bound} t or ${most ? "fewer" : "more"}.`,
      guide,
      [limit, ring.fact],
      swaps("drivetrain.chain-guide", ring.slot),
    );
  },
  explanation:
    "A chain guide sits over the ring with a few millimetres to spare and is moved in a slot to suit its size. Set to the " +
    "end of the slot under too large a ring, the chain drags through it; over too small a ring it stands so far off that " +
    "the chain comes out beneath. Makers state the rings that it can be set to.",
  source: "common practice, no source; the limits are the guide maker's own figures",
  examples: {
    holds: `
part chain-guide example.guide "Guide" { largest-ring: 36 t; smallest-ring: 28 t }
part crankset example.crank "Crank" { rings: 30 t }

build example "Inside the slot" {
  drivetrain {
    chain-guide: example.guide
    crankset: example.crank
  }
}
`,
    fails: `
part chain-guide example.guide "Guide" { largest-ring: 36 t; smallest-ring: 28 t }
part crankset example.crank "Crank" { rings: 38 t }

build example "A ring too large for the guide" {
  drivetrain {
    chain-guide: example.guide
    crankset: example.crank
  }
}
`,
  },
});
