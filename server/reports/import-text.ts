import { type ColumnMap, undecided } from "../interchange/column-map.ts";
import type { GuessedColumn } from "../interchange/guess-columns.ts";
import type { ImportPlan, Known } from "../interchange/plan.ts";
import { placeName } from "../interchange/plan.ts";
import type { ImportPlace, Rejected } from "../interchange/rows.ts";
import type { Paint } from "./paint.ts";
import { columns, paragraph, printable } from "./printable.ts";
import { counted } from "./words.ts";

export interface ImportTextOptions {
  readonly width: number;
  readonly paint: Paint;
  /** The imported file as shown. */
  readonly source: string;
}

/** What an import did, or would do: every row that was not taken is named. */
export function importText(
  plan: ImportPlan,
  wrote: readonly { readonly file: string; readonly what: string }[],
  isDry: boolean,
  { width, paint, source }: ImportTextOptions,
): string {
  const lines: string[] = [];
  for (const rejected of plan.rejected) lines.push(...rejectedText(rejected, source, width, paint));
  for (const { name, at, first } of plan.repeated) {
    lines.push(
      ...paragraph(`${placeText(source, at)}  the same as ${placeName(first)}: ${name}, taken once`, width, "  ", ""),
    );
  }
  for (const known of plan.changed) lines.push(...knownText(known, isDry ? "would be changed" : "changed", width));
  for (const known of plan.left) lines.push(...knownText(known, "left as it is", width));
  if (lines.length > 0) lines.push("");
  for (const { file, what } of wrote) lines.push(...paragraph(`${what} ${file}`, width, "  ", ""));
  lines.push(...paragraph(summary(plan, isDry), width, ""));
  if (plan.left.length > 0)
    lines.push(...paragraph("--update writes what differs into the parts that are there.", width, ""));
  return `${lines.join("\n")}\n`;
}

function summary({ added, changed, left, same, repeated, rejected }: ImportPlan, isDry: boolean): string {
  const parts = [
    `${isDry ? "would add " : ""}${counted(added.length, "new declaration")}`,
    ...(changed.length > 0 ? [`${changed.length} changed`] : []),
    ...(left.length > 0 ? [`${left.length} that differ left as they are`] : []),
    `${same} the same already`,
    ...(repeated.length > 0 ? [`${counted(repeated.length, "row")} repeated`] : []),
    `${rejected.length} rejected`,
  ];
  const text = parts.join(", ");
  return `${text.slice(0, 1).toUpperCase()}${text.slice(1)}.`;
}

function rejectedText({ at, reason }: Rejected, source: string, width: number, paint: Paint): readonly string[] {
  const heading = at.line > 0 && at.heading !== "" ? `${printable(at.heading)}: ` : "";
  return [
    `${printable(placeText(source, at))}  ${paint.error("rejected")}`,
    ...paragraph(`${heading}${reason}`, width, "  "),
  ];
}

/** `list.csv:12:3`, or `list.json  parts[3]`. */
function placeText(source: string, { line, column, heading }: ImportPlace): string {
  if (line === 0) return `${source}  ${heading}`;
  return column === 0 ? `${source}:${line}` : `${source}:${line}:${column}`;
}

function knownText({ name, differences }: Known, what: string, width: number): readonly string[] {
  const said = differences.map(({ what: fact, before, after }) =>
    before === undefined ? `${fact} ${after} (not stated so far)` : `${fact} ${before} -> ${after}`,
  );
  return paragraph(`${name} ${what}: ${said.join("; ")}`, width, "  ", "");
}

const certainty: Readonly<Record<GuessedColumn["confidence"], string>> = {
  certain: "certain",
  likely: "guessed",
  open: "to be decided",
  ignored: "passed over",
};

/** What the rows of a table become by its map, in a sentence: how they are named is guessed as well. */
export function rowsText({ kind, name, title }: ColumnMap, width: number): string {
  const kinds = kind === undecided ? "parts of a kind to be decided" : `parts of the kind ${printable(kind)}`;
  const titled = title === undefined ? "" : `, with the title ${printable(title)}`;
  return paragraph(`Rows become ${kinds}, named ${printable(name)}${titled}.`, width, "  ", "").join("\n");
}

/** How the columns of a table were understood, for a person to put right. */
export function guessText(guessed: readonly GuessedColumn[], width: number): string {
  const rows = guessed.map(({ mapped, confidence, example }) => {
    const { column, fact, unit, currency, perhaps } = mapped;
    const measure = [unit, currency].filter((word) => word !== undefined).join(" ");
    const meaning = fact === undefined ? "" : `${fact}${measure === "" ? "" : ` in ${measure}`}`;
    const hint = perhaps && perhaps.length > 0 ? ` (perhaps ${perhaps.join(", ")})` : "";
    return [printable(column), `${meaning}${hint}`, certainty[confidence], printable(example)] as const;
  });
  const widths = [0, 1, 2].map((index) => Math.min(36, Math.max(...rows.map((row) => columns(row[index] ?? "")), 1)));
  return rows
    .map((row) => {
      const cells = row.map((cell, index) => {
        const room = widths[index];
        return room === undefined ? cell : cell + " ".repeat(Math.max(0, room - columns(cell)));
      });
      return `  ${cells.join("  ")}`.trimEnd().slice(0, width);
    })
    .join("\n");
}
