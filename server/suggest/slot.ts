import type { Candidate, StandingFailure } from "../engine/candidates.ts";
import type { Engine } from "../engine/engine.ts";
import { byFitAnd, type RankedBy, rankCandidates } from "../engine/ranking.ts";
import type { Assembly, Installed } from "../model/assembly.ts";
import type { Missing } from "../model/need.ts";
import { workshopCurrency } from "./currency.ts";

/**
 * - `fits`: no check fails as an error with the part there. Open questions are named; silence is not a pass.
 * - `set-up`: it fits once something is set otherwise, such as the length of the chain.
 * - `does-not-fit`: some check fails as an error.
 */
export type SlotVerdict = "fits" | "set-up" | "does-not-fit";

/** A part of the libraries for a slot, judged. */
export interface SlotSuggestion {
  readonly verdict: SlotVerdict;
  readonly candidate: Candidate;
  /**
   * What is not stated of this part, or of the build with it, beyond what is missing whatever stands there; found out
   * when somebody reads it.
   */
  readonly missing: readonly Missing[];
}

/** Every part of the libraries for one slot of a build. */
export interface SlotSuggestions {
  readonly slot: string;
  /** What stands there now. */
  readonly current: Installed | undefined;
  readonly rankedBy: RankedBy;
  /** Those that fit first, best first; then by what speaks against them. */
  readonly suggestions: readonly SlotSuggestion[];
  /** Checks that fail whatever is put there. */
  readonly standing: readonly StandingFailure[];
  /** What is missing whatever is put there. */
  readonly missingAnyway: readonly Missing[];
}

/** Judges and ranks every part of the libraries for a slot. */
export function suggestParts(engine: Engine, assembly: Assembly, slot: string, rankedBy: RankedBy): SlotSuggestions {
  const ranked = rankCandidates(engine, assembly, slot, byFitAnd(rankedBy, workshopCurrency(engine)));
  const standing = new Map<string, StandingFailure>();
  for (const candidate of ranked) {
    for (const one of candidate.standing) standing.set(`${one.code} ${one.instance}`, one);
  }
  const anyway =
    ranked.length > 1
      ? sharedByAll(ranked.map(({ missingElsewhere }) => missingElsewhere))
      : new Map<string, Missing>();
  return {
    slot,
    current: assembly.slots.get(slot),
    rankedBy,
    suggestions: ranked.map((candidate) => ({
      verdict: verdictOf(candidate),
      candidate,
      get missing(): readonly Missing[] {
        return candidate.missing.filter((one) => !anyway.has(keyOf(one)));
      },
    })),
    standing: [...standing.values()],
    missingAnyway: [...anyway.values()],
  };
}

export function verdictOf({ errors, setUps }: Candidate): SlotVerdict {
  if (errors === 0) return "fits";
  return errors === setUps ? "set-up" : "does-not-fit";
}

function sharedByAll(lists: readonly (readonly Missing[])[]): ReadonlyMap<string, Missing> {
  const [first = [], ...others] = lists;
  const shared = new Map(first.map((one) => [keyOf(one), one]));
  for (const list of others) {
    if (shared.size === 0) break;
    const here = new Set(list.map(keyOf));
    for (const key of shared.keys()) if (!here.has(key)) shared.delete(key);
  }
  return shared;
}

function keyOf({ path, what }: Missing): string {
  return `${path} ${what}`;
}
