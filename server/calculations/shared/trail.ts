import { cosine, sine } from "./angles.ts";

/** How far the front wheel's contact trails behind the steering axis, along the ground. Millimetres and degrees. */
export function trailOf(wheelRadius: number, headAngle: number, forkOffset: number): number {
  return (wheelRadius * cosine(headAngle) - forkOffset) / sine(headAngle);
}
