import { existsSync, readFileSync, realpathSync, type Stats, statSync } from "node:fs";
import { basename, dirname, extname, join, resolve } from "node:path";
import { fileURLToPath, pathToFileURL } from "node:url";
import { type ColumnMap, readMap, undecidedIn, writeMap } from "../../interchange/column-map.ts";
import { type CsvTable, readCsv, withoutUnreadable } from "../../interchange/csv-table.ts";
import { decode } from "../../interchange/decode.ts";
import { guessColumns } from "../../interchange/guess-columns.ts";
import { type ImportPlan, planImport } from "../../interchange/plan.ts";
import { readLibraryJson } from "../../interchange/read-library-json.ts";
import { ambiguousTitles, type ReadRows, readRows, unmatched } from "../../interchange/rows.ts";
import { largestFile } from "../../model/workshop.ts";
import { importJson } from "../../reports/import-json.ts";
import { guessText, importText, rowsText } from "../../reports/import-text.ts";
import { coloured, plain } from "../../reports/paint.ts";
import { printable } from "../../reports/printable.ts";
import { workshopCurrency } from "../../suggest/currency.ts";
import { reasonOf } from "../../workshop-files/list.ts";
import { readBytes } from "../../workshop-files/read.ts";
import { fileExtension } from "../../workshop-files/root.ts";
import { createFile, FileNotReplaced, replaceFile } from "../../workshop-files/write.ts";
import type { Invocation } from "../command.ts";
import { localDay } from "../day.ts";
import { exitCodes } from "../exit-codes.ts";
import { type LoadedWorkshop, load } from "../load.ts";
import { UsageProblem } from "../problem.ts";
import { readWorkshops } from "../read-workshops.ts";
import { Roots, shownPath } from "../targets.ts";

/** Brings parts from a supplier's list or another workshop's library in. */
export function run(invocation: Invocation): number {
  const { positionals, value, folder } = invocation;
  const [source, ...more] = positionals;
  if (source === undefined || more.length > 0) throw new UsageProblem("import takes one .csv or .json file.");
  const path = resolve(folder, source);
  const bytes = bytesOf(path, source);
  const target = targetOf(value("to"), path, folder);
  const workshop = workshopAround(target, invocation);
  const isJson = extname(path).toLowerCase() === ".json";
  const rows = isJson ? jsonRows(bytes, source) : csvRows(bytes, path, source, workshop, invocation);
  // Nothing was imported: a person has to look through the map first.
  if (!rows) return exitCodes.findings;
  return write(rows, { source, target, workshop, invocation });
}

/** Bytes of a list that is read: what `export` writes of twenty thousand parts as JSON is above what a source may have. */
const mostListBytes = 200 * 1024 * 1024;

function bytesOf(path: string, written: string): Buffer {
  const read = readBytes(path, mostListBytes);
  if (read.state === "read") return read.bytes;
  const reason =
    read.state === "unreadable" ? read.reason : `it has ${read.bytes} bytes; at most ${mostListBytes} are read`;
  throw new UsageProblem(`${printable(written)} cannot be read: ${reason}.`);
}

/** The file that new parts go into: the one asked for, else beside the list under its name. */
function targetOf(to: string | undefined, source: string, folder: string): string {
  const wanted = to === undefined ? join(dirname(source), `${stemOf(source)}${fileExtension}`) : resolve(folder, to);
  if (!wanted.endsWith(fileExtension)) throw new UsageProblem(`--to takes a ${fileExtension} file; ${to} was given.`);
  try {
    // A link is followed, so that the file itself is replaced.
    if (existsSync(wanted)) return realpathSync(wanted);
    return join(realpathSync(dirname(wanted)), basename(wanted));
  } catch (error) {
    throw new UsageProblem(`The folder of ${printable(to ?? wanted)} cannot be read: ${reasonOf(error)}.`);
  }
}

function stemOf(path: string): string {
  return basename(path, extname(path));
}

/** The workshop that the target stands in: what it declares already is compared with. */
function workshopAround(target: string, { folder, terminal }: Invocation): LoadedWorkshop {
  const root = new Roots().of(dirname(target));
  const [read] = readWorkshops([{ root, path: root.folder, isFolder: true }], undefined, folder);
  if (!read) throw new UsageProblem(`${printable(root.folder)} cannot be read.`);
  const loaded = load(read, localDay(), folder);
  const leftOut = [...read.leftOut, ...loaded.leftOut];
  for (const { path, reason } of leftOut) terminal.warn(`ferrule: ${printable(path)} was not read: ${reason}.\n`);
  if (leftOut.some(({ serious }) => serious)) {
    throw new UsageProblem("Nothing was imported: what a file that cannot be read declares is not known.");
  }
  return loaded;
}

