import { fact, optional, slot } from "../../model/need.ts";
import { mate } from "../../model/standard.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { isKind } from "../shared/kind.ts";
import { rearCount, rearCountNeeds } from "../shared/rear-count.ts";
import { swaps } from "../shared/swaps.ts";

/** Chains for five to eight speeds have one width, and are sold as one. */
const widest = 8;

export default defineCheck({
  code: "drivetrain/chain-width",
  title: "The chain is as narrow as the cogs stand apart",
  severity: "error",
  since: 1,
  needs: () => ({
    ...rearCountNeeds,
    chain: slot("drivetrain.chain"),
    speeds: optional(fact("drivetrain.chain", "speeds")),
    derailleurSpeeds: optional(fact("drivetrain.rear-derailleur", "speeds")),
    chainFamily: optional(fact("drivetrain.chain", "drive-family")),
    cassetteFamily: optional(fact("drivetrain.cassette", "drive-family")),
  }),
  test(facts) {
    const { chain, speeds, derailleurSpeeds, chainFamily, cassetteFamily } = facts;
    if (isKind(chain.value, "belt")) return notApplicable("a belt has no neighbouring cog");
    const count = rearCount(facts);
    if (count.state === "known" && count.value === 1) return notApplicable("one cog has no neighbour to touch");
    if (
      chainFamily.state === "known" &&
      cassetteFamily.state === "known" &&
      !mate(chainFamily.value, cassetteFamily.value)
    ) {
      return notApplicable("chain and cogs are of different families, which is found as such");
    }
    if (speeds.state === "unknown" || count.state === "unknown") {
      return cannotTell(...[speeds, count].filter((one) => one.state === "unknown"));
    }
    if (speeds.state === "none" || count.state === "none") return notApplicable("nothing is stated to compare");

    const made = Math.max(speeds.value, widest);
    const needed = Math.max(count.value, widest);
    if (made === needed)
      return holds(
        `${speeds.subject} is made for ${speeds.value} speeds, and ${count.subject} has ${count.value} cogs.`,
      );
    if (derailleurSpeeds.state === "known" && derailleurSpeeds.value === speeds.value) {
      return notApplicable("chain and derailleur agree, and the cassette's number of speeds is found wrong as such");
    }
    const wide = made < needed;
    return fails(
      wide
        ? `${speeds.subject} is made for ${speeds.value} speeds, but ${count.subject} has ${count.value} cogs, which stand closer: the chain rubs on the next cog. Fit a chain for ${count.value} speeds.`
        : `${speeds.subject} is made for ${speeds.value} speeds and narrower than ${count.value} cogs ask for (${count.subject}): it can drop between ring and cage and shifts late. Fit a chain for ${count.value} speeds.`,
      chain,
      [speeds, count],
      swaps("drivetrain.chain", "drivetrain.cassette"),
      { severity: wide ? "error" : "warning" },
    );
  },
  explanation:
    "The more cogs, the closer they stand, and the narrower the chain over its pins has to be. A chain made for fewer " +
    "speeds touches the next larger cog: it ticks, climbs and shifts by itself. One made for more speeds fits between " +
    "the cogs but leaves room at the sides, so that it shifts late and can drop beside a ring; people do run one step " +
    "narrower, so that is a warning. Chains for five to eight speeds are of one width. A single cog has no neighbour, " +
    "and there the family of chain and teeth is what counts.",
  source:
    "common practice, no source: widths over the pins run from about 7.1 mm for eight speeds to 5.2 mm for twelve (from memory)",
  examples: {
    holds: `
part chain example.nine "Nine" { speeds: 9 }
part cassette example.cogs "11-34" { speeds: 9; cogs: 11-13-15-17-20-23-26-30-34 t }

build example "Chain for nine" {
  drivetrain {
    chain: example.nine
    cassette: example.cogs
  }
}
`,
    fails: `
part chain example.nine "Nine" { speeds: 9 }
part cassette example.cogs "11-36" { speeds: 10; cogs: 11-13-15-17-19-21-24-28-32-36 t }

build example "Chain for nine on ten cogs" {
  drivetrain {
    chain: example.nine
    cassette: example.cogs
  }
}
`,
  },
});
