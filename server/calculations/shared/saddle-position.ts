import { cosine, sine } from "./angles.ts";
import type { Point } from "./axle-positions.ts";

/** A seat tube and what stands in it, seen from the crank axis. Millimetres and degrees. */
export interface SeatTube {
  readonly seatAngle: number;
  /** Distance of the tube's axis in front of the crank axis, square to that axis. */
  readonly offset: number;
}

/** A point on or beside the seat tube's axis: so far up along it, and so far behind it, square to it. */
export function alongSeatTube({ seatAngle, offset }: SeatTube, along: number, behind: number): Point {
  const ahead = offset - behind;
  return {
    forward: ahead * sine(seatAngle) - along * cosine(seatAngle),
    up: ahead * cosine(seatAngle) + along * sine(seatAngle),
  };
}

/** How far up along the axis a point so far behind it has to be, to be so high above the crank axis. */
export function alongForHeight({ seatAngle, offset }: SeatTube, up: number, behind: number): number {
  return (up - (offset - behind) * cosine(seatAngle)) / sine(seatAngle);
}
