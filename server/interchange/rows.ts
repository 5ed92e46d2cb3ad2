import { excerpt, quote } from "../values/problems.ts";
import type { Field } from "../vocabulary/define.ts";
import { kindByName } from "../vocabulary/index.ts";
import { type CellStyle, isOneValue, readCell } from "./cells.ts";
import { type ColumnMap, type MappedColumn, titlesIn } from "./column-map.ts";
import type { CsvRow, CsvTable } from "./csv-table.ts";
import { type Draft, isName, type OwnEntry } from "./draft.ts";
import { slug } from "./heading.ts";
import { isEmptyCell, unprotectedCell } from "./spreadsheet-text.ts";
import { doubtOf } from "./unlikely-values.ts";

/** Where in the imported file something stands. */
export interface ImportPlace {
  /** From 1; 0 in a JSON file. */
  readonly line: number;
  /** From 1; 0 for the whole row. */
  readonly column: number;
  /** The title of the column; empty for the whole row. In a JSON file, where it stands, such as `parts[3].facts.mass`. */
  readonly heading: string;
}

/** A row, or an entry of a JSON file, that is not imported, and why. */
export interface Rejected {
  readonly at: ImportPlace;
  readonly reason: string;
}

/** A draft with where it came from. */
export interface PlacedDraft {
  readonly draft: Draft;
  readonly at: ImportPlace;
  /** Where each fact stands. */
  readonly columns?: ReadonlyMap<string, ImportPlace>;
}

export interface ReadRows {
  readonly drafts: readonly PlacedDraft[];
  readonly rejected: readonly Rejected[];
}

/** Titles that the map needs and the table has not, and titles of the table that the map does not mention. */
export function unmatched(table: CsvTable, map: ColumnMap): { readonly lost: string[]; readonly fresh: string[] } {
  const templates = [map.kind, map.name, map.title, map.from, map.documentation];
  const named = [
    ...templates.flatMap((template) => titlesIn(template ?? "")),
    ...map.columns.map(({ column }) => column),
  ];
  const titles = table.headings.map((title) => title.trim());
  const known = new Set(named.map((title) => title.trim()));
  return {
    lost: [...known].filter((title) => !titles.includes(title)),
    fresh: titles.filter((title, index) => !known.has(title) && !isColumnEmpty(table, index)),
  };
}

/** Titles that a map's names, kinds and the like are put together from, and that stand over several columns. */
export function ambiguousTitles(table: CsvTable, map: ColumnMap): readonly string[] {
  const templates = [map.kind, map.name, map.title, map.from, map.documentation];
  const titles = table.headings.map((title) => title.trim());
  const named = new Set(templates.flatMap((template) => titlesIn(template ?? "")).map((title) => title.trim()));
  return [...named].filter((title) => titles.indexOf(title) !== titles.lastIndexOf(title));
}

function isColumnEmpty(table: CsvTable, column: number): boolean {
  return table.rows.every(({ cells }) => isEmptyCell(cells[column] ?? ""));
}

/**
 * Turns the rows of a table into drafts. A row is taken whole or not at all; every row that is not is named with the
 * cell that stands in its way.
 * @param isOwn true for a table that our own export wrote: texts are kept to the last blank.
 */
export function readRows(table: CsvTable, map: ColumnMap, isOwn: boolean): ReadRows {
  const reader = new RowReader(table, map, isOwn);
  const drafts: PlacedDraft[] = [];
  const rejected: Rejected[] = table.damaged.map(({ line, column, reason }) => ({
    at: { line, column, heading: table.headings[column - 1] ?? "" },
    reason,
  }));
  for (const row of table.rows) {
    const read = reader.read(row);
    if ("draft" in read) drafts.push(read);
    else rejected.push(read);
  }
  return { drafts, rejected };
}

class Rejection extends Error {
  readonly column: number;
  constructor(column: number, reason: string) {
    super(reason);
    this.column = column;
  }
}

class RowReader {
  readonly #table: CsvTable;
  readonly #map: ColumnMap;
  readonly #isOwn: boolean;
  /** Positions of titles: a title that stands twice in the table stands twice in the map. */
  readonly #places = new Map<string, number[]>();
  readonly #columns: readonly { readonly mapped: MappedColumn; readonly column: number }[];
  /** Kinds by the map's words for them, as they stand there and in small letters. */
  readonly #kinds: ReadonlyMap<string, string>;

