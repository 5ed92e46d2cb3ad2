/**
 * Cuts a file into declarations without parsing them.
 *
 * A declaration keyword that stands first on its line and is followed by a word or a text always starts a
 * declaration, whatever the braces say: damage in one declaration never reaches the next. Everything that needs the
 * declarations of a file starts here: the parser, the index of names, the formatter.
 */

import { byteOrderMark, isBlank, isCurlyQuote, isLineEnd, lineEndAt, skipBlanks, wordEnd } from "./characters.ts";
import { type Chunk, type DeclarationKeyword, declarationKeywords } from "./tree.ts";

const quote = 34;
const slash = 47;
const openBrace = 123;

/** The keywords by the code of their first letter, so that most lines are dismissed after one comparison. */
const keywordsByFirstCode: (readonly DeclarationKeyword[] | undefined)[] = [];
for (const keyword of declarationKeywords) {
  const code = keyword.charCodeAt(0);
  keywordsByFirstCode[code] = [...(keywordsByFirstCode[code] ?? []), keyword];
}

/** The keyword of the declaration that starts at `offset`, the first character of a line that is not a blank. */
export function declarationKeywordAt(text: string, offset: number): DeclarationKeyword | undefined {
  const candidates = keywordsByFirstCode[text.charCodeAt(offset)];
  if (candidates === undefined) return undefined;
  for (const keyword of candidates) {
    if (!text.startsWith(keyword, offset)) continue;
    const after = offset + keyword.length;
    if (after >= text.length) return undefined;
    const next = skipBlanks(text, after);
    const code = text.charCodeAt(next);
    if (code === quote || isCurlyQuote(code)) return keyword;
    if (next > after && wordEnd(text, next) > next) return keyword;
    return undefined;
  }
  return undefined;
}

/** The declarations of a file, in order. Their texts, one after another, are exactly the file. */
export function split(text: string): Chunk[] {
  const chunks: Chunk[] = [];
  const length = text.length;
  const hasOnlyLineFeeds = !text.includes("\r");
  let chunkStart = 0;
  let pending: HeaderNames | undefined;
  /** Where the unbroken run of comment lines just above the current line starts, or -1. */
  let commentStart = -1;
  let lineStart = 0;
  while (lineStart < length) {
    let offset = lineStart;
    let code = text.charCodeAt(offset);
    while (offset < length && (isBlank(code) || (code === byteOrderMark && offset === lineStart))) {
      offset++;
      code = text.charCodeAt(offset);
    }
    if (code === slash && text.charCodeAt(offset + 1) === slash) {
      if (commentStart < 0) commentStart = lineStart;
    } else {
      const keyword = declarationKeywordAt(text, offset);
      if (keyword !== undefined) {
        const start = commentStart < 0 ? lineStart : commentStart;
        if (start > chunkStart || pending !== undefined) {
          chunks.push({ start: chunkStart, end: start, ...pending });
        }
        chunkStart = start;
        pending = skimHeader(text, offset, keyword);
      }
      commentStart = -1;
    }
    // The rest of the line holds nothing the splitter needs, and the engine's own search is fastest from a cold start.
    if (hasOnlyLineFeeds) {
      const lineEnd = text.indexOf("\n", offset);
      lineStart = lineEnd < 0 ? length : lineEnd + 1;
    } else {
      const lineEnd = lineEndAt(text, offset);
      lineStart = lineEnd + (text.charCodeAt(lineEnd) === 13 && text.charCodeAt(lineEnd + 1) === 10 ? 2 : 1);
    }
  }
  if (chunkStart < length) chunks.push({ start: chunkStart, end: length, ...pending });
  return chunks;
}

interface HeaderNames {
  keyword: DeclarationKeyword;
  kind?: string;
  name?: string;
  title?: string;
  from?: string;
  of?: string;
}

/** Reads the names of a header up to its brace or line end, as the parser would on a header without errors. */
function skimHeader(text: string, start: number, keyword: DeclarationKeyword): HeaderNames {
  const names: HeaderNames = { keyword };
  const nameMayBeText = keyword === "standard" || keyword === "record";
  let kindPending = keyword === "part" || keyword === "standard";
  let expected: "from" | "of" | undefined;
  let offset = start + keyword.length;
  while (true) {
    offset = skipBlanks(text, offset);
    if (offset >= text.length) break;
    const code = text.charCodeAt(offset);
    if (code === openBrace || isLineEnd(code)) break;
    if (code === quote) {
      const end = textEnd(text, offset);
      if (end < 0) break;
      const content = unescapeText(text.slice(offset + 1, end - 1));
      if (names.name === undefined && nameMayBeText && !kindPending) names.name = content;
      else names.title = content;
      offset = end;
      continue;
    }
    const end = wordEnd(text, offset);
    if (end === offset) break;
    const word = text.slice(offset, end);
    offset = end;
    if (expected !== undefined) {
      names[expected] = word;
      expected = undefined;
    } else if (kindPending) {
      names.kind = word;
      kindPending = false;
    } else if (names.name === undefined && names.title === undefined) {
      names.name = word;
    } else if (word === "from" || word === "of") {
      expected = word;
    } else {
      break;
    }
  }
  return names;
}

/** The offset just after the quote that closes the text opening at `start`, or -1 when the line ends first. */
export function textEnd(text: string, start: number): number {
  for (let offset = start + 1; offset < text.length; offset++) {
    const code = text.charCodeAt(offset);
    if (code === quote) return offset + 1;
    if (code === 10 || code === 13) return -1;
    if (code === 92 && isEscapable(text.charCodeAt(offset + 1))) offset++;
  }
  return -1;
}

function isEscapable(code: number): boolean {
  return code === quote || code === 92;
}

/** The content of a text with `\"` and `\\` undone; any other backslash stands for itself. */
export function unescapeText(content: string): string {
  return content.includes("\\") ? content.replace(/\\(["\\])/g, "$1") : content;
}

/** A text as it is written in a file: in quotes, with `"` and `\` escaped. The content must not hold a line end. */
export function quoteText(content: string): string {
  return `"${content.replace(/["\\]/g, "\\$&")}"`;
}

/** The offset of the header line of the first declaration in `text`, or -1 when there is none. */
export function findHeader(text: string): number {
  let lineStart = 0;
  while (lineStart < text.length) {
    let offset = lineStart;
    if (text.charCodeAt(offset) === byteOrderMark) offset++;
    offset = skipBlanks(text, offset);
    if (declarationKeywordAt(text, offset) !== undefined) return offset;
    const end = lineEndAt(text, offset);
    lineStart = end + (text.charCodeAt(end) === 13 && text.charCodeAt(end + 1) === 10 ? 2 : 1);
  }
  return -1;
}
