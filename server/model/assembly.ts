import type { BlockTree, EntryTree, FieldEntry, Span, ValueToken } from "../../grammar/tree.ts";
import { nearest } from "../values/near.ts";
import type { Slot } from "../vocabulary/define.ts";
import { assemblyNames, buildFields, extrasAssembly, kindByName, slotByPath, slotPaths } from "../vocabulary/index.ts";
import { type Declaration, declarationKey, headerPlace, type Place } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import { longestDerivation, type Part } from "./part.ts";
import { fieldByName, problemFinding, readEntry, repeated, textFinding, unknownField } from "./read-fields.ts";
import type { Statement } from "./stated.ts";
import type { Workshop } from "./workshop.ts";

/** What a build has in one slot. */
export interface Installed {
  readonly slot: Slot;
  /**
   * - `part`: a declared part.
   * - `none`: stated to be absent.
   * - `unknown-part`: a name that no declaration has (yet).
   */
  readonly state: "part" | "none" | "unknown-part";
  /** The part's name as written; the word `none` for none. */
  readonly name: string;
  readonly part?: Part;
  /** Where the name stands. */
  readonly place: Place;
  readonly settings: ReadonlyMap<string, Statement>;
  /** Further names after `or`, in order. */
  readonly alternates: readonly { readonly name: string; readonly place: Place; readonly part?: Part }[];
}

export interface Waiver {
  readonly code: string;
  /** The path it is limited to; absent for the whole build. */
  readonly at?: string;
  readonly reason: string;
  /** The last day on which it counts, `2027-03-31`; absent for no end. */
  readonly until?: string;
  readonly place: Place;
}

/** A build with everything it derives from laid together: one concrete bike, the first alternate of each slot. */
export interface Assembly {
  readonly declaration: Declaration;
  /** From the furthest base to the build itself. */
  readonly layers: readonly Declaration[];
  /** Fields of the build itself, such as `category` and `rider.mass`. */
  readonly fields: ReadonlyMap<string, Statement>;
  /** Slots that something was said about. */
  readonly slots: ReadonlyMap<string, Installed>;
  readonly waivers: readonly Waiver[];
  /** The keys looked up, found or not. */
  readonly lookups: readonly string[];
  /** Problems of the build's own text. */
  readonly findings: readonly Finding[];
}

/** What the assembly asks of its surroundings. */
export interface AssemblyContext {
  readonly workshop: Workshop;
  /** Reads a part, with its base; kept by the caller. */
  part(declaration: Declaration): Part;
}

interface Draft {
  readonly slot: Slot;
  readonly owner: Declaration;
  names: { text: string; span: Span }[];
  none: boolean;
  declaration: Declaration;
  span: Span;
  settings: Map<string, Statement>;
}

/** Lays a build and its bases together. Never fails: what cannot be read is a finding and counts as unstated. */
export function assemble(declaration: Declaration, context: AssemblyContext): Assembly {
  const { workshop } = context;
  const lookups: string[] = [];
  const findings: Finding[] = declaration.tree.problems.map((problem) => problemFinding(declaration, problem));
  const layers = derivation(declaration, workshop, lookups, findings);
  const drafts = new Map<string, Draft>();
  const fields = new Map<string, Statement>();
  const waivers: Waiver[] = [];

  for (const layer of layers) {
    const own = layer === declaration;
    const layerFindings: Finding[] = [];
    const reader = new LayerReader(layer, drafts, fields, waivers, layerFindings, layers[0] !== layer);
    if (layer.tree.block) reader.readBlock(layer.tree.block, "");
    if (own) findings.push(...layerFindings);
  }

  const slots = new Map<string, Installed>();
  for (const [path, draft] of drafts) {
    const installed = install(path, draft, context, lookups, draft.declaration === declaration ? findings : []);
    if (installed) slots.set(path, installed);
  }
  return { declaration, layers, fields, slots, waivers, lookups, findings };
}

