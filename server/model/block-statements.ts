import type { BlockTree, FieldEntry } from "../../grammar/tree.ts";
import type { Field, Fields } from "../vocabulary/define.ts";
import type { Declaration } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import { fieldByName, readEntry, readFields } from "./read-fields.ts";
import type { Statement } from "./stated.ts";
import { StatementsOnDemand } from "./statements.ts";

/** What the block of a part or a standard may state. */
export interface BlockReading {
  readonly declaration: Declaration;
  readonly fields: Fields;
  /** What the block belongs to, for messages: "a cassette". */
  readonly owner: string;
}

interface Complete {
  readonly statements: ReadonlyMap<string, Statement>;
  readonly findings: readonly Finding[];
}

/** Entries by the present names of their fields. */
type Entries = ReadonlyMap<string, { readonly entry: FieldEntry; readonly field: Field }>;

/** The group with the shop's own data, which is not looked at. */
const free = ["own"];

/** The block of a declaration, parsed when its first statement is asked for, each value read when it is. */
export class BlockStatements extends StatementsOnDemand {
  readonly #reading: BlockReading;
  readonly #read = new Map<string, Statement>();
  #entries: Entries | undefined;
  /** Let go of once everything is read. */
  #block: BlockTree | undefined;
  #complete: Complete | undefined;

  constructor(reading: BlockReading) {
    super();
    this.#reading = reading;
  }

  override get(name: string): Statement | undefined {
    if (this.#complete) return this.#complete.statements.get(name);
    const kept = this.#read.get(name);
    if (kept) return kept;
    const found = this.#find().get(name);
    if (!found) return undefined;
    const statement = readEntry(this.#reading.declaration, found.entry, found.field, found.entry.path.text, []);
    this.#read.set(name, statement);
    return statement;
  }

  override has(name: string): boolean {
    return this.#complete ? this.#complete.statements.has(name) : this.#find().has(name);
  }

  /** What is wrong with the statements. */
  get findings(): readonly Finding[] {
    return this.#readAll().findings;
  }

  protected override all(): ReadonlyMap<string, Statement> {
    return this.#readAll().statements;
  }

  #readAll(): Complete {
    if (this.#complete) return this.#complete;
    const findings: Finding[] = [];
    const into = new Map<string, Statement>();
    const block = this.#block ?? this.#reading.declaration.readTree().block;
    if (block) readFields(block, { ...this.#reading, prefix: "", free, into, findings });
    this.#block = undefined;
    this.#entries = undefined;
    this.#read.clear();
    this.#complete = { statements: into, findings };
    return this.#complete;
  }

  /** Finds where each field is stated: the first time counts, as in `readFields`. */
  #find(): Entries {
    if (this.#entries) return this.#entries;
    const entries = new Map<string, { entry: FieldEntry; field: Field }>();
    this.#block = this.#reading.declaration.readTree().block;
    for (const entry of this.#block?.entries ?? []) {
      if (entry.form !== "field" || free.includes(entry.path.text)) continue;
      const row = fieldByName(this.#reading.fields, entry.path.text);
      if (row && !entries.has(row.name)) entries.set(row.name, { entry, field: row.field });
    }
    this.#entries = entries;
    return entries;
  }
}
