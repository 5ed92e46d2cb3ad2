import type { Point } from "./axle-positions.ts";

/**
 * A rider as a chain of straight segments seen from the side. Lengths are shares of the body's height, after Drillis
 * and Contini (1966); masses are shares of the body's mass and centres shares of a segment's length from its upper
 * end, after Dempster (1955); both as in Winter, "Biomechanics and Motor Control of Human Movement" (from memory).
 */
export const body = {
  trunk: { length: 0.288, mass: 0.497, centre: 0.5 },
  /** Head and neck: from the shoulder to the ear, where their centre lies. */
  head: { length: 0.118, mass: 0.081, centre: 1 },
  upperArm: { length: 0.186, mass: 2 * 0.028, centre: 0.436 },
  forearm: { length: 0.146, mass: 2 * 0.016, centre: 0.43 },
  /** To the middle of the hand, which holds the bar. */
  hand: { length: 0.054, mass: 2 * 0.006, centre: 1 },
  thigh: { length: 0.245, mass: 0.1, centre: 0.433 },
  shank: { length: 0.246, mass: 0.0465, centre: 0.433 },
  /** From the ankle down to the sole on the pedal. */
  foot: { length: 0.039, mass: 0.0145, centre: 1 },
} as const;

/** How far the hip joint lies above what the rider sits on, as a share of height: common practice, no source. */
const hipAboveSaddle = 0.05;
/** Arms are held a little bent; as a share of their length. */
const armReach = 0.96;
/** The trunk leans no farther back than this when the hands come near: the arms bend instead. Degrees from level. */
const mostUpright = 85;

/** The contact points, in millimetres from the crank axis, and the two lengths that matter. */
export interface Rider {
  readonly height: number;
  readonly saddle: Point;
  readonly hands: Point;
  readonly crankLength: number;
}

export interface Posture {
  readonly centre: Point;
  /** Lean of the trunk from level, in degrees. */
  readonly trunkAngle: number;
}

/**
 * Where the mass of a seated rider balances, with the cranks level; `undefined` when the hands do not reach the bar.
 * Both arms are taken together and straight from shoulder to hand; each leg is bent at the knee, forward.
 */
export function posture({ height, saddle, hands, crankLength }: Rider): Posture | undefined {
  const hip = { forward: saddle.forward, up: saddle.up + hipAboveSaddle * height };
  const trunk = body.trunk.length * height;
  const armLength = body.upperArm.length + body.forearm.length + body.hand.length;
  const lean = trunkLean(hip, hands, trunk, armLength * armReach * height);
  if (lean === undefined) return undefined;
  const shoulder = beyond(hip, lean, trunk);
  // The head is carried halfway between the line of the trunk and upright.
  const ear = beyond(shoulder, (lean + Math.PI / 2) / 2, body.head.length * height);

  const masses = new Balance();
  masses.add(body.trunk.mass, between(hip, shoulder, body.trunk.centre));
  masses.add(body.head.mass, ear);
  let along = 0;
  for (const { length, mass, centre } of [body.upperArm, body.forearm, body.hand]) {
    masses.add(mass, between(shoulder, hands, (along + centre * length) / armLength));
    along += length;
  }
  for (const pedal of [crankLength, -crankLength]) {
    const sole = { forward: pedal, up: 0 };
    const knee = kneeOf(hip, sole, body.thigh.length * height, (body.shank.length + body.foot.length) * height);
    const shankShare = body.shank.length / (body.shank.length + body.foot.length);
    masses.add(body.thigh.mass, between(hip, knee, body.thigh.centre));
    masses.add(body.shank.mass, between(knee, sole, body.shank.centre * shankShare));
    masses.add(body.foot.mass, sole);
  }
  return { centre: masses.centre(), trunkAngle: (lean * 180) / Math.PI };
}

/** Angle of the trunk from level at which the shoulder is an arm's length from the hands; the upper of the two. */
function trunkLean(hip: Point, hands: Point, trunk: number, arm: number): number | undefined {
  const apart = Math.hypot(hands.forward - hip.forward, hands.up - hip.up);
  if (apart > trunk + arm) return undefined;
  const toHands = Math.atan2(hands.up - hip.up, hands.forward - hip.forward);
  const cosine = (trunk ** 2 + apart ** 2 - arm ** 2) / (2 * trunk * apart);
  const lean = toHands + Math.acos(Math.max(-1, Math.min(1, cosine)));
  return Math.min(lean, (mostUpright * Math.PI) / 180);
}

/** The knee of a leg, in front of the line from hip to sole; on that line where the leg is not long enough. */
function kneeOf(hip: Point, sole: Point, thigh: number, lower: number): Point {
  const apart = Math.hypot(sole.forward - hip.forward, sole.up - hip.up);
  const down = Math.atan2(sole.up - hip.up, sole.forward - hip.forward);
  const cosine = (thigh ** 2 + apart ** 2 - lower ** 2) / (2 * thigh * apart);
  return beyond(hip, down + Math.acos(Math.max(-1, Math.min(1, cosine))), thigh);
}

function beyond(from: Point, angle: number, distance: number): Point {
  return { forward: from.forward + distance * Math.cos(angle), up: from.up + distance * Math.sin(angle) };
}

function between(one: Point, other: Point, share: number): Point {
  return {
    forward: one.forward + (other.forward - one.forward) * share,
    up: one.up + (other.up - one.up) * share,
  };
}

class Balance {
  #mass = 0;
  #forward = 0;
  #up = 0;

  add(mass: number, { forward, up }: Point): void {
    this.#mass += mass;
    this.#forward += mass * forward;
    this.#up += mass * up;
  }

  centre(): Point {
    return { forward: this.#forward / this.#mass, up: this.#up / this.#mass };
  }
}
