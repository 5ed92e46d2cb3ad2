import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { readMap } from "../../server/interchange/column-map.ts";
import { readCsv } from "../../server/interchange/csv-table.ts";
import { decode } from "../../server/interchange/decode.ts";
import { guessColumns } from "../../server/interchange/guess-columns.ts";
import { planImport } from "../../server/interchange/plan.ts";
import { readLibraryJson } from "../../server/interchange/read-library-json.ts";
import { type ReadRows, readRows } from "../../server/interchange/rows.ts";
import { emptyWorkshop, trickyText } from "./arbitraries.ts";

const runs = Number(process.env.RUNS ?? 60);

/** Whatever comes in: every row is taken, repeated, known or rejected, and what is written reads back without an error. */
function expectSound(rows: ReadRows): void {
  const plan = planImport(emptyWorkshop(), rows.drafts, false);
  expect(plan.added.length + plan.repeated.length + plan.rejected.length).toBe(rows.drafts.length);
  const engine = emptyWorkshop({ "a.ferrule": plan.addition });
  expect(engine.file("a.ferrule")?.declarations.map(({ name }) => name) ?? []).toEqual(plan.added);
  const errors = engine.findings("a.ferrule").filter(({ severity }) => severity === "error");
  expect(errors.map(({ message }) => message)).toEqual([]);
}

const cell = fc.oneof(
  trickyText,
  fc.string({ unit: "binary", maxLength: 12 }),
  fc.constantFrom(
    "cassette",
    "372 g",
    "12",
    "stepped-driver",
    "GBP 3",
    "11-13-15 t",
    "corrie.x",
    '"',
    "\n",
    "}",
    "none",
  ),
);
const heading = fc.oneof(
  fc.constantFrom(
    "kind",
    "name",
    "title",
    "from",
    "documentation",
    "mass (g)",
    "price",
    "cogs",
    "own.bin",
    "SKU",
    "Weight",
  ),
  cell,
);

describe("no input makes it throw", () => {
  test("any bytes as a list", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 400 }), (bytes) => {
        const table = readCsv(decode(bytes).text);
        if (!table) return;
        const { map } = guessColumns(table, "list", undefined);
        expectSound(readRows(table, map, false));
      }),
      { numRuns: runs },
    );
  });

  test("any cells under any titles, quoted or not", () => {
    const rows = fc.tuple(
      fc.array(heading, { minLength: 1, maxLength: 6 }),
      fc.array(fc.array(cell, { maxLength: 7 }), { maxLength: 6 }),
    );
    fc.assert(
      fc.property(
        rows,
        fc.constantFrom(",", ";", "\t"),
        fc.boolean(),
        fc.boolean(),
        ([titles, lines], sign, quoted, isOwn) => {
          const one = (text: string): string => (quoted ? `"${text.replaceAll('"', '""')}"` : text);
          const text = [titles, ...lines].map((cells) => cells.map(one).join(sign)).join("\n");
          const table = readCsv(text);
          if (!table) return;
          const guess = guessColumns(table, "cassettes", "GBP");
          expectSound(readRows(table, guess.map, isOwn && guess.isCertain));
        },
      ),
      { numRuns: runs * 3 },
    );
  });

  test("any JSON as a library, and any text", () => {
    const facts = fc.dictionary(
      fc.constantFrom("mass", "cogs", "freehub", "note", "price", "__proto__", "x"),
      fc.oneof(fc.jsonValue(), fc.record({ value: fc.jsonValue(), unit: cell }), fc.record({ written: cell })),
    );
    const part = fc.record(
      {
        kind: fc.constantFrom("cassette", "chain", "x"),
        name: cell,
        title: cell,
        documentation: cell,
        facts,
        own: fc.oneof(fc.jsonValue(), fc.array(fc.record({ key: cell, written: cell }))),
      },
      { requiredKeys: [] },
    );
    const library = fc.record({
      schemaVersion: fc.constant(1),
      parts: fc.array(fc.oneof(part, fc.jsonValue()), { maxLength: 4 }),
    });
    fc.assert(
      fc.property(
        fc.oneof(
          library.map((data) => JSON.stringify(data)),
          fc.json(),
          fc.string(),
        ),
        (text) => {
          const rows = readLibraryJson(text);
          if (!("reason" in rows)) expectSound(rows);
        },
      ),
      { numRuns: runs * 3 },
    );
  });

  test("any JSON as a map of columns", () => {
    fc.assert(
      fc.property(fc.oneof(fc.json(), fc.string()), (text) => {
        const read = readMap(text);
        expect("map" in read || read.problems.length > 0).toBe(true);
      }),
      { numRuns: runs * 3 },
    );
  });
});
