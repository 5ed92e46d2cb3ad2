import type { ExplainedPath, StatedFact } from "../engine/explain-path.ts";
import type { Place } from "../model/declaration.ts";
import { headerPlace } from "../model/declaration.ts";
import { locate, type ReportedWorkshop } from "./collect.ts";
import { verdictText } from "./verdict.ts";

/** What `explain FILE#BUILD/PATH --format json` writes; positions as in the report of `check`. */
export function explainedPathJson(explained: ExplainedPath, workshop: ReportedWorkshop) {
  const at = (place: Place) => {
    const { path, range } = locate(workshop, place);
    return { file: path, range };
  };
  const facts = (stated: readonly StatedFact[]) =>
    stated.map(({ path, written, subject, place }) => ({ path, written, subject, ...at(place) }));
  switch (explained.form) {
    case "number": {
      const { path, calculation, description, outcome, steps } = explained;
      return {
        path,
        calculation: calculation.name,
        description,
        formula: calculation.formula,
        source: calculation.source,
        state: outcome.state,
        ...(outcome.state === "known" ? { value: outcome.value, unit: outcome.unit } : {}),
        ...(outcome.state === "none" ? { reason: outcome.reason } : {}),
        ...(outcome.state === "unknown"
          ? {
              missing: outcome.missing.map((missing) => ({
                path: missing.path,
                what: missing.what,
                ...at(missing.place),
              })),
            }
          : {}),
        facts: facts(explained.facts),
        working: steps,
      };
    }
    case "value": {
      const { path, description, stated, place } = explained;
      return {
        path,
        description,
        ...(stated ? { written: stated.written, subject: stated.subject } : {}),
        ...at(place),
      };
    }
    case "slot": {
      const { path, description, kinds, installed } = explained;
      const declaration = installed?.part?.declaration;
      return {
        path,
        description,
        kinds,
        ...(installed ? { part: installed.name, ...at(installed.place) } : {}),
        ...(declaration ? { declared: at(headerPlace(declaration)) } : {}),
        settings: facts(explained.settings),
        facts: facts(explained.facts),
      };
    }
    case "check":
      return {
        code: explained.row.check.code,
        outcome: explained.row.outcome,
        instances: explained.row.instances.map(({ instance, verdict }) => ({
          name: instance,
          outcome: verdict.outcome,
          message: verdictText(verdict),
        })),
      };
    case "group":
      return {
        path: explained.path,
        ...(explained.spec === undefined ? {} : { spec: explained.spec }),
        fields: facts(explained.fields),
        slots: explained.slots.map(({ path, name, place }) => ({ path, part: name, ...at(place) })),
        quantities: Object.fromEntries(explained.numbers.map(({ path, shown }) => [path, shown])),
      };
  }
}
