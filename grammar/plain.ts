/**
 * The quick way to a tree, for declarations written as everybody writes them.
 *
 * Nearly all text is plain: one entry on a line, ordinary characters, balanced braces. It is read here in one pass,
 * without lexer and parser, whose making alone would be most of the command line's start. Whatever is not plain, and
 * everything that deserves a remark, is left to them: this reader then gives no tree at all. It never reports a
 * problem, and where it gives a tree, the tree is the one that they would give (a test holds the two equal).
 */

import { trimEnd } from "./characters.ts";
import { declarationKeywordAt } from "./split.ts";
import type {
  BlockTree,
  DeclarationTree,
  EntryTree,
  HeaderTree,
  PathTree,
  Span,
  ValueToken,
  WaiveEntry,
} from "./tree.ts";

/** Longer texts are no business of a quick way. */
const longest = 200_000;
/** Blocks inside each other; deeper ones are rare, and capped elsewhere. */
const deepest = 12;

/** Letters, digits and signs of ordinary writing; anything else may be a habit or a trap. */
const unusual = /[^\n\x20-\x7e\u00a1-\u00ac\u00ae-\u024f\u2018\u2019\u2212\u2260]/;

const lineFeed = 10;
const blank = 32;
const quote = 34;
const comma = 44;
const slash = 47;
const colon = 58;
const semicolon = 59;
const openBrace = 123;
const closeBrace = 125;

/** What may stand in a key: letters, digits, `.`, `-` and `_`. */
const keyCodes = codes("abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789.-_");
/** ASCII that may not stand in a plain word: what ends it, and what the lexer looks at twice. */
const notInWord = codes(" \n\"{}()[];:<>=,#'`\\");
const keyForm = /^[A-Za-z][A-Za-z0-9_-]*(?:\.[A-Za-z0-9_-]+)*$/;
/** Signs that mean something of their own when they stand alone. */
const loneSign = /^[-+*/\u2212.!&|]+$/;

function codes(characters: string): Uint8Array {
  const set = new Uint8Array(128);
  for (const character of characters) set[character.charCodeAt(0)] = 1;
  return set;
}

/** The tree of a plain declaration; undefined for any other. `headerStart` is where its keyword stands. */
export function readPlain(text: string, headerStart: number): DeclarationTree | undefined {
  if (text.length > longest || unusual.test(text)) return undefined;
  return new PlainReader(text, headerStart).read();
}

class PlainReader {
  readonly #text: string;
  readonly #headerStart: number;
  #at: number;
  /** Where the last comment ended, trimmed; a block's next entry would go behind it. */
  #commentEnd = -1;

  constructor(text: string, headerStart: number) {
    this.#text = text;
    this.#headerStart = headerStart;
    this.#at = headerStart;
  }

