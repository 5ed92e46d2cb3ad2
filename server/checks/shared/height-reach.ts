import { buildField, type Known, type Maybe, optional, worked } from "../../model/need.ts";
import { greaterThan, lessThan } from "../../values/compare.ts";

/** What {@link heightReach} reads besides the aim and the highest saddle. */
export const reachNeeds = {
  lowest: optional(worked<number>("seat.lowest-saddle")),
  tolerance: optional(buildField("fit.tolerance")),
};

/**
 * Whether the saddle height that is aimed at lies between the lowest and the highest that post and frame allow, as near
 * as the tolerance asks. A lowest one that means nothing (no limit is stated) bounds nothing.
 */
export function heightReach({
  target,
  highest,
  lowest,
  tolerance,
}: {
  readonly target: Known<number>;
  readonly highest: Known<number>;
  readonly lowest: Maybe<number>;
  readonly tolerance: Maybe<number>;
}): "within" | "too-high" | "too-low" | "unknown" {
  const near = tolerance.state === "known" ? tolerance.value : 0;
  if (greaterThan(target.value, highest.value + near)) return "too-high";
  if (lowest.state === "unknown") return "unknown";
  if (lowest.state === "known" && lessThan(target.value, lowest.value - near)) return "too-low";
  return "within";
}
