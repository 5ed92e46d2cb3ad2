import type { ValueToken } from "../../grammar/tree.ts";
import { readCode, readCodes } from "./code.ts";
import { readColour } from "./colour.ts";
import { readCount } from "./count.ts";
import { readDate } from "./date.ts";
import { exampleOf } from "./example.ts";
import { readMoney } from "./money.ts";
import { readPlainNumber } from "./number.ts";
import {
  error,
  excerpt,
  plainText,
  type ReadContext,
  type Reading,
  type ReadResult,
  replacement,
  spanOf,
  warning,
} from "./problems.ts";
import { readQuantities } from "./quantities.ts";
import { readQuantity } from "./quantity.ts";
import { readReference } from "./reference.ts";
import { readTeeth } from "./teeth.ts";
import { readText } from "./text.ts";
import type { AnyValue, FieldType } from "./types.ts";
import { readWord, readWords, readYesNo } from "./words.ts";

/**
 * Reads the tokens of a value by the type of its field. Never throws: what cannot be read is a problem at its place,
 * with the repairs that would make it readable. An error means that the value is unknown, except for text without
 * quotes, which is kept.
 */
export function readValue(
  type: FieldType,
  tokens: readonly ValueToken[],
  context: Partial<ReadContext> = {},
): ReadResult {
  const known: ReadContext = { field: "this value", span: { start: 0, end: 0 }, ...context };
  const stated = withoutBrackets(tokens);
  const special = stated.length === 0 ? missing(type, known) : statedAbsence(type, stated, known);
  if (special !== undefined) return special;
  const refused = quotedNumber(type, stated, known) ?? alternatesProblem(type, stated, known);
  if (refused !== undefined) return refused;
  const reading = dispatch(type, stated, known);
  const isWrong = type.type !== "text" && reading.problems.some((problem) => problem.severity === "error");
  return {
    ...(reading.value === undefined || isWrong ? {} : { value: reading.value }),
    written: reading.written || plainText(stated),
    problems: reading.problems,
  };
}

function dispatch(type: FieldType, tokens: readonly ValueToken[], context: ReadContext): Reading<AnyValue> {
  switch (type.type) {
    case "quantity":
      return readQuantity(type, tokens, context);
    case "quantities":
      return readQuantities(type, tokens, context);
    case "count":
      return readCount(type, tokens, context);
    case "number":
      return readPlainNumber(type, tokens, context);
    case "teeth":
      return readTeeth(type, tokens, context);
    case "code":
      return readCode(type, tokens, context);
    case "codes":
      return readCodes(type, tokens, context);
    case "word":
      return readWord(type, tokens, context);
    case "words":
      return readWords(type, tokens, context);
    case "text":
      return readText(type, tokens, context);
    case "yes-no":
      return readYesNo(type, tokens, context);
    case "date":
      return readDate(type, tokens, context);
    case "money":
      return readMoney(type, tokens, context);
    case "colour":
      return readColour(type, tokens, context);
    case "part":
    case "slot":
      return readReference(type, tokens, context);
  }
}

/** `[a, b]`: the language reports the brackets, and the list inside is read. */
function withoutBrackets(tokens: readonly ValueToken[]): readonly ValueToken[] {
  const first = tokens[0];
  const last = tokens[tokens.length - 1];
  const isList = first?.kind === "bracket" && first.text === "[" && last?.kind === "bracket" && last.text === "]";
  return isList ? tokens.slice(1, -1) : tokens;
}

function missing(type: FieldType, context: ReadContext): ReadResult {
  const expected = context.expected ?? `one, such as ${exampleOf(type)}`;
  const message = `${context.field} has no value: write ${expected}, or none where there is none.`;
  return { written: "", problems: [error("missing", message, context.span)] };
}

const wordsForNone = new Set(["n/a", "na", "null", "nil", "nothing", "-", "\u2013", "\u2014", "\u2212"]);
const wordsForUnknown = new Set(["?", "??", "???", "unknown", "tba", "tbc", "tbd", "todo"]);

/** `none`, the words that mean it, and the words that mean that nobody knows. */
function statedAbsence(type: FieldType, tokens: readonly ValueToken[], context: ReadContext): ReadResult | undefined {
  const [token] = tokens;
  if (tokens.length !== 1 || token?.kind !== "word") return undefined;
  if (token.text === "none") return { isNone: true, written: "none", problems: [] };
  const takesAnyWord = type.type === "code" || type.type === "codes" || type.type === "part" || type.type === "slot";
  const isWordOfType = (type.type === "word" || type.type === "words") && Object.hasOwn(type.words, token.text);
  if (isWordOfType) return undefined;
  const lower = token.text.toLowerCase();
  const fixes = [replacement(token.span, "none")];
  if (lower === "none") {
    const problem = warning("none", "What is absent is written none, in small letters.", token.span, fixes);
    return { isNone: true, written: "none", problems: [problem] };
  }
  if (wordsForNone.has(lower)) {
    const message = `What is absent is written none; ${token.text} is not understood.`;
    return { written: token.text, problems: [error("none", message, token.span, fixes)] };
  }
  if (wordsForUnknown.has(lower) && !takesAnyWord) {
    const message = `What is not known is left out: remove this line, and whatever needs ${context.field} will say so.`;
    return { written: token.text, problems: [error("unknown", message, token.span)] };
  }
  return undefined;
}

const typesOfNumbers = new Set(["quantity", "quantities", "count", "number", "teeth", "money"]);

/** `"12 mm"`: a number in quotes, as in other languages. */
function quotedNumber(type: FieldType, tokens: readonly ValueToken[], context: ReadContext): ReadResult | undefined {
  const [token] = tokens;
  if (tokens.length !== 1 || token?.kind !== "text" || !typesOfNumbers.has(type.type)) return undefined;
  const content = token.text.trim();
  const isSafe = content !== "" && !/["{}()[\];:]|\/\//.test(content);
  const message = `${context.field} is written without quotes, like ${exampleOf(type)}.`;
  const fixes = isSafe ? [replacement(token.span, content)] : [];
  return { written: plainText(tokens), problems: [error("quoted-number", message, token.span, fixes)] };
}

/** `a or b` names alternates of a part, and of nothing else. */
function alternatesProblem(
  type: FieldType,
  tokens: readonly ValueToken[],
  context: ReadContext,
): ReadResult | undefined {
  if (type.type === "text" && tokens.every((token) => token.kind === "word")) return undefined;
  const index = tokens.findIndex((token) => token.kind === "word" && token.text === "or");
  const or = tokens[index];
  if (or === undefined) return undefined;
  const isList = type.type === "codes" || type.type === "words";
  const span = spanOf(tokens, context.span);
  const listed: ValueToken[] = tokens.map((token) =>
    token.kind === "word" && token.text === "or" ? { ...token, kind: "comma", text: "," } : token,
  );
  const written = plainText(listed);
  const isTidy = index > 0 && index < tokens.length - 1;
  const message = isList
    ? `${context.field} is a list: its items are separated by commas.`
    : `${context.field} takes one value; only a part can have alternates, joined by or.`;
  const fixes = isList && isTidy ? [replacement(span, written, `Write ${excerpt(written)}`)] : [];
  return { written: plainText(tokens), problems: [error("alternates", message, or.span, fixes)] };
}
