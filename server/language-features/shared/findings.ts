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
    const about = `${declaration.key}#${finding.path} ${finding.code}`;
    const count = seen.get(about) ?? 0;
    seen.set(about, count + 1);
    // What stands elsewhere is a related place; a finding itself always stands in what it is about.
    const place = finding.place.declaration === declaration ? finding.place : headerPlace(declaration);
    return { declaration, finding, place, key: shortKey(count === 0 ? about : `${about} ${count}`) };
  });
}

/** A text as a few letters: findings are many, and each carries its key to the client with every keystroke. */
function shortKey(text: string): string {
  // Fowler, Noll and Vo's hash, twice with different beginnings: 64 bits in all.
  let one = 0x811c9dc5;
  let other = 0x9747b28c;
  for (let index = 0; index < text.length; index++) {
    const unit = text.charCodeAt(index);
    one = Math.imul(one ^ unit, 0x01000193);
    other = Math.imul(other ^ unit, 0x01000193);
  }
  return (one >>> 0).toString(36) + (other >>> 0).toString(36);
}
