import type { Installed } from "../../model/assembly.ts";
import { type Facts, fact, type Known, type Maybe, type Missing, optional, slot } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import { atLeast, equal } from "../../values/compare.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { dimensionOf } from "./codes.ts";
import { fittedRingNeeds, fittedRings } from "./fitted-rings.ts";

/** Everything that the chain runs over, with the family each is made for. */
export const chainFamilyNeeds = {
  ...fittedRingNeeds,
  chain: optional(slot("drivetrain.chain")),
  cassette: optional(slot("drivetrain.cassette")),
  derailleur: optional(slot("drivetrain.rear-derailleur")),
  tensioner: optional(slot("drivetrain.chain-tensioner")),
  chainFamily: optional(fact("drivetrain.chain", "drive-family")),
  cassetteFamily: optional(fact("drivetrain.cassette", "drive-family")),
  crankFamily: optional(fact("drivetrain.crankset", "drive-family")),
  outerFamily: optional(fact("drivetrain.chainring", "drive-family")),
  middleFamily: optional(fact("drivetrain.middle-chainring", "drive-family")),
  innerFamily: optional(fact("drivetrain.inner-chainring", "drive-family")),
  derailleurFamily: optional(fact("drivetrain.rear-derailleur", "drive-family")),
  tensionerFamily: optional(fact("drivetrain.chain-tensioner", "drive-family")),
};

/** One part that the chain meets. */
export interface FamilyEnd {
  readonly slot: SlotPath;
  readonly part: Known<Installed>;
  readonly family: Known<ResolvedCode>;
}

export interface ChainFamilies {
  readonly chain: FamilyEnd | undefined;
  /** Cassette, rings, pulleys: each part once. */
  readonly others: readonly FamilyEnd[];
  readonly missing: readonly Missing[];
}

/** The families of chain, cogs, rings and pulleys as far as they are stated. */
export function chainFamilies(facts: Facts<typeof chainFamilyNeeds>): ChainFamilies {
  const missing: Missing[] = [];
  const end = (path: SlotPath, part: Maybe<Installed>, family: Maybe<ResolvedCode>): FamilyEnd | undefined => {
    if (part.state === "unknown") missing.push(...part.missing);
    else if (family.state === "unknown") missing.push(...family.missing);
    return part.state === "known" && family.state === "known" ? { slot: path, part, family } : undefined;
  };
  const chain = end("drivetrain.chain", facts.chain, facts.chainFamily);
  const others = [end("drivetrain.cassette", facts.cassette, facts.cassetteFamily)];

  const rings = fittedRings(facts);
  if (rings.state === "unknown") missing.push(...rings.missing);
  const turned = new Set(rings.state === "known" ? rings.rings.map((ring) => ring.slot) : []);
  const ringEnds = [
    ["drivetrain.crankset", facts.crankset, facts.crankFamily],
    ["drivetrain.chainring", facts.outerPart, facts.outerFamily],
    ["drivetrain.middle-chainring", facts.middlePart, facts.middleFamily],
    ["drivetrain.inner-chainring", facts.innerPart, facts.innerFamily],
  ] as const;
  for (const [path, part, family] of ringEnds) if (turned.has(path)) others.push(end(path, part, family));

  // Pulleys take any chain unless their maker limits them, so only what is stated of them is compared.
  if (facts.derailleurFamily.state === "known") {
    others.push(end("drivetrain.rear-derailleur", facts.derailleur, facts.derailleurFamily));
  }
  if (facts.tensionerFamily.state === "known") {
    others.push(end("drivetrain.chain-tensioner", facts.tensioner, facts.tensionerFamily));
  }
  return { chain, others: others.filter((one) => one !== undefined), missing };
}

/**
 * Whether a chain of one family runs on teeth of another: they mate, or both are for a single speed and only the gap
 * between the chain's plates is wider than the teeth ask for. The other way round the chain does not go over the teeth.
 */
export function runsOn(chain: ResolvedCode, teeth: ResolvedCode): boolean {
  if (mate(chain, teeth)) return true;
  if (dimensionOf<number>(chain, "speeds") !== 1 || dimensionOf<number>(teeth, "speeds") !== 1) return false;
  return (
    same(chain, teeth, "pitch") &&
    same(chain, teeth, "roller-diameter") &&
    atLeast(
      dimensionOf<number>(chain, "inner-width") ?? 0,
      dimensionOf<number>(teeth, "inner-width") ?? Number.POSITIVE_INFINITY,
    )
  );
}

function same(one: ResolvedCode, other: ResolvedCode, dimension: string): boolean {
  const a = dimensionOf<number>(one, dimension);
  const b = dimensionOf<number>(other, dimension);
  return a !== undefined && b !== undefined && equal(a, b);
}