/** The build's bases, furthest first, then the build; cycles and missing bases are findings. */
function derivation(
  declaration: Declaration,
  workshop: Workshop,
  lookups: string[],
  findings: Finding[],
): readonly Declaration[] {
  const layers = [declaration];
  let current = declaration;
  while (current.from !== undefined) {
    const key = declarationKey("build", current.from);
    lookups.push(key);
    const base = workshop.lookup(key);
    const span = declaration.tree.header.from?.span;
    if (!base) {
      if (current === declaration && span && workshop.complete) {
        findings.push(
          textFinding(declaration, span, "model/unknown-build", `No build is declared with the name ${current.from}.`, {
            repairs: [
              { kind: "near-name", place: { declaration, span }, name: current.from, keyword: "build", kinds: [] },
            ],
          }),
        );
      }
      break;
    }
    if (layers.includes(base) || layers.length >= longestDerivation) {
      if (span && (current === declaration || base === declaration || layers.length >= longestDerivation)) {
        const why = layers.includes(base)
          ? `${declaration.name} derives from itself, by way of ${declaration.from}.`
          : `The chain of builds after from is longer than ${longestDerivation}.`;
        findings.push(textFinding(declaration, span, "model/derivation", why));
      }
      break;
    }
    layers.unshift(base);
    current = base;
  }
  return layers;
}

/** Reads one declaration's block into the drafts that its bases left. */
class LayerReader {
  readonly #declaration: Declaration;
  readonly #drafts: Map<string, Draft>;
  readonly #fields: Map<string, Statement>;
  readonly #waivers: Waiver[];
  readonly #findings: Finding[];
  /** True when a base stands below, so that a block without a part amends what is inherited. */
  readonly #derived: boolean;
  /** Paths that this layer itself has already given. */
  readonly #seen = new Map<string, FieldEntry>();

  constructor(
    declaration: Declaration,
    drafts: Map<string, Draft>,
    fields: Map<string, Statement>,
    waivers: Waiver[],
    findings: Finding[],
    derived: boolean,
  ) {
    this.#declaration = declaration;
    this.#drafts = drafts;
    this.#fields = fields;
    this.#waivers = waivers;
    this.#findings = findings;
    this.#derived = derived;
  }

  readBlock(block: BlockTree, prefix: string): void {
    for (const entry of block.entries) this.#readEntry(entry, prefix);
  }

  #readEntry(entry: EntryTree, prefix: string): void {
    if (entry.form === "waive") {
      if (prefix === "") this.#readWaiver(entry);
      else
        this.#report(entry.span, "language/misplaced-waive", "A waive stands at the first level of a build.", prefix);
      return;
    }
    const path = prefix === "" ? entry.path.text : `${prefix}.${entry.path.text}`;
    if (path === "own") return;
    if (path === "remove" && entry.form === "field") {
      this.#remove(entry);
      return;
    }
    const slot = slotByPath(path);
    if (slot) {
      if (entry.form === "field") this.#fillSlot(entry, path, slot);
      else this.#amendSlot(path, slot, entry.block, entry.path.span);
      return;
    }
    if (entry.form === "group") {
      if (assemblyNames.includes(path) || buildGroups.has(path)) {
        this.readBlock(entry.block, path);
        return;
      }
    } else if (this.#readField(entry, path)) return;
    this.#reportUnknown(entry.path.span, path, prefix, entry.path.text);
  }

