import type { Installed } from "../../model/assembly.ts";
import type { Known, Maybe, Need } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { lessThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { clampForm, hosts } from "../shared/controls.ts";
import { anyFact, anySetting, anySlot } from "../shared/end.ts";
import { millimetres } from "../shared/written.ts";

type BandNeeds = Record<`part ${SlotPath}`, Need<Installed, true>> &
  Record<`mount ${SlotPath}`, Need<ResolvedCode, true>> &
  Record<`width ${SlotPath}` | `position ${SlotPath}`, Need<number, true>> &
  Record<`side ${SlotPath}` | `clamp ${SlotPath}`, Need<string, true>>;

type BandFacts = {
  readonly [K in keyof BandNeeds]: BandNeeds[K] extends Need<infer Value, true> ? Maybe<Value> : never;
};

const bandNeeds = Object.fromEntries(
  hosts.flatMap((path) => [
    [`part ${path}`, anySlot(path)],
    [`mount ${path}`, anyFact(path, "mount")],
    [`width ${path}`, anyFact(path, "width")],
    [`position ${path}`, anySetting(path, "position")],
    [`side ${path}`, anySetting(path, "side")],
    [`clamp ${path}`, anySetting(path, "clamp")],
  ]),
) as unknown as BandNeeds;

/** A band round the bar whose place is planned. */
interface Band {
  readonly slot: SlotPath;
  readonly part: Known<Installed>;
  readonly width: Known<number>;
  readonly position: Known<number>;
}

export default defineCheck({
  code: "cockpit/control-clash",
  title: "No two clamps are planned for one place on the bar",
  severity: "error",
  since: 1,
  instances: [{ name: "left" }, { name: "right" }] as const,
  needs: () => bandNeeds,
  test(facts, { name }) {
    const bands = placed(facts as unknown as BandFacts, name);
    const [first, second] = closest(bands);
    if (!first || !second) return notApplicable("fewer than two places are planned at this hand");
    const apart = Math.abs(first.position.value - second.position.value);
    const needs = (first.width.value + second.width.value) / 2;
    const [are, need] = showPair(apart, needs, "length");
    const both = `${first.part.subject} at ${showQuantity(first.position.value, "length")} and ${second.part.subject} at ${showQuantity(second.position.value, "length")} from the grip`;
    if (!lessThan(apart, needs)) {
      return holds(
        `${both} are ${are} apart, middle to middle, and their clamps need ${need}.`,
        needs > 0 ? (apart - needs) / needs : 0,
      );
    }
    // The inner one is moved farther in: the outer one is where the fingers want it.
    const [inner, outer] = first.position.value >= second.position.value ? [first, second] : [second, first];
    const value = millimetres(outer.position.value + needs, "up");
    return fails(
      `At the ${name} hand ${both} are ${are} apart, middle to middle, but their clamps of ${showQuantity(first.width.value, "length")} and ${showQuantity(second.width.value, "length")} need ${need}: move ${inner.part.subject} to ${value}, or share a clamp.`,
      inner.position,
      [outer.position, inner.width, outer.width],
      [{ kind: "set-setting", slot: inner.slot, setting: "position", value }],
    );
  },
  explanation:
    "Where each control stands on the bar is planned from the inner end of the grip to the middle of its clamp. Two clamps " +
    "beside each other need half the width of each between their middles, or they are planned into one another and one of " +
    "them ends up where nobody wanted it. Controls on a shared clamp, or built into a lever, have no band and are not " +
    "asked. A build that plans no places says nothing; whether there is room on the bar at all is asked by itself.",
  source: "geometry; common practice, no source",
  examples: {
    holds: `
part brake-lever example.stop "Stop" { mount: band-22.2; width: 16 mm }
part shift-controller example.thumb "Thumb" { mount: band-22.2; width: 20 mm }

build example "Side by side" {
  rear-brake.lever: example.stop { side: right; position: 25 mm }
  drivetrain.rear-controller: example.thumb { side: right; position: 45 mm }
}
`,
    fails: `
part brake-lever example.stop "Stop" { mount: band-22.2; width: 16 mm }
part shift-controller example.thumb "Thumb" { mount: band-22.2; width: 20 mm }

build example "In one place" {
  rear-brake.lever: example.stop { side: right; position: 25 mm }
  drivetrain.rear-controller: example.thumb { side: right; position: 35 mm }
}
`,
  },
});

/** The bands at one hand of which width and place are known. */
function placed(facts: BandFacts, side: "left" | "right"): readonly Band[] {
  return hosts.flatMap((path): Band[] => {
    const [part, width, position] = [facts[`part ${path}`], facts[`width ${path}`], facts[`position ${path}`]];
    const [mount, at, clamp] = [facts[`mount ${path}`], facts[`side ${path}`], facts[`clamp ${path}`]];
    if (part.state !== "known" || width.state !== "known" || position.state !== "known") return [];
    if (at.state !== "known" || at.value !== side || clamp.state === "known") return [];
    if (mount.state === "known" && (clampForm(mount.value) ?? "band") !== "band") return [];
    return [{ slot: path, part, width, position }];
  });
}

/** The two bands with the least room between them. */
function closest(bands: readonly Band[]): readonly Band[] {
  const inOrder = [...bands].sort((a, b) => a.position.value - b.position.value);
  const room = (index: number): number => {
    const [one, next] = [inOrder[index], inOrder[index + 1]];
    if (!one || !next) return Number.POSITIVE_INFINITY;
    return next.position.value - one.position.value - (one.width.value + next.width.value) / 2;
  };
  const pairs = inOrder.map((_, index) => index).slice(0, -1);
  const best = pairs.reduce<number | undefined>(
    (least, index) => (least === undefined || room(index) < room(least) ? index : least),
    undefined,
  );
  return best === undefined ? [] : inOrder.slice(best, best + 2);
}
