import { fact, optional, slot, worked } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { fittedRingNeeds, fittedRings, ringFacts, ringSlots, withoutRings } from "../shared/fitted-rings.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/front-derailleur-capacity",
  title: "The front derailleur spans the rings",
  severity: "error",
  since: 1,
  instances: [{ name: "span" }, { name: "middle" }],
  needs: () => ({
    ...fittedRingNeeds,
    derailleur: slot("drivetrain.front-derailleur"),
    capacity: optional(fact("drivetrain.front-derailleur", "capacity")),
    leastMiddle: optional(fact("drivetrain.front-derailleur", "least-middle-difference")),
    difference: worked<number>("drivetrain.front-difference"),
  }),
  test(facts, { name }) {
    const { derailleur, capacity, leastMiddle, difference } = facts;
    const rings = fittedRings(facts);
    if (rings.state !== "known") return withoutRings(rings);
    const [outer, next, ...others] = rings.rings;
    if (!next) return notApplicable("a single ring has nothing to span");
    const slots = [...ringSlots(rings.rings)].reverse();
    if (name === "middle") {
      if (others.length === 0) return notApplicable("two rings have no middle one");
      if (leastMiddle.state === "unknown") return cannotTell(leastMiddle);
      if (leastMiddle.state === "none") return notApplicable(`${derailleur.subject} asks for no least difference`);
      const apart = outer.teeth - next.teeth;
      const sum = `${outer.teeth} − ${next.teeth} = ${apart} t`;
      const least = leastMiddle.value;
      if (apart >= least) {
        return holds(
          `Outer and middle ring differ by ${sum}, and ${leastMiddle.subject} asks for ${least} t.`,
          (apart - least) / least,
        );
      }
      return fails(
        `Outer and middle ring differ by ${sum}, but ${leastMiddle.subject} asks for at least ${least} t: its inner plate meets the middle ring. Fit a middle ring of ${outer.teeth - least} t or fewer, or another front derailleur.`,
        derailleur,
        [leastMiddle, ...ringFacts([outer, next])],
        swaps("drivetrain.front-derailleur", next.slot),
        { severity: "warning" },
      );
    }
    if (capacity.state === "unknown") return cannotTell(capacity);
    if (capacity.state === "none") return notApplicable(`${derailleur.subject} states no capacity`);
    const most = capacity.value;
    const smallest = others[others.length - 1] ?? next;
    const sum = `${outer.teeth} − ${smallest.teeth} = ${difference.value} t`;
    if (difference.value <= most) {
      return holds(
        `The rings differ by ${sum}, and ${capacity.subject} spans ${most} t.`,
        (most - difference.value) / most,
      );
    }
    return fails(
      `The rings differ by ${sum}, but ${capacity.subject} spans at most ${most} t: fit an inner ring of ${outer.teeth - most} t or more, or a front derailleur with a capacity of ${difference.value} t.`,
      derailleur,
      [capacity, ...ringFacts(rings.rings)],
      [
        ...swaps("drivetrain.front-derailleur", ...slots),
        { kind: "set-fact", slot: "drivetrain.front-derailleur", fact: "capacity", value: `${difference.value} t` },
      ],
    );
  },
  explanation:
    "The cage of a front derailleur is as deep as the drop from the outer ring to the inner one that it is made for. With " +
    "a greater drop the chain on the inner ring and a small cog drags over the cage's lower bar, and the shift up can " +
    "fail. With three rings the inner plate also has to pass over the middle ring while the cage stands at the outer " +
    "one, so some makers state the fewest teeth between those two. Both are separate from the rear derailleur's limits.",
  source: "common practice, no source; the limits are the derailleur maker's own figures",
  examples: {
    holds: `
part front-derailleur example.cage "Cage" { capacity: 16 t }
part crankset example.crank "Crank" { rings: 46-30 t }

build example "At the capacity" {
  drivetrain {
    front-derailleur: example.cage
    crankset: example.crank
  }
}
`,
    fails: `
part front-derailleur example.cage "Cage" { capacity: 14 t }
part crankset example.crank "Crank" { rings: 46-30 t }

build example "Beyond the capacity" {
  drivetrain {
    front-derailleur: example.cage
    crankset: example.crank
  }
}
`,
  },
});
