import type { Span, ValueToken } from "../../grammar/tree.ts";
import { currencies, currencySigns } from "./currency.ts";
import { type Operand, type OperandReading, operandNumber, readInterval } from "./interval.ts";
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
  warning,
} from "./problems.ts";
import type { Money, MoneyInterval, MoneyType } from "./types.ts";

/** Reads a sum such as `GBP 184.00`, or a budget such as `<= GBP 3200` where the field takes a range. */
export function readMoney(
  type: MoneyType,
  tokens: readonly ValueToken[],
  context: ReadContext,
): Reading<Money | MoneyInterval> {
  const used = new Set<string>();
  const reading = readInterval(partSigns(tokens), {
    field: context.field,
    span: context.span,
    role: type.role,
    example: type.role === "exact" ? "GBP 184.00" : "<= GBP 3200",
    compose: (numbers, currency) => (currency === "" ? numbers : `${currency} ${numbers}`),
    operand(operand, inherited, spreadOf) {
      const own = readSum(operand, inherited, spreadOf !== undefined, context);
      if (own.unit !== "") used.add(own.unit);
      return own;
    },
  });
  if (reading.value === undefined) return unread(reading.written, reading.problems);
  const written = reading.written ?? "";
  const [currency = ""] = used;
  if (used.size > 1) {
    const message = `${context.field} names two currencies, ${listOf([...used], "and")}; a range has one.`;
    return unread(written, [...reading.problems, error("two-currencies", message, spanOf(tokens, context.span))]);
  }
  const { interval } = reading.value;
  const value = type.role === "exact" ? { currency, amount: interval.least } : { currency, ...interval };
  return { value, written, problems: reading.problems };
}

/** Parts `£184` and `184€` at the sign, so that the sign is a word of its own. */
function partSigns(tokens: readonly ValueToken[]): ValueToken[] {
  return tokens.flatMap((token) => {
    const match =
      token.kind === "word" ? /^([-+\u2212]?)([^\d.,<>=≤≥±+\u2010-\u2015\u2212-]+)(\d.*)$/u.exec(token.text) : null;
    if (match === null) return [token];
    const [, sign = "", word = "", digits = ""] = match;
    // A sign before the currency belongs to the number.
    const start = token.span.start + sign.length;
    const parts: ValueToken[] = [
      { kind: "word", text: word, span: { start: token.span.start, end: start + word.length } },
      { kind: "word", text: sign + digits, span: { start: start + word.length, end: token.span.end } },
    ];
    return parts;
  });
}

function readSum(
  operand: Operand,
  inherited: Operand | undefined,
  isSpread: boolean,
  context: ReadContext,
): OperandReading {
  const { value, text, problems } = operandNumber(operand);
  const known = currencies();
  const own = operand.unit;
  const word = own ?? inherited?.unit;
  const amount = value === undefined ? {} : { value };
  if (word === undefined) {
    const likely = context.currency === undefined ? [] : [context.currency];
    const example = likely[0] ?? "GBP";
    const message = `${context.field} is a sum of money and needs its currency in three letters: ${example} ${text}.`;
    const fixes = value === undefined ? [] : likely.map((currency) => replacement(operand.span, `${currency} ${text}`));
    problems.push(error("missing-currency", message, operand.span, fixes));
    return { text, unit: "", problems };
  }
  const meant = currencyMeant(word.text, context.currency);
  if (own === undefined) return { ...amount, text, unit: meant[0] ?? word.text, problems };
  const right = (currency: string) => replacement(operand.span, `${currency} ${text}`);
  if (known.has(word.text)) {
    if (!operand.unitFirst && !isSpread) {
      const message = `The currency stands before the amount: ${word.text} ${text}.`;
      problems.push(warning("currency-first", message, operand.span, [right(word.text)]));
    }
    return { ...amount, text, unit: word.text, problems };
  }
  const [currency] = meant;
  if (currency !== undefined) {
    const message = `A currency is written in its three letters: ${listOf(meant.map((each) => `${each} ${text}`))}.`;
    const fixes = value === undefined ? [] : meant.map(right);
    // A sign that can only mean one currency leaves no doubt about the sum.
    const isClear = meant.length === 1;
    problems.push((isClear ? warning : error)("currency-sign", message, operand.span, fixes));
    return { ...amount, text, unit: currency, problems };
  }
  problems.push(unknownCurrency(word.text, word.span, operand, text));
  return { text, unit: word.text, problems };
}

function unknownCurrency(word: string, span: Span, operand: Operand, text: string) {
  const near = nearestSeveral(word, currencies());
  const message = `${excerpt(word)} is not a currency: write its three letters, such as GBP, EUR or USD.${didYouMean(near)}`;
  return error(
    "unknown-currency",
    message,
    span,
    near.map((currency) => replacement(operand.span, `${currency} ${text}`)),
  );
}

/** The currencies that a word or sign can stand for; the workshop's own first where it is one of them. */
function currencyMeant(word: string, own: string | undefined): string[] {
  const upper = word.toUpperCase();
  if (currencies().has(upper)) return [upper];
  const bySign = Object.hasOwn(currencySigns, word) ? currencySigns[word] : undefined;
  const meant = [...(bySign ?? [])];
  const other =
    bySign === undefined && Object.hasOwn(currencySigns, word.toLowerCase())
      ? currencySigns[word.toLowerCase()]
      : undefined;
  meant.push(...(other ?? []));
  if (own !== undefined && meant.includes(own)) return [own];
  return meant;
}
