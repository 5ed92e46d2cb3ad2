import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { fittedRings, requiredRingNeeds, withoutRings } from "../shared/fitted-rings.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/ring-size",
  title: "The cranks take rings of this size",
  severity: "error",
  since: 1,
  instances: [
    { name: "largest", field: "largest-ring" },
    { name: "smallest", field: "smallest-ring" },
  ] as const,
  needs: (instance) => ({
    ...requiredRingNeeds,
    cranks: slot("drivetrain.crankset"),
    limit: fact("drivetrain.crankset", instance.field),
  }),
  test(facts, { name }) {
    const { limit } = facts;
    const rings = fittedRings(facts);
    if (rings.state !== "known") return withoutRings(rings);
    // Rings that the cranks are sold with are their maker's own choice.
    const fitted = rings.rings.filter((ring) => ring.slot !== "drivetrain.crankset");
    const most = name === "largest";
    const ring = most ? fitted[0] : fitted[fitted.length - 1];
    if (!ring) return notApplicable("the rings are those that the cranks are sold with");
    const bound = limit.value;
    if (most ? ring.teeth <= bound : ring.teeth >= bound) {
      return holds(
        `${ring.part.subject} has ${ring.teeth} t, and ${limit.subject} takes ${most ? `up to ${bound} t` : `${bound} t or more`}.`,
        Math.abs(bound - ring.teeth) / bound,
      );
    }
    return fails(
      `${ring.part.subject} has ${ring.teeth} t, but ${limit.subject} takes ${most ? `at most ${bound} t` : `no fewer than ${bound} t`}: fit a ring of ${bound} t or ${most ? "fewer" : "more"}.`,
      ring.part,
      [limit, ring.fact],
      swaps(ring.slot, "drivetrain.crankset"),
    );
  },
  explanation:
    "The arms of a crank end at the ring's bolts or splines, and the chain has to pass round outside them: with too few " +
    "teeth it rides on the arms and lifts off. A ring larger than its maker allows bends under load, because the arms " +
    "hold it too near its middle, and can meet the crank arm. Makers of cranks state the sizes that they mean. Rings " +
    "sold with the cranks are not asked.",
  source: "common practice, no source; the limits are the crank maker's own figures",
  examples: {
    holds: `
part crankset example.crank "Crank" { rings: none; largest-ring: 38 t; smallest-ring: 28 t }
part chainring example.ring "Ring 34" { teeth: 34 t }

build example "A ring that the cranks take" {
  drivetrain {
    crankset: example.crank
    chainring: example.ring
  }
}
`,
    fails: `
part crankset example.crank "Crank" { rings: none; largest-ring: 38 t; smallest-ring: 28 t }
part chainring example.ring "Ring 42" { teeth: 42 t }

build example "A ring too large for the cranks" {
  drivetrain {
    crankset: example.crank
    chainring: example.ring
  }
}
`,
  },
});