  constructor(table: CsvTable, map: ColumnMap, isOwn: boolean) {
    this.#table = table;
    this.#map = map;
    this.#isOwn = isOwn;
    table.headings.forEach((title, column) => {
      const places = this.#places.get(title.trim()) ?? [];
      places.push(column);
      this.#places.set(title.trim(), places);
    });
    const kinds = Object.entries(map.kinds ?? {}).map(([word, kind]) => [word.trim(), kind] as const);
    this.#kinds = new Map([...kinds.map(([word, kind]) => [word.toLowerCase(), kind] as const), ...kinds]);
    const used = new Map<string, number>();
    this.#columns = map.columns.flatMap((mapped) => {
      const title = mapped.column.trim();
      const nth = used.get(title) ?? 0;
      used.set(title, nth + 1);
      const column = this.#places.get(title)?.[nth];
      return column === undefined || mapped.fact === undefined || mapped.ignore ? [] : [{ mapped, column }];
    });
  }

  read(row: CsvRow): PlacedDraft | Rejected {
    try {
      return this.#read(row);
    } catch (error) {
      if (!(error instanceof Rejection)) throw error;
      return { at: this.#place(row, error.column), reason: error.message };
    }
  }

  #place({ line }: CsvRow, column: number): ImportPlace {
    return { line, column: column + 1, heading: column < 0 ? "" : (this.#table.headings[column] ?? "") };
  }

  #read(row: CsvRow): PlacedDraft {
    this.#refuseTitles(row);
    this.#refuseRagged(row);
    const kind = this.#kind(row);
    const name = this.#name(row);
    const fields = kindByName(kind)!.fields;
    const facts = new Map<string, string>();
    const own: OwnEntry[] = [];
    const columns = new Map<string, ImportPlace>();
    for (const { mapped, column } of this.#columns) {
      const cell = row.cells[column] ?? "";
      if (isEmptyCell(cell)) continue;
      const fact = mapped.fact!;
      if (fact.startsWith("own.")) {
        addOwn(own, fact.slice("own.".length).split("."), this.#ownValue(cell, mapped, column));
        continue;
      }
      const field = Object.hasOwn(fields, fact) ? fields[fact] : undefined;
      if (!field) throw new Rejection(column, `${kindByName(kind)!.noun} has no fact ${fact}; leave the cell empty`);
      if (facts.has(fact)) throw new Rejection(column, `${fact} is stated by another column of the row already`);
      facts.set(fact, this.#value(field, fact, mapped, cell, column));
      columns.set(fact, this.#place(row, column));
    }
    this.#refuseRangeOfCogs(kind, facts, columns);
    this.#refuseOtherSpeeds(kind, facts, columns);
    const title = this.#text(row, this.#map.title);
    const from = this.#from(row);
    const documentation = this.#text(row, this.#map.documentation);
    const draft: Draft = {
      keyword: "part",
      kind,
      name,
      ...(title === undefined ? {} : { title }),
      ...(from === undefined ? {} : { from }),
      ...(documentation === undefined ? {} : { documentation: documentation.replace(/\r\n?/g, "\n") }),
      facts,
      ...(own.length > 0 ? { own } : {}),
    };
    return { draft, at: this.#place(row, -1), columns };
  }

  /** Lists put together from several have their titles in the middle as well. */
  #refuseTitles({ cells }: CsvRow): void {
    const { headings } = this.#table;
    const isTitle = (cell: string, at: number): boolean =>
      cell.trim().toLowerCase() === (headings[at] ?? "").trim().toLowerCase();
    if (cells.every(isTitle)) throw new Rejection(-1, "the row holds the titles of the columns once more, and no part");
  }

  #refuseRagged({ cells }: CsvRow): void {
    const { length } = this.#table.headings;
    if (cells.length < length) {
      const has = `${cells.length} ${cells.length === 1 ? "cell" : "cells"}`;
      throw new Rejection(cells.length - 1, `the row has ${has}, and there are ${length} titles`);
    }
    if (cells.length > length && cells.slice(length).some((cell) => cell.trim() !== "")) {
      throw new Rejection(
        length,
        `the row has ${cells.length} cells, and there are ${length} titles; a cell that holds the sign between cells stands in quotes`,
      );
    }
  }

  #kind(row: CsvRow): string {
    const { kind: template } = this.#map;
    const word = this.#filled(row, template, "kind of part").trim();
    const kind = this.#kinds.get(word) ?? this.#kinds.get(word.toLowerCase()) ?? word.toLowerCase();
    if (kindByName(kind)) return kind;
    throw new Rejection(
      this.#columnOf(template),
      `${excerpt(word)} is not a kind of part; the map's kinds may say which it stands for`,
    );
  }

  #name(row: CsvRow): string {
    const { name: template } = this.#map;
    const filled = this.#filled(row, template, "part's name");
    if (this.#isOwn) {
      if (isName(filled)) return filled;
      throw new Rejection(this.#columnOf(template), `${excerpt(filled)} cannot be the name of a part`);
    }
    for (const title of titlesIn(template)) {
      const column = this.#places.get(title.trim())?.[0] ?? -1;
      const cell = row.cells[column] ?? "";
      if (slug(cell) !== "") continue;
      // Without it, all such rows would share the name that is left.
      throw new Rejection(
        column,
        `no name can be made of ${excerpt(cell.trim())}, which has neither letters nor digits`,
      );
    }
    const name = slug(filled);
    if (isName(name)) return name;
    throw new Rejection(this.#columnOf(template), `no name can be made of ${excerpt(filled)}`);
  }

  #from(row: CsvRow): string | undefined {
    const { from: template } = this.#map;
    const from = this.#text(row, template);
    if (from === undefined || isName(from)) return from;
    throw new Rejection(this.#columnOf(template ?? ""), `${excerpt(from)} cannot be the name of a part`);
  }

  /** A template with its cells put in, each of which has to say something. */
  #filled(row: CsvRow, template: string, what: string): string {
    return template.replace(/\{([^{}]*)\}/g, (_, title: string) => {
      const column = this.#places.get(title.trim())?.[0] ?? -1;
      const cell = row.cells[column] ?? "";
      if (isEmptyCell(cell)) throw new Rejection(column, `the ${what} is made from this cell, which is empty`);
      return this.#trimmed(unprotectedCell(cell));
    });
  }

  /** A template with its cells put in; `undefined` where all of them are empty. */
  #text(row: CsvRow, template: string | undefined): string | undefined {
    if (template === undefined) return undefined;
    let isSaid = titlesIn(template).length === 0;
    const text = template.replace(/\{([^{}]*)\}/g, (_, title: string) => {
      const cell = row.cells[this.#places.get(title.trim())?.[0] ?? -1] ?? "";
      if (isEmptyCell(cell)) return "";
      isSaid = true;
      return this.#trimmed(unprotectedCell(cell));
    });
    return isSaid ? this.#trimmed(text) : undefined;
  }

  #trimmed(text: string): string {
    return this.#isOwn ? text : text.trim();
  }

  #columnOf(template: string): number {
    const [title] = titlesIn(template);
    return title === undefined ? -1 : (this.#places.get(title.trim())?.[0] ?? -1);
  }

  #value(field: Field, fact: string, mapped: MappedColumn, cell: string, column: number): string {
    const style: CellStyle = {
      decimals: this.#map.decimals === "comma" ? "comma" : "point",
      field: fact,
      ...(mapped.unit === undefined ? {} : { unit: mapped.unit }),
      ...(mapped.currency === undefined ? {} : { currency: mapped.currency }),
    };
    const isText = field.type.type === "text";
    if (isText && cell.trim() === "none") return "none";
    const read = readCell(field.type, this.#trimmed(unprotectedCell(cell, isText)), style);
    if ("problem" in read) throw new Rejection(column, read.problem);
    const doubt = this.#isOwn ? undefined : doubtOf(fact, field.type, read.written);
    if (doubt !== undefined) throw new Rejection(column, doubt);
    return read.written;
  }

  /** Data of the workshop's own: a text, unless the map says that it stands there as in a file. */
  #ownValue(cell: string, { asWritten }: MappedColumn, column: number): string {
    const text = this.#trimmed(unprotectedCell(cell));
    if (!asWritten) return quote(text);
    if (!isOneValue(text)) throw new Rejection(column, `${excerpt(text)} cannot be read as a value`);
    return text;
  }

  /** `11-34` in a list of cassettes is the smallest and the largest cog, and not all there are. */
  #refuseRangeOfCogs(
    kind: string,
    facts: ReadonlyMap<string, string>,
    columns: ReadonlyMap<string, ImportPlace>,
  ): void {
    const cogs = facts.get("cogs");
    if (kind !== "cassette" || this.#isOwn || cogs === undefined || cogs.split("-").length !== 2) return;
    throw new Rejection(
      (columns.get("cogs")?.column ?? 0) - 1,
      `${excerpt(cogs.replace(/ t$/, ""))} names the smallest and the largest cog; cogs lists every one, such as 11-13-15-18-22-27-34`,
    );
  }

  /** A row that counts other cogs than it lists contradicts itself, and nobody can tell which is right. */
  #refuseOtherSpeeds(
    kind: string,
    facts: ReadonlyMap<string, string>,
    columns: ReadonlyMap<string, ImportPlace>,
  ): void {
    const speeds = facts.get("speeds");
    const cogs = facts.get("cogs")?.split("-").length;
    if (kind !== "cassette" || this.#isOwn || speeds === undefined || speeds === "none" || cogs === undefined) return;
    if (facts.get("cogs") === "none" || Number(speeds) === cogs) return;
    throw new Rejection(
      (columns.get("speeds")?.column ?? 0) - 1,
      `speeds is ${speeds}, and cogs lists ${cogs}; only one of them can be right`,
    );
  }
}

function addOwn(into: OwnEntry[], [key = "", ...rest]: readonly string[], written: string): void {
  if (rest.length === 0) {
    into.push({ key, written });
    return;
  }
  const at = into.findIndex((entry) => entry.key === key && entry.entries);
  const group = at < 0 ? { key, entries: [] as OwnEntry[] } : into[at]!;
  const entries = [...(group.entries ?? [])];
  addOwn(entries, rest, written);
  if (at < 0) into.push({ ...group, entries });
  else into[at] = { ...group, entries };
}
