import type { Engine } from "../../engine/engine.ts";
import type { Assembly } from "../../model/assembly.ts";
import type { Declaration } from "../../model/declaration.ts";
import { parentOf, recordablePaths, recordFieldAt } from "../../records/paths.ts";
import type { Field, Fields, Slot } from "../../vocabulary/define.ts";
import {
  assemblyTable,
  buildFields,
  buildGroups,
  buildWords,
  extrasAssembly,
  innerBuildGroups,
  kindByName,
  measurementAt,
  recordFields,
  ruleEntries,
  ruleExpectations,
  slotByPath,
  slotPaths,
} from "../../vocabulary/index.ts";
import { typeText } from "../hover/fields.ts";
import { code, paragraphs, plain } from "../shared/markdown.ts";
import { plainFields } from "../shared/meaning.ts";
import { type Around, statedPaths } from "./context.ts";
import { keywordDrafts } from "./header.ts";
import { CompletionItemKind, type Draft } from "./items.ts";

/** Names that may be stated where a name is being typed, and are not yet. */
export function keyDrafts(engine: Engine, around: Around): Draft[] {
  const { cursor, mended, path } = around;
  const drafts = path.split(".").includes("own") ? [] : namesIn(engine, around);
  // A colon that is there already is not written twice.
  const hasColon = cursor.after[0]?.text === ":";
  const shown = hasColon ? drafts.map(withoutColon) : drafts;
  // In the first column a new declaration may be meant, whatever block is still open.
  return cursor.isOutermost && mended.tree.block ? [...shown, ...keywordDrafts(engine)] : shown;
}

