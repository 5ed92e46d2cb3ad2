import type { Installed } from "../../model/assembly.ts";
import type { Known, Maybe, Need, Unknown } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { overlap } from "../../values/compare.ts";
import { showInterval } from "../../values/show.ts";
import type { Interval } from "../../values/types.ts";
import { type Joint, jointTable, type SlotPath } from "../../vocabulary/index.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionOf, matingPair } from "../shared/codes.ts";
import { clampForm } from "../shared/controls.ts";
import { anyFact, anySetting, anySlot, type End, readEnd } from "../shared/end.ts";
import { jointNamed } from "../shared/mating.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { mergeClashes } from "../shared/torque-clashes.ts";

/** A torque that a part states for a joint. */
interface Torque {
  readonly slot: SlotPath;
  readonly field: string;
}

/** The parts that are tightened together, each by the torque that it states. */
function together(joint: Joint): readonly Torque[] {
  return [
    ...joint.ends.flatMap(({ slot, torque }) => (torque === undefined ? [] : [{ slot, field: torque }])),
    ...(joint.alsoTorque ?? []),
  ];
}

/** The same with an adapter between: two joints, one on either side of it. */
function apart({ ends, adapter, adapterEnds }: Joint): readonly (readonly Torque[])[] {
  if (!adapter || !adapterEnds?.some(({ torque }) => torque !== undefined)) return [];
  return ends.map(({ slot, torque }, index) => {
    const ofAdapter = adapterEnds[index]?.torque;
    return [
      ...(torque === undefined ? [] : [{ slot, field: torque }]),
      ...(ofAdapter === undefined ? [] : [{ slot: adapter, field: ofAdapter }]),
    ];
  });
}

/** Joints in which more than one part may state a torque: the others have nothing to agree with. */
const meeting = jointTable.filter(
  (joint) => joint.nature === "fastened" && [together(joint), ...apart(joint)].some((group) => group.length > 1),
);

/** A thru axle's joint with the fork is part of the hub's: what is asked there already is not found twice. */
const joints = meeting
  .filter((joint) => !meeting.some((other) => isPartOf(together(joint), together(other))))
  .map((joint) => ({ name: joint.name, joint }));

function isPartOf(few: readonly Torque[], many: readonly Torque[]): boolean {
  return (
    few.length < many.length &&
    few.every(({ slot, field }) => many.some((other) => other.slot === slot && other.field === field))
  );
}

/** Whether a lock-ring holds the joint, unless the part says that something else does. */
function hasLockring(joint: Joint): boolean {
  return joint.ends[0].torque === "lockring-torque";
}

/** What holds a sprocket where no lock-ring does, for a sentence. */
const noLockring: Readonly<Record<string, string>> = { "snap-ring": "a snap ring", bolts: "bolts of its own" };

/** Whether an end of an axle's joint is closed by a cam lever. */
function isQuickRelease(end: End<unknown>): boolean {
  if (end.state !== "known" || !isCode(end.fact.value)) return false;
  return dimensionOf<string>(end.fact.value, "fastening") === "quick-release";
}

type TorqueNeeds = Record<`part ${string}`, Need<Installed, true>> &
  Record<`torque ${string}`, Need<Interval, true>> &
  /** What holds a sprocket on its seat, where that may be a lock-ring. */
  Record<`retention ${string}`, Need<string, true>> & {
    readonly one: Need<unknown, true>;
    readonly other: Need<unknown, true>;
    readonly insteadOne: Need<unknown, true>;
    readonly insteadOther: Need<unknown, true>;
    /** The slot whose clamp the part shares. */
    readonly shared: Need<string, true>;
    /** What holds a grip. */
    readonly held: Need<string, true>;
  };

