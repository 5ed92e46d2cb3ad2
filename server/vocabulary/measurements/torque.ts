import { quantity } from "../fields.ts";
import type { SlotPath } from "../index.ts";
import type { Joint } from "../joints/define.ts";
import { jointTable } from "../joints.ts";
import { type Measurement, measurement } from "./define.ts";

/** A torque that a part states for a joint. */
export interface JointTorque {
  readonly slot: SlotPath;
  readonly field: string;
}

/** Bolts that are tightened to one torque: those of a joint, or of what stands between its ends and the second one. */
export interface TightenedJoint {
  readonly joint: Joint;
  /** The parts whose torques count when nothing stands between the ends. */
  readonly parts: readonly JointTorque[];
  /** The parts whose torques count when the adapter is fitted. */
  readonly withAdapter?: readonly JointTorque[];
}

function torqueOf({ slot, torque }: { readonly slot: SlotPath; readonly torque?: string }): readonly JointTorque[] {
  return torque === undefined ? [] : [{ slot, field: torque }];
}

function tightened(joint: Joint): readonly (readonly [string, TightenedJoint])[] {
  const [one, other] = joint.ends;
  const parts = [...torqueOf(one), ...torqueOf(other), ...(joint.alsoTorque ?? [])];
  const [near, far] = joint.adapterEnds ?? [];
  const ofAdapter = (end: typeof near): readonly JointTorque[] =>
    joint.adapter === undefined || end?.torque === undefined ? [] : [{ slot: joint.adapter, field: end.torque }];
  const withAdapter = [...torqueOf(one), ...ofAdapter(near)];
  const ownBolts = [...torqueOf(other), ...ofAdapter(far)];
  return [
    ...(parts.length > 0
      ? [[joint.name, { joint, parts, ...(ofAdapter(near).length > 0 ? { withAdapter } : {}) }] as const]
      : []),
    ...(ofAdapter(far).length > 0
      ? [[`${joint.name}-adapter`, { joint, parts: [], withAdapter: ownBolts }] as const]
      : []),
  ];
}

/** Every joint that is tightened to a torque, by the name under which a record states it. */
export const tightenedJoints: ReadonlyMap<string, TightenedJoint> = new Map(
  jointTable.filter(({ nature }) => nature === "fastened").flatMap(tightened),
);

function row(name: string, { joint, parts, withAdapter }: TightenedJoint): Measurement {
  const ofAdapter = parts.length === 0;
  const slot = ofAdapter ? joint.adapter : (parts[0] ?? withAdapter?.[0])?.slot;
  return measurement(
    quantity(
      "torque",
      ofAdapter
        ? `Torque applied to the own bolts of what stands between in ${joint.title}.`
        : `Torque applied to ${joint.title}.`,
      { lowest: 0.1, highest: 150, example: name === "stem-bar" ? "5 N·m" : "10 N·m" },
    ),
    {
      ...(slot === undefined ? {} : { on: slot }),
      comparedWith: "the torque windows that the parts of the joint state, all of them",
      source: "the part makers' own figures",
    },
  );
}

/** Torque as applied, by joint. */
export const torqueMeasurements: Readonly<Record<`torque.${string}`, Measurement>> = Object.fromEntries(
  [...tightenedJoints].map(([name, joint]) => [`torque.${name}`, row(name, joint)]),
);
