import { showNumber } from "../calculations/show.ts";
import { atMost } from "../values/compare.ts";
import type { Tolerance } from "../vocabulary/index.ts";
import { measurementAt } from "../vocabulary/index.ts";

/** A tolerance of a row of the table of measurements. Every name that is asked for stands there. */
export function toleranceAt(path: string, name: string): Tolerance {
  const tolerance = measurementAt(path)?.tolerances[name];
  if (!tolerance) throw new Error(`${path} has no tolerance ${name}`);
  return tolerance;
}

/** How far a value may lie from an expected one, in the base unit. */
export function allowed({ by = 0, share = 0 }: Tolerance, expected: number): number {
  return Math.max(by, share * Math.abs(expected));
}

export function isWithin(tolerance: Tolerance, measured: number, expected: number): boolean {
  return atMost(Math.abs(measured - expected), allowed(tolerance, expected));
}

/** The number of a limit that a row sets; 0 where it sets none. */
export function most({ most: limit = 0 }: Tolerance): number {
  return limit;
}

export function least({ least: limit = 0 }: Tolerance): number {
  return limit;
}

/** A share in a sentence: "10 %". */
export function shareText(share: number): string {
  return `${showNumber(Math.abs(share) * 100, 1)} %`;
}
