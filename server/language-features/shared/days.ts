import { inMonths } from "../../engine/days.ts";

/** Days a person is likely to mean, counted from today. */
export function daysFrom(today: string): { readonly day: string; readonly words: string }[] {
  return [
    { day: inMonths(today, 3), words: "in three months" },
    { day: inMonths(today, 6), words: "in six months" },
    { day: inMonths(today, 12), words: "in a year" },
    { day: today, words: "today" },
  ];
}
