import type { Position, Range, TextEdit } from "vscode-languageserver-types";
import { type FormatEdits, formatEdits, formatRange } from "../../grammar/format.ts";
import { LineIndex } from "../engine/positions.ts";
import { canonicalValues } from "../model/canonical-values.ts";

/**
 * Formatting needs the text and the vocabulary, and no other file. A declaration with a syntax error is left exactly
 * as it is, so formatting never makes a slip worse; the others of the file are formatted all the same.
 */

/** The edits that make a whole text canonical. */
export function formatDocument(text: string): TextEdit[] {
  return textEdits(formatEdits(text, canonicalValues), new LineIndex(text));
}

/** The edits that make the lines of a range canonical. */
export function formatLines(text: string, range: Range): TextEdit[] {
  const lines = new LineIndex(text);
  return textEdits(formatRange(text, lines.offset(range.start), lines.offset(range.end), canonicalValues), lines);
}

/** The characters after which lines are formatted as they are typed. */
export const formattingCharacters = ["\n", "}"] as const;

/**
 * The edits after a character was typed: behind a new line the line above it, behind a closing brace the lines of its
 * block. The line on which the cursor stands after a new line keeps its blanks.
 */
export function formatTyped(text: string, position: Position, typed: string): TextEdit[] {
  const lines = new LineIndex(text);
  if (typed === "\n") {
    if (position.line === 0) return [];
    const start = lines.lineStart(position.line - 1);
    const end = lines.lineStart(position.line);
    const edits = textEdits(formatRange(text, start, Math.max(start, end - 1), canonicalValues), lines);
    return edits.filter(({ range }) => range.end.line < position.line);
  }
  if (typed !== "}") return [];
  const end = lines.offset(position);
  const start = openingBrace(text, end - 1);
  if (start === undefined) return [];
  return textEdits(formatRange(text, start, end, canonicalValues), lines).filter(
    ({ range }) => !isBehind(range, position),
  );
}

function isBehind({ end }: Range, position: Position): boolean {
  return end.line > position.line || (end.line === position.line && end.character > position.character);
}

/** The brace that the one at an offset closes, counted over braces alone; `undefined` when there is none. */
function openingBrace(text: string, close: number): number | undefined {
  let depth = 0;
  for (let offset = close; offset >= 0; offset--) {
    if (text[offset] === "}") depth++;
    else if (text[offset] === "{" && --depth === 0) return offset;
  }
  return undefined;
}

function textEdits({ changes }: FormatEdits, lines: LineIndex): TextEdit[] {
  return changes.map(({ span, text }) => ({
    range: { start: lines.position(span.start), end: lines.position(span.end) },
    newText: text,
  }));
}
