import type { BlockTree, EntryTree, FieldEntry, GroupEntry, Span } from "../../grammar/tree.ts";
import type { Declaration } from "../model/declaration.ts";
import { takeOut } from "../model/take-out.ts";

/** A replacement in a declaration's own text. */
export interface DeclarationEdit {
  readonly declaration: Declaration;
  readonly span: Span;
  readonly text: string;
}

/** The entry at a dotted path of a declaration, through groups and dotted names alike; the settings of a slot too. */
export function findEntry(block: BlockTree | undefined, path: string): FieldEntry | GroupEntry | undefined {
  for (const entry of block?.entries ?? []) {
    if (entry.form === "waive") continue;
    const own = entry.path.text;
    if (own === path) return entry;
    if (path.startsWith(`${own}.`)) {
      const inner = findEntry(entry.block, path.slice(own.length + 1));
      if (inner) return inner;
    }
  }
  return undefined;
}

/**
 * Writes `path: value` into a build: replaces what stands there, else adds a line where a person would look for it.
 * A build that derives from another gets a dotted path, as variants are written; any other gets it in its assembly.
 */
export function writeEntry(declaration: Declaration, path: string, value: string): DeclarationEdit {
  const { tree } = declaration;
  const existing = findEntry(tree.block, path);
  if (existing?.form === "field") return { declaration, span: existing.value.span, text: value };

  let block = tree.block;
  let rest = path;
  // The settings of a slot that stands here without a block: open one behind the part's name.
  const dot = path.lastIndexOf(".");
  const owner = dot < 0 ? undefined : findEntry(block, path.slice(0, dot));
  if (owner?.form === "field" && !owner.block) {
    const end = owner.value.span.end;
    return { declaration, span: { start: end, end }, text: ` { ${path.slice(dot + 1)}: ${value} }` };
  }
  for (;;) {
    const next = groupTowards(block, rest);
    if (!next) break;
    block = next.block;
    rest = rest.slice(next.path.length + 1);
  }
  if (!block) {
    const end = tree.header.span.end;
    return { declaration, span: { start: end, end }, text: ` {\n  ${rest}: ${value}\n}` };
  }
  const nested = block === tree.block && rest.includes(".") && declaration.from === undefined;
  if (!nested) return addLine(declaration, block, `${rest}: ${value}`);
  const first = rest.indexOf(".");
  const indent = " ".repeat(2);
  return addLine(declaration, block, `${rest.slice(0, first)} {\n${indent}${rest.slice(first + 1)}: ${value}\n}`);
}

/** Writes several settings of one slot into a build; where the slot stands there without a block, all into one. */
export function writeSettings(
  declaration: Declaration,
  slot: string,
  settings: readonly { readonly setting: string; readonly value: string }[],
): readonly DeclarationEdit[] {
  const owner = findEntry(declaration.tree.block, slot);
  const [first, ...others] = settings;
  if (!first || others.length === 0 || (owner && (owner.form !== "field" || owner.block))) {
    return settings.map(({ setting, value }) => writeEntry(declaration, `${slot}.${setting}`, value));
  }
  if (owner?.form === "field") {
    const end = owner.value.span.end;
    const text = settings.map(({ setting, value }) => `${setting}: ${value}`).join("; ");
    return [{ declaration, span: { start: end, end }, text: ` { ${text} }` }];
  }
  // In a variant that says nothing of the slot, or only so in single lines.
  return settings.map(({ setting, value }) => writeEntry(declaration, `${slot}.${setting}`, value));
}

function groupTowards(block: BlockTree | undefined, path: string): { block: BlockTree; path: string } | undefined {
  for (const entry of block?.entries ?? []) {
    if (entry.form === "waive" || !entry.block) continue;
    if (path.startsWith(`${entry.path.text}.`)) return { block: entry.block, path: entry.path.text };
  }
  return undefined;
}

/** Adds lines at the end of a block, indented like its other entries; in a one-line block after a semicolon. */
export function addLine(declaration: Declaration, block: BlockTree, content: string): DeclarationEdit {
  const { text } = declaration;
  const last: EntryTree | undefined = block.entries[block.entries.length - 1];
  if (block.oneLine) {
    const at = last ? last.span.end : block.span.start + 1;
    return {
      declaration,
      span: { start: at, end: at },
      text: last ? `; ${content}` : ` ${content} `,
    };
  }
  // Behind the last entry's line, so that a comment at its end stays with it.
  const after = last ? last.span.end : block.span.start + 1;
  const lineEnd = text.indexOf("\n", after);
  const at = lineEnd < 0 || lineEnd > block.span.end ? after : lineEnd;
  const indent = last ? indentAt(text, last.span.start) : `${indentAt(text, block.span.start)}  `;
  const indented = content
    .split("\n")
    .map((line) => indent + line)
    .join("\n");
  const carriage = text[at - 1] === "\r" ? at - 1 : at;
  return { declaration, span: { start: carriage, end: carriage }, text: `\n${indented}` };
}

/**
 * Takes an entry out: with its line when nothing else stands on it, with its semicolon in a one-line block, and with
 * the block when it is alone in one behind a part's name.
 */
export function removeEntry(declaration: Declaration, path: string): DeclarationEdit | undefined {
  const entry = findEntry(declaration.tree.block, path);
  if (!entry) return undefined;
  const { text } = declaration;
  const dot = path.lastIndexOf(".");
  const owner = dot < 0 ? undefined : findEntry(declaration.tree.block, path.slice(0, dot));
  if (owner?.form === "field" && owner.block?.entries.length === 1 && owner.block.entries[0] === entry) {
    return { declaration, span: { start: owner.value.span.end, end: owner.block.span.end }, text: "" };
  }
  return { declaration, span: takeOut(text, entry.span), text: "" };
}

function indentAt(text: string, offset: number): string {
  const lineStart = text.lastIndexOf("\n", offset - 1) + 1;
  return /^[ \t]*/.exec(text.slice(lineStart, offset))?.[0] ?? "";
}
