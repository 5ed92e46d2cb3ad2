/**
 * How many half-inch pitches are added to a chain laid round largest ring and largest cog without the derailleur. The
 * derailleur's maker says; the rule below stands in where he does not.
 */
export const derailleurSetUps = {
  cable: "By cable.",
  electronic: "By motor, on a hanger.",
  "direct-mount": "Clamped to the axle without a hanger.",
} as const;

export type DerailleurSetUp = keyof typeof derailleurSetUps;

export interface AllowanceRule {
  readonly pitches: number;
  readonly reason: string;
}

/**
 * Common practice, no source: one outer and one inner link (two pitches); two of each (four pitches) where a single
 * ring on a rigid rear end is shifted by motor.
 */
export function allowanceByPractice(
  ringCount: number,
  sprung: boolean,
  setUp: DerailleurSetUp | undefined,
): AllowanceRule {
  if (ringCount > 1) return { pitches: 2, reason: `${ringCount} rings: one outer and one inner link` };
  if (sprung) return { pitches: 2, reason: "sprung rear end at its longest chain path: one outer and one inner link" };
  if (setUp === "electronic" || setUp === "direct-mount") {
    return { pitches: 4, reason: "single ring, rigid rear end, shifted by motor: two outer and two inner links" };
  }
  return { pitches: 2, reason: "single ring, rigid rear end: one outer and one inner link" };
}
