import { fact, optional } from "../../model/need.ts";
import { mate } from "../../model/standard.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { chainFamilies, chainFamilyNeeds, type FamilyEnd, runsOn } from "../shared/chain-families.ts";
import { dimensionOf, showCode } from "../shared/codes.ts";
import { rearCount, rearCountNeeds } from "../shared/rear-count.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/drive-family",
  title: "Chain, rings and cogs are of one roller and tooth family",
  severity: "error",
  since: 1,
  needs: () => ({
    ...chainFamilyNeeds,
    ...rearCountNeeds,
    derailleurSpeeds: optional(fact("drivetrain.rear-derailleur", "speeds")),
  }),
  test(facts) {
    if (facts.chain.state === "none") return notApplicable("drivetrain.chain is none");
    const { chain, others, missing } = chainFamilies(facts);
    const reference = chain ?? others[0];
    if (!reference) return cannotTell({ state: "unknown", missing });
    const rest = others.filter((end) => end !== reference);
    const suits = (end: FamilyEnd): boolean =>
      chain ? runsOn(chain.family.value, end.family.value) : mate(reference.family.value, end.family.value);
    const all = rest.filter((end) => !suits(end));

    // A cassette or derailleur for another number of speeds is found as such, and its family goes with it.
    const count = rearCount(facts);
    const { derailleurSpeeds } = facts;
    const miscounted =
      count.state === "known" &&
      derailleurSpeeds.state === "known" &&
      count.value > 1 &&
      count.value !== derailleurSpeeds.value;
    const odd = all.filter(
      (end) =>
        !(miscounted && (end.slot === "drivetrain.cassette" || end.slot === "drivetrain.rear-derailleur")) ||
        dimensionOf(end.family.value, "speeds") === dimensionOf(reference.family.value, "speeds"),
    );
    if (all.length > 0 && odd.length === 0) {
      return notApplicable("the numbers of speeds differ, which is found as such");
    }

    const [first] = odd;
    if (!first) {
      if (missing.length > 0) return cannotTell({ state: "unknown", missing });
      return holds(
        `${both([reference, ...rest].map(({ part, family }) => `${part.subject} (${family.value.code})`))} go together.`,
      );
    }
    // Where everything else agrees and the chain does not, the chain is what is wrong: one fault, found once.
    const chainIsOdd = chain !== undefined && odd.length > 1 && odd.length === rest.length && agree(odd);
    const wrong = chainIsOdd ? chain : first;
    const against = chainIsOdd
      ? odd
      : [reference, ...odd.filter((end) => end !== first && !mate(end.family.value, first.family.value))];
    return fails(
      `${wrong.part.subject} is of the family ${showCode(wrong.family.value)}, which does not go with ${both(against.map(({ part, family }) => `${part.subject} (${family.value.code})`))}: rollers and teeth have to be made for each other, and equal numbers of speeds are not enough. Fit parts of one family.`,
      wrong.part,
      [wrong.family, ...against.map(({ family }) => family)],
      swaps(wrong.slot, ...against.map((end) => end.slot)),
    );
  },
  explanation:
    "Two twelve-speed drivetrains can differ in the diameter of the rollers, the width between the inner plates and the " +
    "shape of the teeth. A chain of one family on rings or cogs of another rides up on the teeth, wears both within " +
    "days, and can jump under load. So chain, rings and cogs are compared by family and not by the number of speeds. " +
    "Where a maker says that one family runs on another, the standard of that family lists it among its mates. A belt " +
    "has families too: pitch and tooth profile have to agree.",
  source: "common practice, no source; which families go together is stated in the standards, with their sources",
  caution: "A chain that jumps off under load can throw the rider.",
  examples: {
    holds: `
standard drive-family example-narrow { drive: chain; pitch: 12.7 mm }

part chain example.chain "Chain" { drive-family: example-narrow }
part cassette example.cogs "Cogs" { drive-family: example-narrow }
part crankset example.crank "Crank" { rings: 42 t; drive-family: example-narrow }

build example "One family" {
  drivetrain {
    chain: example.chain
    cassette: example.cogs
    crankset: example.crank
    rear-derailleur: none
  }
}
`,
    fails: `
standard drive-family example-narrow { drive: chain; pitch: 12.7 mm }
standard drive-family example-large-roller { drive: chain; pitch: 12.7 mm; roller-diameter: 7.9 mm }

part chain example.chain "Chain" { drive-family: example-large-roller }
part cassette example.cogs "Cogs" { drive-family: example-narrow }
part crankset example.crank "Crank" { rings: 42 t; drive-family: example-narrow }

build example "Chain of another family" {
  drivetrain {
    chain: example.chain
    cassette: example.cogs
    crankset: example.crank
    rear-derailleur: none
  }
}
`,
  },
});

function agree(ends: readonly FamilyEnd[]): boolean {
  return ends.every((end) => ends.every((other) => mate(end.family.value, other.family.value)));
}
