import { describe, expect, test } from "vitest";
import { buildFields, buildGroups, buildWords } from "../../server/vocabulary/builds.ts";
import type { Slot, SlotCondition } from "../../server/vocabulary/define.ts";
import {
  assemblyNames,
  assemblyTable,
  clashingPaths,
  extrasAssembly,
  kindByName,
  kindNames,
  namesOfSlot,
  namesUnder,
  slotByPath,
  slotPaths,
  slots,
  slotsOf,
  slotsTaking,
} from "../../server/vocabulary/index.ts";

test("every kind that a slot takes exists", () => {
  const wrong = [...slots.values()].flatMap((slot) =>
    slot.kinds.filter((kind) => !kindByName(kind)).map((kind) => `${slot.path}: ${kind}`),
  );
  expect(wrong).toEqual([]);
  expect([...slots.values()].filter((slot) => slot.kinds.length === 0)).toEqual([]);
});

test("every kind has a slot of its own, or goes among the extras", () => {
  const homeless = kindNames.filter((kind) => slotsTaking(kind).length === 0);
  expect(homeless.sort()).toEqual(["accessory", "charger"]);
});

test("slot paths are unique and at most two names long", () => {
  expect(new Set(slotPaths).size).toBe(slotPaths.length);
  expect(slotPaths.filter((path) => path.split(".").length > 2)).toEqual([]);
});

test("every assembly has slots and every slot with a dot is in one", () => {
  const used = new Set(slotPaths.filter((path) => path.includes(".")).map((path) => path.split(".")[0]));
  expect([...used].sort()).toEqual(Object.keys(assemblyTable).sort());
  for (const assembly of used) expect(slotsOf(assembly ?? "").length).toBeGreaterThan(1);
});

test("names at the first level of a build are of one sort each", () => {
  const topSlots = slotPaths.filter((path) => !path.includes("."));
  const topFields = Object.keys(buildFields).filter((name) => !name.includes("."));
  const names = [
    ...topSlots,
    ...topFields,
    ...Object.keys(buildGroups),
    ...Object.keys(assemblyTable),
    ...Object.keys(buildWords),
  ];
  const twice = names.filter((name, index) => names.indexOf(name) !== index);
  expect(twice).toEqual([]);
});

test("the groups of build fields are those that are described", () => {
  const used = new Set(
    Object.keys(buildFields)
      .filter((name) => name.includes("."))
      .map((name) => name.split(".")[0]),
  );
  expect([...used].sort()).toEqual(Object.keys(buildGroups).sort());
});

test("facts of a slot's kinds and its settings never share a name", () => {
  const shared = [...slots.values()].flatMap((slot) =>
    slot.kinds.flatMap((kind) =>
      Object.keys(kindByName(kind)?.fields ?? {})
        .filter((name) => Object.hasOwn(slot.settings, name))
        .map((name) => `${slot.path}.${name} of ${kind}`),
    ),
  );
  expect(shared).toEqual([]);
});

test("kinds of one slot that share a fact share its type", () => {
  for (const slot of slots.values()) {
    for (const kind of slot.kinds) {
      for (const [name, field] of Object.entries(kindByName(kind)?.fields ?? {})) {
        for (const other of slot.kinds) {
          const same = kindByName(other)?.fields[name];
          if (!same) continue;
          expect([slot.path, name, same.type.type]).toEqual([slot.path, name, field.type.type]);
          if (field.type.type === "code" || field.type.type === "codes") {
            expect([slot.path, name, same.type]).toEqual([slot.path, name, field.type]);
          }
        }
      }
    }
  }
});

test("a slot is not looked for below a slot", () => {
  const below = slotPaths.filter((path) => slotPaths.some((other) => path.startsWith(`${other}.`)));
  expect(below).toEqual([]);
});

