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
import type { PathMeaning } from "./paths.ts";

/**
 * `front-wheel.mass-at-least` adds up what is known. A rule that compares it means the mass: with a part that nobody
 * weighed, or a place of which nobody said what stands in it, the mass is that much or more.
 */

const masses = "masses left out";
const weighed = shareNeeds({ need: everyFact<number>("mass") }).need;
const places = askedSlots.map((path) => ({
  path,
  key: `left out: ${path}`,
  need: shareNeeds({ need: optional(slot(path)) }).need,
}));

function assemblyOf({ path, what }: PathMeaning): string | undefined {
  if (what !== "number" || calculationOfQuantity(path)?.result !== "mass-at-least") return undefined;
  return path.slice(0, path.lastIndexOf("."));
}

/** What has to be asked besides the number, to know what it leaves out; nothing for other numbers. */
export function gapNeeds(meaning: PathMeaning): Needs {
  const assembly = assemblyOf(meaning);
  if (assembly === undefined) return {};
  const inside = places.filter(({ path }) => assembly === "bike" || path.startsWith(`${assembly}.`));
  return { [masses]: weighed, ...Object.fromEntries(inside.map(({ key, need }) => [key, need])) };
}

/** What such a number leaves out, for want of a mass or of a part. */
export function gapsOf(
  meaning: PathMeaning,
  answer: (key: string, need: Need) => Maybe | undefined,
): readonly Missing[] {
  const assembly = assemblyOf(meaning);
  if (assembly === undefined) return [];
  return Object.entries(gapNeeds(meaning)).flatMap(([key, need]) => {
    const one = answer(key, need);
    if (key !== masses) return one?.state === "unknown" ? one.missing : [];
    const rows = one?.state === "known" ? (one.value as readonly OfSlot<number>[]) : [];
    return ofAssembly(eachPartOnce(rows), assembly).flatMap(({ fact }) =>
      fact.state === "unknown" ? fact.missing : [],
    );
  });
}
