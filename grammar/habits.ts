/**
 * Typing habits that take a whole statement to see, each with its own code, message and fix.
 *
 * Every function looks at the tokens of one statement, reports, and returns the tokens that are meant, so that the
 * parser reads them as if they had been typed that way.
 */

import type { Statement, StatementBlock } from "./layout.ts";
import { makeToken, retype, type Token } from "./lexer.ts";
import * as types from "./tokens.ts";
import type { Span, SyntaxProblem, TextChange } from "./tree.ts";

function report(
  problems: SyntaxProblem[],
  code: string,
  span: Span,
  message: string,
  title: string,
  ...changes: TextChange[]
): void {
  problems.push({ code: `language/${code}`, message, span, severity: "error", fix: { title, changes } });
}

function isWord(token: Token | undefined, text?: string): boolean {
  return token?.tokenType === types.Word && (text === undefined || token.text === text);
}

/** The tokens as they would be written on one line. */
function writtenAs(text: string, tokens: readonly Token[]): string {
  let line = "";
  for (const token of tokens) {
    if (line !== "" && token.tokenType !== types.Comma) line += " ";
    line += token.span.end > token.span.start ? text.slice(token.span.start, token.span.end) : token.text;
  }
  return line;
}

function hasLineEnd(text: string, start: number, end: number): boolean {
  return /[\r\n]/.test(text.slice(start, end));
}

/**
 * `- item` lines under a key, and `[` lists over several lines, become the value of that key.
 * Returns the statements that remain.
 */
