import type { Span, ValueToken } from "../../grammar/tree.ts";
import {
  type DimensionName,
  dimensions,
  teethSpellings,
  toBase,
  type Unit,
  unitByLooseSpelling,
  unitBySpelling,
  units,
} from "../../grammar/units.ts";
import { currencies } from "../values/currency.ts";
import { type Operand, type OperandReading, operandNumber, readInterval } from "../values/interval.ts";
import { didYouMean, nearestSeveral } from "../values/near.ts";
import { error, excerpt, replacement, type ValueProblem, warning } from "../values/problems.ts";
import { type NumberOf, numberType } from "./expression-type.ts";
import { type RunValue, single } from "./run-value.ts";

/** A number written in a rule, or a range of them. */
export interface Literal {
  readonly type: NumberOf;
  readonly value: Extract<RunValue, { form: "number" | "range" }>;
  readonly written: string;
}

/** Words behind a count. They name what is counted and are no unit. */
const countWords = new Set([...teethSpellings, "link", "links", "pitch", "pitches"]);

/** Whether an operand begins as a number does: nothing else that an expression names begins so. */
export function looksLikeNumber(tokens: readonly ValueToken[]): boolean {
  const [first, second] = tokens;
  if (first?.kind !== "word") return false;
  const isNumber = (text: string): boolean => /^[-+−]?(?:\d|\.\d|[¼½¾⅛⅜⅝⅞])/.test(text);
  return isNumber(first.text) || (second?.kind === "word" && isNumber(second.text) && isCurrency(first.text));
}

function isCurrency(word: string): boolean {
  return currencies().has(word);
}

/**
 * Reads a number with its unit, whatever it measures: `30 mm`, `52 t`, `GBP 184`, `3 to 5 N·m`, `27.2 ± 0.05 mm`.
 * Problems are added to the list; without a literal there is at least one error.
 */
export function readLiteral(tokens: readonly ValueToken[], span: Span, problems: ValueProblem[]): Literal | undefined {
  const measured: { dimension?: DimensionName; unit?: string; word?: string; currency?: string }[] = [];
  const reading = readInterval(tokens, {
    field: "this number",
    span,
    role: "tolerance",
    example: "30 mm",
    compose: (numbers, unit) =>
      isCurrency(unit) ? `${unit} ${numbers}` : unit === "" ? numbers : `${numbers} ${unit}`,
    operand: (operand, inherited, spreadOf) => {
      const found = readOperand(operand, inherited, spreadOf);
      measured.push(found.measured);
      return found.reading;
    },
  });
  problems.push(...reading.problems);
  if (reading.value === undefined) return undefined;
  const [first = {}, second = first] = measured;
  if (first.dimension !== second.dimension || first.currency !== second.currency) {
    const message = "Both ends of a range measure the same thing, in one currency.";
    problems.push({ code: "expression/dimension", severity: "error", message, span });
    return undefined;
  }
  const { dimension, unit, word, currency } = first;
  const { vector, scale } = dimension === undefined ? { vector: {}, scale: 1 } : dimensions[dimension];
  const { least, greatest } = reading.value.interval;
  const end = (at: number) => single(at * scale, currency);
  return {
    type: numberType(
      currency === undefined ? vector : { money: 1 },
      {
        ...(dimension === undefined ? {} : { dimension }),
        ...(unit === undefined ? {} : { unit }),
        ...(word === undefined ? {} : { word }),
      },
      currency,
    ),
    value: reading.value.isRange ? { form: "range", least: end(least), greatest: end(greatest) } : end(least),
    written: reading.written ?? "",
  };
}

interface ReadOperand {
  readonly reading: OperandReading;
  readonly measured: {
    readonly dimension?: DimensionName;
    readonly unit?: string;
    readonly word?: string;
    readonly currency?: string;
  };
}

function readOperand(
  operand: Operand,
  inherited: Operand | undefined,
  spreadOf: OperandReading | undefined,
): ReadOperand {
  const { value, text, problems } = operandNumber(operand);
  const word = operand.unit ?? inherited?.unit;
  const found = (unit: string, base: number | undefined, measured: ReadOperand["measured"]): ReadOperand => ({
    reading: { ...(base === undefined ? {} : { value: base }), text, unit, problems },
    measured,
  });
  if (word === undefined) return found("", value, {});
  if (countWords.has(word.text))
    return found(word.text, value, { word: teethSpellings.includes(word.text) ? "t" : word.text });
  if (isCurrency(word.text)) return found(word.text, value, { currency: word.text });
  const exact = unitBySpelling(word.text);
  const unit = exact ?? unitByLooseSpelling(word.text);
  if (!unit) {
    // A unit taken over from the other number is that number's problem.
    if (operand.unit) problems.push(unknownUnit(word.text, word.span));
    return found(word.text, undefined, {});
  }
  if (!exact && operand.unit) {
    problems.push(
      warning("unit-capitals", `${word.text} is read as ${unit.symbol} (${unit.name}).`, word.span, [
        replacement(word.span, unit.symbol),
      ]),
    );
  }
  return found(unit.symbol, value === undefined ? undefined : inBase(value, unit, spreadOf), {
    dimension: unit.dimension,
    unit: unit.symbol,
  });
}

/** A spread is a difference: 2 °F either way is no temperature. */
function inBase(value: number, unit: Unit, spreadOf: OperandReading | undefined): number {
  return spreadOf === undefined ? toBase(value, unit) : value * unit.factor;
}

function unknownUnit(word: string, span: Span): ValueProblem {
  const near = nearestSeveral(
    word,
    units.map(({ symbol }) => symbol),
  );
  const message = `${excerpt(word)} is no unit that Ferrule knows.${didYouMean(near)}`;
  return error(
    "unknown-unit",
    message,
    span,
    near.map((symbol) => replacement(span, symbol)),
  );
}
