import Ajv2020 from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readCsv } from "../../server/interchange/csv-table.ts";
import type { Draft } from "../../server/interchange/draft.ts";
import { guessColumns } from "../../server/interchange/guess-columns.ts";
import { libraryOf } from "../../server/interchange/library.ts";
import { libraryCsv } from "../../server/interchange/library-csv.ts";
import { type JsonLibrary, libraryJson } from "../../server/interchange/library-json.ts";
import { librarySchema } from "../../server/interchange/library-schema.ts";
import { planImport } from "../../server/interchange/plan.ts";
import { readLibraryJson } from "../../server/interchange/read-library-json.ts";
import { type ReadRows, readRows } from "../../server/interchange/rows.ts";
import { openSamples } from "../samples/workshop.ts";
import { comparable, comparableInTable, emptyWorkshop, libraryText, parts } from "./arbitraries.ts";

const runs = Number(process.env.RUNS ?? 30);
const schema = librarySchema();
const isLibrary = new Ajv2020({ allErrors: true, strict: false }).compile(schema as object);

/** What comes of rows in a workshop that has nothing yet. */
function imported(rows: ReadRows): readonly Draft[] {
  expect(rows.rejected).toEqual([]);
  const engine = emptyWorkshop();
  const plan = planImport(engine, rows.drafts, false);
  expect(plan.rejected).toEqual([]);
  expect(plan.added).toHaveLength(rows.drafts.length);
  return draftsOf(plan.addition);
}

function draftsOf(text: string): readonly Draft[] {
  const { entries, leftBehind } = libraryOf(emptyWorkshop({ "library.ferrule": text }), ["library.ferrule"]);
  expect(leftBehind).toEqual([]);
  return entries.map(({ draft }) => draft);
}

function jsonOf(text: string): string {
  const { entries } = libraryOf(emptyWorkshop({ "library.ferrule": text }), ["library.ferrule"]);
  return JSON.stringify(libraryJson(entries, 1));
}

/** The same library with values alone. */
function withoutWritten(json: string): string {
  const library = JSON.parse(json) as JsonLibrary;
  for (const { facts } of library.parts) for (const fact of Object.values(facts)) delete (fact as Writable).written;
  return JSON.stringify(library);
}

interface Writable {
  written?: string;
}

function csvOf(text: string): string {
  const { entries } = libraryOf(emptyWorkshop({ "library.ferrule": text }), ["library.ferrule"]);
  const table = libraryCsv(entries);
  expect(table.leftBehind).toEqual([]);
  return table.text;
}

function csvRows(text: string): ReadRows {
  const table = readCsv(text.replace(/^\ufeff/, ""));
  if (!table) throw new Error("no table");
  const guess = guessColumns(table, "library", undefined);
  expect(guess.isCertain, JSON.stringify(guess.columns.filter(({ confidence }) => confidence !== "certain"))).toBe(
    true,
  );
  return readRows(table, guess.map, true);
}

function jsonRows(text: string): ReadRows {
  const rows = readLibraryJson(text);
  if ("reason" in rows) throw new Error(rows.reason);
  return rows;
}

describe("what goes out comes back", () => {
  test("as JSON: equal declarations, valid against the schema", () => {
    fc.assert(
      fc.property(parts, (drafts) => {
        const text = libraryText(drafts);
        const json = jsonOf(text);
        expect(isLibrary(JSON.parse(json)), JSON.stringify(isLibrary.errors?.slice(0, 3))).toBe(true);
        expect(imported(jsonRows(json)).map(comparable)).toEqual(draftsOf(text).map(comparable));
      }),
      { numRuns: runs },
    );
  });

  test("as JSON without the written forms: equal values", () => {
    fc.assert(
      fc.property(parts, (drafts) => {
        const text = libraryText(drafts);
        const bare = withoutWritten(jsonOf(text));
        const values = (of: string): unknown => JSON.parse(withoutWritten(jsonOf(of)));
        const back = planImport(emptyWorkshop(), jsonRows(bare).drafts, false);
        expect(back.rejected).toEqual([]);
        expect(values(back.addition)).toEqual(values(text));
      }),
      { numRuns: runs },
    );
  });

  test("as CSV: equal declarations, and no cell that a spreadsheet takes for a formula", () => {
    fc.assert(
      fc.property(parts, (drafts) => {
        const text = libraryText(drafts);
        const csv = csvOf(text);
        for (const row of [...(readCsv(csv.slice(1))?.rows ?? [])]) {
          for (const cell of row.cells)
            if (!/^[-+]?\d+(\.\d+)?$/.test(cell)) expect(cell).not.toMatch(/^[=+\-@\t\r＝＋－＠]/);
        }
        expect(imported(csvRows(csv)).map(comparableInTable)).toEqual(draftsOf(text).map(comparableInTable));
      }),
      { numRuns: runs },
    );
  });

  test("the samples, standards and all, by way of JSON", () => {
    const samples = openSamples();
    const uris = [...samples.workshop.files.values()].filter(({ builtIn }) => !builtIn).map(({ uri }) => uri);
    const { entries } = libraryOf(samples, uris);
    expect(entries.filter(({ draft }) => draft.keyword === "standard").length).toBeGreaterThan(10);
    expect(entries.filter(({ draft }) => draft.from !== undefined).length).toBeGreaterThan(0);
    const library = libraryJson(entries, 1);
    expect(isLibrary(library), JSON.stringify(isLibrary.errors?.slice(0, 3))).toBe(true);
    const back = imported(jsonRows(JSON.stringify(library)));
    const byName = (drafts: readonly Draft[]): unknown =>
      drafts.map(comparable).sort((a, b) => (JSON.stringify(a) < JSON.stringify(b) ? -1 : 1));
    expect(byName(back)).toEqual(byName(entries.map(({ draft }) => draft)));
  });
});

