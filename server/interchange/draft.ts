import { format } from "../../grammar/format.ts";
import type { Span } from "../../grammar/tree.ts";
import { quote } from "../values/problems.ts";

/** What the workshop itself wrote into `own`: nothing of it is known, so it is kept as it is written. */
export interface OwnEntry {
  readonly key: string;
  /** The value as written; absent for a group. */
  readonly written?: string;
  readonly entries?: readonly OwnEntry[];
}

/** A part or a standard as it would be declared. */
export interface Draft {
  readonly keyword: "part" | "standard";
  /** The kind of a part, the family of a standard. */
  readonly kind: string;
  readonly name: string;
  readonly title?: string;
  /** The part it derives from. */
  readonly from?: string;
  /** The `///` lines, without their marks. */
  readonly documentation?: string;
  /** Each fact as it is written in a file, in order. */
  readonly facts: ReadonlyMap<string, string>;
  readonly own?: readonly OwnEntry[];
}

/** What a draft is called in a sentence. */
export function draftLabel({ name }: Pick<Draft, "name">): string {
  return name;
}

/** A name that is one word of the language, such as `corrie.wide-10-52`. */
const nameForm = /^[\p{L}\p{N}_][\p{L}\p{N}._+/&-]*$/u;

/** Whether a text can be the name of a declaration as it stands. */
export function isName(text: string): boolean {
  return nameForm.test(text) && text.length <= 200 && !/\/\//.test(text) && text !== "none" && text !== "or";
}

/**
 * The declaration's text in canonical form, with a line feed at its end; `undefined` where something in it would not
 * be read back as one declaration with these facts.
 */
export function draftText(draft: Draft): string | undefined {
  const { text, refused } = format(plainDraftText(draft));
  return refused ? undefined : text;
}

/** The same, as quickly as it can be put together. */
export function plainDraftText(draft: Draft): string {
  const { keyword, kind, name, title, from, documentation, facts, own } = draft;
  const lines: string[] = [];
  if (documentation) for (const line of documentation.split("\n")) lines.push(`/// ${line}`.trimEnd());
  const header = [keyword, kind, keyword === "standard" && !isName(name) ? quote(name) : name];
  if (title !== undefined) header.push(quote(title));
  if (from !== undefined) header.push("from", from);
  lines.push(`${header.join(" ")} {`);
  for (const [fact, written] of facts) lines.push(`  ${fact}: ${written}`);
  if (own && own.length > 0) lines.push("  own {", ...own.flatMap((entry) => ownLines(entry, "    ")), "  }");
  lines.push("}", "");
  return lines.join("\n");
}

function ownLines({ key, written, entries }: OwnEntry, indent: string): readonly string[] {
  const head = written === undefined ? key : `${key}: ${written}`;
  if (!entries) return [`${indent}${head}`];
  return [`${indent}${head} {`, ...entries.flatMap((entry) => ownLines(entry, `${indent}  `)), `${indent}}`];
}

/**
 * Characters that would end a value or begin something else: none of them may come in from another program, save
 * inside quotes.
 */
const structural = /[{};"\r\n\u2028\u2029]|\/\//;

/** Why a written value cannot be put into a file as it stands; `undefined` where it can. */
export function outOfPlace(written: string): string | undefined {
  const withoutTexts = written.replace(/"(?:[^"\\]|\\["\\]|\\(?!["\\]))*"/g, "");
  const found = structural.exec(withoutTexts)?.[0];
  if (found === undefined) return undefined;
  const shown = /[\r\n\u2028\u2029]/.test(found) ? "a line break" : found;
  return `${shown} has no place in a value`;
}

/** The text of a stretch of a declaration. */
export function slice(text: string, { start, end }: Span): string {
  return text.slice(start, end);
}
