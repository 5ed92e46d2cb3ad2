/**
 * Typing habits that take a whole statement to see, each with its own code, message and fix.
 *
 * Every function looks at the tokens of one statement, reports, and returns the tokens that are meant, so that the
 * parser reads them as if they had been typed that way.
 */

import type { Statement, StatementBlock } from "./layout.ts";
import { makeToken, retype, type Token } from "./lexer.ts";
import { isDash, writtenAs } from "./list-habits.ts";
import { reportFix as report } from "./problems.ts";
import * as types from "./tokens.ts";
import type { SyntaxProblem } from "./tree.ts";

function isWord(token: Token | undefined, text?: string): boolean {
  return token?.tokenType === types.Word && (text === undefined || token.text === text);
}

/** `mass: 78 kg inseam: 845 mm` is two entries that lack a `;` or a new line between them. */
export function splitEntries(statement: Statement, problems: SyntaxProblem[]): Statement[] {
  const parts: Statement[] = [];
  let rest = statement;
  while (true) {
    const { tokens } = rest;
    const second = tokens.findIndex(({ tokenType }, index) => index > 2 && tokenType === types.Colon);
    const key = tokens[second - 1];
    if (tokens[1]?.tokenType !== types.Colon || key === undefined || !isKeyLike(key)) return [...parts, rest];
    const before = tokens[second - 2]!;
    const hasComma = before.tokenType === types.Comma;
    const end = hasComma ? second - 2 : second - 1;
    if (end < 3) return [...parts, rest];
    report(
      problems,
      "missing-separator",
      key.span,
      `Expected a new line or \`;\` before \`${key.text}:\`. A value with a \`:\` in it goes in quotes.`,
      "Put `;` between the entries",
      { span: { start: tokens[end - 1]!.span.end, end: key.span.start }, text: "; " },
    );
    parts.push({ tokens: tokens.slice(0, end) });
    rest = { ...rest, tokens: tokens.slice(second - 1) };
  }
}

function isKeyLike(token: Token): boolean {
  return token.tokenType === types.Word && /^[a-z][\w.-]*$/i.test(token.text);
}

function hasLineEnd(text: string, start: number, end: number): boolean {
  return /[\r\n]/.test(text.slice(start, end));
}

/** The head of an entry as it is meant, ready for the parser. */
export function mendEntry(text: string, statement: Statement, problems: SyntaxProblem[]): Token[] {
  let tokens = [...statement.tokens];
  tokens = mendStart(tokens, statement.block !== undefined, problems);
  tokens = mendDash(tokens, problems);
  tokens = mendKey(tokens, problems);
  tokens = mendColon(tokens, statement.block, problems);
  tokens = mendBrackets(text, tokens, problems);
  return mendTrailingComma(tokens, problems);
}

/** Signs before the key. A line such as `: 116` has no key at all, which the parser says. */
function mendStart(tokens: Token[], hasBlock: boolean, problems: SyntaxProblem[]): Token[] {
  const key = tokens.findIndex((token) => token.tokenType === types.Word || token.tokenType === types.Text);
  if (key <= 0) return tokens;
  if (!hasBlock && !tokens.slice(key).some((token) => token.tokenType === types.Colon)) return tokens;
  const span = { start: tokens[0]!.span.start, end: tokens[key - 1]!.span.end };
  report(
    problems,
    "unexpected",
    span,
    `An entry starts with its key. Expected nothing before \`${tokens[key]!.text}\`, as in \`links: 116\`.`,
    "Remove what stands before the key",
    { span: { start: span.start, end: tokens[key]!.span.start }, text: "" },
  );
  return tokens.slice(key);
}

function mendDash(tokens: Token[], problems: SyntaxProblem[]): Token[] {
  if (tokens.length < 2 || !isDash(tokens[0]!)) return tokens;
  const span = { start: tokens[0]!.span.start, end: tokens[1]!.span.start };
  report(
    problems,
    "dash-list",
    tokens[0]!.span,
    "An entry does not start with a dash. Expected a key, as in `links: 116`; the items of a list stand on one line with commas between them.",
    "Remove the dash",
    { span, text: "" },
  );
  return tokens.slice(1);
}

