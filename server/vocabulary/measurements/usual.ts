import type { DimensionName } from "../../../grammar/units.ts";
import { practice, type Tolerance } from "./define.ts";

/**
 * How far a measured setting, fact or worked-out number may lie from the one of the build, where no row of its own says
 * so: what a careful hand with workshop tools repeats.
 */
const byDimension: Partial<Record<DimensionName, Omit<Tolerance, "of" | "source">>> = {
  length: { by: 0.5, share: 0.005 },
  volume: { by: 5, share: 0.1 },
  mass: { by: 5, share: 0.03 },
  force: { by: 1, share: 0.1 },
  torque: { by: 0.2, share: 0.1 },
  pressure: { by: 0.1, share: 0.05 },
  stiffness: { share: 0.05 },
  angle: { by: 0.5 },
  ratio: { by: 2 },
};

/** Anything else that is measured. */
const otherwise: Omit<Tolerance, "of" | "source"> = { share: 0.02 };

/** Counts are what they are; `undefined` stands for a plain number. */
export function usualTolerance(dimension: DimensionName | "count" | undefined): Tolerance {
  const row = dimension === "count" ? { by: 0 } : ((dimension && byDimension[dimension]) ?? otherwise);
  return { of: "from what the build states", ...row, source: practice };
}
