import { shockSize } from "../../calculations/shared/shock-size.ts";
import type { Installed } from "../../model/assembly.ts";
import type { Known, Maybe, Need } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { greaterThan } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import type { Interval } from "../../values/types.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anyFact, anySlot } from "../shared/end.ts";
import { type ChartRelation, type ChartWay, chartRelations, type FrameFact } from "../shared/frame-chart.ts";
import { unknowns } from "../shared/unknowns.ts";

/** A figure of a chart as it is stated: a shock's size is a code, which says its stroke. */
type Figure = number | Interval | ResolvedCode;

type ChartNeeds = Record<`fact ${string}`, Need<Figure, true>> & {
  readonly frame: Need<Installed, true>;
  readonly mixed: Need<boolean, true>;
};

/** Every figure that a relation reads, the one that it is about among them. */
function figuresOf({ claim, besides, ways }: ChartRelation): readonly FrameFact[] {
  return [...new Set([claim, ...(besides ?? []), ...ways.flatMap(({ needs }) => needs)])];
}

export default defineCheck({
  code: "frame/chart",
  title: "The figures of a frame's chart agree with each other",
  severity: "warning",
  since: 1,
  instances: chartRelations,
  needs: (relation): ChartNeeds => {
    const needs: Record<string, Need> = { frame: anySlot("frame"), mixed: anyFact("frame", "mixed-wheels") };
    for (const name of figuresOf(relation)) needs[`fact ${name}`] = anyFact("frame", name);
    return needs as unknown as ChartNeeds;
  },
  test(facts, relation) {
    const { frame, mixed } = facts;
    const figure = (name: FrameFact): Maybe<Figure> => facts[`fact ${name}`] ?? { state: "unknown", missing: [] };
    if (frame.state === "none") return notApplicable("frame is none");
    if (frame.state === "unknown") return cannotTell(frame);
    const claim = figure(relation.claim);
    for (const name of [relation.claim, ...(relation.besides ?? [])]) {
      if (figure(name).state !== "known") return notApplicable(`its chart states no ${name}`);
    }
    if (claim.state !== "known") return cannotTell(...unknowns(claim));
    if (relation.onLevelAxles && mixed.state === "known" && mixed.value) {
      return notApplicable("it may have wheels of two sizes, and its axles need not be equally high");
    }

    const stated = claim.value as number;
    const answers = relation.ways.map((way) => answer(way, figure));
    const known = answers.flatMap((one) => (one.state === "known" ? [one] : []));
    const off = ({ worked }: (typeof known)[number]): number =>
      Math.max(worked.least - stated, stated - worked.greatest, 0);
    const [nearest] = [...known].sort((a, b) => off(a) - off(b));
    const says = `${relation.name} of ${claim.written}`;
    if (nearest && !greaterThan(off(nearest), relation.tolerance)) {
      return holds(
        `The chart of ${frame.subject} states ${article(says)}, and its other figures come to ${shown(nearest.worked, relation)}: ${nearest.worked.working}.`,
      );
    }
    // What cannot be worked out yet may be the reading that its maker meant.
    const open = answers.flatMap((one) => (one.state === "unknown" ? one.facts : []));
    if (open.length > 0) return cannotTell(...unknowns(...open));
    if (!nearest) return notApplicable("its chart does not state the figures that this follows from");
    return fails(
      `The chart of ${frame.subject} states ${article(says)}, but its other figures come to ${shown(nearest.worked, relation)}, ${showQuantity(off(nearest), relation.dimension)} from it: ${nearest.worked.working}. One of them is wrong: ask the maker or measure the frame, and correct the part.`,
      frame,
      [claim, ...nearest.facts],
      [],
    );
  },
  explanation:
    "The figures of a frame's chart are not independent. From reach, stack and seat angle follows the effective top tube; " +
    "from reach, stack, head angle, fork offset and bottom-bracket drop the front axle, and with the chainstay the " +
    "wheelbase; and head tube, fork and headset have to put the front axle as far above the crank axis as the drop says. " +
    "Charts are copied by hand, one size beside another, and a figure of the wrong column makes the saddle, the bar and the " +
    "toe clearance come out wrong. Travel is the shock's stroke times the leverage on average, which lies between those at " +
    "the start and the end: the travel of another stroke or another model makes sag and spring come out wrong. Some 5 mm, or " +
    "one degree, are left for rounding, and for a leverage that rises a little and falls again. An effective top tube may be meant to " +
    "the effective or to the actual seat tube: one of them has to agree.",
  source:
    "plane geometry, re-derived; average leverage is travel ÷ stroke: trade magazine of 2023 (150 ÷ 55 = 2.73); how far a leverage bends " +
    "between its ends, 5 mm and 1 degree for rounding: common practice, no source; lower headset stacks of 0 to 15 mm: from memory",
  examples: {
    holds: `
part frame example.tour "Tour" {
  reach: 385 mm
  stack: 560 mm
  effective-seat-angle: 73.5°
  top-tube-effective: 551 mm
}

build example "Reach and stack come to the top tube" {
  frame: example.tour
}
`,
    fails: `
part frame example.tour "Tour" {
  reach: 385 mm
  stack: 560 mm
  head-angle: 72°
  fork-offset: 45 mm
  bottom-bracket-drop: 70 mm
  chainstay: 430 mm
  wheelbase: 1042 mm
}

build example "The wheelbase of the next size" {
  frame: example.tour
}
`,
  },
});

type Answer =
  | {
      readonly state: "known";
      readonly worked: Interval & { readonly working: string };
      readonly facts: readonly Known[];
    }
  | { readonly state: "unknown"; readonly facts: readonly Maybe[] }
  | { readonly state: "none" };

/** What one way of working the figure out comes to; a figure that is stated to be absent closes the way. */
function answer({ needs, work }: ChartWay, figure: (name: FrameFact) => Maybe<Figure>): Answer {
  const facts = needs.map((name) => ({ name, fact: figure(name) }));
  if (facts.some(({ fact }) => fact.state === "none")) return { state: "none" };
  const known = facts.flatMap(({ name, fact }) => (fact.state === "known" ? [{ name, fact }] : []));
  if (known.length < facts.length) return { state: "unknown", facts: facts.map(({ fact }) => fact) };
  const values = new Map<FrameFact, number | Interval>(known.map(({ name, fact }) => [name, measure(fact.value)]));
  const worked = work((name) => values.get(name) as number, (values.get("chainstay") ?? nowhere) as Interval);
  return !Number.isFinite(worked.least + worked.greatest)
    ? { state: "none" }
    : { state: "known", worked, facts: known.map(({ fact }) => fact) };
}

/** No number for a shock's size that does not say a stroke. */
function measure(value: Figure): number | Interval {
  return typeof value === "object" && "family" in value ? (shockSize(value)?.stroke ?? Number.NaN) : value;
}

/** Stands in where a way does not ask for a chainstay. */
const nowhere: Interval = { least: Number.NaN, greatest: Number.NaN };

function shown({ least, greatest }: Interval, { dimension }: ChartRelation): string {
  return showInterval({ least: Math.round(least * 10) / 10, greatest: Math.round(greatest * 10) / 10 }, dimension);
}

function article(words: string): string {
  return `${/^[aeiou]/.test(words) ? "an" : "a"} ${words}`;
}
