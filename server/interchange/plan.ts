import { split } from "../../grammar/split.ts";
import type { DeclarationEdit } from "../engine/edit-build.ts";
import { addLine, findEntry, writeEntry } from "../engine/edit-build.ts";
import type { Engine } from "../engine/engine.ts";
import { Declaration, declarationKey } from "../model/declaration.ts";
import { readStandard } from "../model/standard.ts";
import type { Statements } from "../model/stated.ts";
import { onOneLine, quote } from "../values/problems.ts";
import { statedValue } from "./cells.ts";
import { draftOf, fieldsOf, ownStatements } from "./declared.ts";
import { type Draft, draftText, type OwnEntry, plainDraftText } from "./draft.ts";
import { areEqual } from "./equal.ts";
import type { ImportPlace, PlacedDraft, Rejected } from "./rows.ts";

/** Something that an existing declaration states otherwise than what comes in. */
export interface Difference {
  /** A fact, `title` or `own.KEY`. */
  readonly what: string;
  /** As it stands in the file; absent where it states nothing. */
  readonly before?: string;
  readonly after: string;
}

/** A declaration that is there already. */
export interface Known {
  readonly name: string;
  readonly at: ImportPlace;
  readonly declaration: Declaration;
  readonly differences: readonly Difference[];
}

/** What an import would do. Nothing is written by planning it. */
export interface ImportPlan {
  /** Names of the declarations that are new. */
  readonly added: readonly string[];
  /** Those that are there and are changed. */
  readonly changed: readonly Known[];
  /** Those that are there, differ, and are left as they are. */
  readonly left: readonly Known[];
  /** How many are there and say the same. */
  readonly same: number;
  /** Rows that say the same as an earlier row. */
  readonly repeated: readonly { readonly name: string; readonly at: ImportPlace; readonly first: ImportPlace }[];
  readonly rejected: readonly Rejected[];
  /** The new declarations, to be put at the end of a file; empty when there are none. */
  readonly addition: string;
  /** New texts of the files in which declarations are changed. */
  readonly texts: ReadonlyMap<string, string>;
}

/** A file that stands for what comes in while it is checked. */
const scratch = "memory:///import.ferrule";

/**
 * Lays what comes in beside what the workshop has.
 * @param engine of the workshop, for this alone: what comes in is put into it to be checked.
 * @param update whether declarations that are there are changed where they differ.
 */
export function planImport(engine: Engine, incoming: readonly PlacedDraft[], update: boolean): ImportPlan {
  const rejected: Rejected[] = [];
  const writable = incoming.filter(({ draft, at }) => {
    const reason = strangeCharacter(draft);
    if (reason !== undefined) rejected.push({ at, reason });
    return reason === undefined;
  });
  const { once, repeated } = eachOnce(writable, rejected);
  const fresh: PlacedDraft[] = [];
  const known: Known[] = [];
  for (const placed of once) {
    const declaration = existing(engine, placed.draft);
    if (!declaration) fresh.push(placed);
    else {
      const compared = compare(engine, declaration, placed);
      if ("reason" in compared) rejected.push(compared);
      else known.push(compared);
    }
  }
  const differing = known.filter(({ differences }) => differences.length > 0);
  const { texts, changed } = update ? changedTexts(engine, differing, rejected) : { texts: new Map(), changed: [] };
  const { accepted, addition } = checkedText(engine, fresh, rejected);
  return {
    added: accepted.map(({ draft }) => draft.name),
    changed,
    left: update ? [] : differing,
    same: known.length - differing.length,
    repeated,
    rejected: rejected.sort((a, b) => a.at.line - b.at.line || a.at.column - b.at.column),
    addition,
    texts,
  };
}

/** Characters that no text file can hold: nought, after which many a program reads no further, and half characters. */
const noText = /[\0\p{Cs}]/u;

/** Why a draft cannot be written into a file that is read back; `undefined` where it can. */
function strangeCharacter(draft: Draft): string | undefined {
  const found = noText.exec(plainDraftText(draft))?.[0];
  if (found === undefined) return undefined;
  const code = found.charCodeAt(0).toString(16).toUpperCase().padStart(4, "0");
  return `it holds the character U+${code}, which no text file can hold`;
}

function keyOf({ keyword, kind, name }: Draft): string {
  return declarationKey(keyword, name, kind);
}

/** `line 12`, or where it stands in a JSON file. */
export function placeName({ line, heading }: ImportPlace): string {
  return line > 0 ? `line ${line}` : heading;
}

/** The workshop's own declaration of a name. A standard of its own may stand beside a built-in one. */
function existing({ workshop }: Engine, draft: Draft): Declaration | undefined {
  const found = workshop.lookup(keyOf(draft));
  return found?.builtIn ? undefined : found;
}

/**
 * Rows that share a name: those that say the same count once; where they differ nobody can tell which is right, and
 * none is taken.
 */
