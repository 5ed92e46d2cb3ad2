import { brakeJoints } from "./joints/brakes.ts";
import { controlJoints } from "./joints/controls.ts";
import type { Joint } from "./joints/define.ts";
import { drivetrainJoints } from "./joints/drivetrain.ts";
import { seatAndSuspensionJoints } from "./joints/seat-and-suspension.ts";
import { steeringJoints } from "./joints/steering.ts";
import { wheelJoints } from "./joints/wheels.ts";

export type { Joint, JointEnd } from "./joints/define.ts";

/**
 * Every place where two parts of a bicycle meet. Mating checks, the torque audit, the list of what a change makes
 * necessary and the ranking of candidates are made from it.
 */
export const jointTable: readonly Joint[] = [
  ...drivetrainJoints,
  ...controlJoints,
  ...brakeJoints,
  ...steeringJoints,
  ...seatAndSuspensionJoints,
  ...wheelJoints,
];

/** The joints in which the part of a slot takes part, as an end or as what stands between. */
export function jointsOf(slot: string): readonly Joint[] {
  return jointTable.filter((joint) => joint.ends.some((end) => end.slot === slot) || joint.adapter === slot);
}
