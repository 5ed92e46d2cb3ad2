import { evenAtLeast, reaches, reachTolerance, toLinks } from "../../calculations/shared/chain-geometry.ts";
import { showNumber } from "../../calculations/show.ts";
import { fact, optional, setting, slot, worked } from "../../model/need.ts";
import { showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { fittedRingNeeds, fittedRings } from "../shared/fitted-rings.ts";
import { isKind } from "../shared/kind.ts";

const tears =
  "A chain too short for the largest ring with the largest cog tears the derailleur off and can lock the wheel. The derailleur and frame makers' own procedure comes first: lay the chain round both and look before it is cut.";

/** Half-inch pitches that practice adds with a single ring, where the derailleur's maker says nothing. */
const leastByPractice = 2;
const mostByPractice = 4;

export default defineCheck({
  code: "drivetrain/chain-length",
  title: "The chain is cut to the length that the gears need",
  severity: "error",
  since: 1,
  needs: () => ({
    ...fittedRingNeeds,
    chain: slot("drivetrain.chain"),
    derailleur: slot("drivetrain.rear-derailleur"),
    links: optional(setting("drivetrain.chain", "links")),
    idler: optional(fact("frame", "idler-teeth")),
    cogs: fact("drivetrain.cassette", "cogs"),
    chainstay: fact("frame", "chainstay"),
    travel: optional(fact("frame", "rear-travel")),
    growth: optional(fact("frame", "rear-centre-growth-full")),
    forRigid: optional(fact("drivetrain.rear-derailleur", "chain-allowance-rigid")),
    forSprung: optional(fact("drivetrain.rear-derailleur", "chain-allowance-sprung")),
    forDouble: optional(fact("drivetrain.rear-derailleur", "chain-allowance-double")),
    exact: optional(worked<number>("drivetrain.chain-links-exact")),
    allowance: optional(worked<number>("drivetrain.chain-allowance")),
    needed: optional(worked<number>("drivetrain.chain-links-needed")),
    slackGears: optional(worked<readonly string[]>("drivetrain.slack-gears")),
  }),
  test(facts) {
    const { chain, links, idler, cogs, chainstay, travel, growth, exact, allowance, needed, slackGears } = facts;
    if (isKind(chain.value, "belt")) return notApplicable("a belt is not cut");
    if (idler.state === "known") {
      return notApplicable("the chain runs over an idler, for which the frame maker's own figure counts");
    }
    const unknown = [links, needed].filter((one) => one.state === "unknown");
    const rings = fittedRings(facts);
    if (rings.state === "unknown") unknown.push(rings);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (links.state !== "known" || rings.state !== "known") return notApplicable("no chain or no ring is fitted");
    if (exact.state !== "known" || allowance.state !== "known" || needed.state !== "known") {
      return notApplicable("a chain round these rings and cogs cannot be worked out");
    }

    const ring = rings.rings[0];
    const largestCog = Math.max(...cogs.value);
    const path = `${ring.teeth} t with ${largestCog} t at ${showQuantity(chainstay.value.greatest, "length")}${
      growth.state === "known" && growth.value > 0 ? ` + ${showQuantity(growth.value, "length")} of growth` : ""
    }`;
    const sum = `${path} takes ${showNumber(exact.value, 2)} links round both, and ${allowance.value} for the derailleur make ${showNumber(exact.value + allowance.value, 2)}`;
    const stated =
      rings.rings.length > 1 ? facts.forDouble : travel.state === "none" ? facts.forRigid : facts.forSprung;
    const others = [ring.fact, cogs, chainstay, growth, stated].filter((one) => one.state === "known");
    const mend = {
      kind: "set-setting",
      slot: "drivetrain.chain",
      setting: "links",
      value: String(needed.value),
    } as const;

    // With several rings practice agrees on two; with one it adds two or four, and no maker said which.
    const inDoubt = stated.state !== "known" && rings.rings.length === 1;
    const least = exact.value + (inDoubt ? Math.min(allowance.value, leastByPractice) : allowance.value);
    const roomy = inDoubt ? Math.max(allowance.value, mostByPractice) : allowance.value;
    // Whoever counts on no tolerance of the chain rounds up all the way.
    const most = evenAtLeast(exact.value + roomy + reachTolerance);
    const doubt = inDoubt
      ? ` The derailleur's maker states no allowance, and practice is to add ${leastByPractice} or ${mostByPractice}.`
      : "";

    // Against the sum itself, not the even number above it: an odd count that is long enough is not too short.
    if (!reaches(links.value, least)) {
      return fails(
        `The chain is cut to ${links.value} links, but ${sum}: it is too short by ${needed.value - links.value}. Cut a new one to ${needed.value} links; never try the largest ring with the largest cog on this one.${doubt}`,
        links,
        others,
        [mend],
        { caution: tears, safety: true },
      );
    }
    // An odd link too many is a matter of parity, which is asked by itself.
    if (links.value <= most + 1) {
      return holds(
        `The chain is cut to ${links.value} links, and ${sum}, ${toLinks(exact.value + allowance.value, needed.value)}.${doubt}`,
      );
    }
    const surplus = links.value - needed.value;
    const slack = slackGears.state === "known" ? slackGears.value : undefined;
    const hangs =
      slack === undefined
        ? "In which gears it hangs cannot be said without the derailleur's capacity."
        : slack.length === 0
          ? "The cage still takes up the slack of every gear."
          : `It hangs slack in ${slack.join(", ")}.`;
    return fails(
      `The chain is cut to ${links.value} links, but ${sum}, so ${needed.value} are enough: it is too long by ${surplus}. ${hangs} Take out ${surplus} links.${doubt}`,
      links,
      others,
      [mend],
      { severity: slack !== undefined && slack.length === 0 ? "information" : "warning" },
    );
  },
  explanation:
    "A chain is sized round the largest ring and the largest cog without the derailleur, plus what its maker adds so that " +
    "the cage is not pulled straight: commonly two half-inch pitches, or four for a single ring on a rigid rear end " +
    "shifted by motor; where the maker says nothing, both pass with one ring. With rear suspension it has to reach where the rear centre is longest. Too short, and the first " +
    "shift into the largest gear tears the derailleur off: an error. Too long, and it hangs in the small gears, slaps " +
    "and falls off, for which the gears are named. As long as the cage still takes up every gear, a chain with a pair of " +
    "links to spare is only mentioned. Links are half-inch pitches, a closure link counted as one. A sum of up to 0.05 links over a whole number asks for no more: a new chain is up to 0.15 % longer than nominal.",
  source:
    "open-belt geometry on the pitch circles, Machinery's Handbook (from memory) and re-derived; a new chain is 0 to 0.15 % longer than nominal: ISO 606 and ISO 9633 (from memory); allowance where the derailleur's maker states none, and 0.05 links of that: common practice, no source",
  examples: {
    holds: `
part frame example.frame "Frame" { chainstay: 415 mm; rear-travel: none }
part crankset example.crank "Crank" { rings: 46-30 t }
part cassette example.cogs "11-36" { cogs: 11-13-15-17-19-21-24-28-32-36 t }
part rear-derailleur example.arm "Arm" { set-up: cable; chain-allowance-double: 2; total-capacity: 41 t }
part chain example.chain "Chain" { links-supplied: 116 }

build example "Cut to the need" {
  frame: example.frame
  drivetrain {
    crankset: example.crank
    cassette: example.cogs
    rear-derailleur: example.arm
    chain: example.chain { links: 110 }
  }
}
`,
    fails: `
part frame example.frame "Frame" { chainstay: 415 mm; rear-travel: none }
part crankset example.crank "Crank" { rings: 46-30 t }
part cassette example.cogs "11-36" { cogs: 11-13-15-17-19-21-24-28-32-36 t }
part rear-derailleur example.arm "Arm" { set-up: cable; chain-allowance-double: 2; total-capacity: 41 t }
part chain example.chain "Chain" { links-supplied: 116 }

build example "Cut too short" {
  frame: example.frame
  drivetrain {
    crankset: example.crank
    cassette: example.cogs
    rear-derailleur: example.arm
    chain: example.chain { links: 106 }
  }
}
`,
  },
});