  read(): DeclarationTree | undefined {
    const documentation = this.#documentation();
    const header = this.#header();
    if (documentation === undefined || !header) return undefined;
    if (this.#peek() !== openBrace) return undefined;
    const block = this.#block(1);
    if (!block) return undefined;
    const end = block.span.end;
    while (this.#at < this.#text.length) if (!this.#restOfLine()) return undefined;
    return { header, documentation, block, problems: [], span: { start: this.#headerStart, end } };
  }

  #peek(): number {
    return this.#text.charCodeAt(this.#at);
  }

  #skipBlanks(): void {
    while (this.#peek() === blank) this.#at++;
  }

  /** The `///` lines above the header; undefined when anything but comments stands there. */
  #documentation(): string | undefined {
    const lines: string[] = [];
    const before = this.#text.slice(0, this.#headerStart).split("\n");
    for (const line of before) {
      const content = line.trim();
      if (content === "") continue;
      if (!content.startsWith("//")) return undefined;
      if (content.startsWith("///") && content[3] !== "/") lines.push(content.slice(3).replace(/^ /, ""));
    }
    return lines.join("\n");
  }

  #header(): HeaderTree | undefined {
    const keyword = declarationKeywordAt(this.#text, this.#headerStart);
    if (keyword === undefined || keyword === "rule") return undefined;
    const start = this.#at;
    this.#at += keyword.length;
    const keywordSpan = { start, end: this.#at };
    if (keyword === "record") return this.#recordHeader(keywordSpan);
    const names: { kind?: ValueToken; name?: ValueToken; title?: ValueToken; from?: ValueToken } = {};
    let end = this.#at;
    for (;;) {
      if (this.#peek() !== blank) return undefined;
      this.#skipBlanks();
      if (this.#peek() === openBrace) break;
      const isText = this.#peek() === quote;
      const token = isText ? this.#quoted() : this.#word();
      if (!token) return undefined;
      end = token.span.end;
      if (isText) {
        if (names.name || keyword !== "standard") {
          // A title before the name, or a second one, is for a closer look.
          if (!names.name || names.title) return undefined;
          names.title = token;
        } else names.name = token;
      } else if ((keyword === "part" || keyword === "standard") && !names.kind) names.kind = token;
      else if (!names.name) names.name = token;
      else if (token.text === "from" && !names.from && (keyword === "part" || keyword === "build")) {
        if (this.#peek() !== blank) return undefined;
        this.#skipBlanks();
        const base = this.#peek() === quote ? undefined : this.#word();
        if (!base) return undefined;
        names.from = base;
        end = base.span.end;
      } else return undefined;
    }
    if (!names.name || ((keyword === "part" || keyword === "standard") && !names.kind)) return undefined;
    for (const token of [names.kind, names.name, names.from]) {
      if (token?.kind === "word" && headerWords.has(token.text)) return undefined;
    }
    return { keyword, keywordSpan, ...names, span: { start, end } };
  }

  /** `record "SERIAL" of BUILD`, up to the brace. */
  #recordHeader(keywordSpan: Span): HeaderTree | undefined {
    const name = this.#behindBlanks() && this.#peek() === quote ? this.#quoted() : undefined;
    const word = name && this.#behindBlanks() ? this.#word() : undefined;
    const of = word?.text === "of" && this.#behindBlanks() ? this.#word() : undefined;
    if (!name || !of || headerWords.has(of.text) || !this.#behindBlanks()) return undefined;
    return { keyword: "record", keywordSpan, name, of, span: { start: keywordSpan.start, end: of.span.end } };
  }

  /** Goes on to what stands behind blanks; false where there are none. */
  #behindBlanks(): boolean {
    if (this.#peek() !== blank) return false;
    this.#skipBlanks();
    return true;
  }

  /** A block, from its `{` to just after its `}`. */
  #block(depth: number): BlockTree | undefined {
    if (depth > deepest) return undefined;
    const start = this.#at++;
    const entries: EntryTree[] = [];
    this.#skipBlanks();
    const oneLine = this.#peek() !== lineFeed && this.#peek() !== slash;
    const insertAfter = oneLine ? this.#entriesOnLine(entries, start, depth) : this.#lines(entries, start, depth);
    if (insertAfter === undefined || this.#peek() !== closeBrace) return undefined;
    this.#at++;
    return { entries, span: { start, end: this.#at }, insertAt: insertAfter, oneLine };
  }

  /** `{ a: b; c: d }`: the entries up to the closing brace, on the same line. */
  #entriesOnLine(entries: EntryTree[], start: number, depth: number): number | undefined {
    while (this.#peek() !== closeBrace) {
      const entry = this.#entry(depth, true);
      if (!entry) return undefined;
      entries.push(entry);
      this.#skipBlanks();
      if (this.#peek() === closeBrace) break;
      if (this.#peek() !== semicolon) return undefined;
      this.#at++;
      this.#skipBlanks();
    }
    return entries.at(-1)?.span.end ?? start + 1;
  }

  /** The entries of a block, one on each line, up to the line of the closing brace. */
  #lines(entries: EntryTree[], start: number, depth: number): number | undefined {
    let insertAfter = start + 1;
    const behindComment = (): void => {
      if (this.#commentEnd > insertAfter) insertAfter = this.#commentEnd;
    };
    if (!this.#restOfLine()) return undefined;
    behindComment();
    for (;;) {
      this.#skipBlanks();
      const code = this.#peek();
      if (code === closeBrace) return insertAfter;
      if (code === lineFeed || code === slash) {
        if (!this.#restOfLine()) return undefined;
        behindComment();
        continue;
      }
      const entry = this.#entry(depth, false);
      if (!entry) return undefined;
      entries.push(entry);
      insertAfter = entry.span.end;
      if (!this.#restOfLine()) return undefined;
      behindComment();
    }
  }

  /** Blanks, perhaps a comment, and the line's end (or the text's); false when anything else stands there. */
  #restOfLine(): boolean {
    const before = this.#at;
    this.#skipBlanks();
    if (this.#peek() === slash) {
      // A comment glued to what stands before it may be an address.
      if (this.#text.charCodeAt(this.#at + 1) !== slash) return false;
      const previous = this.#text.charCodeAt(before - 1);
      if (this.#at === before && previous !== lineFeed && previous !== blank) return false;
      const lineEnd = this.#text.indexOf("\n", this.#at);
      const end = lineEnd < 0 ? this.#text.length : lineEnd;
      this.#commentEnd = trimEnd(this.#text, this.#at, end);
      this.#at = end;
    }
    if (this.#at >= this.#text.length) return true;
    if (this.#peek() !== lineFeed) return false;
    this.#at++;
    return true;
  }

  #entry(depth: number, inLine: boolean): EntryTree | undefined {
    const path = this.#path();
    if (!path) return undefined;
    if (path.text === "waive") return this.#waive(path.span.start);
    this.#skipBlanks();
    if (this.#peek() === openBrace) {
      const block = this.#innerBlock(depth, inLine);
      return block && { form: "group", path, block, span: { start: path.span.start, end: block.span.end } };
    }
    // A blank before the colon is unusual enough for a closer look.
    if (this.#peek() !== colon || this.#at !== path.span.end) return undefined;
    this.#at++;
    const tokens = this.#value();
    const first = tokens?.[0];
    const last = tokens?.at(-1);
    if (!tokens || !first || !last || last.kind === "comma") return undefined;
    const span = { start: first.span.start, end: last.span.end };
    const value = { alternates: [tokens], tokens, span };
    if (this.#peek() !== openBrace) {
      return { form: "field", path, value, span: { start: path.span.start, end: span.end } };
    }
    const block = this.#innerBlock(depth, inLine);
    return block && { form: "field", path, value, block, span: { start: path.span.start, end: block.span.end } };
  }

  /** A block inside a one-line block has to be on that line too. */
  #innerBlock(depth: number, inLine: boolean): BlockTree | undefined {
    const block = this.#block(depth + 1);
    return inLine && block && !block.oneLine ? undefined : block;
  }

  #path(): PathTree | undefined {
    const start = this.#at;
    let code = this.#peek();
    while (code < 128 && keyCodes[code] === 1) code = this.#text.charCodeAt(++this.#at);
    const text = this.#text.slice(start, this.#at);
    return keyForm.test(text) ? pathOf(text, start) : undefined;
  }

  /** `waive CODE at PATH "reason" until DATE`, each part in its place, on a line of its own. */
  #waive(start: number): WaiveEntry | undefined {
    const next = (): ValueToken | undefined => {
      if (this.#peek() !== blank) return undefined;
      this.#skipBlanks();
      return this.#peek() === quote ? this.#quoted() : this.#word();
    };
    const isPlain = (token: ValueToken | undefined): token is ValueToken =>
      token?.kind === "word" && /^[A-Za-z0-9]/.test(token.text) && !waiveWords.has(token.text);
    const code = next();
    if (!isPlain(code)) return undefined;
    let token = next();
    let at: PathTree | undefined;
    if (token?.kind === "word" && token.text === "at") {
      const path = next();
      if (!isPlain(path) || !keyForm.test(path.text)) return undefined;
      at = pathOf(path.text, path.span.start);
      token = next();
    }
    if (token?.kind !== "text") return undefined;
    const reason = token;
    let end = reason.span.end;
    let until: ValueToken | undefined;
    if (this.#peek() === blank) {
      const word = next();
      const day = next();
      if (word?.text !== "until" || word.kind !== "word" || !isPlain(day)) return undefined;
      until = day;
      end = day.span.end;
    }
    if (this.#peek() !== lineFeed) return undefined;
    return { form: "waive", code, ...(at ? { at } : {}), reason, ...(until ? { until } : {}), span: { start, end } };
  }

  /** The tokens up to `{`, `;`, `}`, a comment or the line's end. */
  #value(): ValueToken[] | undefined {
    const tokens: ValueToken[] = [];
    for (;;) {
      const before = this.#at;
      this.#skipBlanks();
      const code = this.#peek();
      if (Number.isNaN(code) || code === lineFeed || code === semicolon || code === openBrace || code === closeBrace) {
        // `29{` and `"x"}` are read by others.
        return this.#at === before && code !== lineFeed && code !== semicolon && !Number.isNaN(code)
          ? undefined
          : tokens;
      }
      if (code === slash && this.#text.charCodeAt(this.#at + 1) === slash) {
        this.#at = before;
        return before === this.#text.length || this.#text.charCodeAt(before) !== blank ? undefined : tokens;
      }
      if (code === comma) {
        if (this.#at !== before || tokens.length === 0 || tokens.at(-1)?.kind === "comma") return undefined;
        if (this.#text.charCodeAt(this.#at + 1) !== blank) return undefined;
        tokens.push({ kind: "comma", text: ",", span: { start: this.#at, end: ++this.#at } });
        continue;
      }
      if (this.#at === before) return undefined;
      const token = code === quote ? this.#quoted() : (this.#comparison(tokens.length) ?? this.#word());
      if (!token || (token.kind === "word" && (token.text === "or" || loneSign.test(token.text)))) return undefined;
      tokens.push(token);
    }
  }

  /** `<=`, `>=`, `<` or `>` with a blank behind it, first in its value. */
  #comparison(position: number): ValueToken | undefined {
    const sign = this.#text[this.#at];
    if (position > 0 || (sign !== "<" && sign !== ">")) return undefined;
    const start = this.#at;
    const length = this.#text[start + 1] === "=" ? 2 : 1;
    if (this.#text.charCodeAt(start + length) !== blank) return undefined;
    this.#at += length;
    return { kind: "comparison", text: this.#text.slice(start, this.#at), span: { start, end: this.#at } };
  }

  #word(): ValueToken | undefined {
    const start = this.#at;
    const text = this.#text;
    let code = this.#peek();
    while (!Number.isNaN(code)) {
      if (code < 128 && notInWord[code] === 1) break;
      if (code === slash && text.charCodeAt(this.#at + 1) === slash) return undefined;
      code = text.charCodeAt(++this.#at);
    }
    if (this.#at === start) return undefined;
    // What ends a plain word is a blank, the line's end, or a sign that separates; a comma between digits is none.
    if (code === comma) {
      if (text.charCodeAt(this.#at + 1) !== blank) return undefined;
    } else if (code === closeBrace || code === openBrace) return undefined;
    else if (!Number.isNaN(code) && code !== blank && code !== lineFeed && code !== semicolon) return undefined;
    return { kind: "word", text: text.slice(start, this.#at), span: { start, end: this.#at } };
  }

  /** A text without a backslash, closed on its line. */
  #quoted(): ValueToken | undefined {
    const start = this.#at;
    const end = this.#text.indexOf('"', start + 1);
    if (end < 0) return undefined;
    const content = this.#text.slice(start + 1, end);
    if (content.includes("\\") || content.includes("\n")) return undefined;
    this.#at = end + 1;
    const code = this.#peek();
    const isEnd = Number.isNaN(code) || code === blank || code === lineFeed || code === semicolon;
    if (!isEnd && !(code === comma && this.#text.charCodeAt(this.#at + 1) === blank)) return undefined;
    return { kind: "text", text: content, span: { start, end: this.#at } };
  }
}

/** The segments of a dotted name that starts at an offset. */
function pathOf(text: string, start: number): PathTree {
  const segments: { text: string; span: Span }[] = [];
  let from = start;
  for (const segment of text.split(".")) {
    segments.push({ text: segment, span: { start: from, end: from + segment.length } });
    from += segment.length + 1;
  }
  return { segments, text, span: { start, end: start + text.length } };
}

/** Words with a meaning of their own in a waiver. */
const waiveWords: ReadonlySet<string> = new Set(["at", "until"]);

/** Words with a meaning of their own in a header. */
const headerWords: ReadonlySet<string> = new Set(["from", "of", "extends"]);
