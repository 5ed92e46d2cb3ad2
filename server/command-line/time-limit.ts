import { UsageProblem } from "./problem.ts";

/** Longest time that a search is given, in seconds. */
const longest = 86_400;

/**
 * Says whether there is still time, from now on.
 * @param written seconds as given on the command line.
 * @throws UsageProblem when they are no number above nought.
 */
export function timeLimit(written: string | undefined, usual: number): () => boolean {
  const seconds = written === undefined ? usual : Number(written);
  const isNumber = written === undefined || /^\d+(?:\.\d+)?$/.test(written);
  if (!isNumber || !(seconds > 0) || seconds > longest) {
    throw new UsageProblem(`--seconds takes a number above 0, at most ${longest}; ${written} was given.`);
  }
  const end = performance.now() + seconds * 1000;
  return () => performance.now() < end;
}
