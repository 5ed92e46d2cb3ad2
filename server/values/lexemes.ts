import type { Span, ValueToken } from "../../grammar/tree.ts";
import { unitBySpelling } from "../../grammar/units.ts";
import { mixedNumber, type NumberReading, numberPattern, readNumber, type UnclearNumber } from "./numbers.ts";

/**
 * The pieces of a value that holds numbers: numbers, the words beside them, and the signs of ranges. People glue these
 * together (`40N·m`, `4-6mm`, `27.2±0.05`), so they are found inside words as well as between them.
 */
export type Lexeme =
  | NumberLexeme
  | WordLexeme
  | { readonly kind: "to"; readonly text: string; readonly span: Span }
  | { readonly kind: "plus-minus"; readonly text: string; readonly span: Span }
  /** `at` is the canonical sign; `habit` says that it was written in another way that should be mended. */
  | {
      readonly kind: "limit";
      readonly at: "<=" | ">=";
      readonly habit: boolean;
      readonly text: string;
      readonly span: Span;
    }
  | { readonly kind: "comma"; readonly text: string; readonly span: Span }
  | { readonly kind: "other"; readonly text: string; readonly span: Span };

export interface NumberLexeme {
  readonly kind: "number";
  /** As written, with its sign. */
  readonly text: string;
  readonly reading: NumberReading | UnclearNumber | undefined;
  readonly negative: boolean;
  readonly span: Span;
}

/** A word that is no number: a unit, a currency, or something that does not belong here. */
export interface WordLexeme {
  readonly kind: "word";
  readonly text: string;
  readonly span: Span;
}

/** No measurement is longer; what is longer is left whole, and is refused as one unknown word. */
const longestWord = 1000;

const dash = /[-\u2010-\u2015\u2212]/;
const plusMinusPattern = /±|\+\/[-\u2010-\u2015\u2212]|\+[-\u2010-\u2015\u2212]/y;
const rangePattern = /\.{2,3}|…/y;
const limitSigns: Readonly<Record<string, "<=" | ">=">> = {
  "≤": "<=",
  "⩽": "<=",
  "<=": "<=",
  "=<": "<=",
  "<": "<=",
  "≥": ">=",
  "⩾": ">=",
  ">=": ">=",
  "=>": ">=",
  ">": ">=",
};
/** Signs that are accepted and written in one form without a word about it. */
const quietSigns = new Set(["<=", ">=", "≤", "⩽", "≥", "⩾"]);

const limitWords: Readonly<Record<string, "<=" | ">=">> = {
  "at most": "<=",
  "up to": "<=",
  "no more than": "<=",
  max: "<=",
  "max.": "<=",
  maximum: "<=",
  "at least": ">=",
  "no less than": ">=",
  "min.": ">=",
  min: ">=",
  minimum: ">=",
};

/** Finds the pieces of the tokens of a value. Linear in the text; never throws. */
export function lexemesOf(tokens: readonly ValueToken[]): Lexeme[] {
  const lexemes: Lexeme[] = [];
  for (const token of tokens) {
    if (token.kind === "word") splitWord(token, lexemes);
    else if (token.kind === "comma") lexemes.push({ kind: "comma", text: token.text, span: token.span });
    else if (token.kind === "comparison") lexemes.push(limitOrOther(token.text, token.span));
    else lexemes.push({ kind: "other", text: token.text, span: token.span });
  }
  return joinPhrases(lexemes);
}

function limitOrOther(text: string, span: Span): Lexeme {
  const at = Object.hasOwn(limitSigns, text) ? limitSigns[text] : undefined;
  return at === undefined
    ? { kind: "other", text, span }
    : { kind: "limit", at, habit: !quietSigns.has(text), text, span };
}

function matchAt(pattern: RegExp, text: string, index: number): string | undefined {
  pattern.lastIndex = index;
  return pattern.exec(text)?.[0];
}

function startsNumber(text: string, index: number): boolean {
  return matchAt(numberPattern, text, index) !== undefined;
}

