import { radians } from "./angles.ts";

/** Where wheel and pedals stand, seen from the crank axis. Millimetres and degrees. */
export interface ToeSetting {
  /** Front axle in front of the crank axis, and how far the crank axis lies below it. */
  readonly forward: number;
  readonly drop: number;
  readonly headAngle: number;
  readonly offset: number;
  /** Over the tyre. */
  readonly radius: number;
  readonly width: number;
  readonly crank: number;
  /** From the centre plane to the pedal's middle. */
  readonly lateral: number;
}

export interface ToeSweep {
  readonly clearance: number;
  readonly steering: number;
  readonly crankAngle: number;
}

type Vector = readonly [number, number, number];

const add = (a: Vector, b: Vector, times = 1): Vector => [
  a[0] + times * b[0],
  a[1] + times * b[1],
  a[2] + times * b[2],
];
const dot = (a: Vector, b: Vector): number => a[0] * b[0] + a[1] * b[1] + a[2] * b[2];
const cross = (a: Vector, b: Vector): Vector => [
  a[1] * b[2] - a[2] * b[1],
  a[2] * b[0] - a[0] * b[2],
  a[0] * b[1] - a[1] * b[0],
];

/** A vector turned about a unit axis. */
function turn(vector: Vector, axis: Vector, angle: number): Vector {
  const along = add([0, 0, 0], axis, dot(axis, vector));
  return add(
    add(add([0, 0, 0], vector, Math.cos(angle)), cross(axis, vector), Math.sin(angle)),
    along,
    1 - Math.cos(angle),
  );
}

/**
 * Middles and half-widths of the first search, in degrees, and how it closes in on the least. The wheel is steered to
 * the side on which its rear comes toward the pedal.
 */
const steeringMiddle = -33;
const steeringReach = 33;
const crankMiddle = 24;
const crankReach = 48;
const narrowing = 0.6;

/**
 * Least distance forward from the pedal to the tyre over all angles; `undefined` when the pedal never comes behind it.
 * A grid finds the neighbourhood of the least, ever finer grids the least itself. The least often lies where the tyre
 * only just reaches out to the pedal, so the grids close in slowly.
 * @param crankLevel holds the crank level instead of turning it too.
 */
export function sweepToe(setting: ToeSetting, crankLevel = false): ToeSweep | undefined {
  let best: ToeSweep | undefined;
  const search = (steering: number, crank: number, halfSteering: number, halfCrank: number, steps: number): void => {
    for (let i = -steps; i <= steps; i++) {
      const at = steering + (halfSteering * i) / steps;
      const wheel = steered(setting, at);
      for (let j = crankLevel ? 0 : -steps; j <= (crankLevel ? 0 : steps); j++) {
        const crankAngle = crankLevel ? 0 : crank + (halfCrank * j) / steps;
        const clearance = gap(setting, wheel, crankAngle);
        if (clearance !== undefined && (!best || clearance < best.clearance)) {
          best = { clearance, steering: at, crankAngle };
        }
      }
    }
  };
  search(steeringMiddle, crankMiddle, steeringReach, crankReach, 6);
  for (let share = 1 / 4; best && share > 5e-4; share *= narrowing) {
    search(best.steering, best.crankAngle, steeringReach * share, crankReach * share, 2);
  }
  return best;
}

interface SteeredWheel {
  readonly centre: Vector;
  /** Along the wheel's axle. */
  readonly axle: Vector;
}

/** The wheel turned about the steering axis; forward, left and up are positive. */
function steered({ forward, drop, headAngle, offset }: ToeSetting, steering: number): SteeredWheel {
  const head = radians(headAngle);
  const axis: Vector = [-Math.cos(head), 0, Math.sin(head)];
  const square: Vector = [Math.sin(head), 0, Math.cos(head)];
  const centre: Vector = [forward, 0, drop];
  const onAxis = add(centre, square, -offset);
  const angle = radians(steering);
  return { centre: add(onAxis, turn(add(centre, onAxis, -1), axis, angle)), axle: turn([0, 1, 0], axis, angle) };
}

/**
 * From the pedal forward to the tyre's rear face at the pedal's height and distance from the centre plane. The tyre is
 * a torus: the points within half its width of the circle on which the middle of its section runs.
 */
function gap(setting: ToeSetting, wheel: SteeredWheel, crankAngle: number): number | undefined {
  const angle = radians(crankAngle);
  const [centre, axle] = [wheel.centre, wheel.axle];
  const tube = setting.width / 2;
  const ring = setting.radius - tube;
  const aside = setting.lateral - centre[1];
  const above = setting.crank * Math.sin(angle) - centre[2];
  const alongAxle = aside * axle[1] + above * axle[2];
  const squares = aside ** 2 + above ** 2;
  // The rear face lies where the line first comes within the tyre. The distance to a torus never overstates the way
  // that is clear, so walking by it cannot jump through the tyre.
  let along = -setting.radius - setting.lateral;
  for (let step = 0; step < 300 && along < setting.radius; step++) {
    const outOfPlane = along * axle[0] + alongAxle;
    const inPlane = Math.sqrt(Math.max(0, along ** 2 + squares - outOfPlane ** 2));
    const clear = Math.sqrt((inPlane - ring) ** 2 + outOfPlane ** 2) - tube;
    if (clear < 1e-6) return centre[0] + along - setting.crank * Math.cos(angle);
    along += clear;
  }
  return undefined;
}
