import { comparedWith, type RecordRow, workingOf } from "../records/judge.ts";
import type { RecordReport } from "../records/report.ts";
import { locate, type ReportedWorkshop } from "./collect.ts";
import type { Paint } from "./paint.ts";
import { paragraph, printable } from "./printable.ts";
import { specJson } from "./record-json.ts";
import { rowText } from "./record-row.ts";
import { specText } from "./record-text.ts";
import { placeText } from "./text.ts";
import { outcomeHeadings } from "./words.ts";

/** A record, or what was compared of one measurement in it. */
export interface ExplainedRecord {
  readonly report: RecordReport;
  /** The measurement, or the code of a comparison; empty for the whole record. */
  readonly path: string;
  readonly rows: readonly RecordRow[];
}

/** What came of a record, or of one measurement in it; `undefined` when nothing of that name was measured. */
export function explainRecord(report: RecordReport, path: string): ExplainedRecord | undefined {
  if (path === "") return { report, path, rows: report.rows };
  const rows = report.rows.filter(
    ({ comparison, measured, beside }) => measured.path === path || beside?.path === path || comparison.code === path,
  );
  return rows.length === 0 ? undefined : { report, path, rows };
}

/** Everything of a record that can be explained, for "did you mean". */
export function explainableMeasurements({ rows }: RecordReport): readonly string[] {
  const paths = rows.flatMap(({ measured, beside, comparison }) => [
    measured.path,
    ...(beside ? [beside.path] : []),
    comparison.code,
  ]);
  return [...new Set(paths)];
}

interface Page {
  readonly workshop: ReportedWorkshop;
  readonly width: number;
  readonly paint: Paint;
}

/** An explanation as a person reads it: every comparison with what was measured, what was expected, and the working. */
export function explainedRecordText({ report, path, rows }: ExplainedRecord, page: Page): string {
  const { paint, width } = page;
  const { declaration, builtTo } = report;
  const of = declaration.of === undefined ? "" : ` of ${printable(declaration.of)}`;
  const lines = [paint.strong(path === "" ? `record ${printable(declaration.name)}${of}` : path)];
  if (path === "" && builtTo) lines.push(...paragraph(specText(builtTo), width, "  ", ""));
  for (const row of rows) lines.push("", ...rowLines(row, report, page));
  if (rows.length === 0) lines.push("", "Nothing that was measured can be compared.");
  return `${lines.join("\n")}\n`;
}

function rowLines(row: RecordRow, { bike }: RecordReport, { workshop, width, paint }: Page): string[] {
  const { comparison, measured, expected, beside } = row;
  const line = (text: string): string[] => paragraph(text, width, "    ", "  ");
  const facts = bike ? comparedWith(row, bike.reader) : [];
  const steps = bike ? workingOf(row, bike) : [];
  return [
    `${paint.strong(comparison.code)}  ${comparison.title}`,
    ...line(`${outcomeHeadings[row.outcome]}: ${rowText(row)}`),
    ...[measured, ...(beside ? [beside] : [])].flatMap(({ path, written, place }) =>
      line(`Measured: ${path}: ${written} (${placeText(locate(workshop, place))})`),
    ),
    ...(expected === undefined ? [] : line(`Expected: ${expected}`)),
    ...facts.flatMap(({ path, written, subject, place }) =>
      line(`From: ${path}: ${written} (${subject}, ${placeText(locate(workshop, place))})`),
    ),
    ...steps.flatMap((step) => line(`Working: ${step}`)),
    ...line(`Source: ${comparison.source}`),
  ];
}

/** What `explain FILE#SERIAL --format json` writes; positions as in the report of `check`. */
export function explainedRecordJson({ report, path, rows }: ExplainedRecord, workshop: ReportedWorkshop) {
  const { declaration, builtTo, bike, counts } = report;
  const fact = ({ path: named, written, subject, place }: RecordRow["measured"]) => {
    const { path: file, range } = locate(workshop, place);
    return { path: named, written, subject, file, range };
  };
  return {
    serial: declaration.name,
    ...(declaration.of === undefined ? {} : { build: declaration.of }),
    ...(builtTo ? { spec: specJson(builtTo) } : {}),
    ...(path === "" ? { counts } : { path }),
    comparisons: rows.map((row) => ({
      code: row.comparison.code,
      outcome: row.outcome,
      message: rowText(row),
      measured: [row.measured, ...(row.beside ? [row.beside] : [])].map(fact),
      ...(row.expected === undefined ? {} : { expected: row.expected }),
      facts: bike ? comparedWith(row, bike.reader).map(fact) : [],
      working: bike ? workingOf(row, bike) : [],
      source: row.comparison.source,
    })),
  };
}
