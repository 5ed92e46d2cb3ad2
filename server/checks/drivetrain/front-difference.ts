import { fact, optional, slot, worked } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { fittedRingNeeds, fittedRings, ringFacts, ringSlots, withoutRings } from "../shared/fitted-rings.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/front-difference",
  title: "The rings differ by no more than the rear derailleur allows",
  severity: "error",
  since: 1,
  needs: () => ({
    ...fittedRingNeeds,
    derailleur: slot("drivetrain.rear-derailleur"),
    limit: optional(fact("drivetrain.rear-derailleur", "greatest-front-difference")),
    difference: worked<number>("drivetrain.front-difference"),
  }),
  test(facts) {
    const { derailleur, limit, difference } = facts;
    const rings = fittedRings(facts);
    if (rings.state !== "known") return withoutRings(rings);
    if (rings.rings.length === 1) return notApplicable("a single ring has nothing to differ from");
    if (limit.state === "unknown") return cannotTell(limit);
    if (limit.state === "none") return notApplicable(`${derailleur.subject} states no limit of its own for the rings`);

    const most = limit.value;
    const teeth = rings.rings.map((ring) => ring.teeth);
    const sum = `${Math.max(...teeth)} − ${Math.min(...teeth)} = ${difference.value} t`;
    if (difference.value <= most) {
      return holds(
        `The rings differ by ${sum}, and ${limit.subject} allows ${most} t.`,
        most === 0 ? 0 : (most - difference.value) / most,
      );
    }
    const remedy =
      most === 0
        ? "fit a single ring, or a derailleur made for several"
        : `fit rings that differ by at most ${most} t, or a derailleur that allows ${difference.value} t`;
    return fails(
      `The rings differ by ${sum}, but ${limit.subject} allows at most ${most} t: ${remedy}.`,
      derailleur,
      [limit, ...ringFacts(rings.rings)],
      [
        ...swaps("drivetrain.rear-derailleur", ...[...ringSlots(rings.rings)].reverse()),
        {
          kind: "set-fact",
          slot: "drivetrain.rear-derailleur",
          fact: "greatest-front-difference",
          value: `${difference.value} t`,
        },
      ],
    );
  },
  explanation:
    "Changing between two rings moves the chain's slack by half their difference in one stroke, and tilts the upper " +
    "pulley along with the cage. Rear derailleurs whose guide pulley does not sit on the cage's pivot tolerate only so " +
    "much of that before the gap to the cogs opens or closes too far. Their makers state the greatest difference " +
    "between the rings beside the total capacity. Both limits count: a build may be inside the total and still beyond " +
    "this one. A derailleur that its maker allows with a single ring only states 0 t.",
  source: "common practice, no source; the limit is the derailleur maker's own figure",
  examples: {
    holds: `
part rear-derailleur example.mech "Mech" { greatest-front-difference: 16 t }
part crankset example.compact "Compact 50-34" { rings: 50-34 t }

build example "Rings at the limit" {
  drivetrain {
    rear-derailleur: example.mech
    crankset: example.compact
  }
}
`,
    fails: `
part rear-derailleur example.mech "Mech" { greatest-front-difference: 16 t }
part crankset example.wide "Wide 48-30" { rings: 48-30 t }

build example "Rings too far apart" {
  drivetrain {
    rear-derailleur: example.mech
    crankset: example.wide
  }
}
`,
  },
});
