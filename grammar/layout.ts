/**
 * Tokens to nested statements: one statement per line or `;`, blocks by braces.
 *
 * Where the braces of a declaration balance, they alone decide. Where they do not, something is half typed, and the
 * author's indentation says which block a line was meant for, so that one bad line costs only that line.
 * Everything here is a loop over lines with a stack of its own: no input can overflow the call stack.
 */

import type { Token } from "./lexer.ts";
import { nestingLimit } from "./limits.ts";
import { findLines, findOutwardLines, type Line, matchBraces } from "./lines.ts";
import { CloseBrace, Colon, OpenBrace, Semicolon } from "./tokens.ts";
import type { Span, SyntaxProblem } from "./tree.ts";

/** One statement: the tokens of its head, and the block after it where there is one. */
export interface Statement {
  /** Without braces and semicolons. Empty only where a block stands without anything before it. */
  readonly tokens: Token[];
  block?: StatementBlock;
  /** Its block is beyond the nesting limit, which has been reported. */
  isCut?: boolean;
}

export interface StatementBlock {
  readonly statements: Statement[];
  /** From the `{` to just after the `}`, or to the end of the last token the block was taken to hold. */
  readonly start: number;
  end: number;
  /** The closing brace; absent where it is missing. */
  close?: Token;
  /** False where the opening brace is missing and the block was found by its indentation. */
  readonly opened: boolean;
  /** Opens and closes on one line. */
  oneLine: boolean;
}

export interface Layout {
  /** The first is the declaration itself; anything further stands outside it. */
  readonly statements: readonly Statement[];
  readonly problems: readonly SyntaxProblem[];
}

interface Frame {
  readonly owner: Statement;
  readonly block: StatementBlock;
  /** The indentation of the line on which the owner starts. */
  readonly indent: number;
  /** The line on which the block has to end because content follows its `{` there; otherwise -1. */
  readonly endsOnLine: number;
  /** Set for a block without `{` that its deeper lines made: the problem to report when it ends. */
  readonly dedent?: Span;
  readonly openBrace?: Token;
  /** Blocks beyond the nesting limit are followed, so that braces still match, but not kept. */
  readonly depth: number;
}

export function layOut(text: string, tokens: readonly Token[]): Layout {
  return new LayoutReader(text, tokens).read();
}

class LayoutReader {
  readonly problems: SyntaxProblem[] = [];
  private readonly text: string;
  private readonly tokens: readonly Token[];
  private readonly lines: Line[];
  private readonly balanced: boolean;
  /** For an unbalanced declaration: whether its indentation says anything at all. */
  private readonly indented: boolean;
  private readonly partners: Map<number, number>;
  /** For every line, the next one that is indented no deeper. */
  private readonly nextOutward: number[];

  private readonly outside: Statement[] = [];
  private readonly frames: Frame[] = [];
  private current: Statement | undefined;
  /** The last statement that began a line, with that line's indentation, while nothing has closed since. */
  private previous: { statement: Statement; indent: number; line: number; frame: Frame | undefined } | undefined;
  private lineNumber = 0;
  private lastEnd = 0;
  private justClosed = false;
  private runEnd = 0;

  constructor(text: string, tokens: readonly Token[]) {
    this.text = text;
    this.tokens = tokens;
    this.lines = findLines(text, tokens);
    this.partners = matchBraces(tokens);
    this.balanced = this.partners.get(-1) === 0;
    const firstIndent = this.lines[0]?.indent ?? 0;
    this.indented = this.lines.some((line) => line.indent > firstIndent);
    this.nextOutward = this.balanced ? [] : findOutwardLines(this.lines);
  }

  read(): Layout {
    for (this.lineNumber = 0; this.lineNumber < this.lines.length; this.lineNumber++) {
      this.readLine(this.lines[this.lineNumber]!);
    }
    while (this.frames.length > 0) this.closeMissing(true);
    return { statements: this.outside, problems: this.problems };
  }

