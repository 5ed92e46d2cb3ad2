import type { ResolvedCode } from "../../model/standard.ts";
import { atLeast } from "../../values/compare.ts";
import { dimensionOf } from "./codes.ts";

/** Sources differ by this much, in millimetres, about how much wider than such a rim a tyre has to be. */
const disputed = 1;

/**
 * How a tyre's width suits what the kind of rim asks for beyond the rim's own: `disputed` where sources differ, `few`
 * where the tyre is not wide enough by any of them, `enough` also where the kind asks for nothing.
 */
export function excessWidth(kind: ResolvedCode, tyre: number, inner: number): "enough" | "disputed" | "few" {
  const least = dimensionOf<number>(kind, "least-excess-width");
  if (least === undefined || atLeast(tyre - inner, least)) return "enough";
  return atLeast(tyre - inner, least - disputed) ? "disputed" : "few";
}
