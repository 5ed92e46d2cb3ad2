import type { Maybe, Missing, Unknown } from "../../model/need.ts";

/** What is unknown among these, each missing fact once. */
export function unknowns(...answers: readonly (Maybe | undefined)[]): readonly Unknown[] {
  const missing = new Map<string, Missing>();
  for (const answer of answers) {
    if (answer?.state !== "unknown") continue;
    for (const one of answer.missing) if (!missing.has(one.path)) missing.set(one.path, one);
  }
  return missing.size === 0 ? [] : [{ state: "unknown", missing: [...missing.values()] }];
}
