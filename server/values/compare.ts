import type { Interval } from "./types.ts";

/**
 * Comparison of quantities in base units. Two numbers that differ by no more than this share of the greater count as
 * equal: converting units and adding up must not turn a part that fits exactly into one that does not.
 */
export const relativeSlack = 1e-9;

/** Below this, in the base unit of any dimension, nothing in a workshop can be told from zero. */
const absoluteSlack = 1e-12;

function slack(a: number, b: number): number {
  const size = Math.max(Math.abs(a), Math.abs(b));
  return Number.isFinite(size) ? Math.max(size * relativeSlack, absoluteSlack) : 0;
}

export function equal(a: number, b: number): boolean {
  return a === b || Math.abs(a - b) <= slack(a, b);
}

export function atMost(a: number, b: number): boolean {
  return a <= b || equal(a, b);
}

export function atLeast(a: number, b: number): boolean {
  return a >= b || equal(a, b);
}

export function lessThan(a: number, b: number): boolean {
  return a < b && !equal(a, b);
}

export function greaterThan(a: number, b: number): boolean {
  return a > b && !equal(a, b);
}

/** Whether a number is in an interval, its ends included. */
export function inside(value: number, interval: Interval): boolean {
  return atLeast(value, interval.least) && atMost(value, interval.greatest);
}

/** Whether all of `inner` is in `outer`. */
export function within(inner: Interval, outer: Interval): boolean {
  return atLeast(inner.least, outer.least) && atMost(inner.greatest, outer.greatest);
}

/** The part common to all the intervals; undefined when there is none. All numbers for an empty list. */
export function overlap(intervals: readonly Interval[]): Interval | undefined {
  let least = Number.NEGATIVE_INFINITY;
  let greatest = Number.POSITIVE_INFINITY;
  for (const interval of intervals) {
    least = Math.max(least, interval.least);
    greatest = Math.min(greatest, interval.greatest);
  }
  if (least <= greatest) return { least, greatest };
  return equal(least, greatest) ? { least, greatest: least } : undefined;
}

/** An interval that holds one number only. */
export function exactly(value: number): Interval {
  return { least: value, greatest: value };
}

/** Whether an interval is one number. */
export function isSingle(interval: Interval): boolean {
  return equal(interval.least, interval.greatest);
}
