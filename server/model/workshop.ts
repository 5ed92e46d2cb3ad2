import { parseStray } from "../../grammar/parse.ts";
import { split } from "../../grammar/split.ts";
import type { SyntaxProblem } from "../../grammar/tree.ts";
import { Declaration, declarationKey } from "./declaration.ts";

/** A file's text as it stands, and the declarations in it. */
export interface SourceFile {
  readonly uri: string;
  readonly text: string;
  readonly builtIn: boolean;
  readonly declarations: readonly Declaration[];
  /** Text that belongs to no declaration, with the offset at which it starts. */
  readonly strays: readonly { readonly start: number; readonly text: string }[];
}

/** The largest file that is read, in UTF-16 units. A larger one is reported and its text left alone. */
export const largestFile = 8 * 1024 * 1024;

/**
 * All files under one root and an index of the names declared in them. Pure data: it reads nothing by itself; the
 * host pushes texts in.
 */
export class Workshop {
  readonly #files = new Map<string, SourceFile>();
  readonly #index = new Map<string, Declaration[]>();
  readonly #byKind = new Map<string, Set<Declaration>>();

  /**
   * False until the first scan of the root is complete. Until then a name that is not found is pending, not wrong.
   */
  complete = true;

  get files(): ReadonlyMap<string, SourceFile> {
    return this.#files;
  }

  /**
   * Puts a text in, replaces one, or (with `undefined`) takes a file out.
   * @returns the keys of all names whose meaning may have changed by it.
   */
  update(uri: string, text: string | undefined, builtIn = false): Set<string> {
    const before = this.#files.get(uri);
    const changed = new Set<string>();
    if (before?.text === text) return changed;
    const reusable = new Map<string, Declaration[]>();
    for (const declaration of before?.declarations ?? []) {
      const same = reusable.get(declaration.text);
      if (same) same.push(declaration);
      else reusable.set(declaration.text, [declaration]);
    }
    const declarations: Declaration[] = [];
    const strays: { start: number; text: string }[] = [];
    const added: Declaration[] = [];
    if (text !== undefined && text.length <= largestFile) {
      for (const chunk of split(text)) {
        const own = text.slice(chunk.start, chunk.end);
        if (chunk.keyword === undefined) {
          if (own.trim() !== "") strays.push({ start: chunk.start, text: own });
          continue;
        }
        const kept = reusable.get(own)?.shift();
        if (kept) {
          kept.start = chunk.start;
          declarations.push(kept);
          // The order of two declarations of one name decides which one counts, so a move can matter.
          if ((this.#index.get(kept.key)?.length ?? 0) > 1) changed.add(kept.key);
        } else {
          const fresh = new Declaration({ ...chunk, keyword: chunk.keyword }, own, uri, builtIn);
          declarations.push(fresh);
          added.push(fresh);
        }
      }
    }
    for (const gone of [...reusable.values()].flat()) {
      this.#remove(gone);
      changed.add(gone.key);
    }
    for (const fresh of added) {
      this.#add(fresh);
      changed.add(fresh.key);
    }
    if (text === undefined) this.#files.delete(uri);
    else this.#files.set(uri, { uri, text, builtIn, declarations, strays });
    for (const key of changed) this.#sort(key);
    return changed;
  }

  /** Every declaration of a name; the first is the one that counts. */
  all(key: string): readonly Declaration[] {
    return this.#index.get(key) ?? [];
  }

  lookup(key: string): Declaration | undefined {
    return this.#index.get(key)?.[0];
  }

  part(name: string): Declaration | undefined {
    return this.lookup(declarationKey("part", name));
  }

  build(name: string): Declaration | undefined {
    return this.lookup(declarationKey("build", name));
  }

  /**
   * All declarations with a keyword, in no particular order.
   * @param kind only parts of a kind, standards of a family, or records of a build.
   */
  *declared(keyword: Declaration["keyword"], kind?: string): Iterable<Declaration> {
    if (kind !== undefined) {
      yield* this.#byKind.get(`${keyword} ${kind}`) ?? [];
      return;
    }
    for (const declarations of this.#index.values()) {
      if (declarations[0]?.keyword === keyword) yield* declarations;
    }
  }

  /** Problems of the text outside all declarations of a file, with the offset they count from. */
  strayProblems(file: SourceFile): { readonly start: number; readonly problem: SyntaxProblem }[] {
    return file.strays.flatMap(({ start, text }) => parseStray(text).map((problem) => ({ start, problem })));
  }

  #add(declaration: Declaration): void {
    const same = this.#index.get(declaration.key);
    if (same) same.push(declaration);
    else this.#index.set(declaration.key, [declaration]);
    const kind = kindOf(declaration);
    if (kind !== undefined) {
      const key = `${declaration.keyword} ${kind}`;
      const kin = this.#byKind.get(key);
      if (kin) kin.add(declaration);
      else this.#byKind.set(key, new Set([declaration]));
    }
  }

  #remove(declaration: Declaration): void {
    const rest = this.#index.get(declaration.key)?.filter((other) => other !== declaration) ?? [];
    if (rest.length > 0) this.#index.set(declaration.key, rest);
    else this.#index.delete(declaration.key);
    const kind = kindOf(declaration);
    if (kind !== undefined) this.#byKind.get(`${declaration.keyword} ${kind}`)?.delete(declaration);
  }

  /** A fixed order that does not depend on which file was read first: the shop's own before built-in ones, then by place. */
  #sort(key: string): void {
    const same = this.#index.get(key);
    if (!same || same.length < 2) return;
    same.sort(
      (a, b) =>
        Number(a.builtIn) - Number(b.builtIn) || (a.uri < b.uri ? -1 : a.uri > b.uri ? 1 : 0) || a.start - b.start,
    );
  }
}

/** By what declarations of a keyword are sought out: the kind of a part, the family of a standard, the build of a record. */
function kindOf({ keyword, kind, of }: Declaration): string | undefined {
  return keyword === "record" ? of : kind;
}
