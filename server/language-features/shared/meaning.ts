import { entriesAt, type TokenAt, tokenAt } from "../../../grammar/navigation.ts";
import type { DeclarationKeyword, FieldEntry, Span, ValueToken } from "../../../grammar/tree.ts";
import { calculationOfQuantity } from "../../calculations/table.ts";
import type { Declaration } from "../../model/declaration.ts";
import { fieldByName } from "../../model/read-fields.ts";
import { type ResolvedCode, resolveCode } from "../../model/standard.ts";
import type { Workshop } from "../../model/workshop.ts";
import { recordFieldAt } from "../../records/paths.ts";
import type { RuleFunction } from "../../rules/functions.ts";
import type { Local } from "../../rules/rule.ts";
import type { Code } from "../../values/types.ts";
import type { Family, Field, Fields, Kind, Slot } from "../../vocabulary/define.ts";
import {
  assemblyTable,
  buildFields,
  buildGroups,
  buildWords,
  commonFields,
  compositeHalves,
  extrasAssembly,
  familyByName,
  innerBuildGroups,
  kindByName,
  recordFields,
  recordGroups,
  ruleEntries,
  slotByPath,
  workshopFields,
} from "../../vocabulary/index.ts";
import { localOfKey, meaningInRule, meaningOfCheck, meaningOfRuleKey } from "./rule-meaning.ts";

/** A field of the vocabulary as it stands in a declaration. */
export interface FieldPlace {
  /** What it belongs to, for a sentence: "a cassette", "the build", "drivetrain.chain as installed". */
  readonly owner: string;
  /** Its present name, which may differ from the one written. */
  readonly name: string;
  /** Its path in the declaration: `cogs` in a part, `drivetrain.chain.links` in a build. */
  readonly path: string;
  readonly field: Field;
}

/**
 * What a word stands for. Every feature that answers about one place asks this first, so that hover, definition,
 * references and highlights never disagree.
 */
export type Meaning = { readonly span: Span } & (
  | { readonly what: "keyword"; readonly keyword: DeclarationKeyword }
  | { readonly what: "kind"; readonly name: string; readonly kind: Kind | undefined }
  | { readonly what: "family"; readonly name: string; readonly family: Family | undefined }
  /** The name or title of the declaration itself. */
  | { readonly what: "own-name"; readonly declaration: Declaration }
  /** A name of another declaration: a part in a slot, a base after `from`, a build after `of`. */
  | {
      readonly what: "reference";
      readonly keyword: "part" | "build";
      readonly name: string;
      readonly target: Declaration | undefined;
      /** The slot that the part is named for. */
      readonly slot?: string;
    }
  /** A group of a build, such as `drivetrain` or `rider`, or a word that means something by itself. */
  | { readonly what: "group"; readonly name: string; readonly description: string }
  | { readonly what: "slot"; readonly path: string; readonly slot: Slot; readonly isKey: boolean }
  | { readonly what: "field"; readonly at: FieldPlace }
  | { readonly what: "value"; readonly at: FieldPlace; readonly entry: FieldEntry; readonly token: ValueToken }
  | { readonly what: "word"; readonly at: FieldPlace; readonly word: string; readonly description: string }
  | {
      readonly what: "code";
      readonly at: FieldPlace;
      readonly code: Code;
      /** The standard behind it, or behind the half of it that the place is in. */
      readonly resolved: ResolvedCode | undefined;
      /** The whole code that this is a half of. */
      readonly whole?: Code;
    }
  /** A number that is worked out. */
  | { readonly what: "number"; readonly path: string; readonly description: string }
  | { readonly what: "rule-entry"; readonly name: string; readonly description: string }
  /** A check; for a house rule its declaration too, and the span is that of its name. */
  | { readonly what: "check"; readonly code: string; readonly rule?: Declaration }
  /** A name that a rule gives to an expression. */
  | { readonly what: "local"; readonly local: Local }
  | { readonly what: "function"; readonly function: RuleFunction }
);

/** What stands at an offset of a declaration; `undefined` for blanks, comments, marks and words that mean nothing. */
export function meaningAt(workshop: Workshop, declaration: Declaration, offset: number): Meaning | undefined {
  const token = tokenAt(declaration.tree, offset);
  if (!token) return undefined;
  switch (token.role) {
    case "keyword":
      return { what: "keyword", keyword: declaration.tree.header.keyword, span: token.span };
    case "kind":
      return declaration.keyword === "standard"
        ? { what: "family", name: token.text, family: familyByName(token.text), span: token.span }
        : { what: "kind", name: token.text, kind: kindByName(token.text), span: token.span };
    case "name":
    case "title":
      return { what: "own-name", declaration, span: token.span };
    case "from":
      return reference(workshop, declaration.keyword === "part" ? "part" : "build", token.text, token.span);
    case "of":
      return reference(workshop, "build", token.text, token.span);
    case "key":
      return meaningOfKey(workshop, declaration, token, offset);
    case "value":
      return meaningOfValue(workshop, declaration, token, offset);
    case "waive-code":
      return meaningOfCheck(workshop, token);
    case "waive-path":
      return meaningOfBuildPath(pathUpTo(token, ""), token.span);
    case "waive-reason":
    case "waive-until":
      return undefined;
  }
}

