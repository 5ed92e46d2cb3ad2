import type { Span, ValueToken } from "../../grammar/tree.ts";
import { teethSpellings } from "../../grammar/units.ts";
import {
  error,
  excerpt,
  type ReadContext,
  type Reading,
  replacement,
  spanOf,
  unread,
  type ValueProblem,
  warning,
} from "./problems.ts";
import type { Teeth, TeethType } from "./types.ts";

const fewest = 1;
const most = 200;
/** No cassette has as many sprockets; a longer list is a pasted mistake. */
const longestList = 100;

/**
 * Reads tooth counts: `10-12-14-16 t`, `50/34 t`, `32 t`, `32`. The order and repeated counts are kept.
 * Lists with commas or blanks are read, with the dashes offered.
 */
export function readTeeth(_type: TeethType, tokens: readonly ValueToken[], context: ReadContext): Reading<Teeth> {
  const span = spanOf(tokens, context.span);
  const pieces = piecesOf(tokens);
  const last = pieces[pieces.length - 1];
  if (last?.kind === "suffix") pieces.pop();

  const teeth: number[] = [];
  const problems: ValueProblem[] = [];
  let isHabit = false;
  let wantsNumber = true;
  for (const [index, piece] of pieces.entries()) {
    if (piece.kind === "number") {
      if (!wantsNumber) isHabit = true;
      teeth.push(Number(piece.text));
      if (!isToothCount(piece.text)) problems.push(countProblem(piece.text, piece.span, context.field));
      wantsNumber = false;
    } else if (piece.kind === "joint") {
      if (wantsNumber) return unread(undefined, [unreadable(tokens, piece.span, context)]);
      if (piece.text === "," || isApart(pieces[index - 1], piece, pieces[index + 1])) isHabit = true;
      wantsNumber = true;
    } else {
      return unread(undefined, [unreadable(tokens, piece.span, context)]);
    }
  }
  // A comma after the last number is reported where commas are.
  const endsInComma = pieces[pieces.length - 1]?.text === ",";
  if (teeth.length === 0 || (wantsNumber && !endsInComma)) {
    return unread(undefined, [unreadable(tokens, span, context)]);
  }
  const written = writeTeeth(teeth);
  if (teeth.length > longestList) {
    const message = `${context.field} lists ${teeth.length} tooth counts; more than ${longestList} cannot be meant.`;
    return unread(undefined, [error("too-many", message, span)]);
  }
  if (problems.length > 0) return unread(written, problems);
  if (isHabit) {
    const message = `Tooth counts are joined by dashes: ${written}.`;
    // A comma between two digits is never taken for that of a list without asking.
    const isGlued = tokens.some((token) => token.kind === "word" && /\d,\d/.test(token.text));
    problems.push((isGlued ? error : warning)("teeth-list", message, span, [replacement(span, written)]));
  }
  return { value: teeth, written, problems };
}

/** Whether blanks stand round the sign between two counts, as in a difference. */
function isApart(before: Piece | undefined, joint: Piece, after: Piece | undefined): boolean {
  return before?.span.end !== joint.span.start || after?.span.start !== joint.span.end;
}

/** Tooth counts in the form that the formatter keeps. */
export function writeTeeth(teeth: Teeth): string {
  return `${teeth.join("-")} t`;
}

function isToothCount(text: string): boolean {
  const value = Number(text);
  return Number.isInteger(value) && value >= fewest && value <= most && /^\d+$/.test(text);
}

function countProblem(text: string, span: Span, field: string): ValueProblem {
  const value = Number(text);
  const message = Number.isInteger(value)
    ? `${excerpt(text)} teeth cannot be meant in ${field}: a sprocket has from ${fewest} to ${most}.`
    : `${field} lists tooth counts, which are whole numbers; ${excerpt(text)} is not one.`;
  // `11,34` is read as a decimal before anybody knows that it is a list of two.
  const [, one = "", other = ""] = /^(\d+)\.(\d+)$/.exec(text) ?? [];
  const fixes = isToothCount(one) && isToothCount(other) ? [replacement(span, `${one}-${other}`)] : [];
  return error("not-teeth", message, span, fixes);
}

function unreadable(tokens: readonly ValueToken[], span: Span, context: ReadContext): ValueProblem {
  const message = `${context.field} is a list of tooth counts, such as 11-13-15 t, 50-34 t or 32 t; ${excerpt(tokens)} is not.`;
  return error("not-teeth", message, span);
}

interface Piece {
  readonly kind: "number" | "joint" | "suffix" | "other";
  readonly text: string;
  readonly span: Span;
}

const piecePattern = /(\d+(?:\.\d+)?)|([-\u2010-\u2015\u2212/,])|([^\d\-\u2010-\u2015\u2212/,]+)/gy;

function piecesOf(tokens: readonly ValueToken[]): Piece[] {
  const pieces: Piece[] = [];
  for (const token of tokens) {
    if (token.kind === "comma") {
      pieces.push({ kind: "joint", text: ",", span: token.span });
      continue;
    }
    if (token.kind !== "word") {
      pieces.push({ kind: "other", text: token.text, span: token.span });
      continue;
    }
    for (const match of token.text.matchAll(piecePattern)) {
      const [text, number, joint] = match;
      const start = token.span.start + match.index;
      const isSuffix = teethSpellings.includes(text);
      const kind = number !== undefined ? "number" : joint !== undefined ? "joint" : isSuffix ? "suffix" : "other";
      pieces.push({ kind, text, span: { start, end: start + text.length } });
    }
  }
  return pieces;
}