  /** A field of the build, or a setting written as a dotted path; false when the path names neither. */
  #readField(entry: FieldEntry, path: string): boolean {
    const row = fieldByName(buildFields, path);
    if (row) {
      if (this.#repeats(entry, row.name)) return true;
      this.#fields.set(row.name, readEntry(this.#declaration, entry, row.field, path, this.#findings));
      return true;
    }
    const dot = path.lastIndexOf(".");
    if (dot < 0) return false;
    const slotPath = path.slice(0, dot);
    const slot = slotByPath(slotPath);
    if (!slot) return false;
    const draft = this.#drafts.get(slotPath);
    if (!draft) {
      this.#report(
        entry.path.span,
        "model/setting-without-part",
        `${slotPath} has no part that could be set; write ${slotPath}: NAME { ... } first.`,
        path,
      );
      return true;
    }
    this.#readSetting(entry, slotPath, slot, path.slice(dot + 1), draft);
    return true;
  }

  #fillSlot(entry: FieldEntry, path: string, slot: Slot): void {
    if (this.#repeats(entry, path)) return;
    const names: { text: string; span: Span }[] = [];
    let none = false;
    for (const tokens of entry.value.alternates) {
      const token = this.#reference(tokens, entry, path);
      if (!token) continue;
      if (token.text === "none" && token.kind === "word") none = true;
      else names.push({ text: token.text, span: token.span });
    }
    if (none && names.length > 0) {
      this.#report(
        entry.value.span,
        "model/none-among-alternates",
        "none cannot stand among alternates: a slot has a part or it has none.",
        path,
      );
      none = false;
    }
    if (names.length === 0 && !none) return;
    // A part given anew brings its own settings: a pressure must not survive a change of tyre.
    const draft: Draft = {
      slot,
      owner: this.#declaration,
      names,
      none,
      declaration: this.#declaration,
      span: entry.value.span,
      settings: new Map(),
    };
    this.#drafts.set(path, draft);
    if (entry.block) this.#readSettings(entry.block, path, slot, draft);
  }

  #reference(tokens: readonly ValueToken[], entry: FieldEntry, path: string): ValueToken | undefined {
    const [token, ...rest] = tokens;
    if (!token) {
      this.#report(entry.value.span, "language/missing-value", `${path} needs the name of a part, or none.`, path);
      return undefined;
    }
    if (token.kind === "text") {
      const place = { declaration: this.#declaration, span: token.span };
      this.#findings.push(
        textFinding(
          this.#declaration,
          token.span,
          "value/quoted-reference",
          `${path} names a part; names are written without quotes.`,
          {
            path,
            repairs: /^[^\s{}()[\];:<>="]+$/.test(token.text)
              ? [
                  {
                    kind: "change-text",
                    title: `Write ${token.text}`,
                    place,
                    changes: [{ span: token.span, text: token.text }],
                  },
                ]
              : [],
          },
        ),
      );
      return token;
    }
    if (rest.length > 0) {
      const last = rest[rest.length - 1] ?? token;
      this.#report(
        { start: (rest[0] ?? token).span.start, end: last.span.end },
        "value/one-name",
        `${path} takes one name. Write alternates with or between them, and settings in a block: ${token.text} { ... }.`,
        path,
      );
    }
    return token;
  }

  #amendSlot(path: string, slot: Slot, block: BlockTree, at: Span): void {
    const draft = this.#drafts.get(path);
    if (!draft) {
      this.#report(
        at,
        "model/setting-without-part",
        this.#derived
          ? `Nothing inherited fills ${path}, so there is nothing to amend; write ${path}: NAME { ... }.`
          : `${path} has settings but no part; write ${path}: NAME { ... }.`,
        path,
      );
      return;
    }
    this.#readSettings(block, path, slot, draft);
  }

  #readSettings(block: BlockTree, path: string, slot: Slot, draft: Draft): void {
    for (const entry of block.entries) {
      if (entry.form === "field") {
        if (entry.path.text !== "own") this.#readSetting(entry, path, slot, entry.path.text, draft);
      } else if (entry.form === "group") {
        if (entry.path.text !== "own") {
          this.#reportUnknown(entry.path.span, `${path}.${entry.path.text}`, path, entry.path.text);
        }
      } else {
        this.#report(entry.span, "language/misplaced-waive", "A waive stands at the first level of a build.", path);
      }
    }
  }

  #readSetting(entry: FieldEntry, slotPath: string, slot: Slot, name: string, draft: Draft): void {
    const path = `${slotPath}.${name}`;
    const row = fieldByName(slot.settings, name);
    if (!row) {
      const ofPart = slot.kinds.find((kind) => Object.hasOwn(kindByName(kind)?.fields ?? {}, name));
      if (ofPart) {
        this.#report(
          entry.path.span,
          "model/fact-in-build",
          `${name} is a fact of the part, not of how it is installed; state it where ${draft.names[0]?.text ?? "the part"} is declared.`,
          path,
        );
      } else this.#reportUnknown(entry.path.span, path, slotPath, name);
      return;
    }
    if (this.#repeats(entry, path)) return;
    draft.settings.set(row.name, readEntry(this.#declaration, entry, row.field, path, this.#findings));
  }

  #remove(entry: FieldEntry): void {
    for (const token of entry.value.tokens) {
      if (token.kind === "comma") continue;
      const path = token.text;
      const dot = path.lastIndexOf(".");
      const slotOfSetting = dot < 0 ? undefined : this.#drafts.get(path.slice(0, dot));
      if (this.#drafts.delete(path) || this.#fields.delete(path)) continue;
      if (slotOfSetting?.settings.delete(path.slice(dot + 1))) continue;
      const near = nearest(path, [...this.#drafts.keys(), ...this.#fields.keys()]);
      this.#report(
        token.span,
        "model/nothing-to-remove",
        `Nothing inherited stands at ${path}${near === undefined ? "" : `; did you mean ${near}?`}`,
        path,
        near === undefined
          ? []
          : [
              {
                kind: "change-text",
                title: `Write ${near}`,
                place: { declaration: this.#declaration, span: token.span },
                changes: [{ span: token.span, text: near }],
              },
            ],
      );
    }
  }

  #readWaiver(entry: Extract<EntryTree, { form: "waive" }>): void {
    // Incomplete waives are syntax problems already; here only a whole one counts.
    if (!entry.code || !entry.reason) return;
    this.#waivers.push({
      code: entry.code.text,
      ...(entry.at ? { at: entry.at.text } : {}),
      reason: entry.reason.text,
      ...(entry.until ? { until: entry.until.text } : {}),
      place: { declaration: this.#declaration, span: entry.span },
    });
  }

  #repeats(entry: FieldEntry, path: string): boolean {
    const earlier = this.#seen.get(path);
    if (earlier) {
      this.#findings.push(repeated(this.#declaration, entry, earlier, path));
      return true;
    }
    this.#seen.set(path, entry);
    return false;
  }

  #reportUnknown(span: Span, path: string, prefix: string, written: string): void {
    const known = knownNames(prefix);
    const owner = prefix === "" ? "a build" : slotByPath(prefix) ? `the settings of ${prefix}` : prefix;
    this.#findings.push(unknownField(this.#declaration, span, written, known, owner, path));
  }

  #report(span: Span, code: string, message: string, path: string, repairs: Finding["repairs"] = []): void {
    this.#findings.push(textFinding(this.#declaration, span, code, message, { path, repairs }));
  }
}