function eachOnce(
  incoming: readonly PlacedDraft[],
  rejected: Rejected[],
): { readonly once: readonly PlacedDraft[]; readonly repeated: ImportPlan["repeated"] } {
  const byName = new Map<string, PlacedDraft[]>();
  for (const placed of incoming) {
    const same = byName.get(keyOf(placed.draft));
    if (same) same.push(placed);
    else byName.set(keyOf(placed.draft), [placed]);
  }
  const once: PlacedDraft[] = [];
  const repeated: { name: string; at: ImportPlace; first: ImportPlace }[] = [];
  for (const group of byName.values()) {
    const [first, ...others] = group;
    if (!first) continue;
    const odd = others.find(({ draft }) => !areAlike(draft, first.draft));
    if (!odd) {
      once.push(first);
      for (const { draft, at } of others) repeated.push({ name: draft.name, at, first: first.at });
      continue;
    }
    for (const placed of group) {
      const elsewhere = placesOf(group.filter((other) => other !== placed));
      const what = firstDifference(first.draft, odd.draft);
      rejected.push({
        at: placed.at,
        reason: `${placed.draft.name} stands in ${elsewhere} as well, with another ${what}; only one of them can be right`,
      });
    }
  }
  return { once, repeated };
}

/** How many of the rows that share a name each of them names: all of all would be their square. */
const mostPlaces = 5;

function placesOf(placed: readonly PlacedDraft[]): string {
  const named = placed.slice(0, mostPlaces).map(({ at }) => placeName(at));
  const more = placed.length - named.length;
  return `${named.join(", ")}${more > 0 ? ` and ${more} more` : ""}`;
}

function areAlike(one: Draft, other: Draft): boolean {
  return areEqual({ ...one, facts: [...one.facts].sort() }, { ...other, facts: [...other.facts].sort() });
}

function firstDifference(one: Draft, other: Draft): string {
  for (const what of ["kind", "title", "from", "documentation"] as const) if (one[what] !== other[what]) return what;
  for (const [fact, written] of one.facts) if (other.facts.get(fact) !== written) return fact;
  for (const fact of other.facts.keys()) if (!one.facts.has(fact)) return fact;
  return "own data";
}

/** What a declaration that is there states, with what it derives from. */
function statements(engine: Engine, declaration: Declaration): Statements {
  return declaration.keyword === "part" ? engine.part(declaration).facts : readStandard(declaration).dimensions;
}

function compare(engine: Engine, declaration: Declaration, placed: PlacedDraft): Known | Rejected {
  const { draft, at: whole, columns } = placed;
  if (declaration.kind !== draft.kind) {
    return {
      at: placed.at,
      reason: `${draft.name} is declared already, as ${declaration.kind ?? "a part of no kind"}, and this is ${draft.kind}`,
    };
  }
  if (draft.from !== undefined && draft.from !== declaration.from) {
    return {
      at: placed.at,
      reason: `${draft.name} is declared already and derives from ${declaration.from ?? "nothing"}, and this from ${draft.from}`,
    };
  }
  const fields = fieldsOf(draft.keyword, draft.kind) ?? {};
  const stated = statements(engine, declaration);
  const differences: Difference[] = [];
  if (draft.title !== undefined && onOneLine(draft.title) !== declaration.title) {
    const before = declaration.title === undefined ? {} : { before: quote(declaration.title) };
    differences.push({ what: "title", ...before, after: quote(draft.title) });
  }
  for (const [fact, after] of draft.facts) {
    const field = fields[fact];
    if (!field) {
      const at = columns?.get(fact) ?? placed.at;
      return { at, reason: `${draft.kind} has no fact ${fact}` };
    }
    const statement = stated.get(fact);
    const value = statedValue(field.type, after);
    const isSame =
      statement?.state === "stated"
        ? areEqual(statement.value, value)
        : statement?.state === "none" && value === "none";
    if (isSame) continue;
    const before = statement?.state === "stated" ? statement.written : statement?.state;
    differences.push({ what: fact, ...(before === undefined ? {} : { before }), after });
  }
  const own = new Map(flat(draftOf(declaration, ownStatements(declaration)).own ?? [], "own"));
  for (const [what, after] of flat(draft.own ?? [], "own")) {
    const before = own.get(what);
    if (before !== after) differences.push({ what, ...(before === undefined ? {} : { before }), after });
  }
  return { name: draft.name, at: whole, declaration, differences };
}

function flat(entries: readonly OwnEntry[], prefix: string): readonly (readonly [string, string])[] {
  return entries.flatMap(({ key, written, entries: inner }) => {
    const path = `${prefix}.${key}`;
    return [...(written === undefined ? [] : [[path, written] as const]), ...flat(inner ?? [], path)];
  });
}

