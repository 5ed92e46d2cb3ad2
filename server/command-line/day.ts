import { UsageProblem } from "./problem.ts";

/** The day by this machine's calendar, `2026-11-25`. */
export function localDay(now = new Date()): string {
  const two = (part: number): string => String(part).padStart(2, "0");
  return `${now.getFullYear()}-${two(now.getMonth() + 1)}-${two(now.getDate())}`;
}

/** A day of the calendar as written on the command line. @throws UsageProblem when it is none. */
export function dayOf(written: string): string {
  const day = new Date(`${written}T00:00:00Z`);
  const isDay = /^\d{4}-\d{2}-\d{2}$/.test(written) && !Number.isNaN(day.getTime());
  if (isDay && day.toISOString().startsWith(written)) return written;
  throw new UsageProblem(`--today takes a day such as 2027-03-31; ${written} was given.`);
}
