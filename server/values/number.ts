import type { ValueToken } from "../../grammar/tree.ts";
import { boundsProblem } from "./bounds.ts";
import { exampleOf } from "./example.ts";
import { type OperandReading, operandNumber, readInterval } from "./interval.ts";
import { error, type ReadContext, type Reading, replacement, spanOf, unread } from "./problems.ts";
import type { Interval, NumberType } from "./types.ts";

/** Reads a plain number, such as a ratio, or a range of them. A per cent is offered as the number it stands for. */
export function readPlainNumber(
  type: NumberType,
  tokens: readonly ValueToken[],
  context: ReadContext,
): Reading<number | Interval> {
  const reading = readInterval(tokens, {
    field: context.field,
    span: context.span,
    role: type.role,
    get example() {
      return exampleOf(type);
    },
    compose: (numbers) => numbers,
    operand(operand): OperandReading {
      const { value, text, problems } = operandNumber(operand);
      if (operand.unit !== undefined) {
        const isPercent = operand.unit.text === "%" && value !== undefined;
        const meant = isPercent ? String(Number((value / 100).toPrecision(12))) : text;
        problems.push(
          error(
            "unit-not-allowed",
            `${context.field} is a plain number without a unit, such as ${exampleOf(type)}.`,
            operand.unit.span,
            value === undefined ? [] : [replacement(operand.span, meant)],
          ),
        );
      }
      return { ...(value === undefined ? {} : { value }), text, unit: "", problems };
    },
  });
  if (reading.value === undefined) return unread(reading.written, reading.problems);
  const { interval } = reading.value;
  const slip = boundsProblem(type, interval, spanOf(tokens, context.span), context.field, String);
  const written = reading.written ?? "";
  if (slip !== undefined) return unread(written, [...reading.problems, slip]);
  return { value: type.role === "exact" ? interval.least : interval, written, problems: reading.problems };
}
