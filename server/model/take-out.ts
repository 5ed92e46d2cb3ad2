import type { Span } from "../../grammar/tree.ts";

/**
 * The stretch to delete so that an entry goes without leaving anything of itself behind: with its line when nothing
 * else stands on it, with its semicolon in a one-line block.
 * @param text of the declaration.
 * @param entry where the entry stands in it.
 */
export function takeOut(text: string, entry: Span): Span {
  const { start, end } = entry;
  const lineStart = text.lastIndexOf("\n", start - 1) + 1;
  const nextLine = text.indexOf("\n", end);
  const lineEnd = nextLine < 0 ? text.length : nextLine;
  if (text.slice(lineStart, start).trim() === "" && text.slice(end, lineEnd).trim() === "") {
    return { start: lineStart, end: Math.min(lineEnd + 1, text.length) };
  }
  const after = /^\s*;\s*/.exec(text.slice(end, lineEnd));
  if (after) return { start, end: end + after[0].length };
  const before = /\s*;\s*$/.exec(text.slice(lineStart, start));
  return { start: start - (before?.[0].length ?? 0), end };
}
