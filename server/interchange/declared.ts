import type { BlockTree, EntryTree } from "../../grammar/tree.ts";
import type { Declaration } from "../model/declaration.ts";
import type { Finding } from "../model/finding.ts";
import { problemFinding, readFields } from "../model/read-fields.ts";
import type { Statement } from "../model/stated.ts";
import type { Fields } from "../vocabulary/define.ts";
import { commonFields, familyByName, kindByName } from "../vocabulary/index.ts";
import { type Draft, type OwnEntry, slice } from "./draft.ts";

/** What a declaration states itself, without what it derives from. */
export interface OwnStatements {
  /** In the order of the text. */
  readonly facts: ReadonlyMap<string, Statement>;
  /** What is wrong with the text or its values. */
  readonly errors: readonly Finding[];
}

/** The fields that a kind of part or a family of standards has; `undefined` for one that there is not. */
export function fieldsOf(keyword: Draft["keyword"], kind: string): Fields | undefined {
  return keyword === "part" ? kindByName(kind)?.fields : familyByName(kind)?.fields;
}

/** Reads what a part or standard states in its own text. */
export function ownStatements(declaration: Declaration): OwnStatements {
  const { tree, keyword, kind = "" } = declaration;
  const facts = new Map<string, Statement>();
  const findings: Finding[] = tree.problems.map((problem) => problemFinding(declaration, problem));
  const fields = keyword === "part" || keyword === "standard" ? fieldsOf(keyword, kind) : undefined;
  if (tree.block) {
    readFields(tree.block, {
      declaration,
      fields: fields ?? commonFields,
      owner: `${keyword} ${kind}`,
      prefix: "",
      free: ["own"],
      into: facts,
      findings,
    });
  }
  return { facts, errors: findings.filter(({ severity }) => severity === "error") };
}

/**
 * A part or standard as a draft, with every value exactly as it is written. Comments other than `///` are no part of
 * a declaration's meaning and stay behind.
 */
export function draftOf(declaration: Declaration, { facts }: OwnStatements): Draft {
  const { keyword, kind = "", name, title, from, text, tree } = declaration;
  const own = ownEntries(tree.block, text);
  return {
    keyword: keyword === "standard" ? "standard" : "part",
    kind,
    name,
    ...(title === undefined ? {} : { title }),
    ...(from === undefined ? {} : { from }),
    ...(tree.documentation === "" ? {} : { documentation: tree.documentation }),
    facts: new Map([...facts].map(([fact, { place }]) => [fact, slice(text, place.span)])),
    ...(own.length > 0 ? { own } : {}),
  };
}

function ownEntries(block: BlockTree | undefined, text: string): readonly OwnEntry[] {
  return (block?.entries ?? []).flatMap((entry) => {
    if (entry.form === "waive") return [];
    if (entry.path.text === "own") return (entry.block?.entries ?? []).flatMap((inner) => ownEntry(inner, text));
    if (!entry.path.text.startsWith("own.")) return [];
    const inner = ownEntry(entry, text);
    return inner.map((one) => ({ ...one, key: one.key.slice("own.".length) }));
  });
}

function ownEntry(entry: EntryTree, text: string): readonly OwnEntry[] {
  if (entry.form === "waive") return [];
  const key = entry.path.text;
  const entries = entry.block && { entries: entry.block.entries.flatMap((inner) => ownEntry(inner, text)) };
  if (entry.form === "group") return [{ key, ...entries }];
  return [{ key, written: slice(text, entry.value.span), ...entries }];
}
