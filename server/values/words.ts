import type { ValueToken } from "../../grammar/tree.ts";
import { quotedWord } from "./code.ts";
import { splitAtCommas } from "./lists.ts";
import { didYouMean, nearestSeveral } from "./near.ts";
import {
  error,
  excerpt,
  listOf,
  type ReadContext,
  type Reading,
  replacement,
  spanOf,
  unread,
  type ValueProblem,
  warning,
} from "./problems.ts";
import type { WordsType, WordType, YesNoType } from "./types.ts";

type WordSet = Pick<WordType, "words">;

/** Reads one word of a set. */
export function readWord(type: WordType, tokens: readonly ValueToken[], context: ReadContext): Reading<string> {
  const lists = splitAtCommas(tokens);
  if (lists.items.length > 1) {
    const message = `${context.field} takes one word, not a list: ${wordsOf(type)}.`;
    return unread(undefined, [...lists.problems, error("one-only", message, spanOf(tokens, context.span))]);
  }
  const reading = oneWord(type, lists.items[0] ?? [], context);
  return { ...reading, problems: [...lists.problems, ...reading.problems] };
}

/** Reads words of a set separated by commas; blanks alone and repeated words are read, and mended. */
export function readWords(
  type: WordsType,
  tokens: readonly ValueToken[],
  context: ReadContext,
): Reading<readonly string[]> {
  const lists = splitAtCommas(tokens);
  const problems: ValueProblem[] = [...lists.problems];
  const words: string[] = [];
  let isHabit = false;
  for (const item of lists.items) {
    const whole = oneWord(type, item, context);
    const readings = [whole];
    if (whole.value === undefined && item.length > 1) {
      const each = item.map((token) => oneWord(type, [token], context));
      if (each.every((reading) => reading.value !== undefined)) {
        readings.splice(0, 1, ...each);
        isHabit = true;
      }
    }
    for (const reading of readings) {
      problems.push(...reading.problems);
      if (reading.value === undefined) continue;
      if (words.includes(reading.value)) isHabit = true;
      else words.push(reading.value);
    }
  }
  const written = words.join(", ");
  if (words.length === 0 || problems.some((problem) => problem.severity === "error")) return unread(written, problems);
  if (isHabit) {
    const span = spanOf(tokens, context.span);
    const message = `Words are separated by commas, each named once: ${written}.`;
    problems.push(warning("word-list", message, span, [replacement(span, written)]));
  }
  return { value: words, written, problems };
}

const yesWords = new Set(["true", "on", "y", "ja", "1"]);
const noWords = new Set(["false", "off", "n", "0"]);
const yesNoWords = { yes: "it is so", no: "it is not" } as const;

/** Reads `yes` or `no`; the words of other languages of this kind are read, and mended. */
export function readYesNo(_type: YesNoType, tokens: readonly ValueToken[], context: ReadContext): Reading<boolean> {
  const [token] = tokens;
  const text = token?.text.toLowerCase() ?? "";
  const meant = yesWords.has(text) ? "yes" : noWords.has(text) ? "no" : undefined;
  if (tokens.length === 1 && token !== undefined && meant !== undefined) {
    const message = `${context.field} is yes or no; ${token.text} is read as ${meant}.`;
    return {
      value: meant === "yes",
      written: meant,
      problems: [warning("yes-or-no", message, token.span, [replacement(token.span, meant)])],
    };
  }
  const reading = readWord({ type: "word", words: yesNoWords }, tokens, context);
  return reading.value === undefined
    ? unread(reading.written, reading.problems)
    : { value: reading.value === "yes", written: reading.value, problems: reading.problems };
}

function oneWord(type: WordSet, tokens: readonly ValueToken[], context: ReadContext): Reading<string> {
  const span = spanOf(tokens, context.span);
  const [first] = tokens;
  const isPlain = tokens.every((token) => token.kind === "word" || token.kind === "text");
  const text = tokens.map((token) => token.text.trim()).join("-");
  if (!isPlain || first === undefined || text === "") {
    const message = `${context.field} is one of ${wordsOf(type)}.`;
    return unread(undefined, [error("unknown-word", message, span)]);
  }
  if (Object.hasOwn(type.words, text)) {
    if (tokens.length === 1 && first.kind === "word") return { value: text, written: text, problems: [] };
    if (tokens.length === 1) return { value: text, written: text, problems: [quotedWord(first, context)] };
    const message = `This word is written with dashes: ${text}.`;
    return { value: text, written: text, problems: [warning("word-form", message, span, [replacement(span, text)])] };
  }
  const lower = text.toLowerCase().replace(/[_ ]/g, "-");
  const known = Object.keys(type.words).find((word) => word.toLowerCase() === lower);
  if (known !== undefined) {
    const message = `This word is written ${known}.`;
    const problem = warning("word-form", message, span, [replacement(span, known)]);
    return { value: known, written: known, problems: [problem] };
  }
  const near = nearestSeveral(text, Object.keys(type.words));
  const message = `${excerpt(text)} is not known for ${context.field}: it is one of ${wordsOf(type)}.${didYouMean(near)}`;
  return unread(undefined, [
    error(
      "unknown-word",
      message,
      span,
      near.map((word) => replacement(span, word)),
    ),
  ]);
}

function wordsOf(type: WordSet): string {
  const words = Object.keys(type.words);
  return words.length <= 20 ? listOf(words) : `${words.slice(0, 20).join(", ")} and ${words.length - 20} more`;
}
