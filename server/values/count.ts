import type { ValueToken } from "../../grammar/tree.ts";
import { teethSpellings } from "../../grammar/units.ts";
import { boundsProblem } from "./bounds.ts";
import { exampleOf } from "./example.ts";
import { type OperandReading, operandNumber, readInterval } from "./interval.ts";
import { error, excerpt, type ReadContext, type Reading, replacement, spanOf, unread, warning } from "./problems.ts";
import type { CountType } from "./types.ts";

/** Reads a whole number, with or without the word of what is counted. */
export function readCount(type: CountType, tokens: readonly ValueToken[], context: ReadContext): Reading<number> {
  const compose = (number: string) => (type.unit === undefined ? number : `${number} ${type.unit}`);
  const reading = readInterval(tokens, {
    field: context.field,
    span: context.span,
    role: "exact",
    get example() {
      return exampleOf(type);
    },
    compose,
    operand(operand): OperandReading {
      const { value, text, problems } = operandNumber(operand);
      const { unit } = operand;
      if (unit !== undefined && !isCountWord(unit.text, type.unit)) {
        problems.push(
          error(
            "unit-not-allowed",
            `${context.field} is a count, such as ${exampleOf(type)}; ${excerpt(unit.text)} does not belong to it.`,
            unit.span,
            value === undefined ? [] : [replacement(operand.span, compose(text))],
          ),
        );
      } else if (operand.unitFirst) {
        problems.push(
          warning("unit-first", `The number comes first: ${compose(text)}.`, operand.span, [
            replacement(operand.span, compose(text)),
          ]),
        );
      }
      if (value !== undefined && (!Number.isInteger(value) || value < 0)) {
        const message =
          value < 0
            ? `${context.field} is a count, and ${text} is less than nothing.`
            : `${context.field} is a count and therefore a whole number; ${text} is not one.`;
        problems.push(error("not-whole", message, operand.number.span));
      } else if (value !== undefined && !/^\d+$/.test(text)) {
        const whole = String(value);
        const message = `A count is written without decimals: ${whole}.`;
        problems.push(warning("not-whole", message, operand.number.span, [replacement(operand.number.span, whole)]));
        return { value, text: whole, unit: "", problems };
      }
      return { ...(value === undefined ? {} : { value }), text, unit: "", problems };
    },
  });
  if (reading.value === undefined) return unread(reading.written, reading.problems);
  const written = reading.written ?? "";
  const { interval } = reading.value;
  const slip = boundsProblem(type, interval, spanOf(tokens, context.span), context.field, (value) =>
    compose(String(value)),
  );
  if (slip !== undefined) return unread(written, [...reading.problems, slip]);
  return { value: interval.least, written, problems: reading.problems };
}

function isCountWord(text: string, unit: string | undefined): boolean {
  if (unit === undefined) return false;
  return text === unit || (unit === "t" && teethSpellings.includes(text));
}
