import { missingOf } from "../../calculations/shared/maybe.ts";
import type { Installed } from "../../model/assembly.ts";
import { label } from "../../model/facts.ts";
import {
  buildField,
  everyFact,
  everySlot,
  type Known,
  type Maybe,
  type Missing,
  type OfSlot,
  optional,
  type Unknown,
} from "../../model/need.ts";
import { atMost, greaterThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable, type Verdict } from "../define.ts";
import { bikeMass, carriedMass, carriedNeeds, knownOf, type MassBound, massOf } from "../shared/bike-mass.ts";
import { swaps } from "../shared/swaps.ts";

type Counted = "rider" | "rider-and-kit" | "all-up";

const counted: Readonly<Record<Counted, { readonly who: string; readonly weigh: string }>> = {
  rider: { who: "The rider", weigh: "weighs" },
  "rider-and-kit": { who: "Rider and kit", weigh: "weigh" },
  "all-up": { who: "Rider, kit and bicycle", weigh: "weigh" },
};

export default defineCheck({
  code: "frame/system-mass",
  title: "Rider, kit and bicycle weigh no more than each maker allows",
  severity: "error",
  since: 1,
  safety: true,
  instances: [{ name: "frame" }, { name: "fork" }, { name: "other parts" }],
  needs: () => ({
    limits: everyFact<number>("max-system-mass"),
    includes: everyFact<string>("system-mass-includes"),
    masses: everyFact<number>("mass"),
    slots: everySlot(),
    rider: optional(buildField("rider.mass")),
    ...carriedNeeds(),
  }),
  test({ limits, includes, masses, slots, rider, ...carrying }, { name }) {
    const own = name === "frame" || name === "fork";
    const rows = limits.value.filter(({ slot }) => (own ? slot === name : slot !== "frame" && slot !== "fork"));
    if (own && rows.length === 0) return missingOrNone(slots, name);
    // Adding the bicycle up is only worth it where some maker states a limit.
    let known: ReturnType<typeof boundsOf> | undefined;
    const bounds = (): ReturnType<typeof boundsOf> => {
      known ??= boundsOf(rider, carriedMass(carrying), masses.value, slots);
      return known;
    };
    const verdicts = rows.flatMap((row): readonly { readonly verdict: Verdict; readonly share: number }[] => {
      // Most makers leave the whole bicycle to those of frame and fork, and state nothing.
      if (row.fact.state !== "known") return own && row.fact.state === "unknown" ? [ask(row.fact)] : [];
      const definition = includes.value.find(({ slot }) => slot === row.slot)?.fact;
      return [judge(row, row.fact, definition, bounds())];
    });
    const worst = (outcome: Verdict["outcome"]): Verdict | undefined =>
      verdicts.filter(({ verdict }) => verdict.outcome === outcome).sort((a, b) => b.share - a.share)[0]?.verdict;
    const open = verdicts.flatMap(({ verdict }) => (verdict.outcome === "unknown" ? verdict.missing : []));
    return (
      worst("fails") ??
      (open.length > 0 ? { outcome: "unknown", missing: distinct(open) } : undefined) ??
      worst("holds") ??
      notApplicable(own ? `the maker of the ${name} states no limit` : "no other part states a limit")
    );
  },
  explanation:
    "Makers test frames, forks and wheels for so much mass and no more. They do not all count the same: some mean the rider " +
    "alone, some the rider with clothing and luggage, most the rider, what is carried, and the bicycle itself. A figure is " +
    "compared with what its maker counts. Where the masses of some parts are not known, what is known is a least, and may " +
    "be too much already. A passenger or a child counts as kit; where the racks carry more than the kit was said to weigh, they count. Overloaded parts crack or buckle, often on a descent.",
  source: "common practice, no source; the limits and what they count are the makers' own",
  caution: "An overloaded frame, fork or wheel breaks without warning. The part makers' limits come first.",
  examples: {
    holds: `
part frame example.fell "Fell" { max-system-mass: 110 kg; system-mass-includes: rider-and-kit }

build example "By what the maker counts" {
  rider { mass: 98 kg; kit-mass: 10 kg }
  frame: example.fell
  fork: none
}
`,
    fails: `
part frame example.fell "Fell" { max-system-mass: 120 kg; system-mass-includes: all-up; mass: 2400 g }

build example "Too much before it has wheels" {
  rider { mass: 104 kg; kit-mass: 15 kg }
  frame: example.fell
  fork: none
}
`,
  },
});

