import type { Span, ValueToken } from "../../grammar/tree.ts";
import { greaterThan } from "./compare.ts";
import { type Lexeme, lexemesOf, type NumberLexeme, type WordLexeme } from "./lexemes.ts";
import {
  error,
  excerpt,
  type Fix,
  listOf,
  type Reading,
  replacement,
  spanOf,
  type ValueProblem,
  warning,
} from "./problems.ts";
import type { Interval, RangeRole } from "./types.ts";

/**
 * The one grammar of numbers with units, shared by quantities, plain numbers and money:
 * `40 N·m`, `4 to 6 N·m`, `<= 5 N·m`, `>= 20 mm`, `27.2 ± 0.05 mm`.
 */

/** A number with the word that belongs to it. */
export interface Operand {
  readonly number: NumberLexeme;
  readonly unit?: WordLexeme;
  /** The word stands in front of the number. */
  readonly unitFirst: boolean;
  readonly span: Span;
}

type Shape =
  | { readonly form: "single"; readonly first: Operand }
  | { readonly form: "range"; readonly first: Operand; readonly second: Operand }
  | { readonly form: "tolerance"; readonly first: Operand; readonly second: Operand }
  | { readonly form: "limit"; readonly at: "<=" | ">="; readonly habit: boolean; readonly first: Operand }
  | { readonly form: "unreadable"; readonly problem: ValueProblem };

/** What a type makes of one number and its word. */
export interface OperandReading {
  /** In the base unit; undefined with at least one error. */
  readonly value?: number;
  /** The number in canonical spelling. */
  readonly text: string;
  /** The word in canonical spelling; empty when there is none. */
  readonly unit: string;
  readonly problems: readonly ValueProblem[];
}

export interface IntervalRules {
  readonly field: string;
  readonly span: Span;
  readonly role: RangeRole;
  /** A value as it would be written, for messages. */
  readonly example: string;
  /**
   * Reads one operand. `inherited` is the unit of the other operand, for the one written without (`4 to 6 N·m`).
   * `spreadOf` is there for the number after `±`: what it is the spread of.
   */
  operand(operand: Operand, inherited: Operand | undefined, spreadOf: OperandReading | undefined): OperandReading;
  /** Puts a number, or two with a sign between them, together with their unit. */
  compose(numbers: string, unit: string): string;
}

export interface IntervalReading {
  readonly interval: Interval;
  readonly isRange: boolean;
  /** The first number as it was read, for repairs that keep its digits. */
  readonly first: OperandReading;
}

/** Reads the tokens of a value that is one number or a range of numbers. */
export function readInterval(tokens: readonly ValueToken[], rules: IntervalRules): Reading<IntervalReading> {
  const shape = shapeOf(lexemesOf(tokens), tokens, rules);
  if (shape.form === "unreadable") return { problems: [shape.problem] };
  const span = spanOf(tokens, rules.span);
  const problems: ValueProblem[] = [];

  const second = "second" in shape ? shape.second : undefined;
  const first = rules.operand(shape.first, second, undefined);
  problems.push(...first.problems);
  let other: OperandReading | undefined;
  if (second !== undefined) {
    other = rules.operand(second, shape.first, shape.form === "tolerance" ? first : undefined);
    // A unit that both numbers lack is one problem.
    const reported = new Set(problems.map((found) => found.code));
    problems.push(
      ...other.problems.filter((found) => !(found.code === "value/missing-unit" && reported.has(found.code))),
    );
  }

  const written = compose(shape, first, other, rules);
  if (shape.form !== "single" && rules.role === "exact") {
    problems.push(
      error(
        "range-not-allowed",
        // An example of the field's own could be far from what is meant, which matters for a torque.
        `${rules.field} is one number, not a range: write the one it is, as in ${rules.compose(first.text, first.unit)}.`,
        span,
      ),
    );
  }
  if (shape.form === "limit" && shape.habit) {
    problems.push(
      warning("range-words", `An open range is written with a sign, both ends included: ${written}.`, span, [
        replacement(span, written),
      ]),
    );
  }
  const interval = intervalOf(shape, first.value, other?.value);
  if (interval === undefined || problems.some((found) => found.severity === "error")) return { written, problems };
  if (greaterThan(interval.least, interval.greatest)) {
    const swapped = other === undefined ? written : composeRange(other, first, rules);
    const message =
      shape.form === "tolerance"
        ? "The number after ± is how far the value may be off either way, and cannot be negative."
        : `The range runs from the greater number to the less; the least comes first: ${swapped}.`;
    const fixes = shape.form === "range" ? [replacement(span, swapped)] : [];
    return { written, problems: [...problems, error("range-order", message, span, fixes)] };
  }
  return { value: { interval, isRange: shape.form !== "single", first }, written, problems };
}

function intervalOf(shape: Shape, first: number | undefined, second: number | undefined): Interval | undefined {
  if (first === undefined) return undefined;
  switch (shape.form) {
    case "single":
      return { least: first, greatest: first };
    case "limit":
      return shape.at === "<="
        ? { least: Number.NEGATIVE_INFINITY, greatest: first }
        : { least: first, greatest: Number.POSITIVE_INFINITY };
    case "range":
      return second === undefined ? undefined : { least: first, greatest: second };
    case "tolerance":
      return second === undefined ? undefined : { least: first - second, greatest: first + second };
    default:
      return undefined;
  }
}

