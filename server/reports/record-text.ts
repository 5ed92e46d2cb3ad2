import type { Outcome } from "../model/finding.ts";
import type { BuiltTo } from "../records/built-to.ts";
import type { RecordRow } from "../records/judge.ts";
import type { ReportedRecord } from "./collect.ts";
import type { Paint } from "./paint.ts";
import { paragraph, printable } from "./printable.ts";
import { rowText } from "./record-row.ts";
import { outcomeCounts, outcomeHeadings } from "./words.ts";

/** What is said of a record below its findings: whose and of when it is, how it compares, and the rows asked for. */
export function recordText(
  { declaration, report }: ReportedRecord,
  place: string,
  { width, paint, list }: { readonly width: number; readonly paint: Paint; readonly list: readonly Outcome[] },
): string[] {
  const { counts, rows, builtTo } = report;
  const about = ["date", "occasion", "by"].flatMap((name) => {
    const statement = report.text.about.get(name);
    return statement?.state === "stated" ? [String(statement.value)] : [];
  });
  const serial = declaration.name === "" ? "(no serial)" : printable(declaration.name);
  const of = declaration.of === undefined ? "" : ` of ${printable(declaration.of)}`;
  const said = about.length === 0 ? "" : `  ${printable(about.join(", "))}`;
  const painted = counts.fails > 0 ? paint.error : counts.unknown > 0 ? paint.warning : paint.good;
  return [
    `${paint.strong(`record ${serial}`)}${of}${said}  ${paint.quiet(place)}`,
    ...paragraph(rows.length === 0 ? "nothing was measured" : outcomeCounts(counts), width, "  ").map(painted),
    ...(builtTo?.state === "current" ? paragraph(`built to ${builtTo.today}, as the build stands`, width, "  ") : []),
    ...list.flatMap((outcome) => rowsText(rows, outcome, width, paint)),
  ];
}

/** Which specification a record states, beside the one that the build has today. */
export function specText({ state, written, today }: BuiltTo): string {
  switch (state) {
    case "current":
      return `Built to ${today}, as the build stands.`;
    case "moved-on":
      return `Built to ${printable(written ?? "")}; the build is ${today} today.`;
    case "not-stated":
      return `Compared with the build as it stands, whose specification is ${today}.`;
    case "unreadable":
      return `${printable(written ?? "")} is no digest; the build's specification is ${today} today.`;
  }
}

function rowsText(rows: readonly RecordRow[], outcome: Outcome, width: number, paint: Paint): string[] {
  const heading = `  ${outcomeHeadings[outcome]}:`;
  const listed = rows.filter((row) => row.outcome === outcome);
  if (listed.length === 0) return [`${heading} ${paint.quiet("nothing")}`];
  return [
    heading,
    ...listed.flatMap((row) =>
      paragraph(`${row.comparison.code} (${row.measured.path}): ${rowText(row)}`, width, "      ", "    - "),
    ),
  ];
}
