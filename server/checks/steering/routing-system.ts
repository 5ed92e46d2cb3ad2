import type { Installed } from "../../model/assembly.ts";
import type { Known, Maybe, Need, Unknown } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { matingPair, showCode } from "../shared/codes.ts";
import { anyFact, anySlot, type End, readEnd } from "../shared/end.ts";
import { jointNamed } from "../shared/mating.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

/**
 * The joints at which hoses pass from one part into the next, and which of the two cannot do without the other: hoses
 * inside a bar have to go on in the stem, but a stem that takes hoses can hold an ordinary bar.
 */
const passages = [
  { joint: jointNamed("routing-bar-stem"), needing: 0 },
  { joint: jointNamed("routing-stem-spacers"), needing: 0 },
  { joint: jointNamed("routing-stem-headset"), needing: 0 },
  { joint: jointNamed("routing-headset-frame"), needing: 1 },
] as const;

const places = [...new Set(passages.flatMap(({ joint }) => joint.ends.map(({ slot }) => slot)))];

type SystemNeeds = Record<`part ${string}`, Need<Installed, true>> &
  Record<`system ${string}`, Need<ResolvedCode, true>>;

type SystemFacts = Readonly<Record<string, Maybe | undefined>>;

const needs = Object.fromEntries(
  places.flatMap((path) => [
    [`part ${path}`, anySlot(path)],
    [`system ${path}`, anyFact(path, "routing-system")],
  ]),
) as SystemNeeds;

type SystemEnd = End<ResolvedCode>;
type Hiding = Extract<SystemEnd, { state: "known" }>;

export default defineCheck({
  code: "steering/routing-system",
  title: "Bar, stem, spacers and headset hide hoses by one system",
  severity: "error",
  since: 1,
  needs: () => needs,
  test(facts: SystemFacts) {
    const agreed = new Set<string>();
    const wrong: {
      readonly ends: readonly [Hiding, Meeting];
      readonly slots: readonly SlotPath[];
      readonly text: string;
    }[] = [];
    const unknown: Unknown[] = [];
    for (const { joint, needing } of passages) {
      const slots = joint.ends.map(({ slot }) => slot);
      const ends = slots.map((path) => endAt(facts, path));
      const [needs, meets] = [ends[needing], ends[1 - needing]];
      if (!needs || !meets) continue;
      // Most parts hide nothing, and leave that out; what meets no hoses need not be known.
      if (needs.state !== "known") {
        if (needs.state === "unknown" && meets.state === "known") unknown.push(needs.unknown);
        continue;
      }
      if (meets.state === "empty" || meets.state === "unasked") continue;
      if (meets.state === "unknown") {
        unknown.push(meets.unknown);
      } else if (meets.state === "known" && matingPair(needs.fact.value, meets.fact.value)) {
        agreed.add(needs.part.subject).add(meets.part.subject);
      } else {
        const other = meets.state === "known" ? `is of ${showCode(meets.fact.value)}` : "is of no routing system";
        wrong.push({
          ends: [needs, meets],
          slots,
          text: `${needs.part.subject} hides hoses by ${showCode(needs.fact.value)}, but ${meets.part.subject} ${other}`,
        });
      }
    }
    const [first] = wrong;
    if (first) {
      // The part that is at odds with most others is the odd one out.
      const parts = wrong.flatMap(({ ends }) => ends);
      const count = (end: Meeting): number => parts.filter(({ part }) => part.path === end.part.path).length;
      const odd = [...first.ends].sort((a, b) => count(b) - count(a))[0] ?? first.ends[1];
      const stated = new Map<string, Known>();
      for (const { fact } of parts) if (fact.value !== undefined) stated.set(fact.path, fact);
      return fails(
        `${wrong.map(({ text }) => text).join("; ")}: choose bar, stem, spacers and headset of one system, or parts with hoses outside.`,
        odd.part,
        [...stated.values()],
        swaps(odd.part.path as SlotPath, ...wrong.flatMap(({ slots }) => slots)),
      );
    }
    if (unknown.length > 0) return cannotTell(...unknown);
    if (agreed.size === 0) return notApplicable("no two parts hide hoses together");
    return holds(`${both([...agreed])} hide hoses by one system.`);
  },
  explanation:
    "Hoses and wires that run inside bar and stem and down through the headset need parts that were made for one another: " +
    "the holes have to meet, the spacers are split or keyed, and the headset's cover lets the hoses in. Each maker has a " +
    "system of its own, and parts of two systems pinch the hoses or leave them no way through. A stem of such a system " +
    "may hold an ordinary bar with hoses outside, but a bar with hoses inside is of no use on an ordinary stem.",
  source: "common practice, no source; the makers' own statements decide",
  caution: "A hose that is pinched where the steering turns wears through, and the brake fails.",
  examples: {
    holds: `
standard routing-system example.hidden "Hidden" { path: "under the stem, through the upper bearing"; source: "this example" }
part handlebar example.bar "Hidden bar" { routing-system: example.hidden }
part stem example.stem "Hidden stem" { routing-system: example.hidden }

build example "Bar and stem of one system" {
  frame: none
  headset: none
  cockpit { stem: example.stem; handlebar: example.bar }
}
`,
    fails: `
standard routing-system example.hidden "Hidden" { path: "under the stem, through the upper bearing"; source: "this example" }
part handlebar example.bar "Hidden bar" { routing-system: example.hidden }
part stem example.stem "Plain stem" { steerer-clamp: 28.6 mm }

build example "Hoses that end at the stem" {
  frame: none
  headset: none
  cockpit { stem: example.stem; handlebar: example.bar }
}
`,
  },
});

/** What hoses go on into: a part that states its system, or that it has none. */
type Meeting = Extract<SystemEnd, { state: "known" | "none" }>;

function endAt(facts: SystemFacts, path: string): SystemEnd {
  const nothing: Unknown = { state: "unknown", missing: [] };
  const part = (facts[`part ${path}`] ?? nothing) as Maybe<Installed>;
  return readEnd(part, (facts[`system ${path}`] ?? nothing) as Maybe<ResolvedCode>, "routing-system");
}
