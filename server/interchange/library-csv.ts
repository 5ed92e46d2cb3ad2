import papaparse from "papaparse";
import { unitBySpelling } from "../../grammar/units.ts";
import type { FieldType } from "../values/types.ts";
import { kinds } from "../vocabulary/index.ts";
import { fieldsOf } from "./declared.ts";
import type { OwnEntry } from "./draft.ts";
import type { LeftBehind, LibraryEntry } from "./library.ts";
import { protectedCell } from "./spreadsheet-text.ts";

/** A library as a table, and the parts that do not go into one. */
export interface LibraryTable {
  readonly text: string;
  readonly leftBehind: readonly LeftBehind[];
}

interface Column {
  readonly heading: string;
  /** The cells of those parts that state something there: of thousands of parts most state none of a column. */
  readonly cells: ReadonlyMap<LibraryEntry, string>;
}

/** A column of texts that stand for themselves. */
function plainColumn(
  heading: string,
  entries: Iterable<LibraryEntry>,
  text: (entry: LibraryEntry) => string | undefined,
): Column {
  const cells = new Map<LibraryEntry, string>();
  for (const entry of entries) {
    const content = text(entry);
    if (content !== undefined) cells.set(entry, protectedCell(content));
  }
  return { heading, cells };
}

/** Tells spreadsheets that the text is UTF-8. */
const byteOrderMark = "\ufeff";

/**
 * Parts as a table (RFC 4180): one row each, one column for each fact that some part states itself. Where all of a
 * column is in one unit, the unit stands in its title and the cells are numbers. No cell is one that a spreadsheet
 * takes for a formula.
 */
export function libraryCsv(all: readonly LibraryEntry[]): LibraryTable {
  const leftBehind: LeftBehind[] = [];
  const entries = all.filter(({ declaration, draft }) => {
    if (draft.keyword !== "part") return false;
    if (isFlat(draft.own ?? [])) return true;
    leftBehind.push({ declaration, reason: "its own data has a value and a block under one key, or one key twice" });
    return false;
  });
  const columns: readonly Column[] = [
    plainColumn("kind", entries, ({ draft }) => draft.kind),
    plainColumn("name", entries, ({ draft }) => draft.name),
    ...optionalColumn("title", entries, ({ draft }) => draft.title),
    ...optionalColumn("from", entries, ({ draft }) => draft.from),
    ...optionalColumn("documentation", entries, ({ draft }) => draft.documentation),
    ...factColumns(entries),
    ...ownColumns(entries),
  ];
  const headings = columns.map(({ heading }) => heading);
  const table = papaparse.unparse([headings, ...rowsOf(entries, columns)], { newline: "\r\n", quotes: false });
  return { text: `${byteOrderMark}${table}\r\n`, leftBehind };
}

function rowsOf(entries: readonly LibraryEntry[], columns: readonly Column[]): readonly (readonly (string | null)[])[] {
  const rows = new Map(entries.map((entry) => [entry, columns.map((): string | null => null)]));
  columns.forEach(({ cells }, index) => {
    for (const [entry, cell] of cells) {
      const row = rows.get(entry);
      if (row) row[index] = cell;
    }
  });
  return [...rows.values()];
}

function optionalColumn(
  heading: string,
  entries: readonly LibraryEntry[],
  cell: (entry: LibraryEntry) => string | undefined,
): readonly Column[] {
  const column = plainColumn(heading, entries, cell);
  return column.cells.size > 0 ? [column] : [];
}