/** `"links": 116` and `rear derailleur: corrie.long-12`. */
function mendKey(tokens: Token[], problems: SyntaxProblem[]): Token[] {
  const first = tokens[0]!;
  if (first.tokenType === types.Text) {
    if (!/^[^\s{}()[\];:<>=",/]+$/.test(first.text)) return tokens;
    report(problems, "quoted-key", first.span, `A key has no quotes: \`${first.text}\`.`, "Remove the quotes", {
      span: first.span,
      text: first.text,
    });
    return [makeToken(types.Word, first.text, first.span.start, first.span.end), ...tokens.slice(1)];
  }
  const colon = tokens.findIndex((token) => token.tokenType === types.Colon);
  if (colon < 2 || !tokens.slice(0, colon).every((token) => isWord(token))) return tokens;
  const words = tokens.slice(0, colon).map((token) => token.text);
  // `mass 78 kg note: x` is two entries on one line rather than one long key.
  if (words.some((word) => !/^[a-z][\w-]*$/i.test(word))) return tokens;
  const span = { start: first.span.start, end: tokens[colon - 1]!.span.end };
  const key = words.join("-");
  report(problems, "blank-in-key", span, `A key is one word: \`${key}:\`. Words are joined by \`-\`.`, `Write ${key}`, {
    span,
    text: key,
  });
  return [makeToken(types.Word, key, span.start, span.end), ...tokens.slice(colon)];
}

/** `key = value`, `key value`, `key: {`. */
function mendColon(tokens: Token[], block: StatementBlock | undefined, problems: SyntaxProblem[]): Token[] {
  const [key, second, third] = tokens;
  if (key === undefined || key.tokenType !== types.Word) return tokens;
  if (second === undefined) return tokens;
  const assigned = second.tokenType === types.Colon && third?.tokenType === types.Comparison ? third : second;
  if (assigned.tokenType === types.Comparison && ["=", "==", "=>"].includes(assigned.text)) {
    const after = tokens[tokens.indexOf(assigned) + 1];
    const end = after === undefined ? assigned.span.end : after.span.start;
    report(
      problems,
      "equals-sign",
      assigned.span,
      `A key and its value have \`:\` between them, not \`${assigned.text}\`, as in \`links: 116\`.`,
      "Write `:`",
      { span: { start: key.span.end, end }, text: after === undefined ? ":" : ": " },
    );
    const colon = makeToken(types.Colon, ":", assigned.span.start, assigned.span.end);
    return [key, colon, ...tokens.slice(tokens.indexOf(assigned) + 1)];
  }
  if (second.tokenType === types.Colon) {
    if (tokens.length > 2 || block === undefined) return tokens;
    // Without a brace the layout has already asked for one in place of the colon.
    if (!block.opened) return [key];
    report(
      problems,
      "colon-before-brace",
      second.span,
      `A group has no \`:\` before its \`{\`, as in \`${key.text} {\`. A slot names its part first, as in \`chain: corrie.link-12 {\`.`,
      "Remove the `:`",
      { span: { start: key.span.end, end: second.span.end }, text: "" },
    );
    return [key];
  }
  if (second.tokenType === types.Comma) return tokens;
  const end = key.span.end;
  report(
    problems,
    "missing-colon",
    { start: key.span.start, end },
    `Expected \`:\` after \`${key.text}\`, as in \`links: 116\`.`,
    "Put `:` after the key",
    { span: { start: end, end }, text: second.span.start > end ? ":" : ": " },
  );
  return [key, makeToken(types.Colon, ":", end, end), ...tokens.slice(1)];
}

/** `[a, b]` */
function mendBrackets(text: string, tokens: Token[], problems: SyntaxProblem[]): Token[] {
  const isBracket = (token: Token): boolean =>
    token.tokenType === types.OpenBracket || token.tokenType === types.CloseBracket;
  const first = tokens.findIndex(isBracket);
  if (first < 2 || tokens[1]!.tokenType !== types.Colon) return tokens;
  const last = tokens.findLastIndex(isBracket);
  let inside = tokens.slice(first, last + 1).filter((token) => !isBracket(token));
  if (inside.at(-1)?.tokenType === types.Comma) inside = inside.slice(0, -1);
  const span = { start: tokens[first]!.span.start, end: tokens[last]!.span.end };
  const plain = writtenAs(text, inside);
  const holdsLines = hasLineEnd(text, span.start, span.end);
  report(
    problems,
    "square-brackets",
    holdsLines ? tokens[first]!.span : span,
    `A list has commas and no brackets, all on one line${plain === "" ? ", as in `1180, 1150, 1210 N`" : `: \`${plain}\``}.`,
    "Remove the brackets",
    { span, text: plain },
  );
  return [...tokens.slice(0, first), ...inside, ...tokens.slice(last + 1)];
}

function mendTrailingComma(tokens: Token[], problems: SyntaxProblem[]): Token[] {
  const last = tokens.at(-1)!;
  if (tokens.length < 2 || last.tokenType !== types.Comma) return tokens;
  report(
    problems,
    "trailing-comma",
    last.span,
    "An entry ends with its line. Expected nothing after the value, or a further item after the `,`.",
    "Remove the comma",
    { span: last.span, text: "" },
  );
  return tokens.slice(0, -1);
}

/** Words and signs by which other languages name a base. */
const borrowedFrom: ReadonlySet<string> = new Set(["extends", "inherits", "based-on", "like"]);

/** `build fellside-l: {`, `build fellside-m extends fellside-l {` and `build fellside-m: fellside-l {`. */
export function mendHeader(given: readonly Token[], problems: SyntaxProblem[]): Token[] {
  const tokens = [...given];
  const last = tokens.at(-1)!;
  if (tokens.length > 1 && last.tokenType === types.Colon) {
    const before = tokens[tokens.length - 2]!;
    report(
      problems,
      "colon-before-brace",
      last.span,
      "A declaration has no `:` before its `{`, as in `build fellside-l {`.",
      "Remove the `:`",
      { span: { start: before.span.end, end: last.span.end }, text: "" },
    );
    tokens.pop();
  }
  const index = tokens.findIndex(
    ({ tokenType, text }, at) =>
      at > 1 && (tokenType === types.Colon || (tokenType === types.Word && borrowedFrom.has(text))),
  );
  const word = tokens[index];
  if (word === undefined || !isWord(tokens[index + 1])) return tokens;
  const glued = word.tokenType === types.Colon && tokens[index - 1]!.span.end === word.span.start;
  report(
    problems,
    "base-spelling",
    word.span,
    "The base of a part or a build stands after `from`, as in `build fellside-m from fellside-l {`.",
    "Write `from`",
    {
      span: {
        start: word.span.start,
        end: word.tokenType === types.Colon ? tokens[index + 1]!.span.start : word.span.end,
      },
      text: word.tokenType === types.Colon ? `${glued ? " " : ""}from ` : "from",
    },
  );
  tokens[index] = makeToken(types.Word, "from", word.span.start, word.span.end);
  return tokens;
}

/** Words with a meaning of their own in one kind of statement, from the second token on. */
export function markWords(tokens: readonly Token[], words: ReadonlyMap<string, Token["tokenType"]>): Token[] {
  return tokens.map((token, index) => {
    const tokenType = index > 0 && token.tokenType === types.Word ? words.get(token.text) : undefined;
    return tokenType === undefined ? token : retype(token, tokenType);
  });
}

export const headerWords: ReadonlyMap<string, Token["tokenType"]> = new Map([
  ["from", types.From],
  ["of", types.Of],
]);
export const waiveWords: ReadonlyMap<string, Token["tokenType"]> = new Map([
  ["at", types.At],
  ["until", types.Until],
]);
export const valueWords: ReadonlyMap<string, Token["tokenType"]> = new Map([["or", types.Or]]);