describe("the schema", () => {
  const library = (facts: unknown, kind = "cassette"): unknown => ({
    schemaVersion: 1,
    parts: [{ kind, name: "a.b", facts }],
  });

  test.each([
    ["a value with its unit", { mass: { value: 372, unit: "g" } }],
    ["a text as a file has it", { mass: "372 g", cogs: "11-13-15 t" }],
    ["none", { freehub: { none: true } }],
    ["teeth", { cogs: { value: [11, 13], unit: "t" } }],
    ["an open range", { "lockring-torque": { greatest: 40, unit: "N·m" } }],
  ])("takes %s", (_, facts) => {
    expect(isLibrary(library(facts)), JSON.stringify(isLibrary.errors)).toBe(true);
  });

  test.each([
    ["a number without a unit", { mass: { value: 372 } }],
    ["a unit of something else", { mass: { value: 372, unit: "mm" } }],
    ["a fact that the kind has not", { "crank-length": { value: 170, unit: "mm" } }],
    ["a fact of another shape", { cogs: { value: 11, unit: "t" } }],
    ["a range without ends", { "lockring-torque": { unit: "N·m" } }],
    ["a word that is none of the set", { material: { value: "cheese" } }],
  ])("refuses %s", (_, facts) => {
    expect(isLibrary(library(facts))).toBe(false);
  });

  test("refuses a kind that there is not", () => {
    expect(isLibrary(library({}, "flux-capacitor"))).toBe(false);
  });
});

describe("JSON that is not as it should be", () => {
  const read = (parts: unknown): ReadRows => jsonRows(JSON.stringify({ schemaVersion: 1, parts }));
  const reasons = (parts: unknown): readonly string[] =>
    read(parts).rejected.map(({ at, reason }) => `${at.heading}: ${reason}`);

  test("each entry is refused by itself, and the others are taken", () => {
    const rows = read([
      { kind: "cassette", name: "a.one", facts: { speeds: "12" } },
      { kind: "cassette", name: "a.two", facts: { speeds: "twelve" } },
      { kind: "teapot", name: "a.three", facts: {} },
      "nothing",
    ]);
    expect(rows.drafts.map(({ draft }) => draft.name)).toEqual(["a.one"]);
    expect(rows.rejected.map(({ at }) => at.heading)).toEqual([
      "parts[1] (a.two).facts.speeds",
      "parts[2] (a.three)",
      "parts[3]",
    ]);
  });

  test("a value and a written form that disagree are both named", () => {
    const [reason] = reasons([
      { kind: "cassette", name: "a.b", facts: { mass: { value: 372, unit: "g", written: "0.4 kg" } } },
    ]);
    expect(reason).toContain("372 g");
    expect(reason).toContain("0.4 kg");
    const same = { value: 372, unit: "g", written: "0.372 kg" };
    expect(read([{ kind: "cassette", name: "a.b", facts: { mass: same } }]).rejected).toEqual([]);
  });

  test("nothing gets out of its value", () => {
    for (const sly of ["12 }\npart frame evil.one {", "12 } // x", "12; speeds: 3", '12 "a', "{", "12\u2028x"]) {
      const rows = read([
        { kind: "cassette", name: "a.b", facts: { speeds: { written: sly } } },
        { kind: "cassette", name: "a.c", facts: {}, own: [{ key: "bin", written: sly }] },
        { kind: "cassette", name: `a.d ${sly}`, facts: {} },
      ]);
      expect(rows.drafts).toEqual([]);
      expect(rows.rejected).toHaveLength(3);
    }
  });

  test("a title and a documentation stay what they are", () => {
    const rows = read([
      {
        kind: "cassette",
        name: "a.b",
        title: 'x" {\n}\npart frame evil',
        documentation: "one\n}\npart frame evil.two {",
        facts: {},
      },
    ]);
    const plan = planImport(emptyWorkshop(), rows.drafts, false);
    const engine = emptyWorkshop({ "a.ferrule": plan.addition });
    expect(engine.file("a.ferrule")?.declarations.map(({ key }) => key)).toEqual(["part a.b"]);
  });

  test("another version is refused", () => {
    expect(readLibraryJson('{"schemaVersion": 2, "parts": []}')).toHaveProperty("reason");
    expect(readLibraryJson("{")).toHaveProperty("reason");
  });
});
