import type { Installed } from "../../model/assembly.ts";
import { fact, type Known, type Maybe, type Need, optional } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { greaterThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionFact, lacksDimension, showCode } from "../shared/codes.ts";
import { anyFact, anySlot, readEnd } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

/**
 * What chain or belt and their family both state. Widths of chains of one family differ between makers by a tenth or two;
 * a pitch is what it is, but for rounding.
 */
const instances = [
  { name: "pitch", field: "pitch", tolerance: 0.05, severity: "error" },
  { name: "inner width", field: "inner-width", tolerance: 0.2, severity: "warning" },
  { name: "outer width", field: "outer-width", tolerance: 0.3, severity: "warning" },
] as const;

type DimensionNeeds = {
  readonly chain: Need<Installed, true>;
  readonly stated: Need<number, true>;
  readonly family: Need<ResolvedCode, true>;
  readonly cogFamily: Need<ResolvedCode, true>;
  readonly ringFamily: Need<ResolvedCode, true>;
};

export default defineCheck({
  code: "drivetrain/family-dimensions",
  title: "Pitch and widths of chain or belt are those of its family",
  severity: "error",
  since: 1,
  instances,
  needs: ({ field }): DimensionNeeds => ({
    chain: anySlot("drivetrain.chain"),
    stated: anyFact("drivetrain.chain", field),
    family: optional(fact("drivetrain.chain", "drive-family")),
    cogFamily: optional(fact("drivetrain.cassette", "drive-family")),
    ringFamily: optional(fact("drivetrain.chainring", "drive-family")),
  }),
  test({ chain, stated, family, cogFamily, ringFamily }, { name, field, tolerance, severity }) {
    const own = readEnd(chain, stated, field);
    if (own.state === "empty") return notApplicable(`${own.slot} is none`);
    if (own.state === "unknown" && !own.part) return cannotTell(own.unknown);
    // A figure that the part leaves to its family contradicts nothing.
    if (own.state !== "known") return notApplicable(`the part states no ${name} of its own`);
    const known = familyOf(family, [cogFamily, ringFamily]);
    if (!known) {
      const open = unknowns(family);
      return open.length > 0 ? cannotTell(...open) : notApplicable("the part is of no family");
    }
    const asked = dimensionFact<number>(known.value, field);
    if (!asked) {
      if (field === "pitch") return cannotTell(lacksDimension(known.value, field));
      return notApplicable(`the family ${known.value.code} states no ${name}`);
    }
    const [has, wants] = showPair(own.fact.value, asked.value, "length");
    const whose =
      known === family
        ? `its family ${showCode(known.value)}`
        : `${known.subject}, which it is to run on, is of the family ${showCode(known.value)}, which`;
    if (!greaterThan(Math.abs(own.fact.value - asked.value), tolerance)) {
      return holds(`${own.part.subject} states ${article(name)} of ${has}, and ${whose} has ${wants}.`);
    }
    const wrong =
      field === "pitch"
        ? "belt and teeth of two pitches do not mesh"
        : "a chain of another width fits other cogs and rings";
    const mend = known === family ? `Correct the ${name} or the family of the part, or fit` : "Fit";
    return fails(
      `${own.part.subject} states ${article(name)} of ${has}, but ${whose} has ${wants}: ${wrong}. ${mend} one of ${wants}.`,
      own.part,
      [own.fact, known, asked],
      [
        ...swaps("drivetrain.chain"),
        ...(known === family
          ? [{ kind: "set-fact", slot: "drivetrain.chain", fact: field, value: asked.written } as const]
          : swaps("drivetrain.cassette")),
      ],
      { severity },
    );
  },
  explanation:
    "A family says which chain or belt runs on which teeth, by pitch, rollers and widths. Where a part also states its own " +
    "pitch or width, the two have to agree: a belt of 8 mm pitch listed under a family of 11 mm was entered wrongly, and " +
    "every check that trusts the family would pass it. Chains of one family differ by a tenth or two of a millimetre, so " +
    "that 0.2 mm between the inner plates and 0.3 mm over the pins are left. Where a belt's own family is not stated, its " +
    "pitch is held against that of sprocket and ring.",
  source: "the families' own figures, with their sources; 0.2 and 0.3 mm between makers: common practice, no source",
  caution: "A belt on teeth of another pitch jumps and is torn.",
  examples: {
    holds: `
part chain example.chain "Chain" { drive-family: 9-speed; inner-width: 2.3 mm; outer-width: 6.7 mm }

build example "A tenth wider than the middle of its family" {
  drivetrain.chain: example.chain
}
`,
    fails: `
part belt example.belt "Belt" { drive-family: belt-11-centred; pitch: 8 mm }

build example "A belt in the wrong family" {
  drivetrain.chain: example.belt
}
`,
  },
});

/** The part's own family; where nobody stated it, that of what it is to run on, whose pitch it needs all the same. */
function familyOf(own: Maybe<ResolvedCode>, others: readonly Maybe<ResolvedCode>[]): Known<ResolvedCode> | undefined {
  if (own.state !== "unknown") return own.state === "known" ? own : undefined;
  return others.find((one): one is Known<ResolvedCode> => one.state === "known");
}

function article(name: string): string {
  return `${/^[aeiou]/.test(name) ? "an" : "a"} ${name}`;
}
