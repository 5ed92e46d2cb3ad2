import { describe, expect, test } from "vitest";
import type { ColumnMap } from "../../server/interchange/column-map.ts";
import { type Delimiter, readCsv } from "../../server/interchange/csv-table.ts";
import { decode } from "../../server/interchange/decode.ts";
import { guessColumns } from "../../server/interchange/guess-columns.ts";
import { libraryOf } from "../../server/interchange/library.ts";
import { type ImportPlan, planImport } from "../../server/interchange/plan.ts";
import { type PlacedDraft, readRows } from "../../server/interchange/rows.ts";
import { emptyWorkshop } from "./arbitraries.ts";
import { damagedList } from "./damaged-list.ts";

interface Imported {
  readonly drafts: readonly PlacedDraft[];
  readonly plan: ImportPlan;
  readonly map: ColumnMap;
}

/** Imports bytes as the command does: the map is guessed, and what is open in it is decided. */
function importBytes(bytes: Uint8Array, decisions: (map: ColumnMap) => ColumnMap = (map) => map): Imported {
  const table = readCsv(decode(bytes).text);
  if (!table) throw new Error("no table");
  const map = decisions(guessColumns(table, "gill-list", "GBP").map);
  const rows = readRows(table, map, false);
  const plan = planImport(emptyWorkshop(), rows.drafts, false);
  const rejected = [...rows.rejected, ...plan.rejected].sort((a, b) => a.at.line - b.at.line);
  return { drafts: rows.drafts, plan: { ...plan, rejected }, map };
}

function expectAll({ drafts, plan }: Imported, { sound, damaged, repeated }: ReturnType<typeof damagedList>): void {
  const byLine = [...damaged].sort((a, b) => a.line - b.line);
  expect(plan.rejected.map(({ at }) => [at.line, at.column])).toEqual(byLine.map(({ line, column }) => [line, column]));
  for (const [index, { reason, what }] of byLine.entries()) {
    expect(plan.rejected[index]?.reason, what).toMatch(reason);
  }
  expect(plan.repeated.map(({ at }) => at.line)).toEqual(repeated);
  expect([...plan.added].sort()).toEqual([...sound.keys()].sort());
  const engine = emptyWorkshop({ "list.ferrule": plan.addition });
  const { entries, leftBehind } = libraryOf(engine, ["list.ferrule"]);
  expect(leftBehind).toEqual([]);
  const stated = entries.map(({ draft }) => [draft.name, { mass: draft.facts.get("mass"), title: draft.title }]);
  expect(Object.fromEntries(stated)).toEqual(Object.fromEntries(sound));
  // Next time, all of it is there already.
  const again = planImport(engine, drafts, false);
  expect([again.added, again.left, again.same]).toEqual([[], [], sound.size]);
  // What comes in is as the formatter leaves it, and checks without an error of its own.
  const errors = engine.findings("list.ferrule").filter(({ severity }) => severity === "error");
  expect(errors.map(({ message }) => message)).toEqual([]);
}

describe("a supplier's list with every kind of damage", () => {
  test("5,000 rows: each sound one comes in, each other is named with line, column and reason", () => {
    const list = damagedList(5000, ",", false);
    expect(new Set(list.damaged.map(({ what }) => what)).size).toBe(32);
    expect(list.damaged.length).toBeGreaterThan(1000);
    const started = performance.now();
    expectAll(importBytes(new TextEncoder().encode(list.text)), list);
    expect(performance.now() - started).toBeLessThan(15_000);
  });

  const latin1 = (text: string): Uint8Array =>
    Uint8Array.from(text.replaceAll("–", "-").replaceAll("€", "EUR"), (c) => c.charCodeAt(0));
  const utf16 = (text: string, isBig: boolean, hasMark: boolean): Uint8Array => {
    const bytes = Buffer.from(`${hasMark ? "\ufeff" : ""}${text}`, "utf16le");
    return isBig ? bytes.swap16() : bytes;
  };

  test.each<[string, Delimiter, boolean, (text: string) => Uint8Array]>([
    ["UTF-8 with a mark, semicolons, decimal commas", ";", true, (text) => new TextEncoder().encode(`\ufeff${text}`)],
    ["UTF-16 little-endian with a mark, tabs", "\t", false, (text) => utf16(text, false, true)],
    ["UTF-16 little-endian without a mark", ",", false, (text) => utf16(text, false, false)],
    ["UTF-16 big-endian with a mark, bars, decimal commas", "|", true, (text) => utf16(text, true, true)],
    ["line feeds alone", ",", false, (text) => new TextEncoder().encode(text.replaceAll("\r\n", "\n"))],
    ["carriage returns alone", ",", false, (text) => new TextEncoder().encode(text.replaceAll("\r\n", "\r"))],
  ])("%s", (_, delimiter, comma, encode) => {
    const list = damagedList(600, delimiter, comma, 11);
    expectAll(importBytes(encode(list.text)), list);
  });

  test("what stands between cells may be said in the first line", () => {
    const table = readCsv("sep=;\r\nSKU;Name, long\r\nA;b,c,d\r\n");
    expect(table).toMatchObject({ delimiter: ";", headings: ["SKU", "Name, long"], headingLine: 2 });
    expect(table?.rows).toEqual([{ line: 3, cells: ["A", "b,c,d"] }]);
  });

  test("Latin-1 is told from UTF-8, and its letters are right", () => {
    const text = "Kind,SKU,Name,Weight (g)\r\nSaddles,S-1,Rückgrat é,240\r\n";
    const { plan } = importBytes(latin1(text));
    expect(plan.addition).toContain("Rückgrat é");
    expect(decode(latin1(text)).encoding).toBe("windows-1252");
    expect(decode(new TextEncoder().encode(text)).encoding).toBe("utf-8");
  });
});

