import { brakeMeasurements } from "./brakes.ts";
import type { Measurement } from "./define.ts";
import { drivetrainMeasurements } from "./drivetrain.ts";
import { torqueMeasurements } from "./torque.ts";
import { wheelMeasurements } from "./wheels.ts";
import { wholeBikeMeasurements } from "./whole-bike.ts";

export type { Measurement, Tolerance } from "./define.ts";
export { type JointTorque, type TightenedJoint, tightenedJoints } from "./torque.ts";
export { usualTolerance } from "./usual.ts";

/**
 * What can be measured besides the settings of slots and the facts of parts, by path in the build. A setting such as
 * `drivetrain.chain.links` is recorded under its own path.
 */
export const measurements: Readonly<Record<string, Measurement>> = {
  ...drivetrainMeasurements,
  ...wheelMeasurements,
  ...brakeMeasurements,
  ...wholeBikeMeasurements,
  ...torqueMeasurements,
};

/** A row of the table. */
export function measurementAt(path: string): Measurement | undefined {
  return Object.hasOwn(measurements, path) ? measurements[path] : undefined;
}