  private readLine(line: Line): void {
    this.startLine(line);
    for (let index = line.first; index < line.last; index++) {
      const token = this.tokens[index]!;
      switch (token.tokenType) {
        case OpenBrace:
          this.open(token, index, line);
          break;
        case CloseBrace:
          this.close(token, index, line);
          break;
        case Semicolon:
          this.finishStatement();
          this.justClosed = false;
          break;
        default:
          this.append(token, index, line);
      }
      this.lastEnd = token.span.end;
    }
    this.finishStatement();
    this.justClosed = false;
    while (this.top?.endsOnLine === this.lineNumber) this.closeMissing();
  }

  private get top(): Frame | undefined {
    return this.frames[this.frames.length - 1];
  }

  private get container(): Statement[] {
    return this.top?.block.statements ?? this.outside;
  }

  /** Closes the blocks that the line's indentation has left, and opens one that only indentation shows. */
  private startLine(line: Line): void {
    const first = this.tokens[line.first]!;
    const closes = first.tokenType === CloseBrace;
    while (this.top?.dedent !== undefined && line.indent <= this.top.indent) this.closeDedent();
    if (!this.balanced && this.indented && !closes && first.tokenType !== OpenBrace) {
      while (this.frames.length > 1 && line.indent <= this.top!.indent) this.closeMissing();
    }
    const previous = this.previous;
    if (
      previous === undefined ||
      previous.frame !== this.top ||
      previous.statement !== this.container.at(-1) ||
      previous.statement.block !== undefined ||
      line.indent <= previous.indent ||
      closes ||
      first.tokenType === OpenBrace
    ) {
      return;
    }
    const last = previous.statement.tokens.at(-1)!;
    if (last.tokenType === Colon && first.text !== "-" && first.text !== "*") {
      this.push(previous.statement, last.span.end, { indent: previous.indent, dedent: last.span });
      return;
    }
    if (this.balanced) return;
    if (!this.closesBelow(previous.line, previous.indent)) return;
    this.problems.push({
      code: "language/missing-opening-brace",
      message: "Expected `{` at the end of this line: the lines below it belong to it and a `}` follows them.",
      span: last.span,
      severity: "error",
      fix: {
        title: "Put `{` at the end of the line",
        changes: [{ span: { start: last.span.end, end: last.span.end }, text: " {" }],
      },
    });
    this.push(previous.statement, last.span.end, { indent: previous.indent });
  }

  private append(token: Token, index: number, line: Line): void {
    if (this.current === undefined) {
      if (this.justClosed) this.reportMissingLineEnd(token);
      this.current = { tokens: [] };
      this.container.push(this.current);
      if (index === line.first) {
        this.previous = { statement: this.current, indent: line.indent, line: this.lineNumber, frame: this.top };
      }
    }
    this.justClosed = false;
    this.current.tokens.push(token);
  }

  private finishStatement(): void {
    this.current = undefined;
  }

  private open(token: Token, index: number, line: Line): void {
    const afterBrace = index > line.first && this.tokens[index - 1]!.tokenType === OpenBrace;
    if (!this.balanced && afterBrace && this.frames.length < nestingLimit) {
      this.problems.push({
        code: "language/stray-brace",
        message: "This `{` opens nothing. Expected an entry here, or the end of the line.",
        span: token.span,
        severity: "error",
        fix: { title: "Remove the `{`", changes: [{ span: token.span, text: "" }] },
      });
      return;
    }
    let owner = this.current;
    let indent = line.indent;
    if (owner === undefined) {
      const before = this.container.at(-1);
      const ownLine = index === line.first && before === this.previous?.statement && before !== undefined;
      if (ownLine && before.block === undefined && this.previous!.frame === this.top) {
        owner = before;
        indent = this.previous!.indent;
        const end = owner.tokens.at(-1)!.span.end;
        this.problems.push({
          code: "language/brace-on-own-line",
          message: "The `{` goes at the end of the line it belongs to, as in `rear-wheel {`.",
          span: token.span,
          severity: "warning",
          ...(isBlankBetween(this.text, end, token.span.start)
            ? {
                fix: {
                  title: "Move the `{` up",
                  changes: [{ span: { start: end, end: token.span.end }, text: " {" }],
                },
              }
            : {}),
        });
      } else {
        if (this.justClosed) this.reportMissingLineEnd(token);
        owner = { tokens: [] };
        this.container.push(owner);
        if (index === line.first) {
          this.previous = { statement: owner, indent, line: this.lineNumber, frame: this.top };
        }
      }
    }
    this.finishStatement();
    this.justClosed = false;
    const follows = this.afterOpenBraces(index) < line.last;
    const endsHere = follows && !this.balanced && !this.goesOnBelow(indent);
    const partner = this.partners.get(index);
    const staysOnLine = partner !== undefined && partner < line.last;
    if (this.balanced && follows && !staysOnLine && this.frames.length < nestingLimit) {
      const next = this.tokens[index + 1]!.span.start;
      this.problems.push({
        code: "language/block-spans-lines",
        message:
          "What follows a `{` on its line has to end there with `}`. Expected the first entry on a line of its own.",
        span: token.span,
        severity: "warning",
        fix: {
          title: "Start a new line after `{`",
          changes: [{ span: { start: token.span.end, end: next }, text: `\n${" ".repeat(indent + 2)}` }],
        },
      });
    }
    this.push(owner, token.span.start, {
      indent,
      openBrace: token,
      endsOnLine: endsHere ? this.lineNumber : -1,
      oneLine: follows && (this.balanced ? staysOnLine : endsHere),
    });
  }

