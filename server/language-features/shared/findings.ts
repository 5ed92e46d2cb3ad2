import type { Range } from "vscode-languageserver-types";
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

/** Everything to be said of a file's declarations, in the order of the text. */
export function shownFindings(engine: Engine, uri: string): ShownFinding[] {
  return (engine.file(uri)?.declarations ?? []).flatMap((declaration) => shownFindingsOf(engine, declaration));
}

/** Everything to be said of one declaration. */
export function shownFindingsOf(engine: Engine, declaration: Declaration): ShownFinding[] {
  const seen = new Map<string, number>();
  return engine.findingsOf(declaration).map((finding) => {
    const key = `${declaration.key}#${finding.path} ${finding.code}`;
    const count = seen.get(key) ?? 0;
    seen.set(key, count + 1);
    const place = shownPlace(engine, declaration, finding);
    return { declaration, finding, place, key: count === 0 ? key : `${key} ${count}` };
  });
}

/**
 * Where a finding is shown. What a part or a base states may stand in another file, and the finding belongs to the
 * build that uses it: it is then shown at the slot in that build, else at the name of the base, else at its own name.
 */
export function shownPlace(engine: Engine, declaration: Declaration, { place, path }: Finding): Place {
  if (place.declaration === declaration) return place;
  const slots = engine.report(declaration)?.assembly.slots;
  for (let at = path; slots && at !== ""; at = at.slice(0, Math.max(0, at.lastIndexOf(".")))) {
    const installed = slots.get(at);
    if (installed?.place.declaration === declaration) return installed.place;
  }
  const from = declaration.tree.header.from;
  return from ? { declaration, span: from.span } : headerPlace(declaration);
}

export function rangeOfFinding(engine: Engine, { place }: ShownFinding): Range {
  return engine.range(place);
}
