import { existsSync, realpathSync, statSync } from "node:fs";
import { resolve } from "node:path";
import { libraryOf } from "../../interchange/library.ts";
import { libraryCsv } from "../../interchange/library-csv.ts";
import { libraryJson } from "../../interchange/library-json.ts";
import { headerPlace } from "../../model/declaration.ts";
import { locate } from "../../reports/collect.ts";
import { printable } from "../../reports/printable.ts";
import { counted } from "../../reports/words.ts";
import { reasonOf } from "../../workshop-files/list.ts";
import { fileExtension } from "../../workshop-files/root.ts";
import { createFile, FileNotReplaced, replaceFile } from "../../workshop-files/write.ts";
import type { Invocation } from "../command.ts";
import { exitCodes } from "../exit-codes.ts";
import { readAndLoad } from "../find-build.ts";
import { UsageProblem } from "../problem.ts";

/** Writes the parts and standards of files as a table or as JSON. */
export function run(invocation: Invocation): number {
  const { positionals, value, terminal } = invocation;
  const format = value("format");
  if (value("to")?.endsWith(fileExtension)) {
    throw new UsageProblem(`--to takes a .csv or .json file, and ${printable(value("to") ?? "")} is Ferrule's own.`);
  }
  if (format === undefined) throw new UsageProblem("export needs --format csv or --format json.");
  const workshops = readAndLoad(positionals.length === 0 ? ["."] : positionals, invocation);
  const libraries = workshops.map((workshop) => ({ workshop, library: libraryOf(workshop.engine, workshop.uris) }));
  const entries = libraries.flatMap(({ library }) => library.entries);
  if (entries.length === 0 && libraries.every(({ library }) => library.leftBehind.length === 0)) {
    throw new UsageProblem(`No part is declared in ${positionals.map(printable).join(", ") || "this folder"}.`);
  }
  let behind = 0;
  const leave = (left: (typeof libraries)[number]["library"]["leftBehind"], of: (typeof libraries)[number]): void => {
    for (const { declaration, reason } of left) {
      const { path, range } = locate(of.workshop, headerPlace(declaration));
      terminal.warn(
        `ferrule: ${printable(`${path}:${range.start.line + 1}  ${declaration.name} was left out: ${reason}`)}\n`,
      );
      behind++;
    }
  };
  for (const one of libraries) leave(one.library.leftBehind, one);
  if (format === "json") {
    const language = Math.max(1, ...workshops.map(({ engine }) => engine.languageNumber));
    handOver(`${JSON.stringify(libraryJson(entries, language), undefined, 2)}\n`, invocation);
  } else {
    const table = libraryCsv(entries);
    for (const one of libraries) {
      const own = new Set(one.library.entries.map(({ declaration }) => declaration));
      leave(
        table.leftBehind.filter(({ declaration }) => own.has(declaration)),
        one,
      );
    }
    const standards = entries.filter(({ draft }) => draft.keyword === "standard").length;
    if (standards > 0) {
      terminal.warn(
        `ferrule: ${counted(standards, "standard")} left out: a table holds parts; --format json holds both.\n`,
      );
    }
    handOver(table.text, invocation);
  }
  return behind > 0 ? exitCodes.findings : exitCodes.clean;
}

/** Writes to the file asked for, which is whole at every moment, else to standard output. */
function handOver(text: string, { value, folder, terminal }: Invocation): void {
  const to = value("to");
  if (to === undefined) {
    terminal.write(text);
    return;
  }
  const path = resolve(folder, to);
  try {
    // A link is followed, so that the file itself is replaced.
    if (existsSync(path)) {
      const file = realpathSync(path);
      replaceFile(file, text, statSync(file));
    } else createFile(path, text);
  } catch (error) {
    const reason = error instanceof FileNotReplaced ? error.message : reasonOf(error);
    throw new UsageProblem(`${printable(to)} was not written: ${reason}.`);
  }
}
