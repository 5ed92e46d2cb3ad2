import { describe, expect, test } from "vitest";
import type { FieldType } from "../../server/values/types.ts";
import type { Field } from "../../server/vocabulary/define.ts";
import {
  compositeHalves,
  familyByName,
  type Joint,
  type JointEnd,
  jointsOf,
  jointTable,
  kindByName,
  slotByPath,
  slots,
} from "../../server/vocabulary/index.ts";

/** The fields of this name in the kinds that the slot takes. */
function fieldsAt(slot: string, name: string): Field[] {
  return (slotByPath(slot)?.kinds ?? []).flatMap((kind) => kindByName(kind)?.fields[name] ?? []);
}

/** What an end compares: a family of codes, a size of a dimension, or words. */
function compares(end: JointEnd, type: FieldType): string {
  if (type.type === "word") return "words";
  if (type.type === "quantity") return `size ${type.dimension}`;
  if (type.type !== "code" && type.type !== "codes") return type.type;
  if (end.half === undefined) return `family ${type.family}`;
  const half = familyByName(type.family)?.composite?.halves.find((one) => one.name === end.half);
  if (!half) return `no half ${end.half}`;
  return "family" in half ? `family ${half.family}` : `size ${half.dimension}`;
}

const names = jointTable.map((joint) => joint.name);

test("names of joints are unique and in kebab-case", () => {
  expect(new Set(names).size).toBe(names.length);
  expect(names.filter((name) => !/^[a-z]+(-[a-z]+)*$/.test(name))).toEqual([]);
});

describe.each(jointTable.map((joint): [string, Joint] => [joint.name, joint]))("%s", (_name, joint) => {
  test("its ends are two slots with the facts it names", () => {
    expect(joint.ends[0].slot).not.toBe(joint.ends[1].slot);
    for (const end of joint.ends) {
      expect(slotByPath(end.slot)).toBeDefined();
      for (const name of [end.field, end.otherwise, end.torque]) {
        if (name !== undefined)
          expect([end.slot, name, fieldsAt(end.slot, name).length > 0]).toEqual([end.slot, name, true]);
      }
      if (end.setting !== undefined) {
        const type = slotByPath(end.slot)?.settings[end.setting]?.type;
        expect(type).toEqual({ type: "code", family: joint.family });
      }
    }
  });

  test("both ends compare the same sort of thing, which is the joint's family where it has one", () => {
    const [first, second] = joint.ends.map((end) => [
      ...new Set(
        [end.field, ...(end.otherwise === undefined ? [] : [end.otherwise])].flatMap((name) =>
          fieldsAt(end.slot, name).map((field) => compares(end, field.type)),
        ),
      ),
    ]);
    expect(first).toHaveLength(1);
    const bySize = joint.ends.find((end) => end.sizeOf !== undefined);
    if (bySize) {
      const dimension = familyByName(joint.family ?? "")?.fields[bySize.sizeOf ?? ""]?.type;
      expect(dimension?.type).toBe("quantity");
      const other = joint.ends.find((end) => end !== bySize);
      expect(fieldsAt(other?.slot ?? "", other?.field ?? "")[0]?.type).toEqual({ type: "code", family: joint.family });
      expect(fieldsAt(bySize.slot, bySize.field)[0]?.type.type).toBe("quantity");
      return;
    }
    expect(second).toEqual(first);
    if (joint.family === undefined) expect(first?.[0]).toMatch(/^(size|words)/);
    else expect(first).toEqual([`family ${joint.family}`]);
  });

  test("words of both ends are the same words", () => {
    const sets = joint.ends.flatMap((end) =>
      fieldsAt(end.slot, end.field).flatMap(({ type }) =>
        type.type === "word" ? [new Set(Object.keys(type.words))] : [],
      ),
    );
    const [first, second] = sets;
    if (first && second) expect([...first].filter((word) => second.has(word)).length).toBeGreaterThan(1);
  });

  test("torques are windows of torque", () => {
    const torques = [
      ...joint.ends.flatMap((end) => (end.torque === undefined ? [] : [[end.slot, end.torque] as const])),
      ...(joint.alsoTorque ?? []).map(({ slot, field }) => [slot, field] as const),
    ];
    for (const [slot, name] of torques) {
      const types = fieldsAt(slot, name).map((field) => field.type);
      expect(types.length).toBeGreaterThan(0);
      for (const type of types)
        expect(type).toMatchObject({ type: "quantity", dimension: "torque", role: "adjustable" });
    }
    if (joint.nature !== "fastened") expect(torques).toEqual([]);
  });

  test("what else it names exists", () => {
    if (joint.adapter !== undefined) expect(slotByPath(joint.adapter)?.omitted).toBe("none");
    if (joint.adapterEnds) {
      for (const { field, torque } of joint.adapterEnds) {
        for (const name of [field, ...(torque === undefined ? [] : [torque])]) {
          expect([name, fieldsAt(joint.adapter ?? "", name).length]).toEqual([name, 1]);
        }
        const [row] = fieldsAt(joint.adapter ?? "", field);
        if (joint.family !== undefined) expect(row?.type).toEqual({ type: "code", family: joint.family });
      }
    }
    if (joint.settingsOwner !== undefined) {
      expect(Object.keys(slotByPath(joint.settingsOwner)?.settings ?? {})).not.toEqual([]);
    }
    if (joint.orElse !== undefined) {
      const other = jointTable.find((one) => one.name === joint.orElse);
      expect(other?.orElse).toBe(joint.name);
      expect(other?.ends.some((end) => joint.ends.some((own) => own.slot === end.slot))).toBe(true);
    }
    if (joint.shared) {
      const [own] = joint.ends;
      expect(slotByPath(own.slot)?.settings[joint.shared.setting]?.type).toEqual({ type: "slot" });
      const offering = [...slots.keys()].filter((path) => fieldsAt(path, joint.shared?.offers ?? "").length > 0);
      expect(offering).toContain("rear-brake.lever");
      for (const field of fieldsAt("rear-brake.lever", joint.shared.offers)) {
        expect(field.type).toEqual({ type: "codes", family: joint.family });
      }
    }
  });

  test("its sentences read as such", () => {
    expect(joint.title).toMatch(/^(the|hidden) .*[^.]$/);
    for (const text of [joint.compound, joint.caution]) if (text !== undefined) expect(text).toMatch(/^[A-Z][^\n]*\.$/);
  });
});

