/**
 * The one spelling the formatter writes for what may be typed in several ways: units, ±, minus signs and ranges.
 *
 * A word is respelled only where its neighbours leave no doubt what it is. Codes, names, text and comments are never
 * touched: `12×148` may be a code, and what a code means is for the vocabulary to say.
 */

import type { Token } from "./lexer.ts";
import { Comparison, Word } from "./tokens.ts";
import { teethSpellings, unitBySpelling } from "./units.ts";

/** A stretch of the source and how it is written. One piece may stand for several tokens. */
export interface SpelledPiece {
  readonly start: number;
  readonly end: number;
  readonly text: string;
  /** The first and last token it stands for, which decide the blanks round it. */
  readonly first: Token;
  readonly last: Token;
}

const dashes = /[\u2010-\u2015\u2212]/g;
/** Digits with points, slashes and dashes only: a number, a range, a tooth list, a date, a tyre size. */
const dashedNumber = /^[-+\u2010-\u2015\u2212]?\d[\d./\u2010-\u2015\u2212-]*$/;
const plainNumber = /^[-+]?\d+(\.\d+)?$/;
const numberBeforeUnit = /^[-+]?\d[\d./-]*$/;
const joinedRange = /^(?<least>\d+(?:\.\d+)?)(?:-|\.{2,3}|…)(?<greatest>\d+(?:\.\d+)?)$/;
const joinedTolerance = /^(?<middle>[-+]?\d+(?:\.\d+)?)(?:±|\+\/?[-\u2212])(?<spread>\d+(?:\.\d+)?)$/;
const spreadWord = /^(?:±|\+\/?[-\u2212])(?<spread>\d+(?:\.\d+)?)$/;
const toleranceSign = /^(?:±|\+\/?[-\u2010-\u2015\u2212])$/;
const rangeSign = /^(?:[-\u2010-\u2015\u2212]|\.{2,3}|…)$/;

/** Most words a unit is written in: `US fl oz`. */
const longestUnit = 3;

/**
 * The tokens of an entry's value as they are written. `isExpression` keeps a dash between two numbers, which is a
 * difference there and a range elsewhere.
 */
export function spellValue(text: string, tokens: readonly Token[], isExpression: boolean): SpelledPiece[] {
  const pieces: SpelledPiece[] = [];
  for (let index = 0; index < tokens.length; index++) {
    const token = tokens[index]!;
    if (token.tokenType !== Word) {
      const piece = pieceOf(text, token);
      pieces.push(token.tokenType === Comparison ? { ...piece, text: token.text } : piece);
      continue;
    }
    const before = pieces.at(-1);
    const isAfterNumber = before?.last.tokenType === Word && numberBeforeUnit.test(before.text.split(" ").at(-1)!);
    const unit = isAfterNumber ? unitAt(tokens, index) : undefined;
    if (unit !== undefined) {
      const last = tokens[index + unit.words - 1]!;
      if (unit.symbol === "°") {
        pieces.pop();
        pieces.push({ ...before!, end: last.span.end, text: `${before!.text}°`, last });
      } else {
        pieces.push({ start: token.span.start, end: last.span.end, text: unit.symbol, first: token, last });
      }
      index += unit.words - 1;
      continue;
    }
    pieces.push({ ...pieceOf(text, token), text: spellWord(tokens, index, isExpression) });
  }
  return pieces;
}

/** A token as it stands in the source. */
export function pieceOf(text: string, token: Token): SpelledPiece {
  const { start, end } = token.span;
  return { start, end, text: text.slice(start, end), first: token, last: token };
}

function spellWord(tokens: readonly Token[], index: number, isExpression: boolean): string {
  const word = tokens[index]!.text;
  if (dashedNumber.test(word)) {
    const plain = word.replace(dashes, "-");
    const range = joinedRange.exec(plain);
    return range !== null && isRange(range) && isBeforeUnit(tokens, index + 1)
      ? `${range.groups!.least} to ${range.groups!.greatest}`
      : plain;
  }
  const tolerance = joinedTolerance.exec(word);
  if (tolerance !== null) return `${tolerance.groups!.middle} ± ${tolerance.groups!.spread}`;
  const range = joinedRange.exec(word);
  if (range !== null && isRange(range) && isBeforeUnit(tokens, index + 1)) {
    return `${range.groups!.least} to ${range.groups!.greatest}`;
  }
  const spread = spreadWord.exec(word);
  if (spread !== null && plainNumber.test(tokens[index - 1]?.text ?? "")) return `± ${spread.groups!.spread}`;
  if (!isBetweenNumbers(tokens, index)) return word;
  if (toleranceSign.test(word)) return "±";
  if (!isExpression && rangeSign.test(word) && isBeforeUnit(tokens, index + 2)) {
    return Number(tokens[index - 1]!.text) < Number(tokens[index + 1]!.text) ? "to" : word;
  }
  return word;
}

function isRange(match: RegExpExecArray): boolean {
  return Number(match.groups!.least) < Number(match.groups!.greatest);
}

function isBetweenNumbers(tokens: readonly Token[], index: number): boolean {
  const before = tokens[index - 1];
  const after = tokens[index + 1];
  return (
    before?.tokenType === Word &&
    after?.tokenType === Word &&
    plainNumber.test(before.text) &&
    plainNumber.test(after.text)
  );
}

/** True where a unit of measurement stands. Teeth are none: `34-50 t` is a list. */
function isBeforeUnit(tokens: readonly Token[], index: number): boolean {
  const unit = unitAt(tokens, index);
  return unit !== undefined && unit.symbol !== teethSpellings[0];
}

/** The unit whose words start at `index`, the longest spelling first. */
function unitAt(tokens: readonly Token[], index: number): { symbol: string; words: number } | undefined {
  const words: string[] = [];
  for (let at = index; at < index + longestUnit && tokens[at]?.tokenType === Word; at++) words.push(tokens[at]!.text);
  for (let count = words.length; count > 0; count--) {
    const unit = unitBySpelling(words.slice(0, count).join(" "));
    if (unit !== undefined) return { symbol: unit.symbol, words: count };
  }
  return teethSpellings.includes(words[0] ?? "") ? { symbol: teethSpellings[0]!, words: 1 } : undefined;
}