  /** The index of the first token after a run of opening braces. */
  private afterOpenBraces(index: number): number {
    if (this.runEnd <= index) {
      this.runEnd = index + 1;
      while (this.tokens[this.runEnd]?.tokenType === OpenBrace) this.runEnd++;
    }
    return this.runEnd;
  }

  private push(
    owner: Statement,
    start: number,
    how: { indent: number; openBrace?: Token; endsOnLine?: number; dedent?: Span; oneLine?: boolean },
  ): void {
    const depth = this.frames.length;
    const block: StatementBlock = {
      statements: [],
      start,
      end: how.openBrace?.span.end ?? start,
      opened: how.openBrace !== undefined,
      oneLine: how.oneLine ?? false,
    };
    if (depth >= nestingLimit) {
      owner.isCut = true;
      if (depth === nestingLimit) {
        const last = how.openBrace?.span ?? { start, end: start };
        this.problems.push({
          code: "language/nesting-limit",
          message: `Blocks are read ${nestingLimit} deep; what is inside this one is not checked. Expected fewer blocks inside each other.`,
          span: last,
          severity: "error",
        });
      }
    } else {
      owner.block = block;
    }
    const frame: Frame = {
      owner,
      block,
      indent: how.indent,
      endsOnLine: how.endsOnLine ?? -1,
      depth,
      ...(how.dedent === undefined ? {} : { dedent: how.dedent }),
      ...(how.openBrace === undefined ? {} : { openBrace: how.openBrace }),
    };
    this.frames.push(frame);
    this.previous = undefined;
  }

  private close(token: Token, index: number, line: Line): void {
    this.finishStatement();
    const first = index === line.first;
    while (this.top?.dedent !== undefined) this.closeDedent();
    if (this.balanced || !this.indented) {
      if (this.frames.length === 0) this.reportStrayBrace(token);
      else this.closeWith(token);
    } else if (this.top?.endsOnLine === this.lineNumber) {
      this.closeWith(token);
    } else {
      if (first) {
        while (this.frames.length > 1 && this.top!.indent > line.indent) this.closeMissing();
      }
      const frame = this.top;
      // One that is deeper than its block stands for a block that never opened.
      const isDeeper = first && this.frames.length > 1 && frame!.indent < line.indent;
      if (frame === undefined || isDeeper || this.goesOnInside(frame, index, line)) this.reportStrayBrace(token);
      else this.closeWith(token);
    }
  }

  /** A block does not end at a `}` while the next line is still indented deeper, or is itself the block's `}`. */
  private goesOnInside(frame: Frame, index: number, line: Line): boolean {
    if (index + 1 < line.last) return false;
    const next = this.lines[this.lineNumber + 1];
    if (next === undefined) return false;
    if (next.indent > frame.indent) return true;
    return next.indent === frame.indent && this.tokens[next.first]!.tokenType === CloseBrace;
  }

