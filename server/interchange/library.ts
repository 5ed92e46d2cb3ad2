import type { Engine } from "../engine/engine.ts";
import type { Declaration } from "../model/declaration.ts";
import type { Statement } from "../model/stated.ts";
import { draftOf, fieldsOf, ownStatements } from "./declared.ts";
import type { Draft } from "./draft.ts";

/** A part or standard that can be handed over to another program. */
export interface LibraryEntry {
  readonly declaration: Declaration;
  readonly draft: Draft;
  readonly facts: ReadonlyMap<string, Statement>;
}

/** One that cannot, and why. */
export interface LeftBehind {
  readonly declaration: Declaration;
  readonly reason: string;
}

export interface Library {
  readonly entries: readonly LibraryEntry[];
  /** Declarations with errors in their text: what cannot be read cannot be handed over whole. */
  readonly leftBehind: readonly LeftBehind[];
}

/** The parts and the workshop's own standards of these files, in their order. */
export function libraryOf(engine: Engine, uris: readonly string[]): Library {
  const entries: LibraryEntry[] = [];
  const leftBehind: LeftBehind[] = [];
  for (const declaration of uris.flatMap((uri) => engine.file(uri)?.declarations ?? [])) {
    const { keyword, kind = "" } = declaration;
    if (keyword !== "part" && keyword !== "standard") continue;
    const own = ownStatements(declaration);
    const [error] = own.errors;
    if (error) leftBehind.push({ declaration, reason: error.message });
    else if (!fieldsOf(keyword, kind)) {
      leftBehind.push({ declaration, reason: `${kind} is no ${keyword === "part" ? "kind of part" : "family"}` });
    } else if (engine.workshop.lookup(declaration.key) !== declaration) {
      leftBehind.push({ declaration, reason: `another ${keyword} has the name ${declaration.name}` });
    } else entries.push({ declaration, draft: draftOf(declaration, own), facts: own.facts });
    if (!declaration.builtIn) declaration.forgetTree();
  }
  return { entries, leftBehind };
}
