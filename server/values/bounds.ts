import type { Span } from "../../grammar/tree.ts";
import { atLeast, atMost } from "./compare.ts";
import { error, type Fix, type ValueProblem } from "./problems.ts";
import type { Interval } from "./types.ts";

/** Bounds outside which a number is taken for a slip of the pen, in the base unit. */
export interface Bounds {
  readonly lowest?: number;
  readonly highest?: number;
}

export function inBounds(bounds: Bounds, value: number): boolean {
  if (bounds.lowest !== undefined && !atLeast(value, bounds.lowest)) return false;
  return bounds.highest === undefined || atMost(value, bounds.highest);
}

/** The problem of a number outside the bounds of its field, which is taken for a slip of the pen. */
export function boundsProblem(
  bounds: Bounds,
  interval: Interval,
  span: Span,
  field: string,
  show: (value: number) => string,
  asWritten = "",
  fixes: () => readonly Fix[] = () => [],
): ValueProblem | undefined {
  const ends = [interval.least, interval.greatest].filter(Number.isFinite);
  const outside = ends.find((end) => !inBounds(bounds, end));
  if (outside === undefined) return undefined;
  const { lowest, highest } = bounds;
  if (outside === 0 && interval.least === interval.greatest && lowest !== undefined && lowest > 0) {
    return error(
      "out-of-bounds",
      `${field} cannot be ${asWritten}${show(0)}: it is ${show(lowest)} or more, or none where there is none.`,
      span,
      fixes(),
    );
  }
  const range =
    lowest === undefined
      ? `at most ${show(highest ?? 0)}`
      : highest === undefined
        ? `at least ${show(lowest)}`
        : `between ${show(lowest)} and ${show(highest)}`;
  return error(
    "out-of-bounds",
    `${field} cannot be ${asWritten}${show(outside)}: it is ${range}. Look for a slipped digit or a wrong unit.`,
    span,
    fixes(),
  );
}
