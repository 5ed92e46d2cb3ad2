import type { RecordRow } from "../records/judge.ts";
import { verdictText } from "./verdict.ts";

/** What came of a comparison, in a sentence; of one with a recipe that has moved on, what it would come to today. */
export function rowText({ outcome, verdict }: RecordRow): string {
  const said = verdictText(verdict);
  return outcome === verdict.outcome ? said : `by the recipe of today, not the one it was built to: ${said}`;
}
