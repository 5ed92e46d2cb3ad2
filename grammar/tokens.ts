/**
 * The token types of the language, as chevrotain knows them.
 *
 * Patterns are functions over characters.ts rather than regular expressions: the rules of a word (a comma stays
 * between digits, `//` ends it) need a look at neighbours, and functions cost nothing to analyse at start-up.
 */

import { createToken, Lexer, type TokenType } from "chevrotain";
import {
  isBlank,
  isComparisonSign,
  isCurlyQuote,
  isLineEnd,
  lineEndAt,
  skipBlanks,
  trimEnd,
  wordEnd,
} from "./characters.ts";
import { textEnd } from "./split.ts";

/**
 * Codes beyond ASCII, for tokens that may start there: chevrotain puts those above 255 into buckets of 255, so one of
 * each bucket will do.
 */
const codesBeyondAscii: number[] = [];
for (let code = 128; code < 256; code++) codesBeyondAscii.push(code);
for (let code = 256; code < 65536; code += 255) codesBeyondAscii.push(code);
codesBeyondAscii.push(65535);

/** What may start a word: everything in ASCII but blanks, line ends and the signs of the language. */
const wordStarts: number[] = [];
for (let code = 0; code < 128; code++) {
  if (!' \t\v\f\r\n{}()[];:<>=",'.includes(String.fromCharCode(code))) wordStarts.push(code);
}

/** Codes that may start a token: the given characters of ASCII, and any beyond when asked for. */
function startCodes(characters: string, beyondAscii = false): number[] {
  const codes = Array.from(characters, (character) => character.charCodeAt(0));
  return beyondAscii ? codes.concat(codesBeyondAscii) : codes;
}

/** How far a quote looks for its partner where it may as well be a stray one; keeps the lexer linear. */
const partnerReach = 200;

/** The offset just after the token that starts at `offset`, or `offset` when none does. */
type TokenEnd = (text: string, offset: number) => number;

function pattern(end: TokenEnd) {
  return {
    exec(text: string, offset: number): [string] | null {
      const after = end(text, offset);
      return after > offset ? [text.slice(offset, after)] : null;
    },
  };
}

function define(name: string, label: string, end: TokenEnd, starts: number[], group?: string): TokenType {
  return createToken({
    name,
    label,
    pattern: pattern(end) as never,
    line_breaks: false,
    start_chars_hint: starts,
    ...(group === undefined ? {} : { group }),
  });
}

/** True when a word reaches up to `offset`, so that a quote there cannot open a text. */
export function isInsideWord(text: string, offset: number): boolean {
  if (offset === 0) return false;
  const code = text.charCodeAt(offset - 1);
  return (
    !isBlank(code) &&
    !isLineEnd(code) &&
    !'{}()[];:<>=",'.includes(text[offset - 1]!) &&
    !isCurlyQuote(code) &&
    !isComparisonSign(code)
  );
}

/** The word that ends at `end` is a size such as `29`, `1-1/8` or `26x2`: a quote after it means inches. */
export function sizeBefore(text: string, end: number): boolean {
  let start = end;
  while (start > 0 && /[\d.,\-/x×]/i.test(text[start - 1]!)) start--;
  return /\d$/.test(text.slice(start, end)) && (start === 0 || !isInsideWord(text, start));
}

/** An unclosed text ends with its line, but leaves the line's last braces and semicolons to the layout. */
function unclosedTextEnd(text: string, start: number): number {
  let end = trimEnd(text, start + 1, lineEndAt(text, start));
  while (end > start + 1 && "{};".includes(text[end - 1]!)) end = trimEnd(text, start + 1, end - 1);
  return end;
}

function lineBreakEnd(text: string, offset: number): number {
  return offset + (text.charCodeAt(offset) === 13 && text.charCodeAt(offset + 1) === 10 ? 2 : 1);
}

function commentEnd(text: string, offset: number): number {
  return text.charCodeAt(offset + 1) === 47 ? lineEndAt(text, offset) : offset;
}

