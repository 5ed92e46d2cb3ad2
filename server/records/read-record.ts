import type { BlockTree, EntryTree, FieldEntry, Span } from "../../grammar/tree.ts";
import type { Assembly } from "../model/assembly.ts";
import type { Declaration, Place } from "../model/declaration.ts";
import type { Finding } from "../model/finding.ts";
import { problemFinding, readEntry, repeated, textFinding, unknownField } from "../model/read-fields.ts";
import type { Statement } from "../model/stated.ts";
import type { Field } from "../vocabulary/define.ts";
import { recordFields } from "../vocabulary/index.ts";
import { isGroup, recordablePaths, recordFieldAt } from "./paths.ts";
import { isDigest } from "./spec-digest.ts";

/** Something that a record says was measured. */
export interface RecordEntry {
  readonly path: string;
  readonly field: Field;
  readonly statement: Statement;
  /** Where the path stands. */
  readonly key: Place;
}

/** A record's own text, read: nothing in it is compared with anything yet. */
export interface RecordText {
  readonly declaration: Declaration;
  /** `date`, `by`, `occasion`, `note`. */
  readonly about: ReadonlyMap<string, Statement>;
  /** The digest of the specification it was built to, as written. */
  readonly spec?: { readonly written: string; readonly place: Place; readonly isDigest: boolean };
  readonly entries: readonly RecordEntry[];
  readonly findings: readonly Finding[];
}

/**
 * Reads what a record says. Never fails: what cannot be read is a finding and counts as not measured.
 * @param assembly the bike it is of, which says which kind of part stands in a slot that takes several.
 */
export function readRecord(declaration: Declaration, assembly: Assembly | undefined): RecordText {
  const reader = new RecordReader(declaration, assembly);
  const { block } = declaration.tree;
  if (block) reader.readBlock(block, "");
  return reader.text();
}

class RecordReader {
  readonly #declaration: Declaration;
  readonly #assembly: Assembly | undefined;
  readonly #findings: Finding[];
  readonly #about = new Map<string, Statement>();
  readonly #entries: RecordEntry[] = [];
  readonly #seen = new Map<string, FieldEntry>();
  #spec: RecordText["spec"];

  constructor(declaration: Declaration, assembly: Assembly | undefined) {
    this.#declaration = declaration;
    this.#assembly = assembly;
    this.#findings = declaration.tree.problems.map((problem) => problemFinding(declaration, problem));
  }

  text(): RecordText {
    return {
      declaration: this.#declaration,
      about: this.#about,
      ...(this.#spec ? { spec: this.#spec } : {}),
      entries: this.#entries,
      findings: this.#findings,
    };
  }

  readBlock(block: BlockTree, prefix: string): void {
    for (const entry of block.entries) this.#readEntry(entry, prefix);
  }

  #readEntry(entry: EntryTree, prefix: string): void {
    if (entry.form === "waive") {
      this.#report(
        entry.span,
        "language/misplaced-waive",
        "A waive stands in a build, not in a record of one.",
        prefix,
      );
      return;
    }
    const path = prefix === "" ? entry.path.text : `${prefix}.${entry.path.text}`;
    if (path === "own" || path === "") return;
    if (entry.form === "group") {
      if (isGroup(path)) this.readBlock(entry.block, path);
      else this.#unknown(entry.path.span, path, prefix, entry.path.text);
      return;
    }
    this.#readField(entry, path, prefix);
    // `drivetrain.chain: corrie.link-12 { links: 116 }`: the part that was fitted, and what was measured on it.
    if (entry.block) this.readBlock(entry.block, path);
  }

  #readField(entry: FieldEntry, path: string, prefix: string): void {
    const own =
      prefix === "" && Object.hasOwn(recordFields, path) ? recordFields[path as keyof typeof recordFields] : undefined;
    const field = own ?? recordFieldAt(path, this.#assembly);
    if (!field) {
      this.#unknown(entry.path.span, path, prefix, entry.path.text);
      return;
    }
    const earlier = this.#seen.get(path);
    if (earlier) {
      this.#findings.push(repeated(this.#declaration, entry, earlier, path));
      return;
    }
    this.#seen.set(path, entry);
    if (path === "spec") this.#readSpec(entry);
    else if (own) this.#about.set(path, readEntry(this.#declaration, entry, own, path, this.#findings));
    else {
      const statement = readEntry(this.#declaration, entry, field, path, this.#findings);
      const key = { declaration: this.#declaration, span: entry.path.span };
      this.#entries.push({ path, field, statement, key });
    }
  }

  /** A digest is a word of digits and letters; quotes round it do no harm. */
  #readSpec({ value }: FieldEntry): void {
    const written = value.tokens.map(({ text }) => text).join(" ");
    if (written === "none") return;
    const place = { declaration: this.#declaration, span: value.span };
    this.#spec = { written, place, isDigest: isDigest(written) };
  }

  #unknown(span: Span, path: string, prefix: string, written: string): void {
    const start = prefix === "" ? "" : `${prefix}.`;
    const known = [...(prefix === "" ? Object.keys(recordFields) : []), ...recordablePaths(this.#assembly)].flatMap(
      (one) => (one.startsWith(start) ? [one.slice(start.length)] : []),
    );
    const owner = prefix === "" ? "a record" : `what a record can hold of ${prefix}`;
    this.#findings.push(unknownField(this.#declaration, span, written, known, owner, path));
  }

  #report(span: Span, code: string, message: string, path: string): void {
    this.#findings.push(textFinding(this.#declaration, span, code, message, { path }));
  }
}

/** The day on which a record was measured, by its text alone; kept with its declaration. */
const days = new WeakMap<Declaration, { readonly day?: string }>();

export function dayOfRecord(declaration: Declaration): string | undefined {
  const kept = days.get(declaration);
  if (kept) return kept.day;
  const entry = declaration.tree.block?.entries.find((one) => one.form === "field" && one.path.text === "date");
  const statement = entry?.form === "field" ? readEntry(declaration, entry, recordFields.date, "date", []) : undefined;
  const day = statement?.state === "stated" ? String(statement.value) : undefined;
  days.set(declaration, day === undefined ? {} : { day });
  return day;
}
