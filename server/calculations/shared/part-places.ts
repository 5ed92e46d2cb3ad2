import type { Point } from "./axle-positions.ts";

/** Points of a bicycle where its parts are taken to be, by the chart: from the crank axis. */
export interface Landmarks {
  readonly frontAxle: Point;
  readonly rearAxle: Point;
  readonly hands: Point;
  readonly saddle: Point;
  readonly headTubeTop: Point;
  readonly seatTubeTop: Point;
}

const crankAxis: Point = { forward: 0, up: 0 };

/** Where the mass of what stands in a slot is taken to be. Rough: next to the rider's mass it matters little. */
export function placeOfSlot(slot: string, marks: Landmarks): Point {
  const { frontAxle, rearAxle, hands, saddle, headTubeTop, seatTubeTop } = marks;
  if (slot === "lighting.front-lamp" || slot === "lighting.bell") return hands;
  if (slot === "lighting.rear-lamp") return saddle;
  if (slot.endsWith(".lever") || slot.endsWith("controller") || slot.endsWith("remote")) return hands;
  if (slot.startsWith("front-") || slot.startsWith("carrying.front-")) return frontAxle;
  if (slot.startsWith("rear-wheel.") || slot.startsWith("rear-brake.") || atRearAxle.has(slot)) return rearAxle;
  if (slot.startsWith("carrying.rear-")) return rearAxle;
  if (slot.startsWith("seat.")) return saddle;
  if (slot.startsWith("cockpit.")) return hands;
  if (slot === "frame") return mean(crankAxis, headTubeTop, seatTubeTop);
  if (slot === "rear-shock") return mean(crankAxis, seatTubeTop);
  if (slot === "fork") return mean(frontAxle, headTubeTop);
  if (slot === "headset") return headTubeTop;
  return crankAxis;
}

const atRearAxle: ReadonlySet<string> = new Set([
  "drivetrain.cassette",
  "drivetrain.cassette-spacer",
  "drivetrain.rear-derailleur",
  "drivetrain.hanger",
  "drivetrain.derailleur-adapter",
  "drivetrain.chain-tensioner",
  "carrying.stand",
  "carrying.child-seat",
]);

function mean(...points: readonly Point[]): Point {
  return {
    forward: points.reduce((sum, { forward }) => sum + forward, 0) / points.length,
    up: points.reduce((sum, { up }) => sum + up, 0) / points.length,
  };
}
