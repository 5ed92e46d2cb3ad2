import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { fittedRingNeeds, placedRings, withoutRings } from "../shared/fitted-rings.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/ring-order",
  title: "Rings grow smaller from the outside in",
  severity: "error",
  since: 1,
  needs: () => fittedRingNeeds,
  test(facts) {
    const placed = placedRings(facts);
    if (placed.state !== "known") return withoutRings(placed);
    const { rings } = placed;
    if (rings.length < 2) return notApplicable("there is one ring");
    const said = rings.map(({ place, teeth }) => `${place} ${teeth} t`).join(", ");
    for (const [index, inner] of rings.entries()) {
      const outer = rings[index - 1];
      if (!outer || inner.teeth < outer.teeth) continue;
      const fault = inner.teeth === outer.teeth ? "as large as" : "larger than";
      return fails(
        `The ${inner.place} ring of ${inner.teeth} t (${inner.fact.subject}) is ${fault} the ${outer.place} one of ${outer.teeth} t (${outer.fact.subject}): no chain shifts between them. Put the larger one outside, or fit a smaller ${inner.place} ring.`,
        inner.part,
        [inner.fact, outer.fact],
        swaps(inner.slot, outer.slot),
      );
    }
    return holds(`The rings grow smaller from the outside in: ${said}.`);
  },
  explanation:
    "A front derailleur lifts the chain outward to a larger ring and pushes it inward to a smaller one. Rings in another " +
    "order cannot be shifted, and are nearly always two parts entered in each other's place, or a ring that replaces one " +
    "of a set without looking at the other. Where the cranks are sold with rings, a ring in a slot of its own takes the " +
    "place of theirs, and the rest of theirs stay.",
  source: "common practice, no source",
  examples: {
    holds: `
part crankset example.arm "Arm" { rings: none }
part chainring example.big "Big" { teeth: 48 t }
part chainring example.small "Small" { teeth: 34 t }

build example "The larger one outside" {
  drivetrain {
    crankset: example.arm
    chainring: example.big
    middle-chainring: none
    inner-chainring: example.small
  }
}
`,
    fails: `
part crankset example.set "Set 46-30" { rings: 46-30 t }
part chainring example.small "Small" { teeth: 28 t }

build example "A small ring in the large one's place" {
  drivetrain {
    crankset: example.set
    chainring: example.small
    middle-chainring: none
    inner-chainring: none
  }
}
`,
  },
});
