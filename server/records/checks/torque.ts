import { cannotTell, fails, holds, notApplicable } from "../../checks/define.ts";
import { anyFact, anySlot, readEnd } from "../../checks/shared/end.ts";
import { both } from "../../checks/shared/sentence.ts";
import type { Installed } from "../../model/assembly.ts";
import type { Known, Maybe, Need, Unknown } from "../../model/need.ts";
import { inside, overlap } from "../../values/compare.ts";
import { showInterval, showPair, showQuantity } from "../../values/show.ts";
import type { Interval } from "../../values/types.ts";
import { type JointTorque, type TightenedJoint, tightenedJoints } from "../../vocabulary/index.ts";
import { defineComparison, judged } from "../define.ts";

const joints = [...tightenedJoints].map(([name, tightened]) => ({ name, tightened, path: `torque.${name}` }));

type TorqueNeeds = Readonly<Record<`part ${string}`, Need<Installed, true>>> &
  Readonly<Record<`torque ${string}`, Need<Interval, true>>>;

/** Every part whose torque may count in a joint, with or without what can stand between. */
function everyPart({ parts, withAdapter = [] }: TightenedJoint): readonly JointTorque[] {
  return [...parts, ...withAdapter];
}

export default defineComparison({
  code: "record/torque",
  title: "The joint is tightened within the windows of its parts",
  severity: "error",
  safety: true,
  restsOn: "spec",
  instances: joints,
  needs: ({ tightened }): TorqueNeeds => {
    const needs: Record<string, Need<unknown, true>> = {};
    for (const { slot, field } of everyPart(tightened)) {
      needs[`part ${slot}`] = anySlot(slot);
      needs[`torque ${slot}.${field}`] = anyFact(slot, field);
    }
    if (tightened.joint.adapter) needs[`part ${tightened.joint.adapter}`] = anySlot(tightened.joint.adapter);
    return needs as TorqueNeeds;
  },
  test(measured: Known<number>, facts, { tightened }) {
    const { joint, parts, withAdapter } = tightened;
    const part = (slot: string) => facts[`part ${slot}`] as Maybe<Installed> | undefined;
    const between = joint.adapter === undefined ? undefined : part(joint.adapter);
    if (between?.state === "unknown" && withAdapter) return judged(cannotTell(between));
    const counting = between?.state === "known" && withAdapter ? withAdapter : parts;
    const unknown: Unknown[] = [];
    const windows: Known<Interval>[] = [];
    for (const { slot, field } of counting) {
      const here = part(slot);
      const torque = facts[`torque ${slot}.${field}`] as Maybe<Interval> | undefined;
      if (!here || !torque) continue;
      const end = readEnd(here, torque, field);
      if (end.state === "known") windows.push(end.fact);
      else if (end.state === "unknown") unknown.push(end.unknown);
    }
    const common = overlap(windows.map(({ value }) => value));
    const expected = windows.length > 0 && common ? showInterval(common, "torque") : undefined;
    const stated = both(windows.map((window) => `${window.subject} states ${showInterval(window.value, "torque")}`));
    const broken = windows.filter(({ value }) => !inside(measured.value, value));
    if (broken.length > 0) {
      const loose = broken.every(({ value }) => measured.value < value.least);
      const [nearest = 0] = broken.map(({ value }) => (measured.value < value.least ? value.least : value.greatest));
      const [is] = showPair(measured.value, nearest, "torque");
      const mend = !common
        ? "No torque suits all of them: the parts do not go together"
        : loose
          ? `Tighten it to ${expected}`
          : `Undo it, look for damage to both parts, and tighten it to ${expected}`;
      return judged(
        fails(`${is} on ${joint.title}, but ${stated}. ${mend}.`, measured, windows, [], {
          ...(joint.caution === undefined ? {} : { caution: joint.caution }),
        }),
        expected,
      );
    }
    if (unknown.length > 0) return judged(cannotTell(...unknown), expected);
    if (windows.length === 0) return judged(notApplicable("no part of this joint states a torque"));
    return judged(holds(`${showQuantity(measured.value, "torque")} on ${joint.title}; ${stated}.`), expected);
  },
  explanation:
    "A joint is tightened once, to a torque that every part of it allows: below the least it slips, above the greatest " +
    "the part is crushed or its thread torn. The torque applied is written down joint by joint, from a wrench that was " +
    "set back to nothing afterwards. Where a part's maker states a figure, that figure counts and not a habit; where " +
    "several do, all of them count together.",
  source: "the part makers' own figures",
  caution:
    "A joint that slips or cracks at bar, stem, seat, brake or wheel throws the rider; the part makers' torques come first.",
  examples: {
    holds: `
part stem example.stub "Stub 60" { bar-clamp: 31.8 mm; bar-torque: 4 to 6 N·m }
part handlebar example.wide "Wide 780" { clamp-diameter: 31.8 mm; stem-clamp-torque: <= 5 N·m }

build example "Cockpit" {
  cockpit { stem: example.stub; handlebar: example.wide }
}

record "A-1" of example {
  torque.stem-bar: 5 N·m
}
`,
    fails: `
part stem example.stub "Stub 60" { bar-clamp: 31.8 mm; bar-torque: 4 to 6 N·m }
part handlebar example.wide "Wide 780" { clamp-diameter: 31.8 mm; stem-clamp-torque: <= 5 N·m }

build example "Cockpit" {
  cockpit { stem: example.stub; handlebar: example.wide }
}

record "A-1" of example {
  torque.stem-bar: 5.8 N·m
}
`,
  },
});
