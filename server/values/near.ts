import { distance } from "fastest-levenshtein";

/**
 * The candidates that a mistyped word was most likely meant to be, the nearest first; empty when none is near.
 * A word may differ in about a third of its letters, capitals aside, or be the beginning or a whole word of the
 * candidate.
 */
export function nearestSeveral(word: string, candidates: Iterable<string>, limit = 3): string[] {
  const wanted = word.toLowerCase();
  if (wanted === "" || wanted.length > 100) return [];
  const allowed = Math.max(1, Math.floor(wanted.length / 3));
  const found: { candidate: string; score: number }[] = [];
  for (const candidate of candidates) {
    const other = candidate.toLowerCase();
    let score = Number.POSITIVE_INFINITY;
    if (other === wanted) score = 0;
    else if (Math.abs(other.length - wanted.length) <= allowed) score = edits(wanted, other);
    // Who stops half-way means what begins so, before anything that differs here and there.
    if (wanted.length >= 3 && other.startsWith(wanted)) score = Math.min(score, 1);
    else if (score > allowed && isPartOf(wanted, other)) score = allowed;
    if (score <= allowed && score < wanted.length) found.push({ candidate, score });
  }
  found.sort((a, b) => a.score - b.score || (a.candidate < b.candidate ? -1 : a.candidate > b.candidate ? 1 : 0));
  // Beside one that is hardly wrong, those that are far off only distract.
  const best = found[0]?.score ?? 0;
  return found
    .filter(({ score }) => best > 1 || score <= best + 1)
    .slice(0, limit)
    .map((entry) => entry.candidate);
}

/** How many letters differ; two neighbours that changed places are one slip of the fingers. */
function edits(wanted: string, other: string): number {
  const apart = distance(wanted, other);
  return apart === 2 && areSwapped(wanted, other) ? 1 : apart;
}

function areSwapped(wanted: string, other: string): boolean {
  if (wanted.length !== other.length) return false;
  let first = 0;
  while (first < wanted.length && wanted[first] === other[first]) first++;
  return (
    wanted[first] === other[first + 1] &&
    wanted[first + 1] === other[first] &&
    wanted.slice(first + 2) === other.slice(first + 2)
  );
}

function isPartOf(wanted: string, other: string): boolean {
  return wanted.length >= 4 && other.split(/[-.]/).includes(wanted);
}

/** The candidate that a mistyped word was most likely meant to be, when one is near enough. */
export function nearest(word: string, candidates: Iterable<string>): string | undefined {
  return nearestSeveral(word, candidates, 1)[0];
}

/** ` Did you mean a, b or c?`, or nothing: to be put after a message. */
export function didYouMean(near: readonly string[]): string {
  if (near.length === 0) return "";
  const last = near[near.length - 1];
  return ` Did you mean ${near.length === 1 ? last : `${near.slice(0, -1).join(", ")} or ${last}`}?`;
}
