import type { Installed } from "../../model/assembly.ts";
import { fact, type Known, type Maybe, type Need, optional, setting, slot, type Unknown } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import type { SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { clampForm, controls, levers } from "../shared/controls.ts";
import { anyFact, anySetting, anySlot, readEnd } from "../shared/end.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

/** Everything that may take up bar on one side or the other. */
const occupants = [...levers, ...controls.map(({ slot: path }) => path)];

const gripsSlot: SlotPath = "cockpit.grips";

type Occupant = (typeof occupants)[number];

type OccupantNeeds = Record<`part ${Occupant}`, Need<Installed, true>> &
  Record<`width ${Occupant}`, Need<number, true>> &
  Record<`mount ${Occupant}`, Need<ResolvedCode, true>> &
  Record<`side ${Occupant}`, Need<string, true>> &
  Record<`clamp ${Occupant}`, Need<string, true>>;

type OccupantFacts = {
  readonly [K in keyof OccupantNeeds]: OccupantNeeds[K] extends Need<infer Value, true> ? Maybe<Value> : never;
};

const occupantNeeds = Object.fromEntries(
  occupants.flatMap((path) => [
    [`part ${path}`, anySlot(path)],
    [`width ${path}`, anyFact(path, "width")],
    [`mount ${path}`, anyFact(path, "mount")],
    [`side ${path}`, anySetting(path, "side")],
    [`clamp ${path}`, anySetting(path, "clamp")],
  ]),
) as unknown as OccupantNeeds;

export default defineCheck({
  code: "cockpit/bar-space",
  title: "Grips and clamps fit on the straight of the bar",
  severity: "error",
  since: 1,
  needs: () => ({
    ...occupantNeeds,
    bar: slot("cockpit.handlebar"),
    shape: fact("cockpit.handlebar", "bar"),
    room: optional(fact("cockpit.handlebar", "control-length")),
    width: optional(fact("cockpit.handlebar", "width")),
    cut: optional(setting("cockpit.handlebar", "cut-width")),
    grips: optional(slot("cockpit.grips")),
    gripLength: optional(fact("cockpit.grips", "length")),
    gripCut: optional(setting("cockpit.grips", "cut-length")),
  }),
  test({ bar, shape, room, width, cut, grips, gripLength, gripCut, ...rest }) {
    if (shape.value === "drop" || shape.value === "bullhorn" || shape.value === "aero-base") {
      return notApplicable("levers of a drop bar stand on its bend");
    }
    if (grips.state === "none") return notApplicable("a taped bar has no straight for grips");
    const unknown: Unknown[] = [];
    const stated = <Value>(maybe: Maybe<Value>): Known<Value> | undefined => {
      if (maybe.state === "unknown") unknown.push(maybe);
      return maybe.state === "known" ? maybe : undefined;
    };
    const grip = stated(gripCut) ?? stated(gripLength);
    const straight = stated(room);
    const shortened = stated(cut);
    const whole = shortened ? stated(width) : undefined;
    // A bar is shortened at its ends, which are where the grips go.
    const loss = shortened ? (whole ? (whole.value - shortened.value) / 2 : undefined) : 0;
    const available = straight && loss !== undefined ? Math.max(0, straight.value - loss) : undefined;

    const taken = (["left", "right"] as const).map((side) => {
      const used: Taken[] = [
        ...(grip ? [{ known: grip, text: `grip ${showQuantity(grip.value, "length")}`, slot: gripsSlot }] : []),
        ...occupied(rest as unknown as OccupantFacts, side, unknown),
      ];
      return { side, used, total: used.reduce((sum, { known }) => sum + known.value, 0) };
    });
    const over = available === undefined ? [] : taken.filter(({ total }) => !atMost(total, available));
    const [worst] = [...over].sort((a, b) => b.total - a.total);
    const said = ({ used }: (typeof taken)[number]): string => both(used.map(({ text }) => text));
    if (worst && available !== undefined) {
      const [takes, has] = showPair(worst.total, available, "length");
      const parts = [...new Map(over.flatMap(({ used }) => used).map((one) => [one.known.path, one])).values()];
      return fails(
        `At the ${worst.side} hand ${said(worst)} take up ${takes}, but ${bar.subject} has ${has} of straight there${shortened ? " once cut" : ""}${over.length > 1 ? ", and the other hand has too little as well" : ""}: fit shorter grips or a shared clamp, or another bar.`,
        bar,
        [...(straight ? [straight] : []), ...(shortened ? [shortened] : []), ...parts.map(({ known }) => known)],
        swaps(...parts.map(({ slot: path }) => path), "cockpit.handlebar"),
      );
    }
    if (unknown.length > 0) return cannotTell(...unknown);
    if (available === undefined) return notApplicable(`${bar.subject} states no straight length`);
    const most = Math.max(...taken.map(({ total }) => total));
    return holds(
      `${taken.map((one) => `At the ${one.side} hand ${said(one)} take up ${showQuantity(one.total, "length")}`).join("; ")}; ${bar.subject} has ${showQuantity(available, "length")} of straight.`,
      available > 0 ? (available - most) / available : 0,
    );
  },
  explanation:
    "Grip, brake lever, shift control and remote stand side by side on the straight part of the bar, and a bar that bends " +
    "early, or was cut narrow, runs out of it. A clamp on a bend does not close evenly: it slips, and crushes a carbon " +
    "bar. Two controls on one clamp take the room of one. Only what is stated is added up, so that a bar that is too " +
    "short for the known parts already is found even while another is open.",
  source: "common practice, no source",
  caution: "A clamp on a bend of the bar does not hold, and can crush it.",
  examples: {
    holds: `
part handlebar example.flat "Flat 740" { bar: flat; control-length: 210 mm }
part grips example.grips "Grips 135" { length: 135 mm }
part brake-lever example.stop "Stop" { mount: band-22.2; width: 16 mm }

build example "Room for grip and lever" {
  cockpit { handlebar: example.flat; grips: example.grips }
  rear-brake.lever: example.stop { side: right }
  front-brake.lever: example.stop { side: left }
  drivetrain { rear-controller: none; front-controller: none }
  seat.remote: none
}
`,
    fails: `
part handlebar example.swept "Swept 620" { bar: swept-back; control-length: 165 mm }
part grips example.grips "Grips 130" { length: 130 mm }
part brake-lever example.stop "Stop" { mount: band-22.2; width: 16 mm }
part shift-controller example.thumb "Thumb" { mount: band-22.2; width: 22 mm }

build example "Too much for the straight" {
  cockpit { handlebar: example.swept; grips: example.grips }
  rear-brake.lever: example.stop { side: right }
  front-brake.lever: example.stop { side: left }
  drivetrain { rear-controller: example.thumb { side: right }; front-controller: none }
  seat.remote: none
}
`,
  },
});

interface Taken {
  readonly known: Known<number>;
  readonly text: string;
  readonly slot: SlotPath;
}

/** The bands at one hand; what is not known of them, and which hand a band of unknown side is at, goes to `unknown`. */
function occupied(facts: OccupantFacts, side: "left" | "right", unknown: Unknown[]): readonly Taken[] {
  return occupants.flatMap((path): Taken[] => {
    const end = readEnd(facts[`part ${path}`], facts[`width ${path}`], "width");
    if (end.state === "empty" || end.state === "unasked" || end.state === "none") return [];
    if (facts[`clamp ${path}`].state === "known") return [];
    const mount = facts[`mount ${path}`];
    // Only a band takes up bar; what is shared, built in or held elsewhere takes none.
    if (mount.state === "known" && (clampForm(mount.value) ?? "band") !== "band") return [];
    const where = facts[`side ${path}`];
    if (where.state === "known" && where.value !== side) return [];
    if (end.state === "unknown") unknown.push(end.unknown);
    else if (where.state === "unknown") unknown.push(where);
    else if (where.state === "known") {
      const text = `${end.fact.subject} ${showQuantity(end.fact.value, "length")}`;
      return [{ known: end.fact, text, slot: path }];
    }
    return [];
  });
}
