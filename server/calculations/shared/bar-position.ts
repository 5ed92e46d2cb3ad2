import { cosine, sine } from "./angles.ts";
import type { Point } from "./axle-positions.ts";

/** Where a stem holds the bar, seen from the crank axis. Millimetres and degrees. */
export interface StemSetting {
  readonly reach: number;
  readonly stack: number;
  readonly headAngle: number;
  /** From the head tube's top up the steering axis to the middle of the stem's steerer clamp. */
  readonly upAxis: number;
  readonly stemLength: number;
  /** Deviation from square to the steerer, positive up. */
  readonly stemAngle: number;
}

/** Up the steering axis, then out along the stem. */
export function barClamp({ reach, stack, headAngle, upAxis, stemLength, stemAngle }: StemSetting): Point {
  const inclination = 90 - headAngle + stemAngle;
  return {
    forward: reach - upAxis * cosine(headAngle) + stemLength * cosine(inclination),
    up: stack + upAxis * sine(headAngle) + stemLength * sine(inclination),
  };
}

/** Stem and height on the axis that reach a point exactly with a stem of this angle. */
export function stemFor(
  { reach, stack, headAngle }: Pick<StemSetting, "reach" | "stack" | "headAngle">,
  stemAngle: number,
  target: Point,
): { readonly stemLength: number; readonly upAxis: number } {
  const [forward, up] = [target.forward - reach, target.up - stack];
  // Square to the steering axis only the stem counts, along it the stem's slope and the height.
  const square = forward * sine(headAngle) + up * cosine(headAngle);
  const along = up * sine(headAngle) - forward * cosine(headAngle);
  const stemLength = square / cosine(stemAngle);
  return { stemLength, upAxis: along - stemLength * sine(stemAngle) };
}