function reference(
  workshop: Workshop,
  keyword: "part" | "build",
  name: string,
  span: Span,
  slot?: string,
): Meaning | undefined {
  const target = keyword === "part" ? workshop.part(name) : workshop.build(name);
  return { what: "reference", keyword, name, target, span, ...(slot === undefined ? {} : { slot }) };
}

/** The dotted path from the block down to the segment that a token is. */
function pathUpTo(token: TokenAt, prefix: string): string {
  const own = (token.path?.segments ?? [])
    .slice(0, (token.segment ?? 0) + 1)
    .map(({ text }) => text)
    .join(".");
  return prefix === "" ? own : `${prefix}.${own}`;
}

/** The path of the blocks around the entry that holds an offset. */
function prefixAt(declaration: Declaration, offset: number): string {
  return entriesAt(declaration.tree, offset)
    .slice(0, -1)
    .map((entry) => (entry.form === "waive" ? "" : entry.path.text))
    .join(".");
}

function meaningOfKey(
  workshop: Workshop,
  declaration: Declaration,
  token: TokenAt,
  offset: number,
): Meaning | undefined {
  const prefix = prefixAt(declaration, offset);
  if (isOwnData(prefix)) return undefined;
  if (declaration.keyword === "rule" && prefix === "let") return localOfKey(workshop, declaration, offset);
  const path = pathUpTo(token, prefix);
  return meaningOfPath(declaration, path, token.span);
}

/** True inside a group named `own`: the workshop's data, of which nothing is known. */
function isOwnData(prefix: string): boolean {
  return prefix.split(".").includes("own");
}

/** What a path from the block of a declaration stands for. */
export function meaningOfPath(declaration: Declaration, path: string, span: Span): Meaning | undefined {
  const group = path === "own" ? buildWords.own : undefined;
  if (group !== undefined) return { what: "group", name: path, description: group, span };
  switch (declaration.keyword) {
    case "build":
      return meaningOfBuildPath(path, span);
    case "rule": {
      const entry = Object.hasOwn(ruleEntries, path) ? ruleEntries[path as keyof typeof ruleEntries] : undefined;
      if (!entry) return meaningOfRuleKey(path, span);
      const description = entry.form === "field" ? entry.field.description : entry.description;
      return { what: "rule-entry", name: path, description, span };
    }
    case "record":
      return meaningOfRecordPath(path, span);
    default: {
      const { fields, owner } = plainFields(declaration);
      return fieldMeaning(fields, path, path, owner, span);
    }
  }
}

/** In a record every path holds one measured value, also where a build has a range or works a number out. */
function meaningOfRecordPath(path: string, span: Span): Meaning | undefined {
  const own = fieldMeaning(recordFields, path, path, "a record", span);
  if (own) return own;
  const slot = slotByPath(path);
  if (slot) return { what: "slot", path, slot, isKey: true, span };
  const field = recordFieldAt(path);
  if (field) {
    const name = path.slice(path.lastIndexOf(".") + 1);
    return { what: "field", at: { owner: "the bicycle as built", name, path, field }, span };
  }
  const description = Object.hasOwn(recordGroups, path)
    ? recordGroups[path as keyof typeof recordGroups]
    : groupDescription(path);
  return description === undefined ? undefined : { what: "group", name: path, description, span };
}

/** The fields that a part, a standard or a workshop may state. */
export function plainFields(declaration: Declaration): { readonly fields: Fields; readonly owner: string } {
  const { keyword, kind = "" } = declaration;
  if (keyword === "part") {
    const known = kindByName(kind);
    return { fields: known?.fields ?? commonFields, owner: known?.noun ?? "a part" };
  }
  if (keyword === "standard") {
    const family = familyByName(kind);
    return { fields: family?.fields ?? {}, owner: family ? `a standard of the family ${family.name}` : "a standard" };
  }
  if (keyword === "workshop") return { fields: workshopFields, owner: "a workshop" };
  return { fields: {}, owner: "this" };
}

function fieldMeaning(fields: Fields, name: string, path: string, owner: string, span: Span): Meaning | undefined {
  const row = fieldByName(fields, name);
  return row && { what: "field", at: { owner, name: row.name, path, field: row.field }, span };
}

