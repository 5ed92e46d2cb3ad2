import { fact, optional, slot } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { fittedRingNeeds, fittedRings } from "../shared/fitted-rings.ts";
import { frontLine, frontLineNeeds } from "../shared/front-line.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";

/** Millimetres that ring and cog may be out of line before a taut chain is heard, and then comes off. */
const tolerable = 2;

export default defineCheck({
  code: "drivetrain/single-speed-line",
  title: "Ring and cog of a bike without a derailleur are in one line",
  severity: "warning",
  since: 1,
  needs: () => ({
    ...frontLineNeeds,
    ...fittedRingNeeds,
    chain: slot("drivetrain.chain"),
    derailleur: optional(slot("drivetrain.rear-derailleur")),
    cogs: optional(fact("drivetrain.cassette", "cogs")),
    cogLine: optional(fact("rear-wheel.hub", "cog-line")),
  }),
  test(facts) {
    const { chain, derailleur, cogs, cogLine } = facts;
    if (isKind(chain.value, "belt")) return notApplicable("a belt drives the wheel, whose line is asked for by itself");
    if (derailleur.state === "known") return notApplicable(`${derailleur.subject} takes the chain to where the cog is`);
    const rings = fittedRings(facts);
    const front = frontLine(facts);
    const unknown = [derailleur, rings, cogs, front, cogLine].filter((one) => one.state === "unknown");
    if (unknown.length > 0) return cannotTell(...unknown);
    if (rings.state !== "known" || cogs.state !== "known") return notApplicable("there is no ring or no cog");
    if (rings.rings.length > 1 || cogs.value.length > 1) {
      return notApplicable("there are several rings or cogs, of which one pair at a time is in line");
    }
    if (front.state !== "known") return notApplicable("no chainline is stated for the cranks");
    if (cogLine.state !== "known") return notApplicable("no line of the cog is stated");
    const apart = Math.abs(front.line.value - cogLine.value);
    const [off, most] = showPair(apart, tolerable, "length");
    const lines = `${front.line.subject} at ${showQuantity(front.line.value, "length")}, ${cogLine.subject} at ${showQuantity(cogLine.value, "length")}`;
    if (atMost(apart, tolerable)) {
      return holds(
        `Ring and cog are ${off} out of line (${lines}), and up to ${most} is usual.`,
        (tolerable - apart) / tolerable,
      );
    }
    const way = front.line.value > cogLine.value ? "inward" : "outward";
    return fails(
      `Ring and cog are ${off} out of line (${lines}), more than the ${most} that is usual without a derailleur: bring the ring ${way} by another offset or bottom bracket, or move the cog with spacers.`,
      front.part,
      [front.line, cogLine],
      swaps(front.slot, "rear-wheel.hub"),
    );
  },
  explanation:
    "Without a derailleur the chain is taut and runs straight, and nothing leads it onto the cog. Out of line by more than " +
    "a millimetre or two it is loud, wears ring and cog on one side, and on rough ground climbs off. Both lines are counted " +
    "from the bike's centre plane, the cog's with the cog fitted. It is a warning, because spacers can often make up for it.",
  source: "common practice, no source",
  caution: "A chain that comes off a fixed wheel or a coaster brake takes the brake with it.",
  examples: {
    holds: `
part crankset example.crank "Crank" { rings: 46 t; chainline: 44 mm }
part sprocket example.cog "Cog 17" { cogs: 17 t }
part hub example.hub "Hub" { cog-line: 43 mm }
part chain example.chain "Chain" { speeds: 1 }

build example "In line" {
  drivetrain {
    rear-derailleur: none
    crankset: example.crank
    cassette: example.cog
    chain: example.chain
  }
  rear-wheel.hub: example.hub
}
`,
    fails: `
part crankset example.crank "Crank" { rings: 46 t; chainline: 49 mm }
part sprocket example.cog "Cog 17" { cogs: 17 t }
part hub example.hub "Hub" { cog-line: 43 mm }
part chain example.chain "Chain" { speeds: 1 }

build example "Cranks for a wider rear end" {
  drivetrain {
    rear-derailleur: none
    crankset: example.crank
    cassette: example.cog
    chain: example.chain
  }
  rear-wheel.hub: example.hub
}
`,
  },
});
