import type { Need } from "../model/need.ts";
import type { Comparison } from "../records/define.ts";
import { measurementAt } from "../vocabulary/index.ts";
import { type CheckExplanation, describeNeed, type NeededFact } from "./explain-check.ts";

/** Everything that there is to know about a comparison of records, in the form of a check's explanation. */
export function explainComparison(comparison: Comparison): CheckExplanation {
  const { code, title, severity, explanation, source, caution, instances, examples } = comparison;
  const needs = new Map<string, NeededFact>();
  for (const instance of instances) {
    for (const path of [instance.path, ...(instance.beside === undefined ? [] : [instance.beside])]) {
      const description = `${measurementAt(path)?.description ?? ""} Measured.`.trim();
      needs.set(path, { path, description, optional: path === instance.beside });
    }
    for (const need of Object.values(comparison.needs(instance)) as Need[]) {
      const needed = describeNeed(need);
      if (!needs.has(needed.path)) needs.set(needed.path, needed);
    }
  }
  return {
    code,
    title,
    severity,
    explanation,
    needs: [...needs.values()],
    instances: instances.length > 1 ? instances.map(({ path }) => path) : [],
    source,
    ...(caution === undefined ? {} : { caution }),
    examples,
  };
}
