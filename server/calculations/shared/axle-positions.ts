import { cosine, degrees, radians, sine } from "./angles.ts";

/**
 * Places seen from the drive side, in millimetres from the crank axis: forward and up. Angles in degrees from the
 * horizontal. The frame stands as its maker's chart has it, until `settle` puts both wheels on the ground.
 */
export interface Point {
  readonly forward: number;
  readonly up: number;
}

export interface FrontEnd {
  readonly reach: number;
  readonly stack: number;
  readonly headAngle: number;
  readonly headTubeLength: number;
  readonly lowerStack: number;
  /** Straight from the axle to the crown-race seat. */
  readonly axleToCrown: number;
  readonly forkOffset: number;
}

/** From the crown-race seat to the point on the steering axis square to the axle; `undefined` for an impossible fork. */
export function forkLengthAlongAxis(axleToCrown: number, forkOffset: number): number | undefined {
  const square = axleToCrown ** 2 - forkOffset ** 2;
  return axleToCrown > 0 && square > 0 ? Math.sqrt(square) : undefined;
}

/** Down the steering axis from the head tube's top, then forward square to it by the offset. */
export function frontAxle(front: FrontEnd): Point | undefined {
  const fork = forkLengthAlongAxis(front.axleToCrown, front.forkOffset);
  if (fork === undefined) return undefined;
  const down = front.headTubeLength + front.lowerStack + fork;
  return {
    forward: front.reach + down * cosine(front.headAngle) + front.forkOffset * sine(front.headAngle),
    up: front.stack - down * sine(front.headAngle) + front.forkOffset * cosine(front.headAngle),
  };
}

/** Behind the crank axis at the height of the bottom-bracket drop; `undefined` when the drop is longer than the stay. */
export function rearAxle(chainstay: number, bottomBracketDrop: number): Point | undefined {
  const square = chainstay ** 2 - bottomBracketDrop ** 2;
  return square > 0 ? { forward: -Math.sqrt(square), up: bottomBracketDrop } : undefined;
}

export interface Settled {
  /** By how much the whole frame turns nose up, in degrees. */
  readonly tilt: number;
  /** Distance between the axles along the ground. */
  readonly wheelbase: number;
  /** Height of the crank axis above the ground. */
  readonly crankAxisHeight: number;
}

/** Turns the bicycle until both wheels stand on level ground. */
export function settle(front: Point, rear: Point, frontRadius: number, rearRadius: number): Settled | undefined {
  const along = front.forward - rear.forward;
  const rise = front.up - rear.up;
  const between = Math.hypot(along, rise);
  const wanted = (frontRadius - rearRadius) / between;
  if (!(Math.abs(wanted) < 1)) return undefined;
  const turn = Math.asin(wanted) - Math.atan2(rise, along);
  return {
    tilt: degrees(turn),
    wheelbase: between * Math.cos(Math.asin(wanted)),
    crankAxisHeight: rearRadius - rear.forward * Math.sin(turn) - rear.up * Math.cos(turn),
  };
}

/** A point of the frame after it has been turned nose up about the crank axis. */
export function turned(point: Point, tilt: number): Point {
  const angle = radians(tilt);
  return {
    forward: point.forward * Math.cos(angle) - point.up * Math.sin(angle),
    up: point.forward * Math.sin(angle) + point.up * Math.cos(angle),
  };
}