function jsonRows(bytes: Buffer, source: string): ReadRows {
  const { text, encoding, isDamaged } = decode(bytes);
  if (isDamaged || encoding === "windows-1252") {
    throw new UsageProblem(`${printable(source)} cannot be read: it is not UTF-8 text; save it as UTF-8.`);
  }
  const read = readLibraryJson(text);
  if (!("reason" in read)) return read;
  throw new UsageProblem(`${printable(source)} is no library that can be read: ${read.reason}.`, [
    "ferrule export --format json writes one; grammar/generated/library.schema.json describes it.",
  ]);
}

function csvRows(
  bytes: Buffer,
  path: string,
  source: string,
  { engine }: LoadedWorkshop,
  invocation: Invocation,
): ReadRows | undefined {
  const { terminal, has } = invocation;
  const { mapPath, map } = mapOf(path, invocation);
  const { text, encoding, isDamaged } = decode(bytes, map?.encoding);
  const read = readCsv(text, map?.delimiter);
  const table = read && isDamaged ? withoutUnreadable(read) : read;
  if (!table) throw new UsageProblem(`${printable(source)} has no row with titles of columns.`);
  if (encoding === "windows-1252" && map?.encoding === undefined) {
    terminal.warn(
      `ferrule: ${printable(source)} is no UTF-8 and was read as Windows-1252; a wrong letter is put right by "encoding" in the map.\n`,
    );
  }
  const guess = map ? undefined : guessColumns(table, stemOf(path), workshopCurrency(engine));
  refuseAmbiguous(table, map ?? guess?.map, source);
  if (map) return readRows(matched(table, map, mapPath, invocation), map, false);
  if (!guess) return undefined;
  if (guess.isCertain) return readRows(table, guess.map, true);
  const shown = shownPath(mapPath, invocation.folder);
  terminal.write(`${rowsText(guess.map, terminal.width)}\n${guessText(guess.columns, terminal.width)}\n\n`);
  const open = undecidedIn(guess.map);
  if (open.length > 0) terminal.write(`To be decided:\n${open.map((one) => `  ${printable(one)}\n`).join("")}\n`);
  if (has("dry-run")) terminal.write(writeMap(guess.map));
  else {
    try {
      createFile(mapPath, writeMap(guess.map));
    } catch (error) {
      const reason = error instanceof FileNotReplaced ? error.message : reasonOf(error);
      throw new UsageProblem(`${printable(shown)} was not written: ${reason}.`);
    }
    terminal.write(
      `Nothing was imported yet. Look through ${printable(shown)}, put right what is not so, and run the same command again.\n`,
    );
  }
  return undefined;
}

/** Of two columns with one title nobody can tell which one names the parts. */
function refuseAmbiguous(table: CsvTable, map: ColumnMap | undefined, source: string): void {
  const [title] = map ? ambiguousTitles(table, map) : [];
  if (title === undefined) return;
  throw new UsageProblem(
    `Several columns of ${printable(source)} are called ${printable(title)}, and parts are put together from one of that name; nothing was imported.`,
    ["Give each column a title of its own."],
  );
}

/** The map that goes with a list: the one asked for, else the one beside it; absent where there is none yet. */
function mapOf(source: string, { value, folder }: Invocation): { readonly mapPath: string; readonly map?: ColumnMap } {
  const asked = value("map");
  const mapPath =
    asked === undefined ? join(dirname(source), `${stemOf(source)}.columns.json`) : resolve(folder, asked);
  const shown = printable(shownPath(mapPath, folder));
  if (!existsSync(mapPath)) return { mapPath };
  let text: string;
  try {
    text = decode(readFileSync(mapPath)).text;
  } catch (error) {
    throw new UsageProblem(`${shown} cannot be read: ${reasonOf(error)}.`);
  }
  const read = readMap(text);
  if ("problems" in read) throw new UsageProblem(`${shown} is no map of columns.`, read.problems.map(printable));
  const open = undecidedIn(read.map);
  if (open.length > 0) {
    throw new UsageProblem(
      `${shown} still has something to be decided, and nothing was imported.`,
      open.map(printable),
    );
  }
  return { mapPath, map: read.map };
}

