import type { Position, Range, TextEdit } from "vscode-languageserver-types";
import type { Engine } from "../engine/engine.ts";
import type { Declaration } from "../model/declaration.ts";
import { isBareWord } from "../values/code.ts";
import { meaningAt } from "./shared/meaning.ts";
import { locate, rangeOf } from "./shared/place.ts";
import { namedBy, usesOf } from "./shared/uses.ts";

/** A name that can be changed, or why it cannot, for a person. */
export type RenameTarget =
  | { readonly state: "ready"; readonly range: Range; readonly placeholder: string }
  | { readonly state: "refused"; readonly reason: string };

/** What a rename at a position would change; `undefined` where no name stands. Needs the resolved model. */
export function prepareRename(engine: Engine, uri: string, position: Position): RenameTarget | undefined {
  const found = targetAt(engine, uri, position);
  if (!found) return undefined;
  if (found.target.builtIn) {
    const reason = `${found.target.name} is a standard that comes with Ferrule; its name cannot be changed.`;
    return { state: "refused", reason };
  }
  return { state: "ready", range: found.range, placeholder: found.target.name };
}

/** The edits of a rename by file, or why there are none. */
export function rename(
  engine: Engine,
  uri: string,
  position: Position,
  newName: string,
):
  | { readonly state: "ready"; readonly edits: ReadonlyMap<string, TextEdit[]> }
  | { readonly state: "refused"; readonly reason: string } {
  const found = targetAt(engine, uri, position);
  if (!found) return { state: "refused", reason: "Only a part, a build or a standard can be given another name." };
  const { target } = found;
  if (target.builtIn) return { state: "refused", reason: `${target.name} comes with Ferrule.` };
  if (!isBareWord(newName)) {
    return { state: "refused", reason: `${newName} cannot be a name: write one word, such as corrie.wide-10-52.` };
  }
  const taken = nameTaken(engine, target, newName);
  if (taken) return { state: "refused", reason: `A ${target.keyword} is already called ${newName}.` };
  const edits = new Map<string, TextEdit[]>();
  for (const { declaration, span } of usesOf(engine, target)) {
    // A use by an alias keeps the alias.
    if (declaration.text.slice(span.start, span.end) !== target.name) continue;
    const edit = { range: rangeOf(engine, declaration, span), newText: newName };
    const list = edits.get(declaration.uri);
    if (list) list.push(edit);
    else edits.set(declaration.uri, [edit]);
  }
  return { state: "ready", edits };
}

function nameTaken(engine: Engine, target: Declaration, newName: string): boolean {
  if (newName === target.name) return false;
  const { workshop } = engine;
  if (target.keyword === "part") return workshop.part(newName) !== undefined;
  if (target.keyword === "build") return workshop.build(newName) !== undefined;
  if (target.keyword !== "standard") return false;
  return [...workshop.declared("standard", target.kind)].some(({ name }) => name === newName);
}

function targetAt(
  engine: Engine,
  uri: string,
  position: Position,
): { readonly target: Declaration; readonly range: Range } | undefined {
  const located = locate(engine, uri, position);
  const meaning = located && meaningAt(engine.workshop, located.declaration, located.offset);
  const target = namedBy(meaning);
  if (!located || !meaning || !target || target.keyword === "workshop" || target.keyword === "record") return undefined;
  // In quotes it is a title, which only looks like a name.
  if (located.declaration.text[meaning.span.start] === '"') return undefined;
  return { target, range: rangeOf(engine, located.declaration, meaning.span) };
}