/** Groups of build fields, such as `rider` and `budget`. */
const buildGroups = new Set(
  Object.keys(buildFields)
    .filter((name) => name.includes("."))
    .map((name) => name.slice(0, name.indexOf("."))),
);

/** The names that may stand in a block with this path. */
export function knownNames(prefix: string): string[] {
  const slot = prefix === "" ? undefined : slotByPath(prefix);
  if (slot) return Object.keys(slot.settings);
  const names = new Set<string>();
  const start = prefix === "" ? "" : `${prefix}.`;
  for (const path of [...slotPaths, ...Object.keys(buildFields)]) {
    if (path.startsWith(start)) names.add(path.slice(start.length).split(".")[0] ?? "");
  }
  if (prefix === "") names.add(extrasAssembly).add("remove");
  return [...names];
}

function install(
  path: string,
  draft: Draft,
  context: AssemblyContext,
  lookups: string[],
  findings: Finding[],
): Installed | undefined {
  const { declaration, slot } = draft;
  const place: Place = { declaration, span: draft.names[0]?.span ?? draft.span };
  if (draft.none) {
    return { slot, state: "none", name: "none", place, settings: draft.settings, alternates: [] };
  }
  const resolved = draft.names.map(({ text, span }) => {
    const at = { declaration, span };
    const key = declarationKey("part", text);
    lookups.push(key);
    const found = context.workshop.lookup(key);
    if (!found) {
      if (context.workshop.complete) {
        findings.push(
          textFinding(declaration, span, "model/unknown-part", `No part is declared with the name ${text}.`, {
            path,
            repairs: [
              { kind: "near-name", place: at, name: text, keyword: "part", kinds: slot.kinds },
              { kind: "swap-part", slot: path },
            ],
          }),
        );
      }
      return { name: text, place: at };
    }
    const part = context.part(found);
    lookups.push(...part.lookups);
    if (part.kind && slot.kinds.length > 0 && !slot.kinds.includes(part.kind.name)) {
      const wanted = slot.kinds.map((kind) => kindByName(kind)?.noun ?? kind);
      findings.push(
        textFinding(
          declaration,
          span,
          "model/wrong-kind",
          `${path} takes ${list(wanted)}; ${text} is ${part.kind.noun}.`,
          {
            path,
            related: [{ message: `${text} is declared here`, place: headerPlace(found) }],
            repairs: [{ kind: "swap-part", slot: path }],
          },
        ),
      );
      return { name: text, place: at };
    }
    return { name: text, place: at, part };
  });
  const [first, ...alternates] = resolved;
  if (!first) return undefined;
  return {
    slot,
    state: first.part ? "part" : "unknown-part",
    name: first.name,
    ...(first.part ? { part: first.part } : {}),
    place,
    settings: draft.settings,
    alternates,
  };
}

function list(words: readonly string[]): string {
  return words.length < 2 ? (words[0] ?? "a part") : `${words.slice(0, -1).join(", ")} or ${words[words.length - 1]}`;
}
