import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { fittedRings, requiredRingNeeds, withoutRings } from "../shared/fitted-rings.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/front-derailleur-range",
  title: "The outer ring is within what the front derailleur's cage follows",
  severity: "error",
  since: 1,
  instances: [
    { name: "largest", field: "largest-ring" },
    { name: "least", field: "least-largest-ring" },
  ] as const,
  needs: (instance) => ({
    ...requiredRingNeeds,
    derailleur: slot("drivetrain.front-derailleur"),
    limit: fact("drivetrain.front-derailleur", instance.field),
  }),
  test(facts, { name, field }) {
    const { derailleur, limit } = facts;
    const rings = fittedRings(facts);
    if (rings.state !== "known") return withoutRings(rings);
    const outer = rings.rings[0];
    const bound = limit.value;
    const most = name === "largest";
    if (most ? outer.teeth <= bound : outer.teeth >= bound) {
      return holds(
        `Outer ring ${outer.teeth} t, and the cage of ${limit.subject} follows ${most ? `up to ${bound}` : `${bound} t or more`}${most ? " t" : ""}.`,
        Math.abs(bound - outer.teeth) / bound,
      );
    }
    return fails(
      most
        ? `Outer ring ${outer.teeth} t, but the cage of ${limit.subject} clears at most ${bound} t: fit an outer ring of ${bound} t or fewer, or a front derailleur for ${outer.teeth} t.`
        : `Outer ring ${outer.teeth} t, but the cage of ${limit.subject} is curved for at least ${bound} t: fit an outer ring of ${bound} t or more, or a front derailleur for ${outer.teeth} t.`,
      derailleur,
      [limit, outer.fact],
      [
        ...swaps("drivetrain.front-derailleur", outer.slot),
        { kind: "set-fact", slot: "drivetrain.front-derailleur", fact: field, value: `${outer.teeth} t` },
      ],
      // Too flat a curve leaves a gap and shifts late; too tight a one touches the teeth.
      { severity: most ? "error" : "warning" },
    );
  },
  explanation:
    "The outer plate of a front derailleur's cage is curved to pass one to three millimetres over the teeth of the outer " +
    "ring along its whole length. Over a larger ring its tail or its nose touches the teeth whatever the height it is " +
    "set to. Over a much smaller one it stands off at both ends, and the chain comes late and can drop outside. Makers " +
    "state the largest outer ring and often the smallest one. The difference down to the inner ring is a limit of its own.",
  source: "common practice, no source; the limits are the derailleur maker's own figures",
  examples: {
    holds: `
part front-derailleur example.cage "Cage" { largest-ring: 50 t; least-largest-ring: 46 t }
part crankset example.crank "Crank" { rings: 48-32 t }

build example "Inside the cage's range" {
  drivetrain {
    front-derailleur: example.cage
    crankset: example.crank
  }
}
`,
    fails: `
part front-derailleur example.cage "Cage" { largest-ring: 50 t; least-largest-ring: 46 t }
part crankset example.crank "Crank" { rings: 53-39 t }

build example "An outer ring too large for the cage" {
  drivetrain {
    front-derailleur: example.cage
    crankset: example.crank
  }
}
`,
  },
});
