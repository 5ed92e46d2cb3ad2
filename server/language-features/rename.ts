import type { Position, Range, TextEdit } from "vscode-languageserver-types";
import type { Engine } from "../engine/engine.ts";
import { type Declaration, declarationKey } from "../model/declaration.ts";
import { localNameProblem } from "../rules/local-name.ts";
import type { Local } from "../rules/rule.ts";
import { isBareWord } from "../values/code.ts";
import { localOf, localUses } from "./shared/local-uses.ts";
import { meaningAt } from "./shared/meaning.ts";
import { locate, rangeOf } from "./shared/place.ts";
import { namedBy, usesOf } from "./shared/uses.ts";

/** A name that can be changed, or why it cannot, for a person. */
export type RenameTarget =
  | { readonly state: "ready"; readonly range: Range; readonly placeholder: string }
  | { readonly state: "refused"; readonly reason: string };

/** What a rename at a position would change; `undefined` where no name stands. Needs the resolved model. */
export function prepareRename(engine: Engine, uri: string, position: Position): RenameTarget | undefined {
  const local = localAt(engine, uri, position);
  if (local) return { state: "ready", range: local.range, placeholder: local.local.name };
  const found = targetAt(engine, uri, position);
  if (!found) return undefined;
  if (found.target.builtIn) {
    const reason = `${found.target.name} is a standard that comes with Ferrule; its name cannot be changed.`;
    return { state: "refused", reason };
  }
  return { state: "ready", range: found.range, placeholder: found.target.name };
}

/** What came of a rename. */
export type Renamed =
  | { readonly state: "ready"; readonly edits: ReadonlyMap<string, TextEdit[]> }
  | { readonly state: "refused"; readonly reason: string };

/** The edits of a rename by file, or why there are none. */
export function rename(engine: Engine, uri: string, position: Position, newName: string): Renamed {
  const local = localAt(engine, uri, position);
  if (local) return renamedLocal(engine, uri, local, newName);
  const found = targetAt(engine, uri, position);
  if (!found) {
    return { state: "refused", reason: "Only a part, a build, a standard or a rule can be given another name." };
  }
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
  if (target.keyword === "rule") return workshop.lookup(declarationKey("rule", newName)) !== undefined;
  if (target.keyword !== "standard") return false;
  return [...workshop.declared("standard", target.kind)].some(({ name }) => name === newName);
}

/** A name that a rule gives to an expression of its own. */
interface LocalAt {
  readonly rule: Declaration;
  readonly local: Local;
  readonly range: Range;
}

function localAt(engine: Engine, uri: string, position: Position): LocalAt | undefined {
  const located = locate(engine, uri, position);
  const meaning = located && meaningAt(engine.workshop, located.declaration, located.offset);
  const local = localOf(meaning);
  if (!located || !meaning || !local) return undefined;
  return { rule: located.declaration, local, range: rangeOf(engine, located.declaration, meaning.span) };
}

function renamedLocal(engine: Engine, uri: string, { rule, local }: LocalAt, newName: string): Renamed {
  const isTaken = newName !== local.name && engine.rule(rule).locals.has(newName);
  const problem = isTaken ? `${newName} means something already; choose another name.` : localNameProblem(newName);
  if (problem !== undefined) return { state: "refused", reason: problem };
  const edits = localUses(engine.workshop, rule, local).map((span) => ({
    range: rangeOf(engine, rule, span),
    newText: newName,
  }));
  return { state: "ready", edits: new Map([[uri, edits]]) };
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