type Definition = Maybe<string> | undefined;

/** One part's limit against what its maker counts. */
function judge(
  row: OfSlot<number>,
  limit: Known<number>,
  definition: Definition,
  bounds: Readonly<Record<Counted, MassBound>>,
): { readonly verdict: Verdict; readonly share: number } {
  const said = definition?.state === "known" ? (definition.value as Counted) : undefined;
  const verdict =
    said === undefined
      ? whicheverItCounts(row, limit, definition, bounds)
      : compare(row, limit, said, bounds[said], definition);
  return { verdict, share: bounds[said ?? "rider"].least / limit.value };
}

function compare(
  row: OfSlot<number>,
  limit: Known<number>,
  counts: Counted,
  bound: MassBound,
  definition: Definition,
): Verdict {
  const { who, weigh } = counted[counts];
  const [weighs, allows] = showPair(bound.least, limit.value, "mass");
  const least = bound.missing.length > 0 ? "at least " : "";
  if (greaterThan(bound.least, limit.value)) {
    return fails(
      `${who} ${weigh} ${least}${weighs}, but ${limit.subject} is made for ${allows} of these together: fit one that is rated for more, or carry less.`,
      installed(row),
      [limit, ...(definition?.state === "known" ? [definition] : []), ...bound.facts],
      swaps(row.slot as SlotPath),
    );
  }
  if (bound.missing.length > 0) return { outcome: "unknown", missing: bound.missing };
  return holds(
    `${who} ${weigh} ${weighs}, and ${limit.subject} is made for ${allows}.`,
    (limit.value - bound.least) / limit.value,
  );
}

/** A limit of which nobody said what it counts: enough for everything, or too little for the rider alone, is certain. */
function whicheverItCounts(
  row: OfSlot<number>,
  limit: Known<number>,
  definition: Definition,
  bounds: Readonly<Record<Counted, MassBound>>,
): Verdict {
  const all = bounds["all-up"];
  if (all.missing.length === 0 && atMost(all.least, limit.value)) return compare(row, limit, "all-up", all, definition);
  if (greaterThan(bounds.rider.least, limit.value)) return compare(row, limit, "rider", bounds.rider, definition);
  if (definition?.state === "unknown") return cannotTell(definition);
  const path = `${row.slot}.system-mass-includes`;
  const what = `what the greatest system mass of ${limit.subject} counts (${path})`;
  return { outcome: "unknown", missing: [{ path, what, place: limit.place }] };
}

function boundsOf(
  rider: Maybe<number>,
  kit: MassBound,
  masses: readonly OfSlot<number>[],
  slots: Known<ReadonlyMap<string, Installed>>,
): Readonly<Record<Counted, MassBound>> {
  const alone: MassBound = { least: massOf(rider), missing: missingOf(rider), facts: knownOf(rider) };
  const loaded: MassBound = {
    least: alone.least + kit.least,
    missing: [...alone.missing, ...kit.missing],
    facts: [...alone.facts, ...kit.facts],
  };
  const bike = bikeMass(masses, slots);
  return {
    rider: alone,
    "rider-and-kit": loaded,
    "all-up": {
      least: loaded.least + bike.least,
      missing: [...loaded.missing, ...bike.missing],
      facts: [...loaded.facts, ...bike.facts],
    },
  };
}

function missingOrNone(
  { value: slots, place }: Known<ReadonlyMap<string, Installed>>,
  path: "frame" | "fork",
): Verdict {
  if (slots.get(path)?.state === "none") return notApplicable(`${path} is none`);
  return { outcome: "unknown", missing: [{ path, what: `which ${path} is fitted (${path})`, place }] };
}

function installed({ slot, installed: value }: OfSlot): Known<Installed> {
  return { state: "known", value, written: value.name, path: slot, subject: label(value), place: value.place };
}

function ask(fact: Unknown): { readonly verdict: Verdict; readonly share: number } {
  return { verdict: cannotTell(fact), share: 0 };
}

function distinct(missing: readonly Missing[]): readonly Missing[] {
  return [...new Map(missing.map((one) => [one.path, one])).values()];
}