  /** The first line after the given one that is indented no deeper is a `}` at the given indentation. */
  private closesBelow(line: number, indent: number): boolean {
    const outward = this.lines[this.nextOutward[line]!];
    return outward?.indent === indent && this.tokens[outward.first]!.tokenType === CloseBrace;
  }

  /** Deeper lines follow the current one, and then a `}` at its own indentation. */
  private goesOnBelow(indent: number): boolean {
    const next = this.lines[this.lineNumber + 1];
    return next !== undefined && next.indent > indent && this.closesBelow(this.lineNumber, indent);
  }

  private closeWith(token: Token): void {
    const frame = this.frames.pop()!;
    frame.block.close = token;
    frame.block.end = token.span.end;
    this.previous = undefined;
    this.justClosed = true;
  }

  /** A block that is still open where the text ends reaches to there, so that what is typed next belongs to it. */
  private closeMissing(atEnd = false): void {
    const frame = this.frames.pop()!;
    this.previous = undefined;
    if (frame.dedent !== undefined) {
      this.frames.push(frame);
      this.closeDedent();
      return;
    }
    const end = Math.max(this.lastEnd, frame.block.end);
    frame.block.end = atEnd ? this.text.length : end;
    if (frame.depth >= nestingLimit) return;
    const sameLine = frame.endsOnLine >= 0;
    const brace = sameLine ? " }" : `\n${" ".repeat(frame.indent)}}`;
    this.problems.push({
      code: "language/missing-closing-brace",
      message: sameLine
        ? "This block is not closed. Expected `}` on the same line, as in `{ links: 116 }`."
        : "This block is not closed. Expected `}` on a line of its own after its last entry.",
      span: frame.openBrace?.span ?? frame.owner.tokens.at(-1)?.span ?? { start: frame.block.start, end },
      severity: "error",
      fix: { title: "Close the block with `}`", changes: [{ span: { start: end, end }, text: brace }] },
    });
  }

  /** Ends a block that `key:` and deeper lines made, without any brace. */
  private closeDedent(): void {
    const frame = this.frames.pop()!;
    const end = Math.max(this.lastEnd, frame.block.end);
    frame.block.end = end;
    this.previous = undefined;
    if (frame.depth >= nestingLimit) return;
    this.problems.push({
      code: "language/missing-braces",
      message:
        "Indentation alone does not make a block. Expected `{` here and `}` after the last entry, as in `rider { mass: 78 kg }`.",
      span: frame.dedent!,
      severity: "error",
      fix: {
        title: "Put the lines in braces",
        changes: [
          { span: frame.dedent!, text: " {" },
          { span: { start: end, end }, text: `\n${" ".repeat(frame.indent)}}` },
        ],
      },
    });
  }

  private reportStrayBrace(token: Token): void {
    this.previous = undefined;
    this.problems.push({
      code: "language/stray-brace",
      message: "This `}` closes nothing. Expected a `{` before it, or no `}` here.",
      span: token.span,
      severity: "error",
      fix: { title: "Remove the `}`", changes: [{ span: token.span, text: "" }] },
    });
  }

  private reportMissingLineEnd(token: Token): void {
    // More parts for the slot whose settings were just closed: said where entries are read.
    if (token.text === "or") return;
    const inside = this.top?.block.oneLine === true;
    this.problems.push({
      code: "language/missing-line-end",
      message: "Expected a new line or `;` after `}`.",
      span: token.span,
      severity: "error",
      fix: {
        title: inside ? "Put `;` between them" : "Start a new line",
        changes: [
          {
            span: { start: this.lastEnd, end: token.span.start },
            text: inside ? "; " : `\n${" ".repeat(this.lines[this.lineNumber]!.indent)}`,
          },
        ],
      },
    });
  }
}

/** Where a statement begins. */
export function startOf(statement: Statement): number {
  return statement.tokens[0]?.span.start ?? statement.block!.start;
}

function isBlankBetween(text: string, start: number, end: number): boolean {
  return /^\s*$/.test(text.slice(start, end));
}