function splitWord(token: ValueToken, lexemes: Lexeme[]): void {
  const { text } = token;
  if (text.length > longestWord) {
    lexemes.push({ kind: "word", text, span: token.span });
    return;
  }
  // A word mostly has the source's own characters. Where the language has put a number right (`3,200kg`) it is shorter;
  // the first piece is the one put right, so places are counted from the end.
  const put = token.span.end - text.length;
  const spanOfPart = (start: number, end: number): Span => ({
    start: start === 0 ? token.span.start : Math.max(put + start, token.span.start),
    end: Math.max(put + end, token.span.start),
  });
  let index = 0;
  while (index < text.length) {
    const character = text[index] ?? "";
    const previous = index > 0 ? lexemes[lexemes.length - 1] : undefined;
    const afterOperand = previous?.kind === "number" || previous?.kind === "word";

    const plusMinus = matchAt(plusMinusPattern, text, index);
    if (plusMinus !== undefined) {
      lexemes.push({ kind: "plus-minus", text: plusMinus, span: spanOfPart(index, index + plusMinus.length) });
      index += plusMinus.length;
      continue;
    }
    const range = matchAt(rangePattern, text, index);
    if (range !== undefined) {
      lexemes.push({ kind: "to", text: range, span: spanOfPart(index, index + range.length) });
      index += range.length;
      continue;
    }
    if (Object.hasOwn(limitSigns, character)) {
      lexemes.push(limitOrOther(character, spanOfPart(index, index + 1)));
      index += 1;
      continue;
    }
    const isSign = character === "+" || dash.test(character);
    if (isSign && dash.test(character) && (text.length === 1 || (afterOperand && previous.kind !== "word"))) {
      if (text.length === 1 || startsNumber(text, index + 1) || /[-+\u2212]/.test(text[index + 1] ?? "")) {
        lexemes.push({ kind: "to", text: character, span: spanOfPart(index, index + 1) });
        index += 1;
        continue;
      }
    }
    const signed = isSign && !afterOperand && startsNumber(text, index + 1);
    const digits = matchAt(numberPattern, text, signed ? index + 1 : index);
    if (digits !== undefined) {
      const end = index + digits.length + (signed ? 1 : 0);
      const negative = signed && character !== "+";
      lexemes.push({
        kind: "number",
        text: text.slice(index, end),
        reading: signedReading(readNumber(digits), negative),
        negative,
        span: spanOfPart(index, end),
      });
      index = end;
      continue;
    }
    const end = endOfUnit(text, index);
    lexemes.push({ kind: "word", text: text.slice(index, end), span: spanOfPart(index, end) });
    index = end;
    // `4mm-6mm`: the dash after a unit stands between two numbers.
    if (index < text.length && dash.test(text[index] ?? "") && startsNumber(text, index + 1)) {
      lexemes.push({ kind: "to", text: text[index] ?? "", span: spanOfPart(index, index + 1) });
      index += 1;
    }
  }
}

/** A unit runs to the end of its word unless a known unit is followed by the sign of a range or a tolerance. */
function endOfUnit(text: string, start: number): number {
  const rest = text.slice(start);
  if (unitBySpelling(rest) !== undefined) return text.length;
  const signs = /(?:\.{2,3}|…|±|\+\/|\+[-\u2010-\u2015\u2212]|[-\u2010-\u2015\u2212](?=[\d.]))/g;
  for (const match of rest.matchAll(signs)) {
    if (match.index > 0 && (unitBySpelling(rest.slice(0, match.index)) !== undefined || !dash.test(match[0]))) {
      return start + match.index;
    }
  }
  return text.length;
}

function signedReading(
  reading: NumberReading | UnclearNumber | undefined,
  negative: boolean,
): NumberReading | UnclearNumber | undefined {
  if (reading === undefined || !negative) return reading;
  if ("habit" in reading) return { ...reading, meant: reading.meant.map((text) => `-${text}`) };
  return { ...reading, value: reading.value === 0 ? 0 : -reading.value, text: `-${reading.text}` };
}

function joined(first: Lexeme, last: Lexeme): Span {
  return { start: first.span.start, end: last.span.end };
}

/** Joins what several words say: `up to`, `N m`, `1 1/8`; and tells `min` the minute from `min` the minimum. */
function joinPhrases(lexemes: readonly Lexeme[]): Lexeme[] {
  const result: Lexeme[] = [];
  for (let index = 0; index < lexemes.length; ) {
    const lexeme = lexemes[index];
    if (lexeme === undefined) break;
    const previous = result[result.length - 1];
    if (lexeme.kind === "word") {
      const phrase = phraseAt(lexemes, index, previous);
      result.push(phrase.lexeme);
      index += phrase.length;
      continue;
    }
    if (lexeme.kind === "number" && previous?.kind === "number" && lexeme.text === lexeme.text.replace(/^[-+]/, "")) {
      const whole = previous.reading;
      const part = lexeme.reading;
      if (whole !== undefined && part !== undefined && !("habit" in whole) && !("habit" in part)) {
        const reading = mixedNumber(whole, part);
        if (reading !== undefined) {
          result[result.length - 1] = {
            ...previous,
            text: `${previous.text} ${lexeme.text}`,
            reading,
            span: joined(previous, lexeme),
          };
          index += 1;
          continue;
        }
      }
    }
    result.push(lexeme);
    index += 1;
  }
  return result;
}

function phraseAt(
  lexemes: readonly Lexeme[],
  index: number,
  previous: Lexeme | undefined,
): { lexeme: Lexeme; length: number } {
  const words: WordLexeme[] = [];
  for (let at = index; at < index + 3; at += 1) {
    const next = lexemes[at];
    if (next?.kind !== "word") break;
    words.push(next);
  }
  const first = words[0] as WordLexeme;
  for (let length = words.length; length > 0; length -= 1) {
    const last = words[length - 1] as WordLexeme;
    const text = words
      .slice(0, length)
      .map((word) => word.text)
      .join(" ");
    const span = joined(first, last);
    const lower = text.toLowerCase();
    const isUnit = unitBySpelling(text) !== undefined;
    const limit = Object.hasOwn(limitWords, lower) ? limitWords[lower] : undefined;
    if (limit !== undefined && !(isUnit && previous?.kind === "number")) {
      return { lexeme: { kind: "limit", at: limit, habit: true, text, span }, length };
    }
    if (length === 1 && lower === "to") return { lexeme: { kind: "to", text, span }, length };
    if (length > 1 && isUnit) return { lexeme: { kind: "word", text, span }, length };
  }
  return { lexeme: first, length: 1 };
}