/** `/* old *\/` up to its end or the line's end, whichever comes first. */
function blockCommentEnd(text: string, offset: number): number {
  if (text.charCodeAt(offset + 1) !== 42 || isInsideWord(text, offset)) return offset;
  const end = lineEndAt(text, offset);
  const closed = text.indexOf("*/", offset + 2);
  return closed < 0 || closed + 2 > end ? end : closed + 2;
}

/** `#` first on its line, or with a blank after it; `#c0ffee` is a word. */
function hashCommentEnd(text: string, offset: number): number {
  const after = text.charCodeAt(offset + 1);
  const alone = Number.isNaN(after) || isBlank(after) || isLineEnd(after) || after === 35;
  const before = trimEnd(text, 0, offset);
  const isFirst = before === 0 || isLineEnd(text.charCodeAt(before - 1));
  return (alone && before < offset) || isFirst ? lineEndAt(text, offset) : offset;
}

function quotedEnd(text: string, offset: number): number {
  const closed = textEnd(text, offset);
  return closed < 0 ? unclosedTextEnd(text, offset) : closed;
}

/** A quote straight after a size (inches), or straight after any word when no further quote closes it. */
function strayQuoteEnd(text: string, offset: number): number {
  if (!isInsideWord(text, offset)) return offset;
  if (sizeBefore(text, offset)) return offset + 1;
  const reach = text.slice(offset, offset + partnerReach);
  const closed = text.charCodeAt(offset) === 34 ? textEnd(reach, 0) : curlyClose(reach, 0);
  return closed < 0 ? offset + 1 : offset;
}

function curlyClose(text: string, offset: number): number {
  for (let at = offset + 1; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (isLineEnd(code)) return -1;
    if (isCurlyQuote(code) || code === 34) return at + 1;
  }
  return -1;
}

function curlyTextEnd(text: string, offset: number): number {
  if (!isCurlyQuote(text.charCodeAt(offset))) return offset;
  const closed = curlyClose(text, offset);
  return closed < 0 ? unclosedTextEnd(text, offset) : closed;
}

/** `'Corrie wide'`: an apostrophe at a word's start with another one before a blank, a delimiter or the line's end. */
function singleQuotedEnd(text: string, offset: number): number {
  if (isInsideWord(text, offset)) return offset;
  const end = Math.min(text.length, offset + partnerReach);
  for (let at = offset + 1; at < end && !isLineEnd(text.charCodeAt(at)); at++) {
    if (text.charCodeAt(at) === 34) return offset;
    if (text.charCodeAt(at) !== 39) continue;
    const next = text.charCodeAt(at + 1);
    if (at + 1 >= text.length || isBlank(next) || isLineEnd(next) || "{}()[];:<>=,".includes(text[at + 1]!))
      return at + 1;
  }
  return offset;
}

const addressSchemes = /^(https?|ftps?|file|mailto|git|ssh)$/i;

/** A word, or a whole unquoted address: its `//` would otherwise begin a comment. */
function wordOrAddressEnd(text: string, offset: number): number {
  const end = wordEnd(text, offset);
  if (end === offset || text.charCodeAt(end) !== 58 || !text.startsWith("//", end + 1)) return end;
  const scheme = text.slice(offset, end);
  if (!addressSchemes.test(scheme)) {
    const before = text[trimEnd(text, 0, offset) - 1];
    const isKey = before === undefined || "\r\n{};".includes(before);
    if (isKey || !/^[a-z][a-z0-9+.-]*$/i.test(scheme)) return end;
  }
  let after = end + 3;
  while (after < text.length) {
    const code = text.charCodeAt(after);
    if (isBlank(code) || isLineEnd(code) || code === 34 || isCurlyQuote(code)) break;
    after++;
  }
  while (after > end + 3 && "{};,".includes(text[after - 1]!)) after--;
  return after;
}

/** Two signs read as one: those of the language, and those that people bring along and have mended. */
const comparisonPairs: ReadonlySet<string> = new Set(["<=", ">=", "==", "=<", "=>", "<>"]);

