import type { LineIndex, Range } from "../engine/positions.ts";
import type { Paint } from "./paint.ts";
import { charactersOf, columns, printable } from "./printable.ts";

/**
 * A line of a file with its number, and a line under it that points to a stretch.
 *
 * A stretch over several lines is pointed to in its first. A line too long for the width is cut on both sides with
 * the stretch in view.
 * @param gutter columns for the line number.
 * @param mark paints what points.
 */
export function excerpt(
  source: { readonly text: string; readonly lines: LineIndex },
  range: Range,
  width: number,
  gutter: number,
  paint: Paint,
  mark: (text: string) => string = paint.error,
): string[] {
  const from = source.lines.lineStart(range.start.line);
  const text = source.text.slice(from, source.lines.lineStart(range.start.line + 1)).replace(/[\r\n]+$/, "");
  const start = Math.min(range.start.character, text.length);
  const end = range.end.line > range.start.line ? text.length : Math.min(range.end.character, text.length);
  const number = String(range.start.line + 1).padStart(gutter);
  const room = Math.max(20, width - gutter - 3);
  const shown = window(text, start, Math.max(start, end), room);
  const carets = "^".repeat(Math.max(1, columns(shown.marked)));
  return [
    `${paint.quiet(`${number} |`)} ${shown.before}${shown.marked}${shown.after}`.trimEnd(),
    `${paint.quiet(`${" ".repeat(gutter)} |`)} ${" ".repeat(columns(shown.before))}${mark(carets)}`,
  ];
}

interface Window {
  readonly before: string;
  readonly marked: string;
  readonly after: string;
}

/** The part of a line that fits into so many columns, with the stretch in it. */
function window(text: string, start: number, end: number, room: number): Window {
  // A line of megabytes is cut before anything is measured.
  const reach = room * 4;
  const before = printable(text.slice(Math.max(0, start - reach), start));
  const marked = printable(text.slice(start, Math.min(end, start + reach)));
  const after = printable(text.slice(end, end + reach));
  if (columns(before) + columns(marked) + columns(after) <= room) return { before, marked, after };
  // A column on either side is kept for the sign that something was cut there.
  const mark = beginningOf(marked, room - Math.min(1, columns(before)) - Math.min(1, columns(after)));
  const behind = mark === marked ? after : "";
  const left = room - columns(mark) - Math.min(1, columns(behind));
  const shown = endOf(before, left);
  return { before: shown, marked: mark, after: beginningOf(behind, room - columns(shown) - columns(mark)) };
}

/** The beginning of a text, in at most so many columns, with a sign where it was cut. */
function beginningOf(text: string, room: number): string {
  if (columns(text) <= room) return text;
  let kept = "";
  let used = 0;
  for (const segment of charactersOf(text)) {
    const needed = columns(segment);
    if (used + needed > room - 1) break;
    kept += segment;
    used += needed;
  }
  return room <= 0 ? "" : `${kept}…`;
}

/** The end of a text, in at most so many columns, with a sign where it was cut. */
function endOf(text: string, room: number): string {
  if (columns(text) <= room) return text;
  let kept = "";
  let used = 0;
  for (const segment of [...charactersOf(text)].reverse()) {
    const needed = columns(segment);
    if (used + needed > room - 1) break;
    kept = segment + kept;
    used += needed;
  }
  return room <= 0 ? "" : `…${kept}`;
}
