import { expect, test } from "vitest";
import { calculations } from "../../server/calculations/table.ts";
import { checks, instancesOf, needsOf } from "../../server/checks/table.ts";
import type { Need } from "../../server/model/need.ts";
import { comparisons } from "../../server/records/table.ts";
import { buildFields } from "../../server/vocabulary/builds.ts";
import { jointTable, kinds, slots } from "../../server/vocabulary/index.ts";
import { nothingYet, ofEveryKind, unread } from "./unread.ts";

/*
 * A fact that is asked for and compared with nothing looks as if it were checked. So every fact, setting and build
 * field is read by a check, a calculation, a comparison of records, a joint or the rule of a slot that may be left out,
 * or stands in unread.ts with its reason.
 */

/** "tyre load-limit" for a fact, "seat.post insertion" for a setting, "rider.mass" for a build field. */
function readOnes(): ReadonlySet<string> {
  const read = new Set<string>();
  const fact = (path: string, field: string | undefined) => {
    if (field !== undefined) for (const kind of slots.get(path as never)?.kinds ?? []) read.add(`${kind} ${field}`);
  };
  const everyKind = (field: string) => {
    for (const kind of kinds.keys()) read.add(`${kind} ${field}`);
  };
  for (const need of everyNeed()) {
    if (need.kind === "fact") fact(need.slot, need.field);
    if (need.kind === "setting" || need.kind === "fact-of-named") read.add(`${need.slot} ${need.setting}`);
    if (need.kind === "every-fact" || need.kind === "fact-of-named") everyKind(need.field);
    if (need.kind === "every-setting") for (const path of slots.keys()) read.add(`${path} ${need.setting}`);
    if (need.kind === "field") read.add(need.field);
  }
  for (const { ends, adapter, adapterEnds, alsoTorque } of jointTable) {
    for (const { slot, field, otherwise, torque } of ends)
      for (const name of [field, otherwise, torque]) fact(slot, name);
    for (const { slot, field } of alsoTorque ?? []) fact(slot, field);
    if (adapter !== undefined)
      for (const { field, torque } of adapterEnds ?? []) for (const name of [field, torque]) fact(adapter, name);
  }
  for (const { noneWhen } of slots.values())
    for (const condition of noneWhen?.flat() ?? []) if ("fact" in condition) fact(condition.slot, condition.fact);
  return read;
}

function everyNeed(): readonly Need[] {
  const needs: Need[] = [];
  const add = (more: object) => needs.push(...(Object.values(more) as Need[]));
  for (const check of checks) for (const instance of instancesOf(check)) add(needsOf(check, instance));
  for (const { inBuild } of calculations) for (const { needs: more } of inBuild ?? []) add(more);
  for (const comparison of comparisons) for (const instance of comparison.instances) add(comparison.needs(instance));
  return needs;
}

const everyone: readonly string[] = [
  ...[...kinds.values()].flatMap((kind) => Object.keys(kind.fields).map((field) => `${kind.name} ${field}`)),
  ...[...slots.values()].flatMap((slot) => Object.keys(slot.settings).map((setting) => `${slot.path} ${setting}`)),
  ...Object.keys(buildFields),
];
const read = readOnes();

function isOfEveryKind(name: string): boolean {
  const [kind = "", field = ""] = name.split(" ");
  return kinds.has(kind as never) && Object.hasOwn(ofEveryKind, field);
}

test("every fact, setting and build field is read, or there is a reason why not", () => {
  const silent = everyone.filter((name) => !read.has(name) && !isOfEveryKind(name) && !unread.has(name));
  expect(silent, "compare it with something, or give the reason in unread.ts").toEqual([]);
});

test("no exception stands for what is read, or for what there is not", () => {
  const known = new Set(everyone);
  expect([...unread.keys()].filter((name) => read.has(name) || !known.has(name))).toEqual([]);
});

test("what is read is found as such, by every way of reading", () => {
  const ways = [
    "tyre load-limit",
    "chain mass",
    "drivetrain.rear-controller clamp",
    "hanger derailleur-torque",
    "rider.mass",
  ];
  expect(ways.filter((name) => !read.has(name))).toEqual([]);
  expect(read.has("frame size")).toBe(false);
});

test("what is compared with nothing yet grows no longer", () => {
  const open = [...unread].filter(([, reason]) => reason === nothingYet);
  expect(open.length).toBeLessThanOrEqual(57);
});