function withoutColon(draft: Draft): Draft {
  const { snippet: _, continues: __, ...rest } = draft;
  return { ...rest, insert: (draft.insert ?? draft.label).replace(/\s*[:{][\s\S]*$/, "") };
}

function namesIn(engine: Engine, { cursor, mended, path }: Around): Draft[] {
  const stated = statedPaths(mended);
  switch (mended.keyword) {
    case "build": {
      // `cockpit.stem.` goes on from where its dots lead.
      const dot = cursor.word.text.lastIndexOf(".");
      const typed = dot < 0 ? "" : cursor.word.text.slice(0, dot);
      const block = [path, typed].filter((each) => each !== "").join(".");
      const start = typed === "" ? "" : `${typed}.`;
      return buildNames(block, stated, mended.from !== undefined).map((draft) => dotted(draft, start));
    }
    case "rule":
      return ruleKeys(path, cursor.word.text, stated);
    case "record":
      return [
        ...(path === "" ? fieldDrafts(recordFields, "", stated) : []),
        ...measuredNames(engine, mended, path, cursor.word.text, stated),
      ];
    default: {
      if (path !== "") return [];
      const { fields } = plainFields(mended);
      return [...fieldDrafts(fields, "", stated), ...(stated.has("own") ? [] : [wordDraft("own")])];
    }
  }
}

/** A draft for a name that goes on behind dots already typed. */
function dotted(draft: Draft, start: string): Draft {
  if (start === "") return draft;
  const label = start + draft.label;
  const { snippet, ...rest } = draft;
  return {
    ...rest,
    label,
    insert: start + (draft.insert ?? draft.label),
    ...(snippet === undefined ? {} : { snippet: start + snippet }),
  };
}

/** Fields in the order of the vocabulary, the essential ones first. */
function fieldDrafts(fields: Fields, prefix: string, stated: ReadonlySet<string>, underPrefix = false): Draft[] {
  const start = prefix === "" ? "" : `${prefix}.`;
  const rows = Object.entries(fields).flatMap(([name, field]) => {
    if (!underPrefix) return stated.has(start + name) ? [] : [{ name, field }];
    return name.startsWith(start) && !stated.has(name) ? [{ name: name.slice(start.length), field }] : [];
  });
  return [...rows.filter(({ field }) => field.essential), ...rows.filter(({ field }) => !field.essential)].map(
    ({ name, field }) => fieldDraft(name, field),
  );
}

function fieldDraft(name: string, field: Field): Draft {
  return {
    label: name,
    kind: CompletionItemKind.Property,
    insert: `${name}: `,
    continues: true,
    detail: field.description,
    documentation: paragraphs(
      plain(field.description),
      typeText(field.type),
      field.example === undefined ? undefined : `For example ${code(field.example)}.`,
    ),
    ...(field.essential ? { description: "expected" } : {}),
  };
}

function slotDraft({ path, description, kinds, omitted }: Slot): Draft {
  const nouns = kinds.map((kind) => kindByName(kind)?.noun ?? kind).join(" or ");
  return {
    label: path.slice(path.lastIndexOf(".") + 1),
    kind: CompletionItemKind.Field,
    insert: `${path.slice(path.lastIndexOf(".") + 1)}: `,
    continues: true,
    detail: nouns,
    documentation: plain(description),
    ...(omitted === "unknown" ? { description: "expected" } : {}),
  };
}

function groupDraft(name: string, description: string): Draft {
  return {
    label: name,
    kind: CompletionItemKind.Module,
    insert: `${name} {`,
    snippet: `${name} {\n\t$0\n}`,
    detail: description,
  };
}

function wordDraft(word: keyof typeof buildWords): Draft {
  const detail = buildWords[word];
  if (word === "waive")
    return { label: word, kind: CompletionItemKind.Keyword, insert: "waive ", detail, continues: true };
  if (word === "remove")
    return { label: word, kind: CompletionItemKind.Keyword, insert: "remove: ", detail, continues: true };
  return { label: word, kind: CompletionItemKind.Module, insert: `${word} {`, snippet: `${word} { $0 }`, detail };
}

/** What may stand in a block of a build: fields, groups and slots, the slots of an assembly, or settings of a slot. */
function buildNames(block: string, stated: ReadonlySet<string>, isDerived: boolean): Draft[] {
  const slot = block === "" ? undefined : slotByPath(block);
  if (slot) return fieldDrafts(slot.settings, block, stated);
  const start = block === "" ? "" : `${block}.`;
  const slots = slotPaths.flatMap((path) => {
    const row = slotByPath(path);
    const isHere = path.startsWith(start) && !path.slice(start.length).includes(".");
    return row && isHere && !stated.has(path) ? [row] : [];
  });
  const slotDrafts = [
    ...slots.filter(({ omitted }) => omitted === "unknown"),
    ...slots.filter(({ omitted }) => omitted === "none"),
  ].map(slotDraft);
  const ownFields: Fields = Object.fromEntries(
    Object.entries(buildFields).filter(([name]) => name.startsWith(start) && !name.slice(start.length).includes(".")),
  );
  const fields = fieldDrafts(ownFields, block, stated, true);
  if (block !== "") {
    const inner = Object.entries(innerBuildGroups).filter(([path]) => path.startsWith(start) && !stated.has(path));
    const groups = inner.map(([path, description]) => groupDraft(path.slice(start.length), description));
    return [...slotDrafts, ...fields, ...groups];
  }
  const groups = Object.entries({ ...buildGroups, ...assemblyTable })
    .filter(([name]) => !stated.has(name))
    .map(([name, description]) => groupDraft(name, description));
  return [
    ...fields.filter(({ description }) => description === "expected"),
    ...slotDrafts,
    ...groups,
    ...(stated.has(extrasAssembly) ? [] : [groupDraft(extrasAssembly, buildWords.extras)]),
    ...fields.filter(({ description }) => description !== "expected"),
    wordDraft("waive"),
    ...(isDerived && !stated.has("remove") ? [wordDraft("remove")] : []),
    ...(stated.has("own") ? [] : [wordDraft("own")]),
  ];
}

/** The entries of a rule; in its blocks the paths that it can set, and what it can come to for a build. */
function ruleKeys(block: string, typed: string, stated: ReadonlySet<string>): Draft[] {
  if (block === "") {
    return Object.entries(ruleEntries)
      .filter(([name]) => name === "let" || name === "require" || !stated.has(name))
      .map(([name, entry]) =>
        entry.form === "block"
          ? groupDraft(name, entry.description)
          : {
              label: name,
              kind: CompletionItemKind.Property,
              insert: `${name}: `,
              continues: true,
              detail: entry.form === "field" ? entry.field.description : entry.description,
            },
      );
  }
  if (block === "expect") {
    return Object.entries(ruleExpectations)
      .filter(([name]) => !stated.has(`expect.${name}`))
      .map(([name, detail]) => ({
        label: name,
        kind: CompletionItemKind.EnumMember,
        insert: `${name}: `,
        continues: true,
        detail,
      }));
  }
  if (block.split(".")[0] !== "set") return [];
  const dot = typed.lastIndexOf(".");
  const start = dot < 0 ? "" : typed.slice(0, dot);
  const inside = [block.slice("set".length + 1), start].filter((each) => each !== "").join(".");
  const settable = buildNames(inside, new Set(), false).filter(({ label }) => !Object.hasOwn(buildWords, label));
  return settable.map((draft) => dotted(draft, start === "" ? "" : `${start}.`));
}

/**
 * What can be measured on the bicycle that a record is of, by whole paths: the rows of the table first, then how its
 * parts are set, then numbers that are worked out. Facts of parts come once their slot is typed: they are many.
 */
function measuredNames(
  engine: Engine,
  record: Declaration,
  block: string,
  typed: string,
  stated: ReadonlySet<string>,
): Draft[] {
  const start = block === "" ? "" : `${block}.`;
  const build = record.of === undefined ? undefined : engine.workshop.build(record.of);
  const assembly = build && engine.report(build)?.assembly;
  return recordablePaths(assembly).flatMap((path) => {
    if (!path.startsWith(start) || stated.has(path) || isEmptySlot(assembly, path)) return [];
    const name = path.slice(start.length);
    const slot = parentOf(path);
    const isFact = slotByPath(slot) !== undefined && !Object.hasOwn(slotByPath(slot)?.settings ?? {}, lastOf(path));
    if (isFact && block !== slot && !typed.startsWith(`${slot.slice(start.length)}.`)) return [];
    const field = recordFieldAt(path, assembly);
    return field ? [fieldDraft(name, field)] : [];
  });
}

function lastOf(path: string): string {
  return path.slice(path.lastIndexOf(".") + 1);
}

/** Whether the build has nothing where something would be measured. */
function isEmptySlot(assembly: Assembly | undefined, path: string): boolean {
  const slot = measurementAt(path)?.on ?? (slotByPath(path) ? path : parentOf(path));
  return slotByPath(slot) !== undefined && assembly !== undefined && !isFitted(assembly, slot);
}

function isFitted({ slots }: Assembly, slot: string): boolean {
  const installed = slots.get(slot);
  return installed !== undefined && installed.state !== "none";
}
