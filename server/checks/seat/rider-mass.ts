import { isNamedAgain } from "../../calculations/shared/every-part.ts";
import type { Installed } from "../../model/assembly.ts";
import { label } from "../../model/facts.ts";
import { buildField, everyFact, type Known, type Maybe, type Need, type OfSlot, optional } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable, type Verdict } from "../define.ts";
import { anyFact, anySlot } from "../shared/end.ts";
import { loadedParts } from "../shared/rated-parts.ts";
import { swaps } from "../shared/swaps.ts";

type Part = { readonly name: string; readonly slot?: SlotPath };

type RiderNeeds = {
  readonly part: Need<Installed, true>;
  readonly most: Need<number, true>;
  readonly rider: Need<number, true>;
  readonly limits: Need<readonly OfSlot<number>[], false>;
};

interface RiderFacts {
  readonly part: Maybe<Installed>;
  readonly most: Maybe<number>;
  readonly rider: Maybe<number>;
  readonly limits: Known<readonly OfSlot<number>[]>;
}

const askedAlone: ReadonlySet<string> = new Set(loadedParts.map(({ slot }) => slot));

export default defineCheck({
  code: "seat/rider-mass",
  title: "No part is ridden by a heavier rider than its maker allows",
  severity: "error",
  since: 1,
  safety: true,
  // What seldom has such a limit is asked all together, so that a limit that somebody states is never passed over.
  instances: [...loadedParts, { name: "other parts" }] as readonly Part[],
  needs: ({ slot: path }): RiderNeeds => {
    const rider = optional(buildField("rider.mass")) as Need<number, true>;
    const needs =
      path === undefined
        ? { rider, limits: everyFact<number>("max-rider-mass") }
        : { part: anySlot(path), most: anyFact<number>(path, "max-rider-mass"), rider };
    return needs as unknown as RiderNeeds;
  },
  test({ part, most, rider, limits }: RiderFacts, { slot: path }) {
    if (path !== undefined) return judge(part, most, rider, path);
    const verdicts = limits.value
      .filter(({ slot }) => !askedAlone.has(slot))
      .map(({ slot, installed, fact }) => {
        const { name, place } = installed;
        const fitted = { value: installed, written: name, path: slot, subject: label(installed), place };
        return judge({ state: "known", ...fitted }, fact, rider, slot as SlotPath);
      });
    const first = (outcome: Verdict["outcome"]) => verdicts.find((verdict) => verdict.outcome === outcome);
    return (
      first("fails") ??
      first("unknown") ??
      first("holds") ??
      notApplicable("no other part limits the mass of the rider")
    );
  },
  explanation:
    "Some makers of light posts, saddles, bars and wheels state the heaviest rider that the part was tested for. The figure " +
    "is of the rider alone, dressed to ride, without bicycle and luggage. A heavier rider may break the part at any time, " +
    "and its maker will not answer for it. Parts that state no such figure are not asked about here: what the whole " +
    "bicycle may weigh is another question.",
  source: "common practice, no source; the limit is the part maker's own figure",
  caution: "A part that is overloaded breaks without warning. The part makers' limits come first.",
  examples: {
    holds: `
part seatpost example.post "Light post" { max-rider-mass: 90 kg }

build example "A rider within the limit" {
  rider.mass: 84 kg
  seat.post: example.post
}
`,
    fails: `
part seatpost example.post "Light post" { max-rider-mass: 90 kg }

build example "A rider beyond the limit" {
  rider.mass: 96 kg
  seat.post: example.post
}
`,
  },
});

function judge(part: Maybe<Installed>, most: Maybe<number>, rider: Maybe<number>, path: SlotPath): Verdict {
  if (part.state !== "known") return notApplicable(`${path} has no part that could be rated`);
  if (isNamedAgain(path, part.value.part)) return notApplicable(`${part.subject} is asked as the hub that it is too`);
  // Few makers limit the rider by themselves; most state what the whole bicycle may weigh, which is asked elsewhere.
  if (most.state !== "known") return notApplicable(`${part.subject} states no greatest mass of the rider`);
  if (rider.state === "unknown") return cannotTell(rider);
  if (rider.state === "none") return notApplicable("nobody rides it");
  const [weighs, allows] = showPair(rider.value, most.value, "mass");
  if (atMost(rider.value, most.value)) {
    return holds(
      `The rider weighs ${weighs}, and ${part.subject} is made for ${allows}.`,
      (most.value - rider.value) / most.value,
    );
  }
  return fails(
    `The rider weighs ${weighs}, but the maker of ${part.subject} allows ${allows} at most: fit one that is rated for ${weighs} or more.`,
    part,
    [most, rider],
    swaps(path),
  );
}