function comparisonEnd(text: string, offset: number): number {
  const code = text.charCodeAt(offset);
  if (isComparisonSign(code)) return offset + 1;
  if (code < 60 || code > 62) return offset;
  return offset + (comparisonPairs.has(text.slice(offset, offset + 2)) ? 2 : 1);
}

export const Blank = define("Blank", "a blank", skipBlanks, startCodes(" \t\v\f", true), Lexer.SKIPPED);
export const LineEnd = define("LineEnd", "the end of the line", lineBreakEnd, startCodes("\r\n"));
export const Comment = define("Comment", "a comment", commentEnd, startCodes("/"), "comments");
export const BlockComment = define("BlockComment", "a comment", blockCommentEnd, startCodes("/"), "comments");
export const HashComment = define("HashComment", "a comment", hashCommentEnd, startCodes("#"), "comments");
export const StrayQuote = define("StrayQuote", "a quote", strayQuoteEnd, startCodes('"', true));
export const Text = define("Text", "a text in quotes", quotedEnd, startCodes('"'));
export const CurlyText = define("CurlyText", "a text in quotes", curlyTextEnd, startCodes("", true));
export const SingleText = define("SingleText", "a text in quotes", singleQuotedEnd, startCodes("'"));
export const Word = define("Word", "a word", wordOrAddressEnd, wordStarts.concat(codesBeyondAscii));
/** Any comma that no word has taken: one between two digits belongs to the word. */
export const Comma = createToken({ name: "Comma", label: "`,`", pattern: "," });
export const Semicolon = createToken({ name: "Semicolon", label: "`;`", pattern: ";" });
export const Colon = createToken({ name: "Colon", label: "`:`", pattern: ":" });
export const OpenBrace = createToken({ name: "OpenBrace", label: "`{`", pattern: "{" });
export const CloseBrace = createToken({ name: "CloseBrace", label: "`}`", pattern: "}" });
export const OpenParenthesis = createToken({ name: "OpenParenthesis", label: "`(`", pattern: "(" });
export const CloseParenthesis = createToken({ name: "CloseParenthesis", label: "`)`", pattern: ")" });
export const OpenBracket = createToken({ name: "OpenBracket", label: "`[`", pattern: "[" });
export const CloseBracket = createToken({ name: "CloseBracket", label: "`]`", pattern: "]" });
export const Comparison = define("Comparison", "a comparison such as `<=`", comparisonEnd, startCodes("<>=", true));

/** In the order the lexer tries them. */
export const lexedTypes: TokenType[] = [
  Blank,
  LineEnd,
  Comment,
  BlockComment,
  HashComment,
  StrayQuote,
  Text,
  CurlyText,
  SingleText,
  Word,
  Comma,
  Semicolon,
  Colon,
  OpenBrace,
  CloseBrace,
  OpenParenthesis,
  CloseParenthesis,
  OpenBracket,
  CloseBracket,
  Comparison,
];

const role = (name: string, label: string): TokenType => createToken({ name, label, pattern: Lexer.NA });

/** Words that have a meaning of their own in one kind of statement only; the statement's reader gives them these types. */
export const From = role("From", "`from`");
export const Of = role("Of", "`of`");
export const At = role("At", "`at`");
export const Until = role("Until", "`until`");
export const Or = role("Or", "`or`");
export const And = role("And", "`and`");
export const Not = role("Not", "`not`");
export const Is = role("Is", "`is`");
export const In = role("In", "`in`");
export const To = role("To", "`to`");
export const Sum = role("Sum", "`+` or `-`");
export const Product = role("Product", "`*` or `/`");
/** The name of a function: a word with `(` straight after it. */
export const Callee = role("Callee", "a function such as `max`");

export const parsedTypes: TokenType[] = [
  Word,
  Text,
  Comma,
  Colon,
  Comparison,
  OpenParenthesis,
  CloseParenthesis,
  OpenBracket,
  CloseBracket,
  From,
  Of,
  At,
  Until,
  Or,
  And,
  Not,
  Is,
  In,
  To,
  Sum,
  Product,
  Callee,
];
