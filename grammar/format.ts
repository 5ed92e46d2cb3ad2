/**
 * The canonical text of a file.
 *
 * Tokens and comments are never moved, dropped or made: the formatter only decides what stands between them, and
 * spells a few words in their one form. A declaration with a syntax error is left exactly as it is.
 */

import { byteOrderMark, isLineEnd, lineEndAt, lineStartAt } from "./characters.ts";
import { layOut, type Statement, type StatementBlock } from "./layout.ts";
import { type LexedText, lex, type Token } from "./lexer.ts";
import { parseDeclaration, parseStray } from "./parse.ts";
import { pieceOf, type SpelledPiece, spellValue } from "./spelling.ts";
import { split } from "./split.ts";
import { CloseParenthesis, Colon, Comma, OpenParenthesis, Word } from "./tokens.ts";
import type { Chunk, SyntaxProblem, TextChange } from "./tree.ts";

/** Columns a one-line block may reach; a longer one is broken into lines. */
export const lineWidth = 120;
const indentWidth = 2;

export interface FormattedText {
  readonly text: string;
  /** Errors, with offsets in the file, of the declarations that were left as they are; absent when there are none. */
  readonly refused?: readonly SyntaxProblem[];
}

export interface FormatEdits {
  /** In order, none overlapping, with offsets in the file. */
  readonly changes: readonly TextChange[];
  readonly refused?: readonly SyntaxProblem[];
}

/**
 * The values of a declaration that have one canonical spelling by the type of their field, by the offset in the
 * declaration at which each starts. The language knows no fields, so whoever knows them hands this in.
 */
export type CanonicalValues = (declaration: string, chunk: Chunk) => ReadonlyMap<number, string>;

export function format(text: string, values?: CanonicalValues): FormattedText {
  const { changes, refused } = formatEdits(text, values);
  return { text: applyChanges(text, changes), ...(refused === undefined ? {} : { refused }) };
}

/** The smallest replacements that make the text canonical. */
export function formatEdits(text: string, values?: CanonicalValues): FormatEdits {
  const changes: TextChange[] = [];
  const refused: SyntaxProblem[] = [];
  const lineEnd = usesCarriageReturns(text) ? "\r\n" : "\n";
  const chunks = split(text);
  chunks.forEach((chunk, index) => {
    const chunkText = text.slice(chunk.start, chunk.end);
    const errors = errorsOf(chunk, chunkText);
    if (errors.length > 0) {
      refused.push(...errors.map((problem) => shiftProblem(problem, chunk.start)));
      return;
    }
    const printer = new Printer(chunkText, chunk.keyword === "rule", values?.(chunkText, chunk));
    const pieces = printer.print();
    const after = pieces.length === 0 ? "" : index === chunks.length - 1 ? "\n" : "\n\n";
    addChanges(changes, text, chunk, pieces, after, lineEnd);
  });
  return { changes, ...(refused.length === 0 ? {} : { refused }) };
}

/** The changes of `formatEdits` that touch the lines from `start` to `end`. */
export function formatRange(text: string, start: number, end: number, values?: CanonicalValues): FormatEdits {
  const from = lineStartAt(text, Math.min(start, text.length));
  const to = lineEndAt(text, Math.max(start, end));
  const { changes, refused } = formatEdits(text, values);
  const touches = ({ start, end }: { start: number; end: number }): boolean => end > from && start < to;
  const touched = refused?.filter(({ span }) => touches({ start: span.start, end: span.end + 1 })) ?? [];
  return {
    changes: changes.filter(
      ({ span }) => touches(span) || (span.start === span.end && touches({ start: span.start, end: span.end + 1 })),
    ),
    ...(touched.length === 0 ? {} : { refused: touched }),
  };
}

/** The text with the changes made. They must be in order and not overlap. */
export function applyChanges(text: string, changes: readonly TextChange[]): string {
  const parts: string[] = [];
  let offset = 0;
  for (const change of changes) {
    parts.push(text.slice(offset, change.span.start), change.text);
    offset = change.span.end;
  }
  parts.push(text.slice(offset));
  return parts.join("");
}

function errorsOf(chunk: Chunk, text: string): SyntaxProblem[] {
  const problems = chunk.keyword === undefined ? parseStray(text) : parseDeclaration(text).problems;
  return problems.filter((problem) => problem.severity === "error");
}

