import type { Outcome, Severity } from "../model/finding.ts";

/** `1 build`, `2 builds`. */
export function counted(count: number, one: string, several = `${one}s`): string {
  return `${count} ${count === 1 ? one : several}`;
}

/** The five counts in one sentence: `40 hold, 2 fail, 3 cannot be checked, 1 waived, 9 do not apply`. */
export function outcomeCounts(counts: Readonly<Record<Outcome, number>>): string {
  return [
    counted(counts.holds, "holds", "hold"),
    counted(counts.fails, "fails", "fail"),
    `${counts.unknown} cannot be checked`,
    `${counts.waived} waived`,
    counted(counts.notApplicable, "does not apply", "do not apply"),
  ].join(", ");
}

/** How many findings of each severity: `1 error, 2 warnings, 4 notes`. */
export function severityCounts(counts: Readonly<Record<Severity, number>>): string {
  return [counted(counts.error, "error"), counted(counts.warning, "warning"), counted(counts.information, "note")].join(
    ", ",
  );
}

/** What a report calls a severity. */
export const severityWords: Readonly<Record<Severity, string>> = {
  error: "error",
  warning: "warning",
  information: "note",
};

/** Headings of lists of rows. */
export const outcomeHeadings: Readonly<Record<Outcome, string>> = {
  holds: "Holds",
  fails: "Fails",
  unknown: "Cannot be checked",
  waived: "Waived",
  notApplicable: "Does not apply",
};
