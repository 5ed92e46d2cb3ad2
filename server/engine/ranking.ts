import { placesOf, standsTwice } from "../calculations/shared/every-part.ts";
import type { Assembly } from "../model/assembly.ts";
import type { Money } from "../values/types.ts";
import { type Candidate, partsFor, SlotJudge } from "./candidates.ts";
import type { Engine } from "./engine.ts";

/** What ranks parts that fit equally well: the room left, or how light or how cheap they are. */
export type RankedBy = "margin" | "mass" | "price";

/** The better candidate first: fewest errors, then changes of set-up, then warnings, then open questions, then margin, mass and name. */
export const byFit = byFitAnd("margin");

/**
 * The better candidate first: fewest errors, then changes of set-up, then warnings, then open questions; of those that
 * are alike in all that by the choice, then by the other two of margin, mass and price, then by name.
 * @param currency prices in it are compared first; sums in two currencies are never compared.
 */
export function byFitAnd(choice: RankedBy, currency?: string): (one: Candidate, other: Candidate) => number {
  const comparisons: Readonly<Record<RankedBy, (one: Candidate, other: Candidate) => number>> = {
    margin: (one, other) => other.margin - one.margin,
    mass: (one, other) => ascending(one.mass, other.mass),
    price: (one, other) => byPrice(one.price, other.price, currency),
  };
  const order = [choice, ...(["margin", "mass", "price"] as const).filter((other) => other !== choice)];
  return (one, other) =>
    one.errors - one.setUps - (other.errors - other.setUps) ||
    one.errors - other.errors ||
    one.warnings - other.warnings ||
    one.unknown.length - other.unknown.length ||
    order.reduce((sofar, next) => sofar || comparisons[next](one, other), 0) ||
    (one.part.declaration.name < other.part.declaration.name ? -1 : 1);
}

/** The smaller number first, one that is not known last. */
function ascending(one: number | undefined, other: number | undefined): number {
  if (one === undefined || other === undefined) return Number(one === undefined) - Number(other === undefined);
  return one - other;
}

/** The cheaper first; prices in the currency before those in others, which stay apart, and unknown ones last. */
function byPrice(one: Money | undefined, other: Money | undefined, currency: string | undefined): number {
  if (!one || !other) return Number(!one) - Number(!other);
  if (one.currency === other.currency) return one.amount - other.amount;
  return (
    Number(one.currency !== currency) - Number(other.currency !== currency) || (one.currency < other.currency ? -1 : 1)
  );
}

/** Every part of the libraries for a slot, those that fit first. A wheel bought whole is exchanged in both of its places. */
export function rankCandidates(
  engine: Engine,
  assembly: Assembly,
  path: string,
  order: (one: Candidate, other: Candidate) => number = byFit,
): readonly Candidate[] {
  const judging = new SlotJudge(engine, assembly, path);
  const places = placesOf(assembly.slots, path);
  const again = places.length > 1 ? new SlotJudge(engine, assembly, places) : judging;
  const standing = assembly.slots.get(path)?.part;
  return [...partsFor(engine, path, standing)]
    .map((declaration) => (standsTwice(declaration.kind) ? again : judging).judge(engine.part(declaration)))
    .sort(order);
}
