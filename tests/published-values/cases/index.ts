import { brakeCases } from "./brake.ts";
import type { WorkedCase } from "./define.ts";
import { drivetrainCases } from "./drivetrain.ts";
import { fastenerCases } from "./fastener.ts";
import { fitCases } from "./fit.ts";
import { geometryCases } from "./geometry.ts";
import { suspensionCases } from "./suspension.ts";
import { wheelCases } from "./wheel.ts";
import { wholeBikeCases } from "./whole-bike.ts";

/**
 * At least two cases for every calculation, worked out by other means than its own: by hand, from a publication, or by
 * a script that goes about it another way. A calculation's own examples are not among them.
 */
export const cases: readonly WorkedCase[] = [
  ...drivetrainCases,
  ...wheelCases,
  ...brakeCases,
  ...geometryCases,
  ...fitCases,
  ...suspensionCases,
  ...wholeBikeCases,
  ...fastenerCases,
];