export default defineCheck({
  code: "cockpit/torque-window",
  title: "Some torque suits every part of a joint",
  severity: "error",
  since: 1,
  safety: true,
  instances: joints,
  merge: mergeClashes,
  needs: ({ joint }): TorqueNeeds => {
    const [one, other] = joint.ends;
    const [insteadOne, insteadOther] = (joint.orElse === undefined ? joint : jointNamed(joint.orElse)).ends;
    const needs: Record<string, Need> = {
      one: anyFact(one.slot, one.field),
      other: anyFact(other.slot, other.field),
      insteadOne: anyFact(insteadOne.slot, insteadOne.field),
      insteadOther: anyFact(insteadOther.slot, insteadOther.field),
      shared: anySetting(one.slot, joint.shared?.setting ?? "clamp"),
      held: anyFact(one.slot, "held"),
    };
    if (hasLockring(joint)) needs[`retention ${one.slot}`] = anyFact(one.slot, "retention");
    for (const { slot } of joint.ends) needs[`part ${slot}`] = anySlot(slot);
    for (const { slot, field } of [together(joint), ...apart(joint)].flat()) {
      needs[`part ${slot}`] = anySlot(slot);
      needs[`torque ${slot}.${field}`] = anyFact(slot, field);
    }
    return needs as unknown as TorqueNeeds;
  },
  test(facts, { joint }) {
    const [one, other] = joint.ends;
    const nothing: Maybe<Installed> = { state: "unknown", missing: [] };
    const first = readEnd(facts[`part ${one.slot}`] ?? nothing, facts.one, one.field);
    const second = readEnd(facts[`part ${other.slot}`] ?? nothing, facts.other, other.field);
    const absent = absence(first) ?? absence(second);
    if (absent !== undefined) return notApplicable(absent);
    if (joint.orElse !== undefined && (facts.one.state !== "known" || facts.other.state !== "known")) {
      if (facts.insteadOne.state === "known" && facts.insteadOther.state === "known") {
        return notApplicable("the part is held in another way");
      }
    }
    if (joint.shared && facts.shared.state === "known") {
      // A clamp that is shared has its own bolt, and so has what hangs on it: 2 to 3 N·m beside 4 to 5 is no clash.
      return notApplicable(
        `it is held by a bolt of its own on the clamp of ${facts.shared.value}, for which no other part states a torque`,
      );
    }
    if (joint.family === "control-clamp" && first.state === "known" && isCode(first.fact.value)) {
      const form = clampForm(first.fact.value);
      if (form !== undefined && form !== "band") return notApplicable("it has no band of its own");
    }
    if (facts.held.state === "known" && facts.held.value !== "clamp")
      return notApplicable("it is held without a clamp");
    // Only a sprocket states what holds it; a cassette always has a lock-ring.
    const retention = facts[`retention ${one.slot}`];
    if (retention?.state === "known" && !retention.value.endsWith("lockring")) {
      return notApplicable(`it is held by ${noLockring[retention.value] ?? retention.value}, not by a lock-ring`);
    }
    if (joint.family === "axle" && [first, second].some(isQuickRelease)) {
      return notApplicable("a quick release is closed by its lever, not to a torque");
    }

    // While it is open whether the parts meet at all, no torque of theirs is asked for or compared.
    const open = [first, second].flatMap((end) => (end.state === "unknown" ? [end.unknown] : []));
    if (open.length > 0) return cannotTell(...open);

    const between = joint.adapter === undefined ? undefined : facts[`part ${joint.adapter}`];
    const hasAdapter = between !== undefined && between.state !== "none" && apart(joint).length > 0;
    if (!hasAdapter && first.state === "known" && second.state === "known") {
      if (!joinable(first.fact.value, second.fact.value, other.sizeOf)) {
        return notApplicable("the parts do not fit each other, which is found as such");
      }
    }
    const groups = hasAdapter ? apart(joint) : [together(joint)];
    const unknown: Unknown[] = [];
    const agreed: string[] = [];
    for (const group of groups) {
      const windows: Known<Interval>[] = [];
      const sides: { slot: SlotPath; part: Known<Installed>; fact: Known<Interval> }[] = [];
      for (const { slot, field } of group) {
        const part = facts[`part ${slot}`];
        const torque = facts[`torque ${slot}.${field}`];
        if (!part || !torque) continue;
        const end = readEnd(part, torque, field);
        if (end.state === "known") {
          windows.push(end.fact);
          sides.push({ slot, part: end.part, fact: end.fact });
        } else if (end.state === "unknown") unknown.push(end.unknown);
      }
      const shown = both(windows.map((window) => `${window.subject} states ${showInterval(window.value, "torque")}`));
      const common = overlap(windows.map(({ value }) => value));
      const [foremost] = sides;
      if (!common && foremost) {
        return fails(
          `No torque suits both parts of ${joint.title}: ${shown}. The parts do not go together; do not settle on the lower figure, which holds one of them too loosely.`,
          foremost.part,
          windows,
          swaps(...group.map(({ slot }) => slot)),
          { ...(joint.caution === undefined ? {} : { caution: joint.caution }), clash: { where: joint.title, sides } },
        );
      }
      if (common && windows.length > 1)
        agreed.push(`${shown}, so that ${showInterval(common, "torque")} suits every part`);
    }
    if (unknown.length > 0) return cannotTell(...unknown);
    if (agreed.length === 0) return notApplicable("fewer than two parts of this joint state a torque");
    return holds(`${joint.title.charAt(0).toUpperCase()}${joint.title.slice(1)}: ${agreed.join("; ")}.`);
  },
  explanation:
    "A joint is tightened to one torque, but each of its parts has a least and a greatest one: below the least the joint " +
    "slips, above the greatest the part is crushed or its thread torn. The makers of both have their say, and only a " +
    "torque inside every window will do. Where the windows do not meet, the parts were not made for each other. The " +
    "habit of going by the lower figure then leaves a stem or a lever that turns. A part whose maker states no limit of " +
    "its own for a joint says none.",
  source: "common practice, no source; the windows are the part makers' own figures",
  caution: "The part makers' torques come first; a joint that slips or cracks at bar, stem or seat throws the rider.",
  examples: {
    holds: `
part stem example.stub "Stub 60" { bar-clamp: 31.8 mm; bar-torque: 4 to 6 N·m }
part handlebar example.wide "Wide 780" { clamp-diameter: 31.8 mm; stem-clamp-torque: <= 5 N·m }

build example "Windows that meet" {
  fork: none
  drivetrain {
    rear-derailleur: none
    front-derailleur: none
    cassette: none
    crankset: none
    chainring: none
    bottom-bracket: none
    pedals: none
    rear-controller: none
  }
  front-brake { lever: none; caliper: none }
  rear-brake { lever: none; caliper: none }
  seat { post: none; clamp: none; saddle: none }
  front-wheel { hub: none; axle: none }
  rear-wheel { hub: none; axle: none }
  rear-shock: none
  cockpit { stem: example.stub; handlebar: example.wide; grips: none }
}
`,
    fails: `
part stem example.stub "Stub 60" { bar-clamp: 35 mm; bar-torque: 6 to 8 N·m }
part handlebar example.light "Light 760" { clamp-diameter: 35 mm; stem-clamp-torque: 3 to 5 N·m }

build example "Windows that do not meet" {
  cockpit {
    stem: example.stub
    handlebar: example.light
  }
}
`,
  },
});

