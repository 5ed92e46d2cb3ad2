import { libraryOf } from "../../interchange/library.ts";
import { libraryCsv } from "../../interchange/library-csv.ts";
import { libraryJson } from "../../interchange/library-json.ts";
import { headerPlace } from "../../model/declaration.ts";
import { locate } from "../../reports/collect.ts";
import { printable } from "../../reports/printable.ts";
import { counted } from "../../reports/words.ts";
import type { Invocation } from "../commands.ts";
import { exitCodes } from "../exit-codes.ts";
import { readAndLoad } from "../find-build.ts";
import { UsageProblem } from "../problem.ts";

/** Writes the parts and standards of files as a table or as JSON. */
export function run(invocation: Invocation): number {
  const { positionals, value, terminal } = invocation;
  const format = value("format");
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
    terminal.write(`${JSON.stringify(libraryJson(entries, language), undefined, 2)}\n`);
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
    terminal.write(table.text);
  }
  return behind > 0 ? exitCodes.findings : exitCodes.clean;
}