describe("where leaving a slot out means none", () => {
  const conditions = [...slots.values()].flatMap((slot) =>
    (slot.noneWhen ?? []).flatMap((all) => all.map((condition) => ({ slot, condition }))),
  );

  test("only unknown slots have conditions, and each alternative has some", () => {
    const wrong = [...slots.values()].filter(
      (slot) => slot.noneWhen && (slot.omitted !== "unknown" || slot.noneWhen.some((all) => all.length === 0)),
    );
    expect(wrong).toEqual([]);
    expect(conditions.length).toBeGreaterThan(10);
  });

  test.each(conditions)("$slot.path: $condition", ({ condition, slot }: { condition: SlotCondition; slot: Slot }) => {
    const other = slotByPath(condition.slot);
    expect(other).toBeDefined();
    expect(condition.slot).not.toBe(slot.path);
    if ("kind" in condition) expect(other?.kinds).toContain(condition.kind);
    if ("fact" in condition) {
      const fields = (other?.kinds ?? []).map((kind) => kindByName(kind)?.fields[condition.fact]);
      const type = fields.find((field) => field !== undefined)?.type;
      expect(type).toBeDefined();
      if ("word" in condition) {
        expect(type?.type).toBe("word");
        expect(type?.type === "word" && Object.keys(type.words)).toContain(condition.word);
      }
    }
  });
});

test("the workshop's own slots take parts of any kind and are never missing", () => {
  expect(assemblyNames).toContain(extrasAssembly);
  expect(slotByPath("extras.lower-cage")).toMatchObject({ kinds: [], omitted: "none", settings: {} });
  expect(slotByPath("extras")).toBeUndefined();
  expect(slotByPath("extras.cage.bolt")).toBeUndefined();
  expect(slotByPath("drivetrain.casette")).toBeUndefined();
});

describe("one namespace of paths", () => {
  test("names under a prefix", () => {
    expect(namesUnder("rider")).toEqual(["mass", "kit-mass", "height", "inseam", "foot-length", "cadence"]);
    expect(namesUnder("seat")).toEqual(["post", "clamp", "shim", "saddle", "remote"]);
    expect(namesUnder("")).toContain("drivetrain");
  });

  test("names of a slot are the facts of its kinds and its settings", () => {
    const names = namesOfSlot("drivetrain.chain");
    for (const name of ["links", "links-supplied", "teeth", "mass"]) expect(names).toContain(name);
    expect(namesOfSlot("drivetrain")).toEqual([]);
  });

  test("a calculation may not take the place of a slot, an assembly, a fact, a setting or a field", () => {
    expect(clashingPaths(["drivetrain.capacity-needed", "drivetrain.chain.length", "fork.trail"])).toEqual([]);
    const clashing = ["drivetrain.cassette", "rear-wheel", "fork.travel", "drivetrain.chain.links", "rider.mass"];
    expect(clashingPaths([...clashing, "drivetrain.gear-table"])).toEqual(clashing);
  });
});

// The sample of the language's description, name by name: these are promises to people who have files already.
test("the names of the first sample stand", () => {
  const facts = Object.keys(kindByName("cassette")?.fields ?? {});
  for (const name of ["speeds", "cogs", "freehub", "lockring-torque", "mass", "price"]) expect(facts).toContain(name);
  const settings: [string, string][] = [
    ["drivetrain.chain", "links"],
    ["drivetrain.rear-controller", "clamp"],
    ["rear-brake.lever", "side"],
    ["cockpit.stem", "spacers-below"],
    ["rear-wheel.spokes", "cross"],
    ["rear-wheel.tyre", "pressure"],
  ];
  for (const [path, name] of settings) expect(slotByPath(path)?.settings).toHaveProperty(name);
  for (const path of ["frame", "fork", "drivetrain.rear-derailleur", "drivetrain.front-derailleur", "rear-wheel.rim"]) {
    expect(slotByPath(path)).toBeDefined();
  }
  for (const name of ["category", "template", "rider.mass", "rider.inseam", "budget.mass", "budget.price"]) {
    expect(buildFields).toHaveProperty([name]);
  }
});
