import type { TargetSuggestions } from "../suggest/search.ts";
import type { Solution } from "../suggest/solution.ts";
import type { SetUp } from "../suggest/state.ts";
import type { Measured } from "../suggest/target.ts";

/** What `suggest FILE#BUILD --target ... --format json` writes, described by suggestions.schema.json. */
export interface JsonTargetSuggestions {
  readonly schemaVersion: 1;
  readonly today: string;
  readonly file: string;
  readonly build: string;
  readonly targets: readonly {
    readonly written: string;
    readonly name: string;
    readonly least?: number;
    readonly greatest?: number;
    readonly before: JsonMeasured;
  }[];
  readonly solutions: readonly JsonSolution[];
  /** How many answers of that size were found in all. */
  readonly found: number;
  /** Every set of fewer changes than this is ruled out. */
  readonly proven: number;
  /** True when nothing was left untried that could be better. */
  readonly complete: boolean;
  readonly nearest?: JsonSolution;
}

interface JsonMeasured {
  /** Absent when it is not known. */
  readonly value?: number;
  readonly shown?: string;
  readonly missing?: readonly string[];
}

interface JsonSolution {
  readonly changes: readonly { readonly slot: string; readonly before?: string; readonly after: string }[];
  readonly settings: readonly SetUp[];
  readonly values: readonly JsonMeasured[];
  readonly warnings: readonly { readonly code: string; readonly instance: string; readonly message: string }[];
  readonly openedChecks: number;
  readonly margin: number;
  /** In grams, of the parts that are weighed. */
  readonly mass: number;
  readonly unweighed: number;
}

export function targetSuggestionsJson(
  found: TargetSuggestions,
  where: { readonly file: string; readonly build: string; readonly today: string },
): JsonTargetSuggestions {
  const measured = (value: Measured | undefined, index: number): JsonMeasured => {
    if (value?.state === "known") {
      return { value: value.value, shown: found.targets[index]?.show(value.value) ?? String(value.value) };
    }
    return { missing: value?.state === "unknown" ? value.what : [] };
  };
  const solution = ({
    changes,
    setUps,
    values,
    warnings,
    opened,
    margin,
    mass,
    unweighed,
  }: Solution): JsonSolution => ({
    changes: changes.map(({ slot, before, after }) => ({
      slot,
      ...(before ? { before: before.declaration.name } : {}),
      after: after === "none" ? "none" : after.declaration.name,
    })),
    settings: setUps,
    values: values.map(measured),
    warnings: warnings.map(({ question, verdict }) => ({
      code: question.check.code,
      instance: question.instance.name,
      message: verdict.message,
    })),
    openedChecks: opened,
    margin,
    mass,
    unweighed,
  });
  return {
    schemaVersion: 1,
    today: where.today,
    file: where.file,
    build: where.build,
    targets: found.targets.map(({ written, name, interval }, index) => ({
      written,
      name,
      ...(Number.isFinite(interval.least) ? { least: interval.least } : {}),
      ...(Number.isFinite(interval.greatest) ? { greatest: interval.greatest } : {}),
      before: measured(found.before[index], index),
    })),
    solutions: found.solutions.map(solution),
    found: found.found,
    proven: found.proven,
    complete: found.isComplete,
    ...(found.nearest ? { nearest: solution(found.nearest) } : {}),
  };
}