function shiftProblem(problem: SyntaxProblem, by: number): SyntaxProblem {
  const shift = ({ start, end }: { start: number; end: number }) => ({ start: start + by, end: end + by });
  const { fix } = problem;
  return {
    ...problem,
    span: shift(problem.span),
    ...(fix === undefined
      ? {}
      : { fix: { ...fix, changes: fix.changes.map((change) => ({ ...change, span: shift(change.span) })) } }),
  };
}

/** True when every line end of the text is a carriage return with a line feed. */
function usesCarriageReturns(text: string): boolean {
  return text.includes("\r\n") && !/(?<!\r)\n|\r(?!\n)/.test(text);
}

interface PrintedPiece {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  /** Blanks, line feeds and semicolons between the piece before and this one. */
  readonly before: string;
}

/** Adds what turns the chunk into its pieces, as far as it differs. */
function addChanges(
  changes: TextChange[],
  text: string,
  chunk: Chunk,
  pieces: readonly PrintedPiece[],
  after: string,
  lineEnd: string,
): void {
  let offset = chunk.start;
  if (offset === 0 && text.charCodeAt(0) === byteOrderMark) offset++;
  const replace = (start: number, end: number, wanted: string): void => {
    const change = smallestChange(text, start, end, wanted.replaceAll("\n", lineEnd));
    if (change !== undefined) changes.push(change);
  };
  for (const piece of pieces) {
    const start = chunk.start + piece.start;
    const end = chunk.start + piece.end;
    replace(offset, start, piece.before);
    replace(start, end, piece.text);
    offset = end;
  }
  replace(offset, chunk.end, after);
}

/** The change without what its start and its end have in common with the text; undefined when nothing is left. */
function smallestChange(text: string, start: number, end: number, wanted: string): TextChange | undefined {
  const given = text.slice(start, end);
  if (given === wanted) return undefined;
  // An editor cannot point between a carriage return and its line feed, so gaps that hold one are replaced whole.
  if (given.includes("\r") || wanted.includes("\r")) return { span: { start, end }, text: wanted };
  const most = Math.min(given.length, wanted.length);
  let from = 0;
  while (from < most && given[from] === wanted[from]) from++;
  let back = 0;
  while (back < most - from && given[given.length - 1 - back] === wanted[wanted.length - 1 - back]) back++;
  return { span: { start: start + from, end: end - back }, text: wanted.slice(from, wanted.length - back) };
}

class Printer {
  private readonly text: string;
  private readonly isRule: boolean;
  private readonly lexed: LexedText;
  private readonly values: ReadonlyMap<number, string>;
  private readonly pieces: PrintedPiece[] = [];
  private nextComment = 0;
  /** The next piece has to start a line: a comment stands before it. */
  private afterComment = false;
  /** The piece before is a `{` with a line end after it: no empty line follows. */
  private afterBrace = false;

  constructor(text: string, isRule: boolean, values: ReadonlyMap<number, string> = new Map()) {
    this.text = text;
    this.isRule = isRule;
    this.values = values;
    this.lexed = lex(text);
  }

  print(): PrintedPiece[] {
    const { statements } = layOut(this.text, this.lexed.tokens);
    for (const statement of statements) this.printStatement(statement, 0, true);
    this.printComments(this.text.length, 0);
    return this.pieces;
  }

  private get end(): number {
    return this.pieces.at(-1)?.end ?? 0;
  }

  private push(start: number, end: number, text: string, before: string): void {
    this.pieces.push({ start, end, text, before: this.pieces.length === 0 ? "" : before });
    this.afterComment = false;
    this.afterBrace = false;
  }

  /** Line ends and indentation before what starts at `start`, with one empty line where the author left any. */
  private newLine(start: number, depth: number, mayBeEmpty: boolean): string {
    const isEmpty = mayBeEmpty && !this.afterBrace && countLineEnds(this.text, this.end, start) > 1;
    return `${isEmpty ? "\n\n" : "\n"}${" ".repeat(depth * indentWidth)}`;
  }

  /** Comments that stand before `offset`: at the end of their line, or on lines of their own at `depth`. */
  private printComments(offset: number, depth: number): void {
    for (; this.nextComment < this.lexed.comments.length; this.nextComment++) {
      const comment = this.lexed.comments[this.nextComment]!;
      const { start, end } = comment.span;
      if (start >= offset) return;
      const isTrailing = this.pieces.length > 0 && countLineEnds(this.text, this.end, start) === 0;
      const keepsBrace = this.afterBrace && isTrailing;
      this.push(start, end, comment.text, isTrailing ? " " : this.newLine(start, depth, true));
      this.afterComment = true;
      this.afterBrace = keepsBrace;
    }
  }

