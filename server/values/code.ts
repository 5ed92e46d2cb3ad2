import type { Span, ValueToken } from "../../grammar/tree.ts";
import { splitAtCommas } from "./lists.ts";
import {
  error,
  excerpt,
  quote,
  type ReadContext,
  type Reading,
  replacement,
  spanOf,
  unread,
  type ValueProblem,
  warning,
} from "./problems.ts";
import type { Code, CodesType, CodeType } from "./types.ts";

/** How many of several codes are offered to be kept. */
const mostKept = 4;

/** Reads one interface code: a single word such as `12x148` or `ZS44/28.6`, or a text. The model resolves it. */
export function readCode(type: CodeType, tokens: readonly ValueToken[], context: ReadContext): Reading<Code> {
  const lists = splitAtCommas(tokens);
  if (lists.items.length > 1) {
    const span = spanOf(tokens, context.span);
    const fixes = lists.items.slice(0, mostKept).map((item) => {
      const kept = writeCode(item.map(({ text }) => text).join(" "));
      return replacement(span, kept, `Keep ${excerpt(kept)} alone`);
    });
    const message = `${context.field} takes one code, not a list: keep the one that it is.`;
    return unread(undefined, [error("one-only", message, span, fixes)]);
  }
  return oneCode(type.family, lists.items[0] ?? [], lists.problems, context, "one");
}

/** Reads interface codes separated by commas. */
export function readCodes(
  type: CodesType,
  tokens: readonly ValueToken[],
  context: ReadContext,
): Reading<readonly Code[]> {
  const lists = splitAtCommas(tokens);
  const problems = [...lists.problems];
  const codes: Code[] = [];
  const written: string[] = [];
  for (const item of lists.items) {
    const reading = oneCode(type.family, item, [], context, "list");
    problems.push(...reading.problems);
    if (reading.value === undefined) continue;
    codes.push(reading.value);
    written.push(reading.written ?? reading.value.code);
  }
  const isBroken = codes.length === 0 || problems.some((problem) => problem.severity === "error");
  if (isBroken) return unread(written.join(", "), problems);
  return { value: codes, written: written.join(", "), problems };
}

/** A code as it is written: bare when the lexer would take it for one word, else in quotes. */
export function writeCode(code: string): string {
  return isBareWord(code) ? code : quote(code);
}

/** Whether a text can stand in a value without quotes and still be one word. */
export function isBareWord(text: string): boolean {
  if (!/^[^\s{}()[\];:<>="',#\u200b-\u200f\u2028-\u202e\u2060-\u2069\ufeff]+$/u.test(text)) return false;
  return !text.includes("//") && text !== "or" && text !== "none" && !/^[-\u2010-\u2015\u2212]$/.test(text);
}

function oneCode(
  family: string,
  tokens: readonly ValueToken[],
  found: readonly ValueProblem[],
  context: ReadContext,
  takes: "one" | "list",
): Reading<Code> {
  const span = spanOf(tokens, context.span);
  const [first] = tokens;
  if (tokens.length === 1 && first !== undefined && (first.kind === "text" || first.kind === "word")) {
    // The sign of multiplication and the letter are one thing in a size.
    const code = first.text.trim().replace(/(?<=\d)×(?=\d)/g, "x");
    if (code === "") return unread(undefined, [...found, error("missing", `${context.field} needs a code.`, span)]);
    return { value: { family, code }, written: writeCode(code), problems: found };
  }
  return unread(undefined, [...found, severalWords(family, tokens, span, context, takes)]);
}

/** Several words where one code stands: a list without its commas, a size with blanks in it, or a code so written. */
function severalWords(
  family: string,
  tokens: readonly ValueToken[],
  span: Span,
  context: ReadContext,
  takes: "one" | "list",
): ValueProblem {
  const words = tokens.map((token) => token.text);
  const size = /^(\d+(?:\.\d+)?) [xX×] (\d+(?:\.\d+)?)$/.exec(words.join(" "));
  if (size !== null) {
    const joined = `${size[1]}x${size[2]}`;
    const message = `${context.field} takes a code, and a code has no blanks: ${joined}.`;
    return error("several-words", message, span, [replacement(span, joined)]);
  }
  const areWords = tokens.every((token) => token.kind === "word" || token.kind === "text");
  const listed = words.map(writeCode).join(", ");
  const message =
    takes === "list"
      ? `${context.field} is a list: codes have commas between them, as in ${excerpt(listed)}; the words of one code are joined by dashes.`
      : `${context.field} takes one code, and ${excerpt(tokens)} is several words: the words of a code are joined by dashes.`;
  const problem = error(
    "several-words",
    message,
    span,
    areWords && takes === "list" ? [replacement(span, listed)] : [],
  );
  return areWords ? { ...problem, meantCode: { family, code: words.join("-") } } : problem;
}

/** What a warning for quotes around one plain word says; used by every type whose values are bare words. */
export function quotedWord(token: ValueToken, context: ReadContext): ValueProblem {
  const message = `${context.field} is written without quotes: ${excerpt(token.text)}.`;
  return warning("quoted-word", message, token.span, [replacement(token.span, token.text.trim())]);
}
