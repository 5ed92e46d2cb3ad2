import type { Assembly, Installed } from "../model/assembly.ts";
import type { Part } from "../model/part.ts";
import type { Statement, Statements } from "../model/stated.ts";
import type { AnyValue, FieldType } from "../values/types.ts";
import type { Field, Fields } from "../vocabulary/define.ts";
import { buildFields } from "../vocabulary/index.ts";
import { fnv1a64 } from "./hash.ts";

/**
 * A digest of the specification that a build comes to: of every value that the build, its bases and its parts state.
 * The same values give the same digest however they are laid out, in whatever order and units they are written, and
 * wherever in a chain of bases they stand; another value gives another one.
 *
 * What is no value of the bicycle is not in it: comments, titles, the build's own name, the workshop's own data under `own`, and waivers.
 */
export function specDigest(assembly: Assembly): string {
  const kept = digests.get(assembly);
  if (kept !== undefined) return kept;
  const digest = digestOf(specText(assembly));
  digests.set(assembly, digest);
  return digest;
}

const digests = new WeakMap<Assembly, string>();

/** The fewest digits by which a digest may be named. */
export const fewestDigits = 6;
const digits = 12;

/** Whether a text can be the digest of a specification at all. */
export function isDigest(text: string): boolean {
  return new RegExp(`^[0-9a-f]{${fewestDigits},16}$`, "i").test(text);
}

/** Whether a digest as written, in full or its beginning, is this one. */
export function isSameDigest(written: string, digest: string): boolean {
  return written.length >= fewestDigits && digest.startsWith(written.toLowerCase());
}

function digestOf(text: string): string {
  const hash = fnv1a64(text).slice(0, digits);
  // It begins with a letter, so that nobody and nothing takes it for a number.
  return hash.replace(/^\d/, (digit) => "abcdef".charAt(Number(digit) % 6));
}

/** Everything stated, one value on a line, sorted. */
export function specText({ fields, slots }: Assembly): string {
  const lines = statements("build", fields, buildFields);
  for (const [path, installed] of slots) lines.push(...slotLines(path, installed));
  return lines.sort().join("\n");
}

function slotLines(path: string, { state, name, part, settings, slot, alternates }: Installed): string[] {
  const names = [name, ...alternates.map((alternate) => alternate.name)];
  const lines = [
    `slot ${path} = ${state} ${JSON.stringify(names)}`,
    ...statements(`slot ${path}`, settings, slot.settings),
  ];
  for (const fitted of [part, ...alternates.map((alternate) => alternate.part)]) {
    if (fitted) lines.push(...partLines(path, fitted));
  }
  return lines;
}

function partLines(path: string, { declaration, kind, facts }: Part): string[] {
  const owner = `part ${path} ${declaration.name}`;
  return [`${owner} is ${declaration.kind ?? ""}`, ...statements(owner, facts, kind?.fields ?? {})];
}

function statements(owner: string, stated: Statements, fields: Fields): string[] {
  return [...stated].map(
    ([name, statement]) =>
      `${owner} ${name} = ${canonicalStatement(statement, Object.hasOwn(fields, name) ? fields[name] : undefined)}`,
  );
}

function canonicalStatement(statement: Statement, field: Field | undefined): string {
  if (statement.state === "none") return "none";
  if (statement.state === "stated") return canonical(statement.value, field?.type);
  const { declaration, span } = statement.place;
  return `? ${declaration.text.slice(span.start, span.end).replace(/\s+/g, " ").trim()}`;
}

/** Digits to which numbers count: an inch and 25.4 mm are the same length, whatever conversion leaves behind. */
const significantDigits = 12;

/** Sets of words and codes have no order; lists of teeth, lengths and tensions do. */
const withoutOrder: ReadonlySet<FieldType["type"] | undefined> = new Set(["words", "codes"]);

function canonical(value: AnyValue, type: FieldType | undefined): string {
  if (typeof value === "number") return numberText(value);
  if (typeof value !== "object") return JSON.stringify(value);
  if (Array.isArray(value)) {
    const items = value.map((item: AnyValue) => canonical(item, undefined));
    return `[${(withoutOrder.has(type?.type) ? items.sort() : items).join(", ")}]`;
  }
  const members = Object.entries(value).sort(([one], [other]) => (one < other ? -1 : 1));
  return `{${members.map(([name, member]) => `${name}: ${canonical(member as AnyValue, undefined)}`).join(", ")}}`;
}

function numberText(value: number): string {
  return Number.isFinite(value) ? String(Number(value.toPrecision(significantDigits))) : String(value);
}