/** Why there is no such joint; undefined when there may be one. */
function absence(end: End<unknown>): string | undefined {
  if (end.state === "empty") return `${end.slot} is none`;
  if (end.state === "unasked" || end.state === "none") return `${end.part.subject} takes no part in it`;
  return undefined;
}

/** Whether two ends meet, be it with a spacer or a shim; where they do not, their torques mean nothing. */
function joinable(one: unknown, other: unknown, sizeOf: string | undefined): boolean {
  if (typeof other === "number") {
    const size = isCode(one) && sizeOf !== undefined ? dimensionOf<number>(one, sizeOf) : one;
    return typeof size !== "number" || Math.abs(size - other) < sizeTolerance;
  }
  const [codes, others] = [codesOf(one), codesOf(other)];
  if (codes.length === 0 || others.length === 0 || codes.some((code) => code.halves)) return true;
  if (matingPair(codes, others)) return true;
  return codes.some((code) => others.some((against) => alike.some((name) => shares(code, against, name))));
}

/** Clamps and tubes that differ by less than this are of one size, in millimetres. */
const sizeTolerance = 0.5;

/** What two interfaces have in common that differ in a length or a diameter only. */
const alike = ["profile", "bore", "form"];

function shares(one: ResolvedCode, other: ResolvedCode, name: string): boolean {
  const value = dimensionOf(one, name);
  return value !== undefined && value === dimensionOf(other, name);
}

function codesOf(value: unknown): readonly ResolvedCode[] {
  return (Array.isArray(value) ? value : [value]).filter(isCode);
}

function isCode(value: unknown): value is ResolvedCode {
  return typeof value === "object" && value !== null && "family" in value;
}