/** Facts in the order of the vocabulary, those of the first kind first. */
function factColumns(entries: readonly LibraryEntry[]): readonly Column[] {
  const used = new Set(entries.flatMap(({ draft }) => [...draft.facts.keys()]));
  const present = new Set(entries.map(({ draft }) => draft.kind));
  const names = new Set<string>();
  for (const [kind, { fields }] of kinds) {
    if (present.has(kind)) for (const fact of Object.keys(fields)) if (used.has(fact)) names.add(fact);
  }
  const stating = new Map<string, LibraryEntry[]>();
  for (const entry of entries) {
    for (const fact of entry.facts.keys()) {
      const known = stating.get(fact);
      if (known) known.push(entry);
      else stating.set(fact, [entry]);
    }
  }
  return [...names].map((fact) => factColumn(fact, stating.get(fact) ?? []));
}

/** @param entries the parts that state it. */
function factColumn(fact: string, entries: readonly LibraryEntry[]): Column {
  const cells = new Map<LibraryEntry, string>();
  const measures = new Set<string>();
  const numbers = new Map<LibraryEntry, string>();
  for (const entry of entries) {
    const statement = entry.facts.get(fact);
    const type = fieldsOf("part", entry.draft.kind)?.[fact]?.type;
    if (!statement || !type) continue;
    const isText = type.type === "text" && statement.state === "stated";
    const raw = entry.draft.facts.get(fact) ?? "none";
    cells.set(entry, isText ? protectedCell(String(statement.value), true) : protectedCell(raw));
    const measured = isText ? undefined : measure(type, raw);
    measures.add(measured?.of ?? "");
    if (measured) numbers.set(entry, measured.number);
  }
  const [of = ""] = measures;
  if (measures.size !== 1 || of === "") return { heading: fact, cells };
  return { heading: `${fact} (${of})`, cells: numbers };
}

/** A single number with its unit in the spelling of the language, or a sum with its currency. */
function measure(type: FieldType, raw: string): { readonly number: string; readonly of: string } | undefined {
  if (type.type === "money") {
    const [, currency, amount] = /^([A-Z]{3}) (\d+(?:\.\d+)?)$/.exec(raw) ?? [];
    return currency === undefined || amount === undefined ? undefined : { number: amount, of: currency };
  }
  if (type.type !== "quantity") return undefined;
  const [, number, symbol] = /^(-?\d+(?:\.\d+)?) ?(\S+)$/.exec(raw) ?? [];
  if (number === undefined || symbol === undefined) return undefined;
  const unit = unitBySpelling(symbol);
  return unit?.symbol === symbol && unit.dimension === type.dimension ? { number, of: symbol } : undefined;
}

/** Data of the workshop's own, one column for each key; texts without their quotes where all of a column are texts. */
function ownColumns(entries: readonly LibraryEntry[]): readonly Column[] {
  const cells = new Map<string, Map<LibraryEntry, string>>();
  for (const entry of entries) {
    for (const [path, written] of flat(entry.draft.own ?? [], "own")) {
      const column = cells.get(path) ?? new Map<LibraryEntry, string>();
      column.set(entry, written);
      cells.set(path, column);
    }
  }
  return [...cells].map(([path, column]) => {
    const areTexts = [...column.values()].every((written) => /^"(?:[^"\\])*"$/.test(written));
    if (areTexts) return plainColumn(path, column.keys(), (entry) => column.get(entry)?.slice(1, -1));
    return plainColumn(`${path} (as written)`, column.keys(), (entry) => column.get(entry));
  });
}

function flat(own: readonly OwnEntry[], prefix: string): readonly (readonly [string, string])[] {
  return own.flatMap(({ key, written, entries }) => {
    const path = `${prefix}.${key}`;
    return [...(written === undefined ? [] : [[path, written] as const]), ...flat(entries ?? [], path)];
  });
}

/** Whether every key holds one value or one block, so that paths lead back to the same entries. */
function isFlat(own: readonly OwnEntry[]): boolean {
  const keys = new Set(own.map(({ key }) => key));
  return (
    keys.size === own.length &&
    own.every(
      ({ key, written, entries }) =>
        !key.includes(".") &&
        (written === undefined || entries === undefined) &&
        isFlat(entries ?? []) &&
        entries?.length !== 0,
    )
  );
}
