import { isBlank, lineEndAt, lineStartAt, wordEnd } from "../../../grammar/characters.ts";
import { textEnd } from "../../../grammar/split.ts";

/** A stretch of a line: a word, a text in quotes, or a mark such as `:`. Offsets are of the file. */
export interface Piece {
  readonly kind: "word" | "text" | "mark";
  readonly text: string;
  readonly start: number;
  readonly end: number;
}

/**
 * The statement that is being typed, read from its line alone: whatever state the rest of the file is in, the line
 * says what comes next.
 */
export interface Cursor {
  readonly offset: number;
  /** Where the statement starts and ends: between `{`, `}`, `;`, a comment and the ends of the line. */
  readonly start: number;
  readonly end: number;
  /** True when the statement is the first of its line. */
  readonly isFirst: boolean;
  /** True when it begins in the first column. */
  readonly isOutermost: boolean;
  /** What stands before the word that is being typed. */
  readonly before: readonly Piece[];
  /** The word that is being typed, up to the cursor; empty between words. */
  readonly word: { readonly text: string; readonly start: number; readonly end: number };
  /** What stands behind it in the statement. */
  readonly after: readonly Piece[];
}

/** Reads the statement at an offset; `undefined` inside a comment or a text in quotes. */
export function cursorAt(text: string, offset: number): Cursor | undefined {
  const lineStart = lineStartAt(text, offset);
  const lineEnd = lineEndAt(text, offset);
  const scan = scanLine(text, lineStart, lineEnd, offset);
  if (!scan) return undefined;
  const { start, end, isFirst, pieces } = scan;
  const typed = pieces.find((piece) => piece.kind === "word" && piece.start < offset && piece.end >= offset);
  const word = typed
    ? { text: text.slice(typed.start, offset), start: typed.start, end: typed.end }
    : { text: "", start: offset, end: offset };
  return {
    offset,
    start,
    end,
    isFirst,
    isOutermost: isFirst && (pieces[0]?.start ?? offset) === lineStart,
    before: pieces.filter((piece) => piece !== typed && piece.end <= word.start),
    word,
    after: pieces.filter((piece) => piece !== typed && piece.start >= word.end && piece.end > word.start),
  };
}

interface Scan {
  readonly start: number;
  readonly end: number;
  readonly isFirst: boolean;
  readonly pieces: readonly Piece[];
}

function scanLine(text: string, lineStart: number, lineEnd: number, cursor: number): Scan | undefined {
  let pieces: Piece[] = [];
  let start = lineStart;
  let end = lineEnd;
  let isFirst = true;
  let offset = lineStart;
  while (offset < lineEnd) {
    const character = text[offset] ?? "";
    if (isBlank(text.charCodeAt(offset))) {
      offset++;
    } else if (text.startsWith("//", offset)) {
      if (cursor > offset) return undefined;
      end = offset;
      break;
    } else if (character === '"') {
      const close = textEnd(text, offset);
      const textStop = close < 0 ? lineEnd : close;
      // Just behind the closing quote one is out of it again; an unclosed text reaches to the end of the line.
      if (cursor > offset && (cursor < textStop || close < 0)) return undefined;
      pieces.push({ kind: "text", text: text.slice(offset, textStop), start: offset, end: textStop });
      offset = textStop;
    } else if (character === "{" || character === "}" || character === ";") {
      if (offset >= cursor) {
        end = offset;
        break;
      }
      offset++;
      start = offset;
      isFirst = false;
      pieces = [];
    } else {
      const wordStop = wordEnd(text, offset);
      const stop = wordStop > offset ? wordStop : offset + 1;
      const kind = wordStop > offset && character !== "," ? "word" : "mark";
      pieces.push({ kind, text: text.slice(offset, stop), start: offset, end: stop });
      offset = stop;
    }
  }
  // The blanks around a statement are not part of it.
  const first = pieces[0]?.start ?? cursor;
  const last = pieces.at(-1)?.end ?? cursor;
  return {
    start: Math.min(Math.max(start, first), cursor),
    end: Math.min(end, Math.max(last, cursor)),
    isFirst,
    pieces,
  };
}