/** What a path of a build stands for: a group, a slot, a setting, a fact of the part there, or a worked-out number. */
export function meaningOfBuildPath(path: string, span: Span, isKey = true): Meaning | undefined {
  const slot = slotByPath(path);
  if (slot) return { what: "slot", path, slot, isKey, span };
  const own = fieldMeaning(buildFields, path, path, "the build", span);
  if (own) return own;
  const description = groupDescription(path);
  if (description !== undefined) return { what: "group", name: path, description, span };
  const dot = path.lastIndexOf(".");
  const parent = dot < 0 ? undefined : slotByPath(path.slice(0, dot));
  if (parent) {
    const name = path.slice(dot + 1);
    const setting = fieldMeaning(parent.settings, name, path, `${parent.path} as installed`, span);
    if (setting) return setting;
    for (const kindName of parent.kinds) {
      const kind = kindByName(kindName);
      const fact = kind && fieldMeaning(kind.fields, name, path, kind.noun, span);
      if (fact) return fact;
    }
  }
  const quantity = calculationOfQuantity(path);
  const result = quantity?.calculation.results[quantity.result];
  return result && { what: "number", path, description: result.description, span };
}

function groupDescription(name: string): string | undefined {
  for (const table of [assemblyTable, buildGroups, innerBuildGroups, buildWords] as Readonly<
    Record<string, string>
  >[]) {
    if (Object.hasOwn(table, name)) return table[name];
  }
  return name === extrasAssembly ? buildWords.extras : undefined;
}

function meaningOfValue(
  workshop: Workshop,
  declaration: Declaration,
  { token, entry, span }: TokenAt,
  offset: number,
): Meaning | undefined {
  if (!token || entry?.form !== "field" || token.kind === "comma" || token.kind === "bracket") return undefined;
  const prefix = prefixAt(declaration, offset);
  if (isOwnData(prefix)) return undefined;
  const key = prefix === "" ? entry.path.text : `${prefix}.${entry.path.text}`;
  if (declaration.keyword === "build" && key === "remove") return meaningOfBuildPath(token.text, span, false);
  if (declaration.keyword === "rule" && !key.startsWith("set.")) {
    return meaningInRule(workshop, declaration, key, token, offset);
  }
  const of = meaningOfPath(declaration, key, span);
  if (of?.what === "slot") {
    if (token.kind === "word" && (token.text === "none" || token.text === "or")) return undefined;
    return reference(workshop, "part", token.text, span, of.path);
  }
  if (of?.what !== "field") return undefined;
  return meaningInField(workshop, of.at, entry, token, offset);
}

function meaningInField(
  workshop: Workshop,
  at: FieldPlace,
  entry: FieldEntry,
  token: ValueToken,
  offset: number,
): Meaning | undefined {
  const { type } = at.field;
  const { span } = token;
  const isName = token.kind === "word" || token.kind === "text";
  const isPlain = token.kind === "word" && token.text === "none";
  if (isPlain || !isName) return { what: "value", at, entry, token, span };
  switch (type.type) {
    case "word":
    case "words": {
      const description = Object.hasOwn(type.words, token.text) ? type.words[token.text] : undefined;
      return description === undefined ? undefined : { what: "word", at, word: token.text, description, span };
    }
    case "code":
    case "codes":
      return meaningOfCode(workshop, at, type.family, token, offset);
    case "part":
      return reference(workshop, "part", token.text, span);
    case "slot":
      return meaningOfBuildPath(token.text, span, false);
    default:
      return { what: "value", at, entry, token, span };
  }
}

function meaningOfCode(workshop: Workshop, at: FieldPlace, family: string, token: ValueToken, offset: number): Meaning {
  const { text, span } = token;
  // A mate may be of another family, written FAMILY/CODE.
  const slash = text.indexOf("/");
  const other = at.name === "mates" && slash > 0 ? familyByName(text.slice(0, slash)) : undefined;
  const code: Code = other ? { family: other.name, code: text.slice(slash + 1) } : { family, code: text };
  const found = familyByName(code.family);
  const halves = found && compositeHalves(found, code.code);
  const start = span.start + (token.kind === "text" ? 1 : 0);
  const half = halves?.find((one) => one.text && offset >= start + one.start && offset <= start + one.end);
  if (half?.text !== undefined && "family" in half.half) {
    const own = { family: half.half.family, code: half.text };
    return {
      what: "code",
      at,
      code: own,
      whole: code,
      resolved: resolveCode(own, workshop, []),
      span: { start: start + half.start, end: start + half.end },
    };
  }
  return { what: "code", at, code, resolved: resolveCode(code, workshop, []), span };
}
