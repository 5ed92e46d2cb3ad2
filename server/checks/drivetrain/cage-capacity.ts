import { fact, slot, worked } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { fittedRings, requiredRingNeeds, ringFacts, ringSlots, withoutRings } from "../shared/fitted-rings.ts";
import { either } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/cage-capacity",
  title: "The cage takes up the slack of every gear",
  severity: "error",
  since: 1,
  needs: () => ({
    ...requiredRingNeeds,
    derailleur: slot("drivetrain.rear-derailleur"),
    capacity: fact("drivetrain.rear-derailleur", "total-capacity"),
    cogs: fact("drivetrain.cassette", "cogs"),
    needed: worked<number>("drivetrain.capacity-needed"),
    cogDifference: worked<number>("drivetrain.cog-difference"),
  }),
  test(facts) {
    const { derailleur, capacity, cogs, needed, ringDifference, cogDifference } = facts;
    const rings = fittedRings(facts);
    if (rings.state !== "known") return withoutRings(rings);

    const most = capacity.value;
    const largestRing = Math.max(...rings.rings.map(({ teeth }) => teeth));
    const smallestRing = Math.min(...rings.rings.map(({ teeth }) => teeth));
    const largestCog = Math.max(...cogs.value);
    const smallestCog = Math.min(...cogs.value);
    const ringSpan = ringDifference.value;
    const cogSpan = cogDifference.value;
    const sum =
      rings.rings.length === 1
        ? `one ring, so the cogs alone: ${largestCog} − ${smallestCog} = ${needed.value} t`
        : `rings ${largestRing} − ${smallestRing} = ${ringSpan} t, cogs ${largestCog} − ${smallestCog} = ${cogSpan} t, together ${needed.value} t`;
    if (needed.value <= most) {
      return holds(
        `Capacity needed ${needed.value} t (${sum}), and ${capacity.subject} takes up ${most} t.`,
        (most - needed.value) / most,
      );
    }

    const remedies = [`a derailleur with a capacity of ${needed.value} t or more`];
    if (cogSpan > 0 && most >= ringSpan) remedies.push(`a cassette whose cogs differ by at most ${most - ringSpan} t`);
    if (ringSpan > 0 && most >= cogSpan) remedies.push(`rings that differ by at most ${most - cogSpan} t`);
    return fails(
      `Capacity needed ${needed.value} t (${sum}), but the cage of ${capacity.subject} takes up at most ${most} t: fit ${either(remedies)}.`,
      derailleur,
      [capacity, cogs, ...ringFacts(rings.rings)],
      [
        ...swaps("drivetrain.rear-derailleur", "drivetrain.cassette"),
        ...(ringSpan > 0 ? swaps(...[...ringSlots(rings.rings)].reverse()) : []),
        { kind: "set-fact", slot: "drivetrain.rear-derailleur", fact: "total-capacity", value: `${needed.value} t` },
      ],
    );
  },
  explanation:
    "The chain is cut for the largest ring with the largest cog. In every smaller gear less of it lies on the teeth, and " +
    "the sprung cage has to swing back to take up what hangs loose. How much it can take up is its total capacity, " +
    "counted in teeth: the difference of the rings plus the difference of the cogs. Where a build needs more, one end " +
    "always suffers: either the chain hangs slack, slaps the chainstay and falls off in the small gears, or it is cut so " +
    "short that the largest gear pulls the derailleur apart. Capacity is about the slack only; how large or small a " +
    "single cog may be is a limit of its own.",
  source:
    "common practice, no source: total capacity = (largest ring − smallest ring) + (largest cog − smallest cog), as trade glossaries give it",
  caution:
    "A chain cut short to suit too small a cage can tear the derailleur into the wheel in the largest gear. The derailleur maker's own figure comes first.",
  examples: {
    holds: `
part rear-derailleur example.long "Long cage" { total-capacity: 39 t }
part cassette example.spread "Spread 11-34" { cogs: 11-13-15-17-19-21-23-25-27-30-34 t }
part crankset example.double "Double 50-34" { rings: 50-34 t }

build example "Rings and cogs inside the capacity" {
  drivetrain {
    rear-derailleur: example.long
    cassette: example.spread
    crankset: example.double
  }
}
`,
    fails: `
part rear-derailleur example.medium "Medium cage" { total-capacity: 35 t }
part cassette example.spread "Spread 11-34" { cogs: 11-13-15-17-19-21-23-25-27-30-34 t }
part crankset example.double "Double 50-34" { rings: 50-34 t }

build example "Rings and cogs beyond the capacity" {
  drivetrain {
    rear-derailleur: example.medium
    cassette: example.spread
    crankset: example.double
  }
}
`,
  },
});
