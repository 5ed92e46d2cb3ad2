import type { Span, ValueToken } from "../../grammar/tree.ts";
import { boundsProblem } from "./bounds.ts";
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
  type ValueProblem,
  warning,
} from "./problems.ts";
import { showMoney } from "./show.ts";
import type { Money, MoneyInterval, MoneyType } from "./types.ts";

/** Reads a sum such as `GBP 184.00`, or a budget such as `<= GBP 3200` where the field takes a range. */
export function readMoney(
  type: MoneyType,
  tokens: readonly ValueToken[],
  context: ReadContext,
): Reading<Money | MoneyInterval> {
  const span = spanOf(tokens, context.span);
  const words: CurrencyWord[] = [];
  const reading = readInterval(partSigns(tokens), {
    field: context.field,
    span: context.span,
    role: type.role,
    example: type.role === "exact" ? "GBP 184.00" : "<= GBP 3200",
    compose: (numbers, currency) => (currency === "" ? numbers : `${currency} ${numbers}`),
    operand: (operand, inherited) => readSum(operand, inherited, words, context),
  });
  const written = reading.written ?? "";
  const problems = [...reading.problems];
  const used = [...new Set(words.map((word) => word.currency))];
  const [currency = ""] = used;
  if (used.length > 1) {
    const message = `${context.field} names two currencies, ${listOf(used, "and")}; a range has one.`;
    problems.push(error("two-currencies", message, span));
  } else {
    const form = formProblem(words, written, span);
    if (form !== undefined) problems.push(form);
  }
  if (reading.value === undefined || problems.some((problem) => problem.severity === "error")) {
    return unread(written, problems);
  }
  const { interval } = reading.value;
  const outside = boundsProblem(type, interval, span, context.field, (amount) => showMoney({ currency, amount }));
  if (outside) return unread(written, [...problems, outside]);
  const value = type.role === "exact" ? { currency, amount: interval.least } : { currency, ...interval };
  return { value, written, problems };
}

/** A word or sign that names a currency, and what it names. */
interface CurrencyWord {
  readonly text: string;
  readonly currency: string;
  /** All that the sign can stand for. */
  readonly meant: readonly string[];
  readonly isBeforeAmount: boolean;
}

/** What is to be mended in the way a currency is written: its letters, then its place. */
function formProblem(words: readonly CurrencyWord[], written: string, span: Span): ValueProblem | undefined {
  const sign = words.find((word) => word.text !== word.currency);
  if (sign !== undefined) {
    const forms = sign.meant.map((meant) => written.replaceAll(sign.currency, meant));
    const message = `A currency is written in its three letters: ${listOf(forms)}.`;
    const fixes = forms.map((form) => replacement(span, form));
    // A sign that can only mean one currency leaves no doubt about the sum.
    return (forms.length === 1 ? warning : error)("currency-sign", message, span, fixes);
  }
  if (words.every((word) => word.isBeforeAmount)) return undefined;
  return warning("currency-first", `The currency stands before the amount: ${written}.`, span, [
    replacement(span, written),
  ]);
}

/** A word, digits and what follows them: `£184`, `-£184`, `£100-£200`. */
const gluedSum = /^([-+\u2212]?)([^\d.,<>=≤≥±+\u2010-\u2015\u2212-]+)(\d[\d.,]*)(.*)$/u;
const gluedRange = /^([-\u2010-\u2015\u2212])(?=[^\d])/;

/** Parts `£184` at the sign, so that the sign is a word of its own. */
function partSigns(tokens: readonly ValueToken[]): ValueToken[] {
  const parts: ValueToken[] = [];
  for (const token of tokens) {
    let { text } = token;
    let { start } = token.span;
    const take = (written: string, kept = written) => {
      if (kept !== "") parts.push({ kind: "word", text: kept, span: { start, end: start + written.length } });
      start += written.length;
      text = text.slice(written.length);
    };
    for (let match = glued(token, text); match !== null; match = glued(token, text)) {
      const [, sign = "", word = "", digits = "", rest = ""] = match;
      // A sign before the currency belongs to the number.
      take(sign + word, word);
      const dash = gluedRange.exec(rest)?.[1];
      if (dash === undefined) {
        take(text, sign + text);
        break;
      }
      take(digits, sign + digits);
      take(dash);
    }
    if (text !== "") parts.push(text === token.text ? token : { ...token, text, span: { start, end: token.span.end } });
  }
  return parts;
}

function glued(token: ValueToken, text: string): RegExpExecArray | null {
  return token.kind === "word" && token.text.length <= 100 ? gluedSum.exec(text) : null;
}

function readSum(
  operand: Operand,
  inherited: Operand | undefined,
  words: CurrencyWord[],
  context: ReadContext,
): OperandReading {
  const { value, text, problems } = operandNumber(operand);
  const own = operand.unit;
  const word = own ?? inherited?.unit;
  const amount = value === undefined ? {} : { value };
  if (word === undefined) {
    const end = { start: operand.span.start, end: operand.span.start };
    const likely = context.currency === undefined ? [] : [context.currency];
    const message = `${context.field} is a sum of money and needs its currency in three letters: ${likely[0] ?? "GBP"} ${excerpt(text)}.`;
    const fixes = likely.map((currency) => replacement(end, `${currency} `, `Add the currency ${currency}`));
    problems.push(error("missing-unit", message, operand.span, fixes));
    return { text, unit: "", problems };
  }
  const meant = currencies().has(word.text) ? [word.text] : currencyMeant(word.text, context.currency);
  const [currency] = meant;
  if (currency === undefined) {
    if (own !== undefined) problems.push(unknownCurrency(word.text, word.span, operand, text));
    return { text, unit: word.text, problems };
  }
  if (own !== undefined) words.push({ text: own.text, currency, meant, isBeforeAmount: operand.unitFirst });
  return { ...amount, text, unit: currency, problems };
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
