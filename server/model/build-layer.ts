import type { BlockTree, EntryTree, FieldEntry, Span, ValueToken } from "../../grammar/tree.ts";
import { didYouMean, nearest } from "../values/near.ts";
import type { Slot } from "../vocabulary/define.ts";
import { assemblyNames, buildFields, extrasAssembly, kindByName, slotByPath, slotPaths } from "../vocabulary/index.ts";
import type { Waiver } from "./assembly.ts";
import type { Declaration } from "./declaration.ts";
import type { Finding } from "./finding.ts";
import { fieldByName, readEntry, repeated, textFinding, unknownField } from "./read-fields.ts";
import type { Statement } from "./stated.ts";

/** A slot as the declarations read so far leave it: names written, but no part looked up yet. */
export interface SlotDraft {
  readonly slot: Slot;
  readonly owner: Declaration;
  names: { text: string; span: Span }[];
  none: boolean;
  declaration: Declaration;
  span: Span;
  settings: Map<string, Statement>;
}

/** An entry with the path of the group that it stands in. */
interface PlacedEntry {
  readonly entry: EntryTree;
  readonly at: string;
}

function pathOf(entry: Exclude<EntryTree, { form: "waive" }>, at: string): string {
  return at === "" ? entry.path.text : `${at}.${entry.path.text}`;
}

function isGroup(path: string): boolean {
  return assemblyNames.includes(path) || buildGroups.has(path);
}

/** Every entry of a block and of the groups in it, in their order; a group itself before what stands in it. */
function entriesOf(block: BlockTree, at: string): readonly PlacedEntry[] {
  return block.entries.flatMap((entry): readonly PlacedEntry[] => {
    if (entry.form !== "group") return [{ entry, at }];
    const path = pathOf(entry, at);
    return isGroup(path) ? [{ entry, at }, ...entriesOf(entry.block, path)] : [{ entry, at }];
  });
}

function isRemoval(entry: EntryTree, at: string): boolean {
  return entry.form === "field" && pathOf(entry, at) === "remove";
}

/** `stem: moor.stub-35`, with or without a block. */
function isPart(entry: EntryTree, at: string): boolean {
  return entry.form === "field" && slotByPath(pathOf(entry, at)) !== undefined;
}

function isRest(entry: EntryTree, at: string): boolean {
  return !isRemoval(entry, at) && !isPart(entry, at);
}

/** Reads one declaration's block into the drafts that its bases left. */
export class LayerReader {
  readonly #declaration: Declaration;
  readonly #drafts: Map<string, SlotDraft>;
  readonly #fields: Map<string, Statement>;
  readonly #waivers: Waiver[];
  readonly #findings: Finding[];
  /** True when a base stands below, so that a block without a part amends what is inherited. */
  readonly #derived: boolean;
  /** Paths that this layer itself has already given. */
  readonly #seen = new Map<string, FieldEntry>();

  constructor(
    declaration: Declaration,
    drafts: Map<string, SlotDraft>,
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

  /**
   * A build has no order: what is taken away goes first, then parts come into their slots, then those are set up, so
   * that no line undoes another of the same build.
   */
  readBlock(block: BlockTree, prefix: string): void {
    const entries = entriesOf(block, prefix);
    for (const turn of [isRemoval, isPart, isRest]) {
      for (const { entry, at } of entries) if (turn(entry, at)) this.#readEntry(entry, at);
    }
  }

  #readEntry(entry: EntryTree, prefix: string): void {
    if (entry.form === "waive") {
      if (prefix === "") this.#readWaiver(entry);
      else
        this.#report(entry.span, "language/misplaced-waive", "A waive stands at the first level of a build.", prefix);
      return;
    }
    const path = pathOf(entry, prefix);
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
      // What stands in it has been taken out by now.
      if (isGroup(path)) return;
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
    const draft: SlotDraft = {
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

  #readSettings(block: BlockTree, path: string, slot: Slot, draft: SlotDraft): void {
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

  #readSetting(entry: FieldEntry, slotPath: string, slot: Slot, name: string, draft: SlotDraft): void {
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
      const inherited = [...this.#drafts.keys(), ...this.#fields.keys()];
      const inside = inherited.filter((one) => one.startsWith(`${path}.`));
      const near = isGroup(path) ? undefined : nearest(path, inherited);
      const meant = inside.length > 0 ? inside.join(", ") : near;
      const why =
        inside.length > 0
          ? `${path} is a group and is removed by what stands in it: ${meant}.`
          : `Nothing inherited stands at ${path}.${didYouMean(near === undefined ? [] : [near])}`;
      const place = { declaration: this.#declaration, span: token.span };
      this.#report(
        token.span,
        "model/nothing-to-remove",
        why,
        path,
        meant === undefined
          ? []
          : [{ kind: "change-text", title: `Write ${meant}`, place, changes: [{ span: token.span, text: meant }] }],
      );
    }
  }

  #readWaiver(entry: Extract<EntryTree, { form: "waive" }>): void {
    // Incomplete waives are syntax problems already; here only a whole one counts, since one without the place or the
    // day that somebody began to write would silence more than was meant.
    if (!entry.code || !entry.reason || this.#isSpoilt(entry.span)) return;
    this.#waivers.push({
      code: entry.code.text,
      ...(entry.at ? { at: entry.at.text } : {}),
      reason: entry.reason.text,
      ...(entry.until ? { until: entry.until.text } : {}),
      place: { declaration: this.#declaration, span: entry.span },
    });
  }

  #isSpoilt({ start, end }: Span): boolean {
    const { problems } = this.#declaration.tree;
    return problems.some(({ span, severity }) => severity === "error" && span.start >= start && span.end <= end);
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
    const known = written.includes(".") ? knownPaths(prefix) : knownNames(prefix);
    const owner = prefix === "" ? "a build" : slotByPath(prefix) ? `the settings of ${prefix}` : prefix;
    this.#findings.push(unknownField(this.#declaration, span, written, known, owner, path));
  }

  #report(span: Span, code: string, message: string, path: string, repairs: Finding["repairs"] = []): void {
    this.#findings.push(textFinding(this.#declaration, span, code, message, { path, repairs }));
  }
}

/** Groups of build fields, such as `rider` and `budget`, and groups inside of them. */
const buildGroups = new Set(
  Object.keys(buildFields).flatMap((name) => {
    const steps = name.split(".");
    return steps.slice(0, -1).map((_, index) => steps.slice(0, index + 1).join("."));
  }),
);

/** The dotted paths of slots, their settings and fields below a path, without it. */
function knownPaths(prefix: string): string[] {
  const start = prefix === "" ? "" : `${prefix}.`;
  const settings = slotPaths.flatMap((path) =>
    Object.keys(slotByPath(path)?.settings ?? {}).map((name) => `${path}.${name}`),
  );
  return [...slotPaths, ...settings, ...Object.keys(buildFields)]
    .filter((path) => path.startsWith(start))
    .map((path) => path.slice(start.length))
    .filter((path) => path.includes("."));
}

/** The names that may stand in a block with this path. */
function knownNames(prefix: string): string[] {
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