function composeRange(from: OperandReading, to: OperandReading, rules: IntervalRules): string {
  return from.unit === to.unit
    ? rules.compose(`${from.text} to ${to.text}`, to.unit)
    : `${rules.compose(from.text, from.unit)} to ${rules.compose(to.text, to.unit)}`;
}

function compose(
  shape: Exclude<Shape, { form: "unreadable" }>,
  first: OperandReading,
  second: OperandReading | undefined,
  rules: IntervalRules,
): string {
  if (shape.form === "limit") return `${shape.at} ${rules.compose(first.text, first.unit)}`;
  if (second === undefined) return rules.compose(first.text, first.unit);
  if (shape.form === "range") return composeRange(first, second, rules);
  return first.unit === second.unit
    ? rules.compose(`${first.text} ± ${second.text}`, second.unit)
    : `${rules.compose(first.text, first.unit)} ± ${rules.compose(second.text, second.unit)}`;
}

/** Finds which of the forms the pieces have. */
function shapeOf(lexemes: readonly Lexeme[], tokens: readonly ValueToken[], rules: IntervalRules): Shape {
  let index = 0;
  const operand = (): Operand | undefined => {
    const taken = operandAt(lexemes, index);
    if (taken === undefined) return undefined;
    index += taken.length;
    return taken.operand;
  };
  const unreadable = (): Shape => ({ form: "unreadable", problem: unreadableProblem(lexemes, index, tokens, rules) });
  const ended = () => index === lexemes.length;

  const start = lexemes[0];
  if (start?.kind === "limit") {
    index = 1;
    const first = operand();
    return first !== undefined && ended() ? { form: "limit", at: start.at, habit: start.habit, first } : unreadable();
  }
  const first = operand();
  if (first === undefined) return unreadable();
  if (ended()) return { form: "single", first };
  const sign = lexemes[index];
  if (sign?.kind === "limit" && index === lexemes.length - 1) {
    return { form: "limit", at: sign.at, habit: true, first };
  }
  if (sign?.kind !== "to" && sign?.kind !== "plus-minus") return unreadable();
  index += 1;
  const second = operand();
  if (second === undefined || !ended()) return unreadable();
  return { form: sign.kind === "to" ? "range" : "tolerance", first, second };
}

function operandAt(lexemes: readonly Lexeme[], index: number): { operand: Operand; length: number } | undefined {
  const first = lexemes[index];
  const second = lexemes[index + 1];
  if (first?.kind === "number") {
    if (second?.kind !== "word") return { operand: { number: first, unitFirst: false, span: first.span }, length: 1 };
    const span = { start: first.span.start, end: second.span.end };
    return { operand: { number: first, unit: second, unitFirst: false, span }, length: 2 };
  }
  if (first?.kind === "word" && second?.kind === "number") {
    const span = { start: first.span.start, end: second.span.end };
    return { operand: { number: second, unit: first, unitFirst: true, span }, length: 2 };
  }
  return undefined;
}

function unreadableProblem(
  lexemes: readonly Lexeme[],
  index: number,
  tokens: readonly ValueToken[],
  rules: IntervalRules,
): ValueProblem {
  const span = spanOf(tokens, rules.span);
  const previous = lexemes[index - 1];
  const next = lexemes[index];
  if (previous?.kind === "number" && next?.kind === "number") {
    const both = { start: previous.span.start, end: next.span.end };
    const unsigned = next.text.replace(/^[-+\u2010-\u2015\u2212]/, "");
    const isAllThereIs = lexemes.filter((lexeme) => lexeme.kind === "number").length === 2;
    const fixes: Fix[] = [];
    if (isAllThereIs && /^\d{3}$/.test(next.text) && /^-?\d{1,3}$/.test(previous.text)) {
      fixes.push(replacement(both, `${previous.text}${next.text}`));
    }
    const range = `${previous.text} to ${unsigned}`;
    if (isAllThereIs && rules.role !== "exact") fixes.push(replacement(both, range));
    const message = `Two numbers stand side by side: ${excerpt(previous.text)} and ${excerpt(next.text)}. A range is written ${excerpt(range)}.`;
    return error("two-numbers", message, both, fixes);
  }
  const comma = lexemes.find((lexeme) => lexeme.kind === "comma");
  if (comma !== undefined) {
    return error("one-only", `${rules.field} takes one value, not a list, such as ${rules.example}.`, span);
  }
  return error(
    "not-a-number",
    `${rules.field} is written like ${rules.example}; ${excerpt(tokens)} is not.`,
    next?.span ?? span,
  );
}

/** The number of an operand in canonical spelling, or what is wrong with it. */
export function operandNumber(operand: Operand): { value?: number; text: string; problems: ValueProblem[] } {
  const { number } = operand;
  const { reading } = number;
  if (reading === undefined) {
    const message = `${excerpt(number.text)} is not a number that can be used; write digits with a point before decimals, such as 3.5.`;
    return { text: number.text, problems: [error("not-a-number", message, number.span)] };
  }
  if (!("habit" in reading)) return { value: reading.value, text: reading.text, problems: [] };
  const message =
    reading.habit === "decimal-comma"
      ? `Decimals are written with a point: ${excerpt(listOf(reading.meant))}.`
      : `Digits are not separated in thousands: ${excerpt(number.text)} is written ${listOf(reading.meant)}.`;
  const fixes = reading.meant.map((text) => replacement(number.span, text));
  return { text: number.text, problems: [error(reading.habit, message, number.span, fixes)] };
}
