import type { Installed } from "../../model/assembly.ts";
import { fact, type Known, type Maybe, type Need, optional, setting, slot, type Unknown } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { clampForm, controls, levers } from "../shared/controls.ts";
import { anyFact, anySetting, anySlot, readEnd } from "../shared/end.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";

/** Everything that may take up bar on one side or the other. */
const occupants = [...levers, ...controls.map(({ slot: path }) => path)];

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
  instances: [{ name: "left" }, { name: "right" }],
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
  test({ bar, shape, room, width, cut, grips, gripLength, gripCut, ...rest }, { name: side }) {
    if (shape.value === "drop" || shape.value === "bullhorn" || shape.value === "aero-base") {
      return notApplicable("levers of a drop bar stand on its bend");
    }
    if (grips.state === "none") return notApplicable("a taped bar has no straight for grips");
    const unknown: Unknown[] = [];
    const used: { readonly known: Known<number>; readonly text: string; readonly slot: string }[] = [];
    const need = <Value>(maybe: Maybe<Value>): Known<Value> | undefined => {
      if (maybe.state === "unknown") unknown.push(maybe);
      return maybe.state === "known" ? maybe : undefined;
    };

    const grip = need(gripCut) ?? need(gripLength);
    if (grip) used.push({ known: grip, text: `grip ${showQuantity(grip.value, "length")}`, slot: "cockpit.grips" });
    const facts = rest as unknown as OccupantFacts;
    for (const path of occupants) {
      const end = readEnd(facts[`part ${path}`], facts[`width ${path}`], "width");
      if (end.state === "empty" || end.state === "unasked") continue;
      const mount = facts[`mount ${path}`];
      if (facts[`clamp ${path}`].state === "known") continue;
      // Only a band takes up bar; what is shared, built in or held elsewhere takes none.
      if (mount.state === "known" && (clampForm(mount.value) ?? "band") !== "band") continue;
      if (end.state === "none") continue;
      const where = facts[`side ${path}`];
      if (where.state === "known" && where.value !== side) continue;
      if (end.state === "unknown") unknown.push(end.unknown);
      else if (where.state !== "known") need(where);
      else {
        const text = `${end.fact.subject} ${showQuantity(end.fact.value, "length")}`;
        used.push({ known: end.fact, text, slot: path });
      }
    }

    const straight = need(room);
    const total = used.reduce((sum, { known }) => sum + known.value, 0);
    let available = straight?.value;
    if (available !== undefined && cut.state === "known") {
      const whole = need(width);
      // A bar is shortened at its ends, which are where the grips go.
      available = whole ? available - (whole.value - cut.value) / 2 : undefined;
    } else need(cut);
    const list = both(used.map(({ text }) => text));
    if (available !== undefined && !atMost(total, available)) {
      const [takes, has] = showPair(total, Math.max(0, available), "length");
      return fails(
        `At the ${side} hand ${list} take up ${takes}, but ${bar.subject} has ${has} of straight there${cut.state === "known" ? " once cut" : ""}: fit shorter grips or a shared clamp, or another bar.`,
        bar,
        [...(straight ? [straight] : []), ...(cut.state === "known" ? [cut] : []), ...used.map(({ known }) => known)],
        [
          ...swaps("cockpit.grips"),
          ...used.slice(1).map(({ slot: path }) => ({ kind: "swap-part", slot: path }) as const),
          ...swaps("cockpit.handlebar"),
        ],
      );
    }
    if (unknown.length > 0) return cannotTell(...unknown);
    if (available === undefined) return notApplicable(`${bar.subject} states no straight length`);
    const [takes, has] = showPair(total, available, "length");
    return holds(
      `At the ${side} hand ${list} take up ${takes} of ${has}.`,
      available > 0 ? (available - total) / available : 0,
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
