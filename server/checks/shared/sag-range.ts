import type { Known, Maybe, Unknown } from "../../model/need.ts";
import type { Interval } from "../../values/types.ts";

/** The frame's range for a rear shock; the shock's own where the frame's maker states none. */
export function decidingSag(range: Maybe<Interval>, own: Maybe<Interval>): Known<Interval> | Unknown | undefined {
  if (range.state === "known") return range;
  if (own.state === "known") return own;
  if (range.state === "unknown") return range;
  return own.state === "unknown" ? own : undefined;
}
