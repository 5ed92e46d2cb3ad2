import type { Engine } from "../../engine/engine.ts";
import { type Declaration, headerPlace, type Place } from "../../model/declaration.ts";
import type { Finding } from "../../model/finding.ts";

/** A finding where an editor shows it: always inside the declaration that it is about. */
export interface ShownFinding {
  readonly declaration: Declaration;
  readonly finding: Finding;
  readonly place: Place;
  /** Stable while the declaration keeps its name: by it a client's copy of a finding is known again. */
  readonly key: string;
}

/** Everything to be said of one declaration. */
export function shownFindingsOf(engine: Engine, declaration: Declaration): ShownFinding[] {
  const seen = new Map<string, number>();
  return engine.findingsOf(declaration).map((finding) => {
    const key = `${declaration.key}#${finding.path} ${finding.code}`;
    const count = seen.get(key) ?? 0;
    seen.set(key, count + 1);
    // What stands elsewhere is a related place; a finding itself always stands in what it is about.
    const place = finding.place.declaration === declaration ? finding.place : headerPlace(declaration);
    return { declaration, finding, place, key: count === 0 ? key : `${key} ${count}` };
  });
}