/** A wheel bought whole is named as hub and as rim; what a hub states is asked of the hub, and so for a rim. */
const isOfTheWheelAgain = (path: string): boolean => {
  const [, place = "", name = ""] = /^(?:front|rear)-wheel\.(hub|rim)\.(.+)$/.exec(path) ?? [];
  return place !== "" && !Object.hasOwn(kindByName(place)?.fields ?? {}, name);
};

test("a code by which parts of two slots mate belongs to a joint", () => {
  const inJoints = new Set(
    jointTable.flatMap((joint) =>
      joint.ends.flatMap((end) => [end.field, end.otherwise].map((name) => `${end.slot}.${name}`)),
    ),
  );
  for (const joint of jointTable) {
    for (const { field } of joint.adapterEnds ?? []) inJoints.add(`${joint.adapter}.${field}`);
    if (joint.shared) for (const end of joint.ends) inJoints.add(`${end.slot}.${joint.shared.offers}`);
  }
  const missing = [...slots.values()].flatMap((slot) =>
    slot.kinds.flatMap((kind) =>
      Object.entries(kindByName(kind)?.fields ?? {})
        .filter(([, field]) => field.type.type === "code" || field.type.type === "codes")
        .map(([name]) => `${slot.path}.${name}`)
        .filter((path) => !inJoints.has(path)),
    ),
  );
  // What nothing in a joint answers to, by the fact's name.
  const alone = new Set([
    "connector", // leads go from part to part, in any number
    "battery-type", // of a control or lamp: its own cell, which is no part of the build
    "serves-families", // says which parts a battery feeds, not what holds it
    "brake-fluids", // what a hose bears; lever and caliper are compared with each other
    "axle-options", // what end caps could make of a hub
    "rim-kind", // read by the rules of tyre, pressure and width
  ]);
  // A slot that takes kinds of several uses has the facts of all of them.
  const otherUse = (path: string) =>
    /^front-wheel\.hub\.(freehub|freewheel-thread|layout|shift-family)$/.test(path) ||
    /^drivetrain\.(front|rear)-controller\.(brake-fluid|hose-fitting|hydraulic-family)$/.test(path) ||
    /^(front|rear)-brake\.lever\.(clamp-offers|shift-family)$/.test(path) ||
    path === "cockpit.remote.shift-family" ||
    isOfTheWheelAgain(path);
  const unexplained = missing.filter((path) => !alone.has(path.split(".")[2] ?? "") && !otherUse(path));
  expect(unexplained).toEqual([]);
});

test("every torque that a part states belongs to a joint, or to a fastener of the part's own", () => {
  const inJoints = new Set(
    jointTable.flatMap((joint) => [
      ...joint.ends.map((end) => `${end.slot}.${end.torque}`),
      ...(joint.alsoTorque ?? []).map(({ slot, field }) => `${slot}.${field}`),
      ...(joint.adapterEnds ?? []).map(({ torque }) => `${joint.adapter}.${torque}`),
    ]),
  );
  const loose = [...slots.values()].flatMap((slot) =>
    slot.kinds.flatMap((kind) =>
      Object.entries(kindByName(kind)?.fields ?? {})
        .filter(([, { type }]) => type.type === "quantity" && type.dimension === "torque")
        .map(([name]) => `${slot.path}.${name}`)
        .filter((path) => !inJoints.has(path)),
    ),
  );
  const ownFasteners = new Set([
    "expander-torque",
    "preload-torque",
    "cable-bolt-torque",
    "pulley-bolt-torque",
    "pad-bolt-torque",
    "nut-torque",
  ]);
  // The hose of a lever that also shifts is counted with the brake; a front hub carries no cogs.
  const elsewhere = /^(drivetrain\.(front|rear)-controller\.hose-torque|front-wheel\.hub\.lockring-torque)$/;
  const unexplained = loose.filter(
    (path) => !ownFasteners.has(path.split(".")[2] ?? "") && !elsewhere.test(path) && !isOfTheWheelAgain(path),
  );
  expect(unexplained).toEqual([]);
});

test("the joints of a slot", () => {
  expect(jointsOf("drivetrain.hanger").map((joint) => joint.name)).toEqual([
    "derailleur-hanger",
    "hanger-frame",
    "tensioner-hanger",
  ]);
  expect(jointsOf("seat.shim").map((joint) => joint.name)).toEqual(["post-frame"]);
  expect(jointsOf("lighting.reflectors")).toEqual([]);
});

test("a half of a composite splits off what the joint compares", () => {
  const joint = jointTable.find((one) => one.name === "rear-tyre-rim");
  const family = familyByName("tyre-designation");
  const half = family && compositeHalves(family, "61-622")?.find((one) => one.half.name === joint?.ends[0].half);
  expect(half?.text).toBe("622");
});
