import { cosine, degrees, radians } from "./angles.ts";

/** One side of a wheel laced evenly. Lengths in millimetres. */
export interface SpokeSide {
  readonly flangeDiameter: number;
  /** From the rim's plane of spoke holes to the flange, along the axle. */
  readonly offset: number;
  readonly rimDiameter: number;
  readonly holeDiameter: number;
  /** Spokes of this side. */
  readonly spokes: number;
  readonly cross: number;
}

export interface SpokeGeometry {
  /** Angle at the axle between a spoke's two ends. */
  readonly lacingAngle: number;
  /** From the hole's middle to the rim. */
  readonly holeToRim: number;
  /** From the hole's outer edge to the rim, which is the length a spoke is cut to. */
  readonly length: number;
  /** Between the spoke and the rim's plane. */
  readonly bracingAngle: number;
  /** Whether the spoke leaves the flange beyond its tangent, over the heads of its neighbours. */
  readonly pastTangent: boolean;
}

/** The spoke as the straight line from hole to rim; the angle between its ends is `cross` whole steps of the lacing. */
export function spokeGeometry(side: SpokeSide): SpokeGeometry {
  const flangeRadius = side.flangeDiameter / 2;
  const rimRadius = side.rimDiameter / 2;
  const lacingAngle = (360 * side.cross) / side.spokes;
  const holeToRim = Math.sqrt(
    side.offset ** 2 + flangeRadius ** 2 + rimRadius ** 2 - 2 * flangeRadius * rimRadius * cosine(lacingAngle),
  );
  return {
    lacingAngle,
    holeToRim,
    length: holeToRim - side.holeDiameter / 2,
    bracingAngle: degrees(Math.asin(Math.min(1, Math.abs(side.offset) / holeToRim))),
    pastTangent: radians(lacingAngle) > Math.acos(Math.min(1, flangeRadius / rimRadius)) + 1e-9,
  };
}
