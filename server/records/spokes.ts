import { unevenSpokes } from "../calculations/shared/uneven-spokes.ts";
import { type Wheel, wheels } from "../calculations/shared/wheels.ts";

/** A side of a wheel whose spoke tensions can be measured. */
export interface WheelSide {
  readonly name: string;
  readonly wheel: Wheel;
  readonly side: "drive-side" | "non-drive-side";
  readonly path: string;
}

/** Both sides of both wheels. */
export const wheelSides: readonly WheelSide[] = wheels.flatMap((wheel) =>
  (["drive-side", "non-drive-side"] as const).map((side) => ({
    name: `${wheel} ${side}`,
    wheel,
    side,
    path: `${wheel}.tension.${side}`,
  })),
);

/** "drive side" in a sentence. */
export function sideText(side: WheelSide["side"]): string {
  return side === "drive-side" ? "drive side" : "non-drive side";
}

export function otherSide(side: WheelSide["side"]): WheelSide["side"] {
  return side === "drive-side" ? "non-drive-side" : "drive-side";
}

export function meanOf(tensions: readonly number[]): number {
  return unevenSpokes(tensions, Number.POSITIVE_INFINITY).mean;
}

/** How the places of a list are told to a person. */
export const counted = "counted from the valve hole in the order written";

/** "Spoke 7" or "Spokes 3, 7 and 11". */
export function spokesText(positions: readonly number[]): string {
  if (positions.length === 1) return `Spoke ${positions[0]}`;
  return `Spokes ${positions.slice(0, -1).join(", ")} and ${positions[positions.length - 1]}`;
}
