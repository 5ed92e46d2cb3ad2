/**
 * Which uses a rating takes in besides its own: a part that bears rough ground bears a smoother one. Loads, jumps,
 * banked tracks and children's hands are each a matter of their own, so that nothing is taken in by analogy there.
 * Common practice, no source.
 */
const takesIn: Readonly<Record<string, readonly string[]>> = {
  downhill: ["mountain", "gravel", "cyclo-cross", "road", "touring", "city", "folding", "child"],
  mountain: ["gravel", "cyclo-cross", "road", "touring", "city", "folding", "child"],
  gravel: ["cyclo-cross", "road", "touring", "city", "folding", "child"],
  "cyclo-cross": ["gravel", "road", "city", "folding", "child"],
  touring: ["road", "city", "folding", "child"],
  cargo: ["touring", "city", "folding"],
  road: ["track", "city", "folding", "child"],
  city: ["folding", "child"],
  folding: ["city", "child"],
  bmx: ["child", "city"],
  track: [],
  child: [],
};

/**
 * The rating among these that suffices for a use; `undefined` where none does.
 * @param bearsLoad whether what a cargo bicycle carries loads the part: derailleurs, chains, pedals and saddles bear the
 * rider and no more, whatever stands behind him.
 */
export function sufficientRating(ratings: readonly string[], use: string, bearsLoad: boolean): string | undefined {
  const own = ratings.find((rating) => rating === use) ?? ratings.find((rating) => takesIn[rating]?.includes(use));
  return own ?? (use === "cargo" && !bearsLoad ? sufficientRating(ratings, "city", bearsLoad) : undefined);
}
