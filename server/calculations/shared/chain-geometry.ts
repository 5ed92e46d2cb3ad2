import { atLeast, lessThan } from "../../values/compare.ts";

/**
 * Length of a chain or belt in one loop round two toothed wheels: straight runs that touch both pitch circles, and the
 * arcs between. Lengths are in pitches, distances in millimetres.
 */

/** Half an inch: the pitch of every bicycle chain. */
export const chainPitch = 12.7;

/** Radius of the circle on which the pins of a chain lie: each pitch is a chord of it. */
export function chainPitchRadius(teeth: number, pitch = chainPitch): number {
  return pitch / (2 * Math.sin(Math.PI / teeth));
}

/** Radius of the line of a toothed belt's cords: each pitch is an arc of it. */
export function beltPitchRadius(teeth: number, pitch: number): number {
  return (pitch * teeth) / (2 * Math.PI);
}

export interface Loop {
  readonly frontTeeth: number;
  readonly rearTeeth: number;
  readonly frontRadius: number;
  readonly rearRadius: number;
  readonly pitch: number;
}

export function chainLoop(frontTeeth: number, rearTeeth: number): Loop {
  return {
    frontTeeth,
    rearTeeth,
    frontRadius: chainPitchRadius(frontTeeth),
    rearRadius: chainPitchRadius(rearTeeth),
    pitch: chainPitch,
  };
}

export function beltLoop(frontTeeth: number, rearTeeth: number, pitch: number): Loop {
  return {
    frontTeeth,
    rearTeeth,
    frontRadius: beltPitchRadius(frontTeeth, pitch),
    rearRadius: beltPitchRadius(rearTeeth, pitch),
    pitch,
  };
}

export interface LoopLength {
  /** Angle between a straight run and the line of centres, in radians; positive when the front wheel is larger. */
  readonly angle: number;
  /** One straight run, in millimetres. */
  readonly run: number;
  readonly frontPitches: number;
  readonly rearPitches: number;
  /** All of it, in pitches. */
  readonly pitches: number;
}

/** Whether the wheels stand clear of each other at this distance between their centres. */
export function standsClear(loop: Loop, centreDistance: number): boolean {
  return centreDistance > loop.frontRadius + loop.rearRadius;
}

/** The loop at a distance between centres that is greater than the difference of the radii. */
export function loopLength(loop: Loop, centreDistance: number): LoopLength {
  const angle = Math.asin((loop.frontRadius - loop.rearRadius) / centreDistance);
  const run = centreDistance * Math.cos(angle);
  const frontPitches = loop.frontTeeth * (0.5 + angle / Math.PI);
  const rearPitches = loop.rearTeeth * (0.5 - angle / Math.PI);
  return { angle, run, frontPitches, rearPitches, pitches: (2 * run) / loop.pitch + frontPitches + rearPitches };
}

/**
 * The distance between centres at which the loop has this many pitches; `undefined` when the wheels would touch.
 * The length grows with the distance all the way, so halving the interval always ends at the one answer.
 */
export function centreDistanceFor(loop: Loop, pitches: number): number | undefined {
  let near = loop.frontRadius + loop.rearRadius;
  let far = Math.max(near, (pitches * loop.pitch) / 2);
  if (!Number.isFinite(far) || loopLength(loop, near).pitches > pitches) return undefined;
  for (let halvings = 0; halvings < 200 && near < far; halvings++) {
    const middle = (near + far) / 2;
    if (middle === near || middle === far) break;
    if (loopLength(loop, middle).pitches < pitches) near = middle;
    else far = middle;
  }
  return (near + far) / 2;
}

/**
 * By how many pitches a sum may be over the links of a chain that still reaches: 0.64 mm. A new chain is its nominal
 * length or up to 0.15 % longer (tolerance on the measured length, ISO 606 and ISO 9633, from memory), which is 0.17
 * pitches of 112; how much of that to count on is common practice, no source.
 */
export const reachTolerance = 0.05;

/** Whether a chain of so many links reaches round a sum of pitches. */
export function reaches(links: number, pitches: number): boolean {
  return atLeast(links + reachTolerance, pitches);
}

/** How the links of a chain come of a sum of pitches: "up to an even 112". */
export function toLinks(pitches: number, links: number): string {
  return lessThan(links, pitches)
    ? `which a new chain of ${links} reaches, being up to 0.15 % longer than nominal`
    : `up to an even ${links}`;
}

/** The fewest links, an even number, of a chain that reaches round a sum of pitches. */
export function evenAtLeast(pitches: number): number {
  const below = evenAtMost(pitches);
  return reaches(below, pitches) ? below : below + 2;
}

export function evenAtMost(pitches: number): number {
  return 2 * Math.floor(pitches / 2 + 1e-9);
}
