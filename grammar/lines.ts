/** What the layout needs to know of lines and braces before it starts: indentation, and which braces match. */

import { isBlank, lineStartAt } from "./characters.ts";
import type { Token } from "./lexer.ts";
import { CloseBrace, LineEnd, OpenBrace } from "./tokens.ts";

/** The tokens `first` up to `last` (not included) of one line that holds any. */
export interface Line {
  readonly first: number;
  readonly last: number;
  readonly indent: number;
}

/** The lines that hold any token. */
export function findLines(text: string, tokens: readonly Token[]): Line[] {
  const lines: Line[] = [];
  let first = 0;
  for (let index = 0; index <= tokens.length; index++) {
    if (index < tokens.length && tokens[index]!.tokenType !== LineEnd) continue;
    if (index > first) lines.push({ first, last: index, indent: indentAt(text, tokens[first]!.span.start) });
    first = index + 1;
  }
  return lines;
}

const tabWidth = 4;

/** The column at which the first token of a line stands, tabs counted to the next multiple of four. */
function indentAt(text: string, offset: number): number {
  let column = 0;
  for (let at = lineStartAt(text, offset); at < offset; at++) {
    if (text[at] === "\t") column += tabWidth - (column % tabWidth);
    else if (isBlank(text.charCodeAt(at))) column++;
  }
  return column;
}

/** The index of the `}` for each `{`; under -1, zero when all of them match. */
export function matchBraces(tokens: readonly Token[]): Map<number, number> {
  const partners = new Map<number, number>();
  const open: number[] = [];
  let unmatched = 0;
  for (let index = 0; index < tokens.length; index++) {
    const tokenType = tokens[index]!.tokenType;
    if (tokenType === OpenBrace) open.push(index);
    else if (tokenType === CloseBrace) {
      const start = open.pop();
      if (start === undefined) unmatched++;
      else partners.set(start, index);
    }
  }
  partners.set(-1, unmatched + open.length);
  return partners;
}

/** For every line, the index of the next one that is indented no deeper. */
export function findOutwardLines(lines: readonly Line[]): number[] {
  const outward = new Array<number>(lines.length).fill(lines.length);
  const waiting: number[] = [];
  lines.forEach((line, index) => {
    while (waiting.length > 0 && lines[waiting.at(-1)!]!.indent >= line.indent) outward[waiting.pop()!] = index;
    waiting.push(index);
  });
  return outward;
}
