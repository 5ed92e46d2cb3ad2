import { expect, test } from "vitest";
import { buildFields } from "../../server/vocabulary/builds.ts";
import type { Field } from "../../server/vocabulary/define.ts";
import { compositeHalves, families, familyByName, kinds, slots } from "../../server/vocabulary/index.ts";

function familiesNamed(): Map<string, string[]> {
  const named = new Map<string, string[]>();
  const add = (owner: string, fields: Readonly<Record<string, Field>>) => {
    for (const [name, { type }] of Object.entries(fields)) {
      if (type.type === "code" || type.type === "codes") {
        named.set(type.family, [...(named.get(type.family) ?? []), `${owner} ${name}`]);
      }
    }
  };
  for (const kind of kinds.values()) add(kind.name, kind.fields);
  for (const slot of slots.values()) add(slot.path, slot.settings);
  for (const family of families.values()) add(`family ${family.name}`, family.fields);
  add("build", buildFields);
  return named;
}

test("every family that a field names exists", () => {
  const named = familiesNamed();
  expect([...named].filter(([family]) => !familyByName(family))).toEqual([]);
});

test("every family is used by a kind, or is half of one that is", () => {
  const used = new Set<string>();
  for (const kind of kinds.values()) {
    for (const { type } of Object.values(kind.fields)) {
      if (type.type === "code" || type.type === "codes") used.add(type.family);
    }
  }
  for (const family of families.values()) {
    if (!used.has(family.name)) continue;
    for (const half of family.composite?.halves ?? []) if ("family" in half) used.add(half.family);
  }
  expect([...families.keys()].filter((name) => !used.has(name))).toEqual([]);
});

test("every family takes aliases and mates of its own, and says where it is published", () => {
  for (const family of families.values()) {
    expect(family.fields.aliases?.type).toEqual({ type: "codes", family: family.name });
    expect(family.fields.mates?.type).toEqual({ type: "codes", family: family.name });
    expect(family.fields.published).toBeDefined();
    expect(family.fields.source).toBeDefined();
  }
});

test("halves of a composite family exist", () => {
  const halves = [...families.values()].flatMap((family) => family.composite?.halves ?? []);
  expect(halves.length).toBe(8);
  for (const half of halves) if ("family" in half) expect(familyByName(half.family)).toBeDefined();
});

function halves(family: string, code: string) {
  const row = familyByName(family);
  return (
    row && compositeHalves(row, code)?.map(({ half, text, value, start, end }) => [half.name, text, value, start, end])
  );
}

test("a headset code splits into fit and steerer", () => {
  expect(halves("headset-upper", "ZS44/28.6")).toEqual([
    ["fit", "ZS44", undefined, 0, 4],
    ["steerer-diameter", "28.6", 28.6, 5, 9],
  ]);
  expect(halves("headset-lower", "EC34/30")).toEqual([
    ["fit", "EC34", undefined, 0, 4],
    ["crown-race", "30", undefined, 5, 7],
  ]);
});

test("a head tube states the fit alone", () => {
  expect(halves("headset-upper", "ZS44")).toEqual([
    ["fit", "ZS44", undefined, 0, 4],
    ["steerer-diameter", undefined, undefined, 4, 4],
  ]);
});

test("a tyre designation splits into width and bead seat (ISO 5775-1)", () => {
  expect(halves("tyre-designation", "57-622")).toEqual([
    ["section-width", "57", 57, 0, 2],
    ["bead-seat", "622", undefined, 3, 6],
  ]);
});

test("a shock size splits into eye-to-eye and stroke", () => {
  expect(halves("shock-size", "210x52.5")).toEqual([
    ["eye-to-eye", "210", 210, 0, 3],
    ["stroke", "52.5", 52.5, 4, 8],
  ]);
});

test.each([
  ["tyre-designation", "622"],
  ["tyre-designation", "-622"],
  ["tyre-designation", "57-"],
  ["tyre-designation", "wide-622"],
  ["shock-size", "210x"],
  ["shock-size", "210"],
  ["headset-upper", "ZS44/"],
  ["headset-upper", "ZS44/thick"],
  ["headset-upper", ""],
  ["axle", "12x148"],
])("%s %s is no composite", (family, code) => {
  expect(halves(family, code)).toBeUndefined();
});
