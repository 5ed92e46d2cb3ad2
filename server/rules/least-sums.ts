import { eachPartOnce, ofAssembly } from "../calculations/shared/every-part.ts";
import { calculationOfQuantity } from "../calculations/table.ts";
import { askedSlots } from "../checks/shared/open-slots.ts";
import {
  everyFact,
  type Maybe,
  type Missing,
  type Need,
  type Needs,
  type OfSlot,
  optional,
  shareNeeds,
  slot,
} from "../model/need.ts";
import type { AnyValue } from "../values/types.ts";
import type { PathMeaning } from "./paths.ts";

/**
 * `front-wheel.mass-at-least` and `bike.price-at-least` add up what is known. A rule that compares them means the mass
 * and the price: with a part that nobody weighed or priced, or a place of which nobody said what stands in it, they are
 * that much or more.
 */

/** The fact that is added up, by the result of the calculation. */
const factOf: ReadonlyMap<string, string> = new Map([
  ["mass-at-least", "mass"],
  ["price-at-least", "price"],
]);
const facts = new Map(
  [...factOf.values()].map((field) => [
    field,
    { key: `${field} left out`, need: shareNeeds({ need: everyFact(field) }).need },
  ]),
);
const places = askedSlots.map((path) => ({
  path,
  key: `left out: ${path}`,
  need: shareNeeds({ need: optional(slot(path)) }).need,
}));

interface LeastSum {
  readonly assembly: string;
  readonly fact: { readonly key: string; readonly need: Need };
}

function leastSum({ path, what }: PathMeaning): LeastSum | undefined {
  const fact = what === "number" ? facts.get(factOf.get(calculationOfQuantity(path)?.result ?? "") ?? "") : undefined;
  return fact && { assembly: path.slice(0, path.lastIndexOf(".")), fact };
}

/** What has to be asked besides the number, to know what it leaves out; nothing for other numbers. */
export function gapNeeds(meaning: PathMeaning): Needs {
  const sum = leastSum(meaning);
  if (!sum) return {};
  const inside = places.filter(({ path }) => sum.assembly === "bike" || path.startsWith(`${sum.assembly}.`));
  return { [sum.fact.key]: sum.fact.need, ...Object.fromEntries(inside.map(({ key, need }) => [key, need])) };
}

/** What such a number leaves out, for want of a mass or a price, or of a part. */
export function gapsOf(
  meaning: PathMeaning,
  answer: (key: string, need: Need) => Maybe | undefined,
): readonly Missing[] {
  const sum = leastSum(meaning);
  if (!sum) return [];
  return Object.entries(gapNeeds(meaning)).flatMap(([key, need]) => {
    const one = answer(key, need);
    if (key !== sum.fact.key) return one?.state === "unknown" ? one.missing : [];
    const rows = one?.state === "known" ? (one.value as readonly OfSlot<AnyValue>[]) : [];
    return ofAssembly(eachPartOnce(rows), sum.assembly).flatMap(({ fact }) =>
      fact.state === "unknown" ? fact.missing : [],
    );
  });
}