/** Writes the differences into the texts of their files; comments and everything else stay as they are. */
function changedTexts(
  engine: Engine,
  known: readonly Known[],
  rejected: Rejected[],
): { readonly texts: ReadonlyMap<string, string>; readonly changed: readonly Known[] } {
  const changed: Known[] = [];
  const byFile = new Map<string, { readonly start: number; readonly end: number; readonly text: string }[]>();
  for (const one of known) {
    const { declaration, differences } = one;
    const before = ownStatements(declaration).errors.length;
    const text = differences.reduce((sofar, difference) => written(sofar, difference), declaration.text);
    const after = reread(text);
    if (!after || after.key !== declaration.key || ownStatements(after).errors.length > before) {
      const reason = `${one.name} cannot be changed as its declaration stands: ${differences.map(({ what }) => what).join(", ")}`;
      rejected.push({ at: one.at, reason });
      continue;
    }
    changed.push(one);
    const edits = byFile.get(declaration.uri) ?? [];
    edits.push({ start: declaration.start, end: declaration.start + declaration.text.length, text });
    byFile.set(declaration.uri, edits);
  }
  const texts = new Map<string, string>();
  for (const [uri, edits] of byFile) {
    const before = engine.file(uri)?.text ?? "";
    const text = edits
      .sort((a, b) => b.start - a.start)
      .reduce((sofar, edit) => sofar.slice(0, edit.start) + edit.text + sofar.slice(edit.end), before);
    texts.set(uri, text);
  }
  return { texts, changed };
}

/** A declaration's text with one thing in it stated otherwise. */
function written(text: string, { what, after }: Difference): string {
  const declaration = reread(text);
  if (!declaration) return text;
  const edit =
    what === "title"
      ? titleEdit(declaration, after)
      : (ownEdit(declaration, what, after) ?? writeEntry(declaration, what, after));
  return text.slice(0, edit.span.start) + edit.text + text.slice(edit.span.end);
}

/** The first data of the workshop's own in a declaration: it always stands in a block. */
function ownEdit(declaration: Declaration, what: string, after: string): DeclarationEdit | undefined {
  const { block } = declaration.tree;
  if (!what.startsWith("own.") || !block || findEntry(block, "own")) return undefined;
  return addLine(declaration, block, `own { ${what.slice("own.".length)}: ${after} }`);
}

function titleEdit(declaration: Declaration, after: string): DeclarationEdit {
  const { title, name, keywordSpan } = declaration.tree.header;
  if (title) return { declaration, span: title.span, text: after };
  const { end } = name?.span ?? keywordSpan;
  return { declaration, span: { start: end, end }, text: ` ${after}` };
}

function reread(text: string): Declaration | undefined {
  const chunks = split(text);
  const [chunk] = chunks;
  if (chunks.length !== 1 || !chunk?.keyword) return undefined;
  return new Declaration({ ...chunk, keyword: chunk.keyword }, text, scratch, false);
}

/**
 * The text of what is new. Each declaration is checked as it would stand in the workshop, the others beside it; one
 * with an error of its own is not taken, and whatever leaned on it is asked again without it.
 */
function checkedText(
  engine: Engine,
  fresh: readonly PlacedDraft[],
  rejected: Rejected[],
): { readonly accepted: readonly PlacedDraft[]; readonly addition: string } {
  let accepted = fresh.map((placed) => ({ placed, text: draftText(placed.draft) }));
  for (;;) {
    const texts = accepted.map(({ text }) => text ?? "");
    engine.update([{ uri: scratch, text: texts.join("\n") }]);
    const declarations = new Map((engine.file(scratch)?.declarations ?? []).map((one) => [one.key, one]));
    const sound: typeof accepted = [];
    for (const { placed, text } of accepted) {
      const declaration = declarations.get(keyOf(placed.draft));
      const problem = text === undefined || !declaration ? unwritable(placed) : problemOf(engine, declaration, placed);
      if (problem) rejected.push(problem);
      else sound.push({ placed, text });
    }
    if (sound.length === accepted.length) break;
    accepted = sound;
  }
  engine.update([{ uri: scratch, text: undefined }]);
  return {
    accepted: accepted.map(({ placed }) => placed),
    addition: accepted.map(({ text }) => text ?? "").join("\n"),
  };
}

function unwritable(placed: PlacedDraft): Rejected {
  return { at: placed.at, reason: `${placed.draft.name} cannot be written as a declaration` };
}

/** The first error of a declaration as it would stand, with the cell it comes from. */
function problemOf(engine: Engine, declaration: Declaration, placed: PlacedDraft): Rejected | undefined {
  const found = engine.findingsOf(declaration).find(({ severity }) => severity === "error");
  if (found) return { at: placed.columns?.get(found.path) ?? placed.at, reason: found.message };
  for (const fact of placed.draft.facts.keys()) {
    if (!findEntry(declaration.tree.block, fact)) return unwritable(placed);
  }
  return undefined;
}
