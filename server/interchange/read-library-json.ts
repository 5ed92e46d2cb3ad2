import type { FieldType } from "../values/types.ts";
import { isOneValue, readWritten, statedValue } from "./cells.ts";
import { isRecord } from "./column-map.ts";
import { fieldsOf } from "./declared.ts";
import { type Draft, isName, type OwnEntry } from "./draft.ts";
import { areEqual } from "./equal.ts";
import { libraryVersion, writtenFact } from "./library-json.ts";
import type { ImportPlace, PlacedDraft, ReadRows, Rejected } from "./rows.ts";

/** Why an entry is refused, and where in it. */
class Refusal extends Error {
  readonly where: string;
  constructor(where: string, reason: string) {
    super(reason);
    this.where = where;
  }
}

/**
 * Reads a library that was written as JSON. An entry is taken whole or not at all.
 * @returns a reason instead when the text is no such library.
 */
export function readLibraryJson(text: string): ReadRows | { readonly reason: string } {
  let data: unknown;
  try {
    data = JSON.parse(text);
  } catch (error) {
    return { reason: `it is not JSON: ${error instanceof Error ? error.message : String(error)}` };
  }
  if (!isRecord(data)) return { reason: "it is not a JSON object" };
  if (data.schemaVersion !== libraryVersion) {
    return { reason: `its schemaVersion is ${JSON.stringify(data.schemaVersion)}; ${libraryVersion} is read` };
  }
  const drafts: PlacedDraft[] = [];
  const rejected: Rejected[] = [];
  for (const [list, keyword] of [
    ["standards", "standard"],
    ["parts", "part"],
  ] as const) {
    const entries = data[list] ?? [];
    if (!Array.isArray(entries)) return { reason: `${list} is not a list` };
    for (const [index, entry] of entries.entries()) {
      const where = `${list}[${index}]`;
      try {
        drafts.push(readEntry(entry, keyword, where));
      } catch (error) {
        if (!(error instanceof Refusal)) throw error;
        rejected.push({ at: placeOf(error.where), reason: error.message });
      }
    }
  }
  return { drafts, rejected };
}

function placeOf(heading: string): ImportPlace {
  return { line: 0, column: 0, heading };
}

function readEntry(entry: unknown, keyword: Draft["keyword"], where: string): PlacedDraft {
  if (!isRecord(entry)) throw new Refusal(where, "it is not an object");
  const name = textOf(entry, "name", where);
  const kind = textOf(entry, keyword === "part" ? "kind" : "family", where);
  if (name === undefined) throw new Refusal(where, "it has no name");
  const at = `${where} (${name})`;
  if (kind === undefined) throw new Refusal(at, keyword === "part" ? "it has no kind" : "it has no family");
  const fields = fieldsOf(keyword, kind);
  if (!fields) throw new Refusal(at, `${kind} is no ${keyword === "part" ? "kind of part" : "family of interfaces"}`);
  if (keyword === "part" && !isName(name)) throw new Refusal(at, `${name} cannot be the name of a part`);
  if (/[\r\n]/.test(name)) throw new Refusal(at, "a name stands on one line");
  const from = keyword === "part" ? textOf(entry, "from", at) : undefined;
  if (from !== undefined && !isName(from)) throw new Refusal(at, `${from} cannot be the name of a part`);
  const title = textOf(entry, "title", at);
  const documentation = textOf(entry, "documentation", at);
  const stated = entry.facts ?? {};
  if (!isRecord(stated)) throw new Refusal(at, "facts is not an object");
  const facts = new Map<string, string>();
  const columns = new Map<string, ImportPlace>();
  for (const [fact, given] of Object.entries(stated)) {
    const place = `${at}.facts.${fact}`;
    const field = Object.hasOwn(fields, fact) ? fields[fact] : undefined;
    if (!field) throw new Refusal(place, `${kind} has no fact ${fact}`);
    facts.set(fact, readFact(field.type, given, fact, place));
    columns.set(fact, placeOf(place));
  }
  const own = entry.own === undefined ? [] : readOwn(entry.own, `${at}.own`, 0);
  const draft: Draft = {
    keyword,
    kind,
    name,
    ...(title === undefined ? {} : { title }),
    ...(from === undefined ? {} : { from }),
    ...(documentation === undefined ? {} : { documentation }),
    facts,
    ...(own.length > 0 ? { own } : {}),
  };
  return { draft, at: placeOf(at), columns };
}

