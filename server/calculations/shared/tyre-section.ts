/**
 * Section of an inflated tyre: the casing cannot stretch, so it makes an arc of a circle of fixed length between the
 * bead walls. Millimetres and radians.
 */

export interface Section {
  /** Greatest width. */
  readonly width: number;
  /** From the line between the beads to the tread. */
  readonly height: number;
}

/** Length of casing of a tyre that is `width` wide on a rim of this inner width, wider than the rim. */
export function casingLength(width: number, rimWidth: number): number {
  const half = Math.asin(Math.min(1, rimWidth / width));
  return width * (Math.PI - half);
}

/** The section that a casing of this length makes on a rim; `undefined` when it is too short to span the rim. */
export function sectionOf(casing: number, rimWidth: number): Section | undefined {
  if (!(casing > rimWidth)) return undefined;
  // Half the angle that is missing from the full circle. The more is missing, the flatter the arc.
  let open = 0;
  let flat = Math.PI;
  for (let halvings = 0; halvings < 100; halvings++) {
    const missing = (open + flat) / 2;
    const radius = casing / (2 * (Math.PI - missing));
    if (2 * radius * Math.sin(missing) < rimWidth && missing < Math.PI) open = missing;
    else flat = missing;
  }
  const missing = (open + flat) / 2;
  const radius = casing / (2 * (Math.PI - missing));
  return {
    width: missing < Math.PI / 2 ? 2 * radius : rimWidth,
    height: radius * (1 + Math.cos(missing)),
  };
}

/**
 * Width of the flat that the tread makes when the tyre is pressed down by `drop`: the casing keeps its length, runs
 * flat on the ground and in one arc on either side up to the bead.
 */
export function flatWidth(casing: number, rimWidth: number, height: number, drop: number): number {
  const left = height - drop;
  if (!(drop > 0) || !(left > 0)) return 0;
  let narrow = 0;
  let wide = casing;
  for (let halvings = 0; halvings < 100; halvings++) {
    const flat = (narrow + wide) / 2;
    if (pressedCasing(flat, rimWidth, left) < casing) narrow = flat;
    else wide = flat;
  }
  return (narrow + wide) / 2;
}

/** Casing that a section `height` high with a flat of this width takes up. */
function pressedCasing(flat: number, rimWidth: number, height: number): number {
  // Each side is an arc that touches the ground and ends at the bead, `inward` of where it touches.
  const inward = (rimWidth - flat) / 2;
  const radius = (inward ** 2 + height ** 2) / (2 * height);
  const turned = Math.atan2(inward, radius - height);
  return flat + 2 * radius * (turned < 0 ? turned + 2 * Math.PI : turned);
}
