import type { ValueToken } from "../../grammar/tree.ts";
import {
  error,
  excerpt,
  type Fix,
  type ReadContext,
  type Reading,
  replacement,
  spanOf,
  unread,
  warning,
} from "./problems.ts";
import type { DateType } from "./types.ts";

/** Days in a month of the Gregorian calendar, `month` from 1 to 12. */
export function daysInMonth(year: number, month: number): number {
  if (month === 2) return year % 4 === 0 && (year % 100 !== 0 || year % 400 === 0) ? 29 : 28;
  return month === 4 || month === 6 || month === 9 || month === 11 ? 30 : 31;
}

const monthNames = [
  "january",
  "february",
  "march",
  "april",
  "may",
  "june",
  "july",
  "august",
  "september",
  "october",
  "november",
  "december",
];

/** Reads a day of the calendar, `2027-03-31`. Other ways of writing one are offered in this form. */
export function readDate(_type: DateType, tokens: readonly ValueToken[], context: ReadContext): Reading<string> {
  const span = spanOf(tokens, context.span);
  const text = tokens
    .map((token) => token.text)
    .join(" ")
    .trim()
    .replace(/[\u2010-\u2015\u2212]/g, "-");
  const match = /^(\d{4})-(\d{2})-(\d{2})$/.exec(text);
  if (match === null) {
    const fixes: Fix[] = daysMeant(text).map((day) => replacement(span, day));
    const message = `${context.field} is a day, written year-month-day such as 2027-03-31; ${excerpt(text)} is not.`;
    return unread(undefined, [error("not-a-date", message, span, fixes)]);
  }
  const [year, month, day] = [Number(match[1]), Number(match[2]), Number(match[3])];
  const wrong = calendarError(year, month, day);
  if (wrong !== undefined) return unread(undefined, [error("no-such-day", `${text}: ${wrong}`, span)]);
  const [token] = tokens;
  if (tokens.length === 1 && token?.kind === "word") return { value: text, written: text, problems: [] };
  const problem = warning("quoted-word", `A day is written without quotes: ${text}.`, span, [replacement(span, text)]);
  return { value: text, written: text, problems: [problem] };
}

function calendarError(year: number, month: number, day: number): string | undefined {
  if (year < 1) return "there is no such year.";
  if (month < 1 || month > 12) return `there is no month ${month}.`;
  const last = daysInMonth(year, month);
  const name = monthNames[month - 1] ?? "";
  if (day >= 1 && day <= last) return undefined;
  return `${name.charAt(0).toUpperCase()}${name.slice(1)} ${year} has ${last} days.`;
}

/** The days that a text in another form can mean, the likeliest first; a day first is commoner than a month first. */
function daysMeant(text: string): string[] {
  const plain = text
    .toLowerCase()
    .replace(/(?<=\d)(st|nd|rd|th)\b/g, "")
    .replace(/,/g, " ");
  const numbers = /^(\d{1,4})\s*[-/. ]\s*(\d{1,2})\s*[-/. ]\s*(\d{1,4})\.?$/.exec(plain);
  const found: string[] = [];
  const add = (year: string | undefined, month: number, day: string | undefined) => {
    if (year?.length !== 4 || day === undefined) return;
    if (calendarError(Number(year), month, Number(day)) !== undefined) return;
    const written = `${year}-${String(month).padStart(2, "0")}-${day.padStart(2, "0")}`;
    if (!found.includes(written)) found.push(written);
  };
  if (numbers !== null) {
    const [, first, second, third] = numbers;
    if (first?.length === 4) add(first, Number(second), third);
    else {
      add(third, Number(second), first);
      add(third, Number(first), second);
    }
    return found;
  }
  const compact = /^(\d{4})(\d{2})(\d{2})$/.exec(plain);
  if (compact !== null) add(compact[1], Number(compact[2]), compact[3]);
  const words = plain.split(/[-/.\s]+/).filter((word) => word !== "");
  const month = words.length === 3 ? words.findIndex((word) => monthOf(word) !== undefined) : -1;
  if (month >= 0) {
    const [a, b] = words.filter((_, index) => index !== month);
    const number = monthOf(words[month] ?? "") ?? 0;
    if (/^\d{4}$/.test(a ?? "") && /^\d{1,2}$/.test(b ?? "")) add(a, number, b);
    if (/^\d{1,2}$/.test(a ?? "") && /^\d{4}$/.test(b ?? "")) add(b, number, a);
  }
  return found;
}

function monthOf(word: string): number | undefined {
  if (word.length < 3) return undefined;
  const index = monthNames.findIndex(
    (name) => name === word || name.slice(0, 3) === word || (word === "sept" && name === "september"),
  );
  return index < 0 ? undefined : index + 1;
}