function textOf(entry: Readonly<Record<string, unknown>>, member: string, where: string): string | undefined {
  const value = entry[member];
  if (value === undefined) return undefined;
  if (typeof value !== "string") throw new Refusal(where, `${member} is not a text`);
  return value;
}

/** A fact as it is written in a file. What is given in two ways has to agree. */
function readFact(type: FieldType, given: unknown, fact: string, where: string): string {
  const data = typeof given === "string" ? bareText(type, given) : given;
  if (!isRecord(data)) throw new Refusal(where, "it is neither a text nor an object with a value");
  if (data.none === true) return "none";
  const { written } = data;
  if (written !== undefined && typeof written !== "string") throw new Refusal(where, "written is not a text");
  const fromValue = hasValue(data) ? writtenFact(type, data as never) : undefined;
  if (hasValue(data) && fromValue === undefined) {
    throw new Refusal(where, `its value is not of the shape that ${fact} takes; the schema says which that is`);
  }
  if (written === undefined) {
    if (fromValue === undefined) throw new Refusal(where, "it has neither value nor written");
    return sound(type, fromValue, fact, where);
  }
  const asWritten = sound(type, written, fact, where);
  if (fromValue === undefined) return kept(written, asWritten);
  const value = statedValue(type, sound(type, fromValue, fact, where));
  if (!agree(value, statedValue(type, asWritten))) {
    throw new Refusal(where, `its value says ${fromValue}, and it is written as ${written}; leave one of the two out`);
  }
  return kept(written, asWritten);
}

function bareText(type: FieldType, given: string): unknown {
  return type.type === "text" ? { value: given } : { written: given };
}

function hasValue(data: Readonly<Record<string, unknown>>): boolean {
  return data.value !== undefined || data.least !== undefined || data.greatest !== undefined;
}

function sound(type: FieldType, text: string, fact: string, where: string): string {
  const read = readWritten(type, text, fact);
  if ("problem" in read) throw new Refusal(where, read.problem);
  return read.written;
}

/** What an author wrote is kept to the letter, as long as it is one line. */
function kept(written: string, read: string): string {
  return /[\r\n]/.test(written) ? read : written;
}

/** Numbers that went through another unit may differ in their last digit. */
function agree(one: unknown, other: unknown): boolean {
  if (typeof one === "number" && typeof other === "number") {
    return one === other || Math.abs(one - other) <= 1e-9 * Math.max(Math.abs(one), Math.abs(other));
  }
  if (typeof one !== "object" || typeof other !== "object" || one === null || other === null)
    return areEqual(one, other);
  const keys = Object.keys(one);
  return (
    keys.length === Object.keys(other).length &&
    keys.every((key) => Object.hasOwn(other, key) && agree(one[key as never], other[key as never]))
  );
}

/** Blocks of the workshop's own data inside each other; the language reads no deeper ones. */
const deepestOwn = 12;
const keyForm = /^[\p{L}][\p{L}\p{N}_-]*(?:\.[\p{L}\p{N}_-]+)*$/u;

function readOwn(data: unknown, where: string, depth: number): readonly OwnEntry[] {
  if (!Array.isArray(data)) throw new Refusal(where, "it is not a list");
  if (depth > deepestOwn) throw new Refusal(where, `its blocks stand more than ${deepestOwn} deep in each other`);
  return data.map((entry: unknown, index) => {
    const at = `${where}[${index}]`;
    if (!isRecord(entry) || typeof entry.key !== "string") throw new Refusal(at, "it has no key");
    const { key, written, entries } = entry;
    if (!keyForm.test(key)) throw new Refusal(at, `${key} cannot be a key`);
    if (written !== undefined && (typeof written !== "string" || !isOneValue(written))) {
      throw new Refusal(at, `${String(written)} cannot be read as a value`);
    }
    const inner = entries === undefined ? undefined : readOwn(entries, `${at}.entries`, depth + 1);
    if (written === undefined && inner === undefined) throw new Refusal(at, "it has neither written nor entries");
    return { key, ...(written === undefined ? {} : { written }), ...(inner ? { entries: inner } : {}) };
  });
}