export function joinLists(text: string, statements: readonly Statement[], problems: SyntaxProblem[]): Statement[] {
  const kept: Statement[] = [];
  for (let index = 0; index < statements.length; index++) {
    const statement = statements[index]!;
    const head = statement.tokens;
    let joined: Token[] | undefined;
    let last = index;
    if (statement.block === undefined && head.length > 1) {
      if (head.at(-1)!.tokenType === types.Colon) {
        while (isDashItem(statements[last + 1])) last++;
        if (last > index) joined = joinDashes(text, statements.slice(index, last + 1), problems);
      } else if (openBrackets(head) > 0) {
        let open = openBrackets(head);
        let end = index;
        while (open > 0 && end + 1 < statements.length && isListLine(statements[end + 1]!)) {
          end++;
          open += openBrackets(statements[end]!.tokens);
        }
        if (open <= 0 && end > index) {
          last = end;
          joined = statements.slice(index, last + 1).flatMap((item) => item.tokens);
        }
      }
    }
    kept.push(joined === undefined ? statement : { tokens: joined });
    index = last;
  }
  return kept;
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

function isDashItem(statement: Statement | undefined): boolean {
  const head = statement?.tokens;
  return head !== undefined && statement!.block === undefined && head.length > 1 && isDash(head[0]!);
}

function isDash(token: Token): boolean {
  return token.tokenType === types.Word && (token.text === "-" || token.text === "*");
}

function isListLine(statement: Statement): boolean {
  return statement.block === undefined && !statement.tokens.some((token) => token.tokenType === types.Colon);
}

function openBrackets(tokens: readonly Token[]): number {
  let open = 0;
  for (const token of tokens) {
    if (token.tokenType === types.OpenBracket) open++;
    else if (token.tokenType === types.CloseBracket) open--;
  }
  return open;
}

function joinDashes(text: string, statements: readonly Statement[], problems: SyntaxProblem[]): Token[] {
  const [head, ...items] = statements.map((statement) => statement.tokens) as [Token[], ...Token[][]];
  const tokens = [...head];
  items.forEach((item, index) => {
    const start = item[0]!.span.start;
    if (index > 0) tokens.push(makeToken(types.Comma, ",", start, start));
    tokens.push(...item.slice(1));
  });
  const value = tokens.slice(head.length);
  const span = { start: head.at(-1)!.span.end, end: value.at(-1)!.span.end };
  report(
    problems,
    "dash-list",
    { start: items[0]![0]!.span.start, end: span.end },
    `The items of a list stand on one line with commas between them: \`${writtenAs(text, tokens).replace(" :", ":")}\`.`,
    "Write the list on one line",
    { span, text: ` ${writtenAs(text, value)}` },
  );
  return tokens;
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

const operatorWords = new Map([
  ["or", types.Or],
  ["and", types.And],
  ["not", types.Not],
  ["is", types.Is],
  ["in", types.In],
  ["to", types.To],
  ["+", types.Sum],
  ["-", types.Sum],
  ["−", types.Sum],
  ["*", types.Product],
  ["/", types.Product],
]);

const borrowedOperators = new Map([
  ["&&", "and"],
  ["||", "or"],
  ["!", "not"],
]);

const borrowedComparisons = new Map([
  ["==", "="],
  ["=<", "<="],
  ["=>", ">="],
  ["<>", "is not"],
]);

function isNot(span: Span): Token[] {
  return [makeToken(types.Is, "is", span.start, span.end), makeToken(types.Not, "not", span.end, span.end)];
}

const numberWord = /^[-+−]?\d[\d.,/]*$/;

/** Gives the words of an expression their types, from the token at `start` on. */
export function mendExpression(tokens: readonly Token[], start: number, problems: SyntaxProblem[]): Token[] {
  const mended = tokens.slice(0, start);
  for (let index = start; index < tokens.length; index++) {
    const token = tokens[index]!;
    const next = tokens[index + 1];
    const before = mended.length > start ? mended[mended.length - 1] : undefined;
    const meant = token.tokenType === types.Comparison ? borrowedComparisons.get(token.text) : undefined;
    if (meant !== undefined) {
      const { span } = token;
      report(
        problems,
        "operator-spelling",
        span,
        `A comparison is written \`${meant}\`, not \`${token.text}\`.`,
        `Write \`${meant}\``,
        {
          span,
          text: meant,
        },
      );
      if (meant === "is not") mended.push(...isNot(span));
      else mended.push(makeToken(types.Comparison, meant, span.start, span.end));
      continue;
    }
    if (token.tokenType !== types.Word) {
      mended.push(token);
      continue;
    }
    if (token.text === "!" && next?.tokenType === types.Comparison && next.span.start === token.span.end) {
      const span = { start: token.span.start, end: next.span.end };
      report(problems, "operator-spelling", span, "Inequality is written `is not`.", "Write `is not`", {
        span,
        text: "is not",
      });
      mended.push(...isNot(span));
      index++;
      continue;
    }
    const borrowed = borrowedOperators.get(token.text);
    if (borrowed !== undefined) {
      report(
        problems,
        "operator-spelling",
        token.span,
        `\`${token.text}\` is written \`${borrowed}\`, as in \`not a and b\`.`,
        `Write \`${borrowed}\``,
        { span: token.span, text: borrowed },
      );
      mended.push(makeToken(operatorWords.get(borrowed)!, borrowed, token.span.start, token.span.end));
      continue;
    }
    const operator = operatorWords.get(token.text);
    const isInches = token.text === "in" && before?.tokenType === types.Word && numberWord.test(before.text);
    if (operator !== undefined && !isInches) {
      const plain = token.text === "−" ? makeToken(operator, "-", token.span.start, token.span.end) : token;
      mended.push(retype(plain, operator));
    } else if (next?.tokenType === types.OpenParenthesis) {
      mended.push(retype(token, types.Callee));
    } else {
      checkArithmeticBlanks(token, before, problems);
      mended.push(token);
    }
  }
  return mended;
}

/** `a*b`, `a+b` and `a -5`: a sign of arithmetic is a word of its own, since names hold dashes and slashes. */
function checkArithmeticBlanks(token: Token, before: Token | undefined, problems: SyntaxProblem[]): void {
  const { start, end } = token.span;
  const isSigned = /^[-+−]\d/.test(token.text) && before?.tokenType === types.Word && before.text !== "±";
  const inner = /^[^*+±]*[^*+±/](?<sign>[*+])[^*+±/-]/.exec(token.text);
  if (!isSigned && (inner === null || end - start !== token.text.length)) return;
  const sign = isSigned ? token.text[0]! : inner!.groups!.sign!;
  const spaced = isSigned ? `${sign} ${token.text.slice(1)}` : token.text.replaceAll(sign, ` ${sign} `);
  report(
    problems,
    "arithmetic-blanks",
    token.span,
    `Expected a blank on both sides of \`${sign}\`: \`${spaced}\`.`,
    "Put blanks round the operator",
    { span: token.span, text: spaced },
  );
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
