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
  title: "There is a way for the lines that frame and fork have to carry",
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
    if (hose.state === "known" && end.state === "none") {
      return fails(
        `${hose.subject} is fitted (${path}), but ${end.part.subject} has no way for a brake's line: fit another ${holder}, or a brake that needs none.`,
        hose,
        [end.fact],
        swaps(holder),
      );
    }
    if (entry.state !== "known" || entry.value !== "through-headset") {
      return notApplicable("whether the line may run as it does is asked with the brake");
    }
    // Where the frame names a system, headset and frame are compared by that.
    if (frameSystem.state === "known") return notApplicable("headset and frame are compared by their routing systems");
    if (headset.state === "none") return notApplicable("headset is none");
    const unknown = unknowns(headset, headsetSystem);
    if (headset.state !== "known" || headsetSystem.state === "unknown") return cannotTell(...unknown);
    if (headsetSystem.state === "known")
      return holds(`The line runs through the headset, and ${headset.subject} lets it in.`);
    return fails(
      `The ${name}'s line is to run through the headset, but ${headset.subject} has no way for one: fit a headset that lets hoses in.`,
      headset,
      [entry],
      swaps("headset"),
    );
  },
  explanation:
    "Frames have stops and guides for lines outside, or holes for lines inside, or let them in through the headset. A frame " +
    "for electronic shifting only has no stops for cables, and one for a back-pedal brake none for a hose. A hose that is to " +
    "go in through the headset needs a headset that lets it in, with a cover and bearings for it. A line without a way is tied " +
    "to a tube, rubs, and is torn off. Which of its ways a brake's line takes is asked with the brake.",
  source: "common practice, no source; the makers' own statements decide",
  caution: "A brake line that rubs or is pinched fails when it is needed.",
  examples: {
    holds: `
part frame example.fell "Fell" { shift-routing: internal }
part rear-derailleur example.arm "Arm" { set-up: cable }

build example "A way for the cable" {
  frame: example.fell
  drivetrain { rear-derailleur: example.arm; front-derailleur: none }
  rear-wheel.hub: none
}
`,
    fails: `
part frame example.wireless "Wireless" { shift-routing: wireless }
part rear-derailleur example.arm "Arm" { set-up: cable }

build example "A cable, and no way for it" {
  frame: example.wireless
  drivetrain { rear-derailleur: example.arm; front-derailleur: none }
  rear-wheel.hub: none
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
