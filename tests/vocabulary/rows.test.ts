import { readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { dimensions, unitBySpelling } from "../../grammar/units.ts";
import type { FieldType } from "../../server/values/types.ts";
import { buildFields, buildGroups, buildWords } from "../../server/vocabulary/builds.ts";
import { currencies } from "../../server/vocabulary/currencies.ts";
import { type Field, fieldGroups } from "../../server/vocabulary/define.ts";
import { assemblyTable, families, kinds, slots } from "../../server/vocabulary/index.ts";
import { measurements } from "../../server/vocabulary/measurements/index.ts";
import { recordFields } from "../../server/vocabulary/records.ts";
import { ruleEntries } from "../../server/vocabulary/rules.ts";
import { workshopFields } from "../../server/vocabulary/workshops.ts";

/** Every field of the vocabulary, with where it stands. */
function everyField(): { at: string; name: string; field: Field }[] {
  const rows: { at: string; name: string; field: Field }[] = [];
  const add = (owner: string, fields: Readonly<Record<string, Field>>) => {
    for (const [name, field] of Object.entries(fields)) rows.push({ at: `${owner} ${name}`, name, field });
  };
  for (const kind of kinds.values()) add(`part ${kind.name}`, kind.fields);
  for (const slot of slots.values()) add(`slot ${slot.path}`, slot.settings);
  for (const family of families.values()) add(`standard ${family.name}`, family.fields);
  add("build", buildFields);
  add("workshop", workshopFields);
  add("record", { ...recordFields, ...measurements });
  for (const [name, entry] of Object.entries(ruleEntries))
    if (entry.form === "field") add("rule", { [name]: entry.field });
  return rows;
}

const fields = everyField();
const kebabCase = /^[a-z][a-z0-9]*(-[a-z0-9]+)*$/;
const words = (type: FieldType) => (type.type === "word" || type.type === "words" ? Object.entries(type.words) : []);

/** Every sentence that is shown as a description. */
function everyDescription(): [string, string][] {
  return [
    ...fields.map(({ at, field }): [string, string] => [at, field.description]),
    ...fields.flatMap(({ at, field }) =>
      words(field.type).map(([word, meaning]): [string, string] => [`${at}: ${word}`, meaning]),
    ),
    ...[...kinds.values()].map((kind): [string, string] => [`part ${kind.name}`, kind.description]),
    ...[...kinds.values()].flatMap((kind): [string, string][] =>
      kind.caution === undefined ? [] : [[`caution of ${kind.name}`, kind.caution]],
    ),
    ...[...slots.values()].map((slot): [string, string] => [`slot ${slot.path}`, slot.description]),
    ...[...families.values()].map((family): [string, string] => [`family ${family.name}`, family.description]),
    ...Object.entries({ ...assemblyTable, ...buildGroups, ...buildWords }),
    ...Object.entries(ruleEntries).flatMap(([name, entry]): [string, string][] =>
      entry.form === "field" ? [] : [[`rule ${name}`, entry.description]],
    ),
  ];
}

test("every description is one line, a sentence that starts and ends as one", () => {
  const wrong = everyDescription().filter(([, text]) => !/^[A-Z`0-9][^\n]*[^.\s]\.$/u.test(text) || / {2}/.test(text));
  expect(wrong).toEqual([]);
});

test("prose is spelt the British way", () => {
  const wrong = everyDescription().filter(([, text]) =>
    /\b(tires?|colors?|aluminum|centers?|meters?|fibers?|gray|molds?)\b/i.test(text),
  );
  expect(wrong).toEqual([]);
});

test("names are in kebab-case", () => {
  const names = [
    ...kinds.keys(),
    ...families.keys(),
    ...[...slots.keys()].flatMap((path) => path.split(".")),
    ...fields.flatMap(({ name }) => name.split(".")),
  ];
  expect(names.filter((name) => !kebabCase.test(name))).toEqual([]);
});

test("words of a set are in kebab-case, except the letters of currencies", () => {
  const sets = fields.flatMap(({ at, field }) => words(field.type).map(([word]) => ({ at, word })));
  expect(sets.filter(({ word }) => !kebabCase.test(word) && !Object.hasOwn(currencies, word))).toEqual([]);
});

test("no set has a word that the language uses itself", () => {
  const reserved = new Set(["none", "or", "and", "not", "is", "in", "to", "yes", "no", "true", "false", "unknown"]);
  const sets = fields.flatMap(({ at, field }) => words(field.type).map(([word]) => `${at}: ${word}`));
  expect(sets.filter((row) => reserved.has(row.slice(row.lastIndexOf(" ") + 1)))).toEqual([]);
});

test("every kind has a file of its own with its name, and every such file is in the table", () => {
  const shared = ["common", "frame-geometry", "frame-suspension", "index"];
  const files = readdirSync(new URL("../../server/vocabulary/kinds/", import.meta.url)).map((file) =>
    file.replace(/\.ts$/, ""),
  );
  expect(files.filter((file) => !shared.includes(file)).sort()).toEqual([...kinds.keys()].sort());
});

test("every group is one of the headings", () => {
  const known: readonly string[] = fieldGroups;
  expect(fields.filter(({ field }) => field.group !== undefined && !known.includes(field.group))).toEqual([]);
  expect([...kinds.values()].flatMap((kind) => Object.values(kind.fields)).filter((field) => !field.group)).toEqual([]);
});

test("a kind's noun has an article where one is possible, and names the kind", () => {
  const nouns = [...kinds.values()].map((kind) => kind.noun);
  expect(new Set(nouns).size).toBe(nouns.length);
  const uncounted = new Set([
    "bar tape",
    "rim tape",
    "tyre sealant",
    "spokes",
    "nipples",
    "reflectors",
    "steerer spacers",
  ]);
  expect(nouns.filter((noun) => !/^an? /.test(noun) && !uncounted.has(noun))).toEqual([]);
  expect(nouns.filter((noun) => /^a [aeio]/.test(noun) || /^an [^aeio]/.test(noun))).toEqual([]);
});

test("every kind has something essential", () => {
  const without = [...kinds.values()].filter((kind) => !Object.values(kind.fields).some((field) => field.essential));
  expect(without.map((kind) => kind.name).sort()).toEqual([
    "accessory",
    "bar-end-plugs",
    "bell",
    "hose",
    "sealant",
    "tape",
  ]);
});

describe("bounds", () => {
  const bounded = fields.flatMap(({ at, field }) => {
    const { type } = field;
    return type.type === "quantity" || type.type === "count" || type.type === "number" ? [{ at, type }] : [];
  });

  test("the lowest lies below the highest, where both are given", () => {
    const wrong = bounded.filter(
      ({ type }) =>
        type.lowest !== undefined &&
        type.highest !== undefined &&
        !(type.lowest < type.highest || (type.type === "count" && type.lowest === type.highest)),
    );
    expect(wrong).toEqual([]);
  });

  test("a fact of a part that is a count or a torque has both bounds", () => {
    const wrong = bounded.filter(
      ({ at, type }) =>
        at.startsWith("part ") &&
        (type.type === "count" || (type.type === "quantity" && type.dimension === "torque")) &&
        (type.lowest === undefined || type.highest === undefined),
    );
    expect(wrong.map(({ at }) => at)).toEqual([]);
  });

  test("a unit to show is a unit of the dimension", () => {
    const wrong = bounded.filter(({ type }) => {
      if (type.type !== "quantity" || type.unit === undefined) return false;
      return unitBySpelling(type.unit)?.dimension !== type.dimension;
    });
    expect(wrong).toEqual([]);
    expect(bounded.filter(({ type }) => type.type === "quantity" && !(type.dimension in dimensions))).toEqual([]);
  });

  // Every figure is one that the check values name as existing, so that no bound refuses a real part.
  test.each([
    ["part cassette cogs", undefined],
    ["part crankset crank-length", [140, 180]],
    ["part fork steerer-diameter", [22.2, 38.1]],
    ["part stem bar-clamp", [22.2, 35]],
    ["part seatpost post-diameter", [21, 35]],
    ["part rotor diameter", [140, 220]],
    ["part frame chainline", [40.5, 56.5]],
    ["part cassette cog-pitch", [3.5, 5.5]],
    ["part chain outer-width", [5.15, 7.8]],
    ["part hub over-locknut-width", [74, 197]],
    ["standard bead-seat diameter", [110, 642]],
    ["standard bottom-bracket-shell bore", [34.798, 51.3]],
    ["standard bottom-bracket-shell shell-width", [65, 132]],
    ["standard axle width", [74, 197]],
    ["part frame head-angle", [64, 75]],
    ["part handlebar width", [350, 1000]],
  ])("%s admits what exists", (at, range) => {
    const row = fields.find((one) => one.at === at);
    expect(row).toBeDefined();
    if (range === undefined) return;
    const type = row?.field.type as { lowest?: number; highest?: number };
    expect(type.lowest ?? -Infinity).toBeLessThanOrEqual(range[0] ?? 0);
    expect(type.highest ?? Infinity).toBeGreaterThanOrEqual(range[1] ?? 0);
  });
});

test("an omitted torque, mass or price is unknown, never none", () => {
  const silent = fields.filter(
    ({ field }) =>
      field.omitted === "none" &&
      ((field.type.type === "quantity" && field.type.dimension === "torque") || field.type.type === "money"),
  );
  // What was not measured is not in a record.
  const stated = silent.filter(({ at }) => !at.startsWith("record "));
  // A budget is an aim, which a build has or has not.
  expect(stated.filter(({ at }) => !/^build budget\.(?:[a-z-]+\.)?price$/.test(at)).map(({ at }) => at)).toEqual([]);
  expect(stated.length).toBeGreaterThan(1);
});

test("the same name means the same type in every kind", () => {
  const byName = new Map<string, { at: string; type: string }[]>();
  for (const { at, name, field } of fields) {
    if (!at.startsWith("part ")) continue;
    const { type } = field;
    const shape =
      type.type === "quantity" || type.type === "quantities"
        ? `${type.type} ${type.dimension}`
        : type.type === "code" || type.type === "codes"
          ? `code ${type.family}`
          : type.type;
    byName.set(name, [...(byName.get(name) ?? []), { at, type: shape }]);
  }
  // A part is fixed to whatever its kind is fixed to, and has the size by which its kind is known: these names say
  // only that. A crankset has rings, a front derailleur serves a number of them.
  const positional = new Set(["mount", "mounts", "thread", "sits-on", "offers", "size", "rings"]);
  const mixed = [...byName].filter(
    ([name, rows]) => !positional.has(name) && new Set(rows.map((row) => row.type)).size > 1,
  );
  expect(mixed).toEqual([]);
});

test("currencies are ISO 4217 letters that the runtime knows by name", () => {
  const known = new Set(Intl.supportedValuesOf("currency"));
  expect(Object.keys(currencies).filter((letters) => !known.has(letters))).toEqual([]);
  for (const letters of ["GBP", "EUR", "USD", "NOK", "JPY"]) expect(currencies).toHaveProperty(letters);
});
