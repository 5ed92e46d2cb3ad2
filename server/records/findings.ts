import type { Place } from "../model/declaration.ts";
import type { Finding, Severity } from "../model/finding.ts";
import type { Missing } from "../model/need.ts";
import type { Comparison } from "./define.ts";
import type { RecordRow } from "./judge.ts";

/**
 * What is to be said of what was measured, where it stands in the record: what fails, what would by today's recipe, and
 * what cannot be compared for want of facts.
 * @param builtTo the digest of the specification, as the record states it.
 */
export function rowFindings(rows: readonly RecordRow[], builtTo: string | undefined): readonly Finding[] {
  return [...rows.flatMap((row) => failure(row, builtTo) ?? []), ...missingFindings(rows)];
}

function failure(row: RecordRow, builtTo: string | undefined): Finding | undefined {
  const { comparison, verdict, outcome } = row;
  if (verdict.outcome !== "fails") return undefined;
  const isOpen = outcome === "unknown";
  const severity = verdict.severity ?? comparison.severity;
  // A failure that is less grave than its check can say that there is nothing to beware of.
  const caution = (verdict.caution ?? comparison.caution) || undefined;
  const { message, at, related, repairs } = verdict;
  return {
    code: comparison.code,
    severity: isOpen ? openSeverity(comparison, severity) : severity,
    message: isOpen ? `By the recipe of today, not the one it was built to (${builtTo}): ${message}` : message,
    place: at.place,
    path: at.path,
    related,
    repairs,
    outcome: isOpen ? "unknown" : "fails",
    ...(caution === undefined ? {} : { caution }),
  };
}

/** An old bike does not fail by a new recipe; but what can hurt somebody stays to be looked at. */
function openSeverity({ safety }: Comparison, severity: Severity): Severity {
  return safety && severity !== "information" ? "warning" : "information";
}

/** What is asked for at one measured value is asked for once, whatever waits for it. */
function missingFindings(rows: readonly RecordRow[]): Finding[] {
  const byPlace = new Map<number, { place: Place; path: string; facts: Map<string, Missing>; codes: Set<string> }>();
  for (const { verdict, measured, comparison } of rows) {
    if (verdict.outcome !== "unknown") continue;
    const { place, path } = measured;
    const group = byPlace.get(place.span.start) ?? { place, path, facts: new Map(), codes: new Set() };
    for (const missing of verdict.missing) {
      // What is written but of no use has a finding of its own where it stands.
      if (!missing.spoilt) group.facts.set(missing.what, missing);
    }
    group.codes.add(comparison.code);
    byPlace.set(place.span.start, group);
  }
  return [...byPlace.values()].flatMap(({ place, path, facts, codes }): Finding[] => {
    if (facts.size === 0) return [];
    const what = [...facts.keys()];
    const wait = codes.size === 1 ? "this cannot be compared" : `these ${codes.size} cannot be compared`;
    return [
      {
        code: "record/missing-fact",
        severity: "information",
        message: `Not stated: ${what.join(", ")}. Without ${what.length === 1 ? "it" : "them"} ${wait}: ${[...codes].join(", ")}.`,
        place,
        path,
        related: [...facts.values()]
          .filter((missing) => missing.place.declaration !== place.declaration)
          .map((missing) => ({ message: `${missing.what} would be stated here`, place: missing.place })),
        repairs: [],
        outcome: "unknown",
      },
    ];
  });
}