  private printStatement(statement: Statement, depth: number, ownLine: boolean, before = " "): void {
    const head = this.headPieces(statement);
    const start = head[0]?.start ?? statement.block!.start;
    this.printComments(start, depth);
    const lead = ownLine || this.afterComment ? this.newLine(start, depth, true) : before;
    head.forEach((piece, index) => {
      const space = index === 0 ? lead : spaceBetween(this.text, head[index - 1]!.last, piece.first);
      this.push(piece.start, piece.end, piece.text, space);
    });
    if (statement.block === undefined) return;
    const column = depth * indentWidth + this.inlineText(statement).length;
    this.printBlock(
      statement.block,
      depth,
      statement.block.oneLine && column <= lineWidth,
      head.length > 0 ? " " : lead,
    );
  }

  private printBlock(block: StatementBlock, depth: number, oneLine: boolean, before: string): void {
    this.printComments(block.start, depth);
    const lead = this.afterComment ? this.newLine(block.start, depth, false) : before;
    this.push(block.start, block.start + 1, "{", lead);
    this.afterBrace = !oneLine;
    const { close } = block;
    if (oneLine) {
      block.statements.forEach((inner, index) => {
        this.printStatement(inner, depth + 1, false, index === 0 ? " " : "; ");
      });
    } else {
      for (const inner of block.statements) this.printStatement(inner, depth + 1, true);
    }
    if (close === undefined) return;
    this.printComments(close.span.start, depth + 1);
    const isEmpty = oneLine && block.statements.length === 0;
    const space = oneLine && !this.afterComment ? (isEmpty ? "" : " ") : this.newLine(close.span.start, depth, false);
    this.push(close.span.start, close.span.end, "}", space);
  }

  /** The head of a statement: its value in canonical spelling, everything else as written. */
  private headPieces(statement: Statement): SpelledPiece[] {
    const { tokens } = statement;
    const colon = tokens.findIndex((token) => token.tokenType === Colon);
    if (colon < 0) return tokens.map((token) => pieceOf(this.text, token));
    const key = tokens.slice(0, colon + 1).map((token) => pieceOf(this.text, token));
    const value = tokens.slice(colon + 1);
    const [first, last] = [value[0], value.at(-1)];
    const canonical = first === undefined ? undefined : this.values.get(first.span.start);
    if (canonical === undefined || first === undefined || last === undefined) {
      return [...key, ...spellValue(this.text, value, this.isRule)];
    }
    return [...key, { start: first.span.start, end: last.span.end, text: canonical, first, last }];
  }

  /** A statement with its block as it would stand on one line. */
  private inlineText(statement: Statement): string {
    let line = "";
    let last: Token | undefined;
    for (const piece of this.headPieces(statement)) {
      line += (last === undefined ? "" : spaceBetween(this.text, last, piece.first)) + piece.text;
      last = piece.last;
    }
    const { block } = statement;
    if (block === undefined) return line;
    const inner = block.statements.map((each) => this.inlineText(each)).join("; ");
    return `${line}${line === "" ? "" : " "}${inner === "" ? "{}" : `{ ${inner} }`}`;
  }
}

/** Words that are followed by a parenthesis without being a function. */
const wordsBeforeParenthesis = new Set(["and", "or", "not", "in", "is", "to", "+", "-", "*", "/"]);

function spaceBetween(text: string, left: Token, right: Token): string {
  if (right.tokenType === Colon || right.tokenType === Comma || right.tokenType === CloseParenthesis) return "";
  if (left.tokenType === OpenParenthesis) return "";
  if (right.tokenType === OpenParenthesis && left.tokenType === Word && !wordsBeforeParenthesis.has(left.text)) {
    // Outside expressions nothing says whether the two belong together, so the author's blank stays.
    return text.slice(left.span.end, right.span.start) === "" ? "" : " ";
  }
  return " ";
}

function countLineEnds(text: string, start: number, end: number): number {
  let count = 0;
  for (let offset = start; offset < end; offset++) {
    const code = text.charCodeAt(offset);
    if (!isLineEnd(code)) continue;
    if (code === 10 && offset > start && text.charCodeAt(offset - 1) === 13) continue;
    count++;
  }
  return count;
}
