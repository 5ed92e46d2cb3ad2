/** The syntax tree of one declaration's text, whatever state it is in. Nothing here throws on any text. */

import { BlockReader } from "./entries.ts";
import { readHeader } from "./header.ts";
import { layOut, startOf } from "./layout.ts";
import { type LexedText, lex } from "./lexer.ts";
import { declarationLimit, problemLimit } from "./limits.ts";
import { reportOutside } from "./outside.ts";
import { readPlain } from "./plain.ts";
import { declarationKeywordAt, findHeader, split } from "./split.ts";
import * as types from "./tokens.ts";
import { type DeclarationTree, declarationKeywords, type SyntaxProblem } from "./tree.ts";

/**
 * The tree of a declaration. `text` is that of a chunk that has a keyword; for any other text the tree is an empty
 * one that carries the problems.
 */
export function parseDeclaration(text: string): DeclarationTree {
  const headerStart = findHeader(text);
  if (headerStart < 0) return emptyDeclaration(text);
  return readPlain(text, headerStart) ?? parseThoroughly(text, headerStart);
}

/** The tree by lexer and parser, for a text whose header stands at `headerStart`. */
export function parseThoroughly(text: string, headerStart: number): DeclarationTree {
  const before = text.slice(0, headerStart);
  if (/^[\s\ufeff]*$/.test(before) || holdsOnlyComments(before)) return new DeclarationReader(text, headerStart).read();
  // Not the text of one chunk. What stands before the declaration is reported, and blanked so that it cannot enclose it.
  const start = split(text).find((chunk) => chunk.keyword !== undefined)!.start;
  const blanked = text.slice(0, start).replace(/[^\r\n]/g, " ") + text.slice(start);
  const tree = new DeclarationReader(blanked, headerStart).read();
  return { ...tree, problems: finishProblems([...parseStray(text.slice(0, start)), ...tree.problems]) };
}

function holdsOnlyComments(text: string): boolean {
  return text.split(/[\r\n]/).every((line) => /^[\s\ufeff]*($|\/\/)/.test(line));
}

/** The problems of text that belongs to no declaration: anything but blanks and comments. */
export function parseStray(text: string): SyntaxProblem[] {
  if (text.length > declarationLimit) return [tooLong(text, "This text")];
  const lexed = lex(text);
  const layout = layOut(text, lexed.tokens);
  let problems: SyntaxProblem[] = [];
  reportOutside(layout.statements, problems);
  for (const problem of lexed.problems) {
    if (layout.statements.length === 0 || isForeignComment(problem)) problems.push(problem);
  }
  if (layout.statements.length === 0) problems = [...problems, ...layout.problems];
  return finishProblems(problems);
}

function isForeignComment({ code }: SyntaxProblem): boolean {
  return code === "language/hash-comment" || code === "language/block-comment";
}

function emptyDeclaration(text: string): DeclarationTree {
  const span = { start: 0, end: 0 };
  const keyword = declarationKeywords[0];
  return { header: { keyword, keywordSpan: span, span }, documentation: "", problems: parseStray(text), span };
}

function tooLong(text: string, what: string): SyntaxProblem {
  return {
    code: "language/too-long",
    message: `${what} has ${text.length} characters; at most ${declarationLimit} are read. Expected it split into several.`,
    span: { start: 0, end: Math.min(text.length, 1) },
    severity: "error",
  };
}

/** In the order of the text, and no more of them than a person can use. */
function finishProblems(problems: SyntaxProblem[]): SyntaxProblem[] {
  problems.sort((left, right) => left.span.start - right.span.start);
  if (problems.length <= problemLimit) return problems;
  const rest = problems.length - problemLimit;
  const next = problems[problemLimit]!;
  return [
    ...problems.slice(0, problemLimit),
    {
      code: "language/more-problems",
      message: `${rest} further problems in this declaration are not listed. Mend the first ones and look again.`,
      span: next.span,
      severity: "error",
    },
  ];
}

class DeclarationReader {
  private readonly text: string;
  private readonly headerStart: number;
  private readonly lexed: LexedText;
  private readonly problems: SyntaxProblem[] = [];
  private readonly isCut: boolean;
  private readonly fullText: string;

  constructor(text: string, headerStart: number) {
    this.fullText = text;
    this.isCut = text.length > declarationLimit;
    this.text = this.isCut ? text.slice(0, declarationLimit) : text;
    this.headerStart = headerStart;
    this.lexed = lex(this.text);
  }

  read(): DeclarationTree {
    const keyword = declarationKeywordAt(this.text, this.headerStart);
    if (keyword === undefined) return emptyDeclaration("");
    const layout = layOut(this.text, this.lexed.tokens);
    const position = layout.statements.findIndex((statement) => startOf(statement) >= this.headerStart);
    const statement = layout.statements[Math.max(0, position)]!;
    const header = readHeader(keyword, statement, this.problems);
    const blocks = new BlockReader(this.text, keyword, this.lexed.comments, this.problems);
    const block = statement.block === undefined ? undefined : blocks.readBlock(statement.block, 1, false);
    reportOutside(
      layout.statements.filter((other) => other !== statement),
      this.problems,
    );
    const lastToken = this.lexed.tokens.findLast((token) => token.tokenType !== types.LineEnd)!;
    const tree = {
      header,
      documentation: this.documentation(),
      ...(block === undefined ? {} : { block }),
      span: { start: this.headerStart, end: lastToken.span.end },
    };
    if (this.isCut) return { ...tree, problems: [tooLong(this.fullText, "This declaration")] };
    return { ...tree, problems: finishProblems([...this.problems, ...this.lexed.problems, ...layout.problems]) };
  }

  private documentation(): string {
    const lines: string[] = [];
    for (const comment of this.lexed.comments) {
      if (comment.span.start >= this.headerStart) break;
      if (/^\/\/\/(?!\/)/.test(comment.text)) lines.push(comment.text.slice(3).replace(/^ /, ""));
    }
    return lines.join("\n");
  }
}
