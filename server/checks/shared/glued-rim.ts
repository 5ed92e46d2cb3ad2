import type { ResolvedCode } from "../../model/standard.ts";
import { dimensionOf } from "./codes.ts";

/** Whether tyres are glued to a rim of this kind; a kind that does not say has edges for beads. */
export function isGlued(kind: ResolvedCode): boolean {
  return dimensionOf<boolean>(kind, "glued") === true;
}
