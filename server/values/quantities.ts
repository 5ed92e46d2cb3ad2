import type { ValueToken } from "../../grammar/tree.ts";
import { fromBase } from "../../grammar/units.ts";
import { boundsProblem } from "./bounds.ts";
import { exampleOf } from "./example.ts";
import { usualUnit } from "./field-units.ts";
import { type Operand, type OperandReading, readInterval } from "./interval.ts";
import { lexemesOf, type WordLexeme } from "./lexemes.ts";
import { splitAtCommas } from "./lists.ts";
import {
  error,
  excerpt,
  type ReadContext,
  type Reading,
  replacement,
  spanOf,
  unread,
  type ValueProblem,
} from "./problems.ts";
import { readOperand } from "./quantity.ts";
import type { QuantitiesType } from "./types.ts";
import { roundedText, withUnit } from "./write-number.ts";

/** Reads quantities separated by commas; a unit counts for all the numbers before it that have none of their own. */
export function readQuantities(
  type: QuantitiesType,
  tokens: readonly ValueToken[],
  context: ReadContext,
): Reading<readonly number[]> {
  const lists = splitAtCommas(tokens);
  const problems: ValueProblem[] = [...lists.problems];
  const values: number[] = [];
  const read: OperandReading[] = [];
  const unitsAfter = unitsFollowing(lists.items);
  for (const [index, item] of lists.items.entries()) {
    const glued = gluedLists(item);
    if (glued.length > 0) {
      problems.push(...glued);
      continue;
    }
    let operandReading: OperandReading | undefined;
    const reading = readInterval(item, {
      field: context.field,
      span: context.span,
      role: "exact",
      get example() {
        return exampleOf(type);
      },
      compose: withUnit,
      operand(operand) {
        const unit = operand.unit === undefined ? unitsAfter[index] : undefined;
        const inherited: Operand | undefined = unit === undefined ? undefined : { ...operand, unit };
        operandReading = readOperand(type, operand, inherited, undefined, context.field);
        return operandReading;
      },
    });
    // A unit missing after the last number is missing for all of them, and is said once.
    const isLast = index === lists.items.length - 1;
    problems.push(...reading.problems.filter((problem) => isLast || problem.code !== "value/missing-unit"));
    if (reading.value === undefined || operandReading === undefined) continue;
    const { interval, first } = reading.value;
    const usual = usualUnit(type);
    const slip = boundsProblem(
      type,
      interval,
      spanOf(item, context.span),
      context.field,
      (value) => withUnit(roundedText(fromBase(value, usual)), usual.symbol),
      first.unit === usual.symbol ? "" : `${reading.written ?? ""}, which is `,
    );
    if (slip !== undefined) {
      problems.push(slip);
      continue;
    }
    values.push(reading.value.interval.least);
    read.push(operandReading);
  }
  const written = writeList(read);
  if (values.length < lists.items.length || values.length === 0) {
    if (problems.length === 0) {
      problems.push(error("missing", `${context.field} is a list such as ${exampleOf(type)}.`, context.span));
    }
    return unread(written, problems);
  }
  if (problems.some((problem) => problem.severity === "error")) return unread(written, problems);
  return { value: values, written, problems };
}

function writeList(read: readonly OperandReading[]): string {
  const units = new Set(read.map((one) => one.unit));
  const [unit] = units;
  if (units.size === 1 && unit !== undefined) return withUnit(read.map((one) => one.text).join(", "), unit);
  return read.map((one) => withUnit(one.text, one.unit)).join(", ");
}

/** For each item, the unit of the next item that has one. */
function unitsFollowing(items: readonly (readonly ValueToken[])[]): (WordLexeme | undefined)[] {
  const units: (WordLexeme | undefined)[] = [];
  let unit: WordLexeme | undefined;
  for (let index = items.length - 1; index >= 0; index -= 1) {
    const own = lexemesOf(items[index] ?? []).find((lexeme): lexeme is WordLexeme => lexeme.kind === "word");
    if (own !== undefined) unit = own;
    units[index] = unit;
  }
  return units;
}

/** `1180,1150 N`: in a list, a comma between digits lacks its blank. */
function gluedLists(item: readonly ValueToken[]): ValueProblem[] {
  return item
    .filter((token) => token.kind === "word" && /^\d+(?:\.\d+)?(?:,\d+(?:\.\d+)?)+/.test(token.text))
    .map((token) => {
      const spaced = token.text.replace(/(?<=\d),(?=\d)/g, ", ");
      const message = `A list has a blank after each comma: ${excerpt(spaced)}.`;
      return error("glued-list", message, token.span, [replacement(token.span, spaced)]);
    });
}
