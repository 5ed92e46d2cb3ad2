/** A spoke that does not go with the others of its side. */
export interface UnevenSpoke {
  /** Its place in the list, the first one 1. */
  readonly position: number;
  readonly tension: number;
}

export interface SideTensions {
  /** Of all spokes. */
  readonly mean: number;
  /** Spokes further from the mean of the even ones than the tolerance, in their order. */
  readonly uneven: readonly UnevenSpoke[];
  /** Mean of the even ones. */
  readonly evenMean: number;
}

/**
 * Finds the spokes of a side that stand apart. One bad spoke draws the mean of all toward itself and may hide in it, or
 * make good ones look bad where few were measured; so each spoke is held against what the others average, and the one
 * that is furthest off is set aside first.
 * @param tensions more than none, each above zero.
 * @param tolerance as a share, 0.2 for 20 %.
 */
export function unevenSpokes(tensions: readonly number[], tolerance: number): SideTensions {
  const even = tensions.map((tension, index): UnevenSpoke => ({ position: index + 1, tension }));
  const uneven: UnevenSpoke[] = [];
  while (even.length > 1) {
    const sum = total(even);
    let worst = -1;
    let furthest = 0;
    even.forEach(({ tension }, index) => {
      const others = (sum - tension) / (even.length - 1);
      // As a ratio, so that half as tight is as far off as twice as tight.
      const apart = Math.abs(Math.log(tension / others));
      const isOut = Math.abs(tension - others) > others * tolerance * (1 + 1e-9);
      if (isOut && apart > furthest) [worst, furthest] = [index, apart];
    });
    if (worst < 0) break;
    uneven.push(...even.splice(worst, 1));
  }
  const all = [...even, ...uneven];
  return {
    mean: total(all) / all.length,
    uneven: uneven.sort((one, other) => one.position - other.position),
    evenMean: total(even) / even.length,
  };
}

function total(spokes: readonly UnevenSpoke[]): number {
  return spokes.reduce((sum, { tension }) => sum + tension, 0);
}