describe("what columns are guessed to hold", () => {
  const guess = (text: string, stem = "cassettes", currency?: string) => {
    const table = readCsv(text);
    if (!table) throw new Error("no table");
    return guessColumns(table, stem, currency);
  };
  const fact = (text: string, title: string, stem?: string, currency?: string) =>
    guess(text, stem, currency).map.columns.find(({ column }) => column === title);

  test.each([
    ["Weight (g)", { fact: "mass", unit: "g" }],
    ["Weight [kg]", { fact: "mass", unit: "kg" }],
    ["weight_g", { fact: "mass", unit: "g" }],
    ["Mass, oz", { fact: "mass", unit: "oz" }],
    ["RRP (£)", { fact: "price", currency: "GBP" }],
    ["Price EUR", { fact: "price", currency: "EUR" }],
    ["Brand", { fact: "maker" }],
    ["Barcode", { fact: "own.barcode" }],
  ])("%s", (title, meaning) => {
    expect(fact(`SKU;${title}\nA-1;12\n`, title)).toEqual({ column: title, ...meaning });
  });

  test("a bare number without a unit is for a person to decide", () => {
    expect(fact("SKU,Weight\nA-1,372\n", "Weight")).toEqual({ column: "Weight", fact: "mass", unit: "?" });
    expect(fact("SKU,Weight\nA-1,372 g\n", "Weight")).toEqual({ column: "Weight", fact: "mass" });
  });

  test("a bare sum takes the workshop's currency, where it has one", () => {
    expect(fact("SKU,RRP\nA-1,12.50\n", "RRP", undefined, "EUR")).toEqual({
      column: "RRP",
      fact: "price",
      currency: "EUR",
    });
    expect(fact("SKU,RRP\nA-1,12.50\n", "RRP")).toEqual({ column: "RRP", fact: "price", currency: "?" });
  });

  test("a trade price is not taken for the price that the workshop sells at", () => {
    expect(fact("SKU,Trade price\nA-1,12.50\n", "Trade price", undefined, "GBP")).toEqual({
      column: "Trade price",
      fact: "?",
      perhaps: ["price"],
    });
  });

  test("two columns for one fact leave one to be decided", () => {
    const { map } = guess("SKU,Weight (g),Mass (g)\nA-1,372,370\n");
    expect(map.columns.filter(({ fact: one }) => one === "mass")).toHaveLength(1);
    expect(map.columns.filter(({ fact: one }) => one === "?")).toHaveLength(1);
  });

  test("the kind comes from a column, else from the file's name, else it is open", () => {
    expect(guess("Type,SKU\nCassettes,1\nchain rings,2\n").map).toMatchObject({
      kind: "{Type}",
      kinds: { Cassettes: "cassette", "chain rings": "chainring" },
    });
    expect(guess("SKU,Weight (g)\n1,2\n", "gill-stems-2026").map.kind).toBe("stem");
    expect(guess("SKU,Weight (g)\n1,2\n", "march").map.kind).toBe("?");
  });

  test("wheels are wheels that are bought whole, with the facts of hub and rim", () => {
    const { map } = guess("SKU,Axle,Bead seat,Freehub\nW-1,12x142,622,fine-splined-11t\n", "beck-wheels");
    expect(map.kind).toBe("built-wheel");
    expect(map.columns.map(({ fact }) => fact)).toEqual(["supplier-code", "axle", "bead-seat", "freehub"]);
  });

  test("decimals are told from all numbers together, and left open where a slip would be a thousandfold", () => {
    expect(guess("SKU;Weight (g)\nA;12,5\nB;1.480\n").map.decimals).toBe("comma");
    expect(guess('SKU,Weight (g)\nA,12.5\nB,"1,480"\n').map.decimals).toBe("point");
    expect(guess('SKU,Weight (g)\nA,"1,480"\n').map.decimals).toBe("?");
    expect(guess("SKU;Weight (g)\nA;1.480\n").map.decimals).toBe("?");
    expect(guess("SKU;Weight (g)\nA;12,5\nB;12.5\n").map.decimals).toBe("?");
  });
});
