import type { Severity } from "../model/finding.ts";
import type { SlotSuggestion, SlotSuggestions, SlotVerdict } from "../suggest/slot.ts";
import type { Money } from "../values/types.ts";

/**
 * What `suggest FILE#BUILD SLOT --format json` writes, described by suggestions.schema.json. A member is added
 * without a new version, never changed or taken away.
 */
export interface JsonSlotSuggestions {
  readonly schemaVersion: 1;
  readonly today: string;
  readonly file: string;
  readonly build: string;
  readonly slot: string;
  /** The part that stands there; absent where nothing is named. */
  readonly current?: string;
  readonly rankedBy: SlotSuggestions["rankedBy"];
  readonly counts: Readonly<Record<SlotVerdict, number>>;
  /** Those that fit first, best first. */
  readonly parts: readonly JsonSuggestedPart[];
  readonly standing: readonly JsonFailure[];
  readonly missing: readonly JsonMissingFact[];
}

interface JsonSuggestedPart {
  readonly name: string;
  readonly kind?: string;
  readonly title?: string;
  readonly verdict: SlotVerdict;
  /** The least room left in any check with a measure, as a share of its limit; 1 when none has one. */
  readonly margin: number;
  readonly tightest?: {
    readonly code: string;
    readonly instance: string;
    readonly margin: number;
    readonly message: string;
  };
  /** In grams; absent when not stated. */
  readonly mass?: number;
  readonly price?: Money;
  readonly failures: readonly (JsonFailure & { readonly severity: Severity; readonly isSetUp: boolean })[];
  /** Codes of checks that cannot be made. */
  readonly unknown: readonly string[];
  /** What is not stated, beyond what is missing whatever stands there. */
  readonly missing: readonly JsonMissingFact[];
}

interface JsonFailure {
  readonly code: string;
  readonly instance: string;
  readonly message: string;
}

interface JsonMissingFact {
  readonly path: string;
  readonly what: string;
}

export function slotSuggestionsJson(
  found: SlotSuggestions,
  { file, build, today, limit }: { file: string; build: string; today: string; limit: number },
): JsonSlotSuggestions {
  const counts: Record<SlotVerdict, number> = { fits: 0, "set-up": 0, "does-not-fit": 0 };
  const parts = found.suggestions.filter(({ verdict }) => counts[verdict]++ < limit);
  return {
    schemaVersion: 1,
    today,
    file,
    build,
    slot: found.slot,
    ...(found.current ? { current: found.current.name } : {}),
    rankedBy: found.rankedBy,
    counts,
    parts: parts.map(jsonPart),
    standing: found.standing.map(({ code, instance, message }) => ({ code, instance, message })),
    missing: found.missingAnyway.map(({ path, what }) => ({ path, what })),
  };
}

function jsonPart({ verdict, candidate, missing }: SlotSuggestion): JsonSuggestedPart {
  const { name, title, kind } = candidate.part.declaration;
  const { tightest, mass, price } = candidate;
  return {
    name,
    ...(kind === undefined ? {} : { kind }),
    ...(title === undefined ? {} : { title }),
    verdict,
    margin: candidate.margin,
    ...(tightest
      ? {
          tightest: {
            code: tightest.code,
            instance: tightest.instance,
            margin: tightest.margin,
            message: tightest.message,
          },
        }
      : {}),
    ...(mass === undefined ? {} : { mass }),
    ...(price === undefined ? {} : { price }),
    failures: candidate.failures.map(({ code, instance, severity, isSetUp, message }) => ({
      code,
      instance,
      severity,
      isSetUp,
      message,
    })),
    unknown: [...new Set(candidate.unknown)],
    missing: missing.map(({ path, what }) => ({ path, what })),
  };
}
