/** Degrees in, degrees out: people speak in degrees, the sums run in radians. */
export function radians(degrees: number): number {
  return (degrees * Math.PI) / 180;
}

export function degrees(angle: number): number {
  return (angle * 180) / Math.PI;
}

export function sine(angle: number): number {
  return Math.sin(radians(angle));
}

export function cosine(angle: number): number {
  return Math.cos(radians(angle));
}
