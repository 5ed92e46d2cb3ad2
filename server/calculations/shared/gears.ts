import { teeth } from "../../vocabulary/fields.ts";

/** The two inputs that most calculations of a drivetrain share. */
export const ringsField = teeth("Teeth of every ring in use.");
export const cogsField = teeth("Teeth of every cog.");

/** One gear: a ring with a cog. */
export interface Gear {
  readonly ring: number;
  readonly cog: number;
  /** Turns of the wheel for one turn of the cranks. */
  readonly ratio: number;
  /** `50×17`. */
  readonly name: string;
}

/** Every gear, ring by ring from the smallest, on each ring from the largest cog to the smallest: lowest gear first. */
export function gearsOf(rings: readonly number[], cogs: readonly number[]): readonly Gear[] {
  const fromSmallest = [...rings].sort((a, b) => a - b);
  const fromLargest = [...cogs].sort((a, b) => b - a);
  return fromSmallest.flatMap((ring) =>
    fromLargest.map((cog) => ({ ring, cog, ratio: ring / cog, name: `${ring}×${cog}` })),
  );
}

/** Highest gear over lowest, in per cent. */
export function gearRange(gears: readonly Gear[]): number {
  const ratios = gears.map(({ ratio }) => ratio);
  return (100 * Math.max(...ratios)) / Math.min(...ratios);
}

/** How much higher each gear is than the one before it on the same ring, in per cent; largest cog to smallest. */
export function gearSteps(cogs: readonly number[]): readonly number[] {
  const fromLargest = [...cogs].sort((a, b) => b - a);
  return fromLargest.slice(1).map((cog, index) => 100 * ((fromLargest[index] as number) / cog - 1));
}

/**
 * For each ring and the next larger one: how many gears of the larger ring are no higher than the highest gear of the
 * smaller one, so that both rings serve them.
 */
export function gearOverlaps(rings: readonly number[], cogs: readonly number[]): readonly number[] {
  const fromSmallest = [...rings].sort((a, b) => a - b);
  const smallestCog = Math.min(...cogs);
  return fromSmallest.slice(1).map((ring, index) => {
    const highest = (fromSmallest[index] as number) / smallestCog;
    return cogs.filter((cog) => ring / cog <= highest * (1 + 1e-9)).length;
  });
}
