/**
 * Text of one declaration to tokens, comments kept aside.
 *
 * What a person typed out of habit (curly quotes, `29"`, a comma inside a number) is reported here with its fix and
 * turned into the plain token it stands for, so that the rest of the language sees one form only.
 */

import { type IToken, Lexer, type TokenType } from "chevrotain";
import { trimEnd } from "./characters.ts";
import { unescapeText } from "./split.ts";
import * as types from "./tokens.ts";
import type { Span, SyntaxProblem, ValueToken, ValueTokenKind } from "./tree.ts";
import {
  addressInComment,
  cleanCharacters,
  commasInWord,
  foreignComment,
  sizeMark,
  textMarks,
  warnInComment,
} from "./word-habits.ts";

/** A chevrotain token that also knows its meaning and its place in one form, whatever was typed. */
export interface Token extends IToken {
  /** The word, or the content of a text; otherwise the characters. */
  readonly text: string;
  readonly span: Span;
}

export interface CommentToken {
  /** From the `//` to the line's end, trailing blanks left out. */
  readonly text: string;
  readonly span: Span;
  /** A comment written as in another language: an error, but kept like any other. */
  readonly isForeign: boolean;
}

export interface LexedText {
  /** Line ends, braces and semicolons included; blanks and comments left out. */
  readonly tokens: readonly Token[];
  readonly comments: readonly CommentToken[];
  readonly problems: SyntaxProblem[];
}

let lexer: Lexer | undefined;

function sharedLexer(): Lexer {
  lexer ??= new Lexer(types.lexedTypes, {
    positionTracking: "onlyOffset",
    ensureOptimizations: true,
    skipValidations: true,
  });
  return lexer;
}

/** A token of the given type and place. Every token the parser sees is made here. */
export function makeToken(tokenType: TokenType, text: string, start: number, end: number): Token {
  return {
    tokenType,
    tokenTypeIdx: tokenType.tokenTypeIdx!,
    image: text,
    text,
    startOffset: start,
    span: { start, end },
  };
}

/** The same characters read as another type: `or` as the word between alternates. */
export function retype(token: Token, tokenType: TokenType): Token {
  return { ...token, tokenType, tokenTypeIdx: tokenType.tokenTypeIdx! };
}

/** Where a chevrotain token stands. Its own offsets are -1 or NaN at the end of input and while rules are recorded. */
export function spanOf(token: IToken | undefined): Span | undefined {
  return (token as Partial<Token> | undefined)?.span;
}

const nowhere: Span = { start: 0, end: 0 };

const valueKinds = new Map<TokenType, ValueTokenKind>([
  [types.Text, "text"],
  [types.Comma, "comma"],
  [types.Comparison, "comparison"],
  [types.OpenParenthesis, "bracket"],
  [types.CloseParenthesis, "bracket"],
  [types.OpenBracket, "bracket"],
  [types.CloseBracket, "bracket"],
]);

/** The token as the tree keeps it. */
export function valueToken(token: IToken): ValueToken {
  const { text = token.image, span = nowhere } = token as Partial<Token>;
  return { kind: valueKinds.get(token.tokenType) ?? "word", text, span };
}

/** Signs that are read as the plain ones and written so by the formatter. */
const plainComparisons: ReadonlyMap<string, string> = new Map([
  ["≤", "<="],
  ["⩽", "<="],
  ["≥", ">="],
  ["⩾", ">="],
]);

/** Words that need a closer look: a comma, an address, or anything outside plain visible ASCII. */
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it looks for.
const unusualWord = /[\x00-\x1f\x7f-\uffff,:]/;
// biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it looks for.
const unusualText = /[\x00-\x1f\x7f-\uffff]/;

/** Never throws; any text gives tokens that, with blanks and comments, cover it all. */
export function lex(text: string): LexedText {
  const result = sharedLexer().tokenize(text);
  const tokens: Token[] = [];
  const problems: SyntaxProblem[] = [];
  for (const lexed of result.tokens) {
    const start = lexed.startOffset;
    const image = lexed.image;
    const end = start + image.length;
    switch (lexed.tokenType) {
      case types.Word: {
        if (unusualWord.test(image)) pushWord(tokens, problems, text, image, start);
        else tokens.push(makeToken(types.Word, image, start, end));
        break;
      }
      case types.Text:
      case types.CurlyText:
      case types.SingleText: {
        const content = textMarks(problems, text, lexed.tokenType, start, end);
        tokens.push(makeToken(types.Text, unescapeText(content), start, end));
        if (unusualText.test(content)) warnInComment(problems, text, start, end);
        break;
      }
      case types.StrayQuote: {
        if (sizeMark(problems, text, start)) tokens.push(makeToken(types.Word, "in", start, end));
        break;
      }
      case types.Comparison: {
        tokens.push(makeToken(types.Comparison, plainComparisons.get(image) ?? image, start, end));
        break;
      }
      default:
        tokens.push(makeToken(lexed.tokenType, image, start, end));
    }
  }
  const comments = (result.groups.comments ?? []).map((comment) => {
    const start = comment.startOffset;
    const end = trimEnd(text, start, start + comment.image.length);
    const content = text.slice(start, end);
    if (unusualText.test(content)) warnInComment(problems, text, start, end);
    const isForeign = comment.tokenType !== types.Comment;
    if (isForeign) foreignComment(problems, text, start, end);
    else if (text[start - 1] === ":") addressInComment(problems, start, end);
    return { text: content, span: { start, end }, isForeign };
  });
  for (const error of result.errors) {
    // No input is known to reach this: every character starts some token. It is reported rather than trusted.
    const start = Math.max(0, error.offset);
    problems.push({
      code: "language/unreadable",
      message: "These characters cannot be read. Expected a word, a text in quotes or a sign such as `:`.",
      span: { start, end: Math.min(text.length, start + Math.max(1, error.length)) },
      severity: "error",
    });
  }
  return { tokens, comments, problems };
}

function pushWord(tokens: Token[], problems: SyntaxProblem[], text: string, image: string, start: number): void {
  const end = start + image.length;
  const scheme = image.indexOf("://");
  if (scheme > 0) {
    problems.push({
      code: "language/unquoted-address",
      message: `\`//\` starts a comment, so an address goes in quotes: "${image}".`,
      span: { start, end },
      severity: "error",
      fix: { title: "Put the address in quotes", changes: [{ span: { start, end }, text: `"${image}"` }] },
    });
    tokens.push(makeToken(types.Text, image, start, end));
    return;
  }
  const word = cleanCharacters(problems, text, start, end);
  if (word === "") return;
  const comma = word.indexOf(",");
  if (comma > 0) {
    const words = commasInWord(problems, word, start, end);
    if (words.length > 1) {
      // Places inside the word: exact unless an invisible character was dropped, and then still within the word.
      let offset = start;
      words.forEach((part, index) => {
        if (index > 0) tokens.push(makeToken(types.Comma, ",", Math.min(offset++, end), Math.min(offset, end)));
        tokens.push(makeToken(types.Word, part, Math.min(offset, end), Math.min(offset + part.length, end)));
        offset += part.length;
      });
      return;
    }
    tokens.push(makeToken(types.Word, words[0]!, start, end));
    return;
  }
  tokens.push(makeToken(types.Word, word, start, end));
}
