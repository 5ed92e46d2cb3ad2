import type { Span } from "../../../grammar/tree.ts";
import type { Engine } from "../../engine/engine.ts";
import type { Declaration } from "../../model/declaration.ts";
import { readStandard, type Standard } from "../../model/standard.ts";
import { type Meaning, meaningAt } from "./meaning.ts";

/** A place where a declaration is named. */
export interface Use {
  readonly declaration: Declaration;
  readonly span: Span;
  /** True for the name in its own header. */
  readonly isOwn: boolean;
}

/**
 * Every place in the workshop that names a declaration. Texts are searched for the name first and only the hits are
 * looked at in the tree, so that a library of thousands of parts is searched in milliseconds.
 */
export function usesOf(engine: Engine, target: Declaration): Use[] {
  const uses: Use[] = [];
  const seen = new Set<string>();
  for (const spelling of spellings(target)) {
    for (const file of engine.workshop.files.values()) {
      for (let at = file.text.indexOf(spelling); at >= 0; at = file.text.indexOf(spelling, at + 1)) {
        const declaration = engine.declarationAt(file.uri, at);
        if (!declaration) continue;
        const use = useAt(engine, target, declaration, at - declaration.start, spelling.length);
        const key = use && `${declaration.uri} ${declaration.start + use.span.start}`;
        if (!use || key === undefined || seen.has(key)) continue;
        seen.add(key);
        uses.push(use);
      }
    }
  }
  return uses;
}

/** The declaration that a meaning names, as far as one can be named in several places. */
export function namedBy(meaning: Meaning | undefined): Declaration | undefined {
  switch (meaning?.what) {
    case "own-name":
      return meaning.declaration;
    case "reference":
      return meaning.target;
    case "code":
      return meaning.resolved?.standard?.declaration;
    case "check":
      return meaning.rule;
    default:
      return undefined;
  }
}

function spellings(target: Declaration): readonly string[] {
  if (target.name === "") return [];
  if (target.keyword !== "standard") return [target.name];
  const standard: Standard = readStandard(target);
  return [target.name, ...standard.aliases].filter((spelling) => spelling !== "");
}

function useAt(
  engine: Engine,
  target: Declaration,
  declaration: Declaration,
  offset: number,
  length: number,
): Use | undefined {
  // Inside the word, so that a word that begins where another ends is not taken for it.
  const meaning = meaningAt(engine.workshop, declaration, offset + Math.min(1, length - 1));
  if (!meaning || namedBy(meaning) !== target) return undefined;
  const name = declaration.tree.header.name;
  if (meaning.what === "own-name") {
    // A title that quotes the name is no use of it.
    return name && meaning.span.start === name.span.start && offset < name.span.end
      ? { declaration, span: name.span, isOwn: true }
      : undefined;
  }
  return { declaration, span: meaning.span, isOwn: false };
}
