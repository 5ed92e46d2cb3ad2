import papaparse from "papaparse";

/** What may stand between cells, the likeliest first. */
export const delimiters = [",", ";", "\t", "|"] as const;
export type Delimiter = (typeof delimiters)[number];

/** One row of a table. */
export interface CsvRow {
  /** The line of the file on which it begins, from 1. */
  readonly line: number;
  readonly cells: readonly string[];
}

/** A row that cannot be told into cells. */
export interface DamagedRow {
  readonly line: number;
  /** The cell that is damaged, from 1. */
  readonly column: number;
  readonly reason: string;
}

export interface CsvTable {
  readonly delimiter: Delimiter;
  readonly headings: readonly string[];
  /** The line of the headings. */
  readonly headingLine: number;
  readonly rows: readonly CsvRow[];
  readonly damaged: readonly DamagedRow[];
}

/** Lines that one quoted cell may reach over; a quote that is not closed by then was never meant to open one. */
export const mostLinesOfACell = 60;

/**
 * Tells a text into rows and cells. A quote that is never closed costs its own line and not the rest of the file.
 * Rows without any content are passed over.
 * @param wanted a delimiter that somebody stated; found out from the text when left out.
 */
export function readCsv(text: string, wanted?: Delimiter): CsvTable | undefined {
  const { lines, declared } = linesOf(text);
  const delimiter = wanted ?? declared ?? findDelimiter(lines);
  const rows: CsvRow[] = [];
  const damaged: DamagedRow[] = [];
  let headings: CsvRow | undefined;
  for (let at = 0; at < lines.length; ) {
    const line = lines[at]!;
    if (line.text.trim() === "") {
      at++;
      continue;
    }
    const record = readRecord(lines, at, delimiter, headings?.cells.length);
    if ("reason" in record) {
      damaged.push({ line: line.number, column: record.column, reason: record.reason });
      at++;
      continue;
    }
    at += record.lines;
    if (record.cells.every((cell) => cell.trim() === "")) continue;
    const row = { line: line.number, cells: record.cells };
    if (headings) rows.push(row);
    else headings = row;
  }
  if (!headings) return undefined;
  return { delimiter, headings: headings.cells, headingLine: headings.line, rows, damaged };
}

/** The table of a text in which U+FFFD stands for bytes that nobody can read: rows with one of them are damaged. */
export function withoutUnreadable(table: CsvTable): CsvTable {
  const rows: CsvRow[] = [];
  const damaged = [...table.damaged];
  for (const row of table.rows) {
    const at = row.cells.findIndex((cell) => cell.includes("\ufffd"));
    if (at < 0) rows.push(row);
    else {
      const reason =
        "the cell holds a character that cannot be read; the list has to be saved in one encoding, as UTF-8";
      damaged.push({ line: row.line, column: at + 1, reason });
    }
  }
  return { ...table, rows, damaged };
}

interface Line {
  readonly number: number;
  readonly text: string;
}

/** The lines of a file; spreadsheets may say in a first line of their own what stands between cells: `sep=;`. */
function linesOf(text: string): { readonly lines: readonly Line[]; readonly declared: Delimiter | undefined } {
  const lines = text.split(/\r\n|\n|\r/).map((line, index) => ({ number: index + 1, text: line }));
  const declared = /^sep=(.)$/i.exec(lines[0]?.text ?? "")?.[1];
  const known = delimiters.find((delimiter) => delimiter === declared);
  return known ? { lines: lines.slice(1), declared: known } : { lines, declared: undefined };
}

type ReadRecord =
  | { readonly cells: readonly string[]; readonly lines: number }
  | { readonly column: number; readonly reason: string };

function readRecord(lines: readonly Line[], at: number, delimiter: Delimiter, columns: number | undefined): ReadRecord {
  let text = lines[at]!.text;
  const first = readOne(text, delimiter);
  if (first.problem === undefined) return { cells: first.cells, lines: 1 };
  for (let further = 1; first.problem === "open" && further < mostLinesOfACell; further++) {
    const next = lines[at + further];
    if (!next) break;
    text += `\n${next.text}`;
    // Only a line with a quote can close one.
    if (!next.text.includes('"')) continue;
    const whole = readOne(text, delimiter);
    if (whole.problem === "open") continue;
    const isWhole = whole.problem === undefined && whole.isOneRow;
    if (isWhole && (columns === undefined || whole.cells.length === columns))
      return { cells: whole.cells, lines: further + 1 };
    break;
  }
  return {
    column: first.column,
    reason:
      first.problem === "open"
        ? "a quote opens here that is never closed; a cell in quotes has one at each end, and a quote inside is doubled"
        : "something follows the closing quote of this cell; a quote inside a cell in quotes is doubled",
  };
}

interface OneRecord {
  readonly cells: readonly string[];
  /** False when line breaks outside quotes make several rows of it. */
  readonly isOneRow: boolean;
  readonly problem: "open" | "trailing" | undefined;
  /** The cell of the problem, from 1. */
  readonly column: number;
}

function readOne(text: string, delimiter: Delimiter): OneRecord {
  const { data, errors } = papaparse.parse<string[]>(text, { delimiter, newline: "\n", skipEmptyLines: false });
  const cells = data.length === 1 ? data[0]! : data.flat();
  const trailing = errors.find(({ code }) => code === "InvalidQuotes");
  const open = errors.find(({ code }) => code === "MissingQuotes");
  const problem = trailing ? "trailing" : open ? "open" : undefined;
  return { cells, isOneRow: data.length === 1, problem, column: Math.max(1, cells.length) };
}

/** The delimiter that tells the first lines into the most cells, as many in each. */
function findDelimiter(lines: readonly Line[]): Delimiter {
  const sample = lines.filter(({ text }) => text.trim() !== "").slice(0, 20);
  let best: { readonly delimiter: Delimiter; readonly score: number } = { delimiter: ",", score: 0 };
  for (const delimiter of delimiters) {
    const counts = sample.map(({ text }) => readOne(text, delimiter).cells.length);
    const [headings = 1] = counts;
    if (headings < 2) continue;
    const alike = counts.filter((count) => count === headings).length / counts.length;
    const score = alike * 100 + Math.min(headings, 50);
    if (score > best.score) best = { delimiter, score };
  }
  return best.delimiter;
}