/** The table itself where it has the map's columns, each of them. */
function matched(table: CsvTable, map: ColumnMap, mapPath: string, { folder }: Invocation): CsvTable {
  const { lost, fresh } = unmatched(table, map);
  if (lost.length === 0 && fresh.length === 0) return table;
  throw new UsageProblem(
    `The columns are not those of ${printable(shownPath(mapPath, folder))}; nothing was imported.`,
    [
      ...lost.map((title) => `The map has ${printable(title)}, which the list has not.`),
      ...fresh.map(
        (title) =>
          `The list has ${printable(title)}, which the map has not: add {"column": ${printable(JSON.stringify(title))}, "fact": "..."} or "ignore": true.`,
      ),
    ],
  );
}

interface Writing {
  readonly source: string;
  readonly target: string;
  readonly workshop: LoadedWorkshop;
  readonly invocation: Invocation;
}

/** A file that would be longer than one is read would be written and never read again. */
function refuseTooLong(texts: ReadonlyMap<string, string>, folder: string): void {
  for (const [file, { length }] of texts) {
    if (length <= largestFile) continue;
    throw new UsageProblem(
      `${printable(shownPath(fileURLToPath(file), folder))} would come to ${length} characters, and at most ${largestFile} of a file are read; nothing was imported.`,
      ["Import the list in several pieces, each --to a file of its own."],
    );
  }
}

function write(rows: ReadRows, { source, target, workshop, invocation }: Writing): number {
  const { terminal, folder, has, value } = invocation;
  const isDry = has("dry-run");
  const { engine } = workshop;
  const before = new Map<string, Stats>();
  const uri = pathToFileURL(target).href;
  const existing = engine.file(uri)?.text;
  const planned = planImport(engine, rows.drafts, has("update"));
  const plan: ImportPlan = { ...planned, rejected: inOrder([...rows.rejected, ...planned.rejected]) };
  const texts = new Map(plan.texts);
  if (plan.addition !== "") {
    const base = texts.get(uri) ?? existing;
    texts.set(uri, base === undefined ? plan.addition : joined(base, plan.addition));
  }
  refuseTooLong(texts, folder);
  const wrote: { file: string; what: string }[] = [];
  for (const [file, text] of texts) {
    const path = fileURLToPath(file);
    const isNew = engine.file(file) === undefined;
    const shown = shownPath(path, folder);
    wrote.push({ file: shown, what: isDry ? "would write" : isNew ? "made" : "added to or changed in" });
    if (isDry) continue;
    try {
      if (isNew) createFile(path, text);
      else {
        before.set(path, statSync(path));
        if (readFileSync(path, "utf8").replace(/^\ufeff/, "") !== engine.file(file)?.text) {
          throw new FileNotReplaced("somebody wrote to it in the meantime");
        }
        replaceFile(path, text, before.get(path)!);
      }
    } catch (error) {
      const reason = error instanceof FileNotReplaced ? error.message : reasonOf(error);
      throw new UsageProblem(`${printable(shown)} was left as it is: ${reason}.`, [
        ...wrote.slice(0, -1).map((done) => `${done.what} ${done.file} before that.`),
        "Once that is put right, the same command does the rest.",
      ]);
    }
  }
  const shownSource = shownPath(resolve(folder, source), folder);
  terminal.write(
    value("format") === "json"
      ? `${JSON.stringify(importJson(plan, wrote, isDry, shownSource), undefined, 2)}\n`
      : importText(plan, wrote, isDry, {
          width: terminal.width,
          paint: terminal.colour ? coloured : plain,
          source: shownSource,
        }),
  );
  return plan.rejected.length > 0 || plan.left.length > 0 ? exitCodes.findings : exitCodes.clean;
}

function inOrder(rejected: ImportPlan["rejected"]): ImportPlan["rejected"] {
  return [...rejected].sort((a, b) => a.at.line - b.at.line || a.at.column - b.at.column);
}

/** Declarations behind a text, one line apart from it, with its line ends. */
function joined(text: string, addition: string): string {
  const lineEnd = /\r\n/.test(text) ? "\r\n" : "\n";
  const end = text.replace(/\s+$/, "");
  return `${end}${end === "" ? "" : `${lineEnd}${lineEnd}`}${addition.replaceAll("\n", lineEnd)}`;
}
