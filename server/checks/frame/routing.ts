import type { Installed } from "../../model/assembly.ts";
import { fact, type Known, type Maybe, type Need, optional, slot } from "../../model/need.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable, type Verdict } from "../define.ts";
import { rearActuationNeeds, rearDerailleurActuation } from "../shared/actuation.ts";
import { anyFact, anySetting, anySlot, readEnd } from "../shared/end.ts";
import { both, either } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

const ways: Readonly<Record<string, string>> = {
  external: "outside",
  internal: "inside the tubes",
  "through-headset": "through the headset",
  wireless: "without cable or wire",
};

const way = (routing: string): string => ways[routing] ?? routing;

/** Brake hoses state how they run; shift cables only that there are some. */
const instances = [
  { name: "front brake", hose: "front-brake.hose", holder: "fork" },
  { name: "rear brake", hose: "rear-brake.hose", holder: "frame" },
  { name: "shifting", hose: "drivetrain.rear-cable", holder: "frame" },
] as const;

type RoutingNeeds = {
  readonly hose: Need<Installed, true>;
  readonly entry: Need<string, true>;
  readonly holder: Need<Installed, true>;
  readonly allows: Need<readonly string[], true>;
} & typeof shiftNeeds;

const shiftNeeds = {
  ...rearActuationNeeds,
  frontActuation: optional(fact("drivetrain.front-derailleur", "actuation")),
  hubGears: optional(fact("rear-wheel.hub", "gears")),
  hubActuation: optional(fact("rear-wheel.hub", "actuation")),
  headset: optional(slot("headset")),
  headsetSystem: optional(fact("headset", "routing-system")),
  frameSystem: optional(fact("frame", "routing-system")),
};

export default defineCheck({
  code: "frame/routing",
  title: "Hoses and cables run as frame and fork let them",
  severity: "error",
  since: 1,
  instances,
  needs: ({ name, hose, holder }): RoutingNeeds => ({
    ...shiftNeeds,
    hose: anySlot(hose),
    entry: anySetting(hose, "entry"),
    holder: anySlot(holder),
    allows: anyFact(holder, name === "shifting" ? "shift-routing" : "brake-routing"),
  }),
  test(facts, { name, hose: path, holder }) {
    const end = readEnd(
      facts.holder as Maybe<Installed>,
      facts.allows as Maybe<readonly string[]>,
      name === "shifting" ? "shift-routing" : "brake-routing",
    );
    if (name === "shifting") return shifting(facts, end);
    const { headset, headsetSystem, frameSystem } = facts;
    const hose = facts.hose as Maybe<Installed>;
    const entry = facts.entry as Maybe<string>;
    if (hose.state === "none") return notApplicable(`${path} is none`);
    if (end.state === "empty" || end.state === "unasked") return notApplicable("there is nothing for it to run along");
    const unknown = unknowns(hose, entry, ...(end.state === "unknown" ? [end.unknown] : []));
    if (unknown.length > 0) return cannotTell(...unknown);
    if (hose.state !== "known" || entry.state !== "known" || end.state === "unknown")
      return notApplicable("nothing runs there");
    const allowed = end.state === "known" ? end.fact.value : [];
    if (!allowed.includes(entry.value)) {
      return fails(
        `The ${name === "front brake" ? "front" : "rear"} brake's line is to run ${way(entry.value)}, but ${end.part.subject} ${allowed.length > 0 ? `lets it run ${either(allowed.map(way))} only` : "has no way for one"}: ${allowed.length > 0 ? `run it ${either(allowed.map(way))}` : "fit another brake"}, or fit another ${holder}.`,
        entry,
        [entry, end.fact],
        [
          ...allowed.map((value) => ({ kind: "set-setting", slot: path, setting: "entry", value }) as const),
          ...swaps(holder),
        ],
      );
    }
    // Where the frame names a system, headset and frame are compared by that.
    if (entry.value === "through-headset" && holder === "frame" && frameSystem.state === "none") {
      if (headset.state === "unknown") return cannotTell(headset);
      if (headset.state === "known" && headsetSystem.state === "none") {
        return fails(
          `The rear brake's line is to run through the headset, but ${headset.subject} has no way for one: fit a headset that lets hoses in.`,
          headset,
          [entry],
          swaps("headset"),
        );
      }
    }
    return holds(`The line runs ${way(entry.value)}, and ${end.part.subject} lets it.`);
  },
  explanation:
    "Frames and forks have stops and guides for lines outside, or holes for lines inside, or let them in through the headset, " +
    "and seldom all of these. A hose that is to run where there is no hole or guide ends up tied to a tube, rubs, and is torn " +
    "off. A frame for electronic shifting only has no stops for cables. Lines that run inside are laid before headset and " +
    "crank bearings close their way. How a line runs also decides its length.",
  source: "common practice, no source; the makers' own statements decide",
  caution: "A brake line that rubs or is pinched fails when it is needed.",
  examples: {
    holds: `
part frame example.fell "Fell" { brake-routing: external, internal; shift-routing: internal }
part hose example.hose "Hose" { length: 2000 mm }

build example "Inside, where there is a way" {
  frame: example.fell
  rear-brake.hose: example.hose { entry: internal }
  front-brake.hose: none
  drivetrain { rear-derailleur: none; front-derailleur: none }
  rear-wheel.hub: none
}
`,
    fails: `
part frame example.fell "Fell" { brake-routing: external }
part hose example.hose "Hose" { length: 2000 mm }

build example "No hole to go in by" {
  frame: example.fell
  rear-brake.hose: example.hose { entry: internal }
}
`,
  },
});

/** Whether there is a way for shift cables, where something is worked by one. */
function shifting(
  facts: Readonly<Record<string, unknown>>,
  end: ReturnType<typeof readEnd<readonly string[]>>,
): Verdict {
  const { frontActuation, hubActuation, hubGears } = facts as {
    frontActuation: Maybe<string>;
    hubActuation: Maybe<string>;
    hubGears: Maybe<number>;
  };
  // A hub without gears is worked by nothing.
  const hub = hubGears.state === "known" ? hubActuation : hubGears;
  const rear = rearDerailleurActuation(facts as unknown as Parameters<typeof rearDerailleurActuation>[0]);
  const worked = [rear, frontActuation, hub] as readonly (Maybe<string> | { readonly state: "none" })[];
  const cabled = worked.filter((one): one is Known<string> => one.state === "known" && one.value === "cable");
  const unknown = worked.flatMap((one) => (one.state === "unknown" ? [one] : []));
  if (cabled.length === 0)
    return unknown.length > 0 ? cannotTell(...unknowns(...unknown)) : notApplicable("nothing is shifted by cable");
  if (end.state === "empty" || end.state === "unasked") return notApplicable("there is no frame");
  if (end.state === "unknown") return cannotTell(end.unknown);
  const allowed = end.state === "known" ? end.fact.value.filter((one) => one !== "wireless") : [];
  const names = both([...new Set(cabled.map(({ subject }) => subject))]);
  if (allowed.length > 0)
    return holds(
      `${names} ${cabled.length > 1 ? "are" : "is"} worked by cable, which runs ${either(allowed.map(way))}.`,
    );
  return fails(
    `${names} ${cabled.length > 1 ? "are" : "is"} worked by cable, but ${end.part.subject} has no way for one: fit electronic parts, or another frame.`,
    cabled[0] as Known,
    [...cabled, end.fact],
    swaps(...cabled.map(({ path }) => path.slice(0, path.lastIndexOf(".")) as SlotPath), "frame"),
  );
}
