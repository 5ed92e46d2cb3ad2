import { type DocumentSymbol, type SymbolInformation, SymbolKind } from "vscode-languageserver-types";
import type { BlockTree, DeclarationKeyword, EntryTree } from "../../grammar/tree.ts";
import type { Engine } from "../engine/engine.ts";
import { type Declaration, headerPlace } from "../model/declaration.ts";
import { rangeOf } from "./shared/place.ts";

/** What the outline draws beside each declaration. */
export const symbolKinds: Readonly<Record<DeclarationKeyword, SymbolKind>> = {
  workshop: SymbolKind.Namespace,
  part: SymbolKind.Class,
  build: SymbolKind.Object,
  standard: SymbolKind.Interface,
  rule: SymbolKind.Function,
  record: SymbolKind.Event,
};

/** The declarations of a file with what stands in their blocks. Needs the syntax alone. */
export function documentSymbols(engine: Engine, uri: string): DocumentSymbol[] {
  return (engine.file(uri)?.declarations ?? []).map((declaration) => symbolOf(engine, declaration));
}

/** The same as a flat list, for clients that show no tree. */
export function flatSymbols(engine: Engine, uri: string, shown: string): SymbolInformation[] {
  const list: SymbolInformation[] = [];
  const add = (symbol: DocumentSymbol, containerName?: string): void => {
    const { name, kind, range } = symbol;
    list.push({
      name,
      kind,
      location: { uri: shown, range },
      ...(containerName === undefined ? {} : { containerName }),
    });
    for (const child of symbol.children ?? []) add(child, name);
  };
  for (const symbol of documentSymbols(engine, uri)) add(symbol);
  return list;
}

/** What the outline calls a declaration, with its title, kind or base behind it. */
export function describeDeclaration({ keyword, kind, name, title, from, of }: Declaration): {
  readonly name: string;
  readonly detail: string;
} {
  const words = [
    keyword === "part" || keyword === "standard" ? kind : undefined,
    title,
    from === undefined ? undefined : `from ${from}`,
    of === undefined ? undefined : `of ${of}`,
  ];
  return {
    // An outline refuses a symbol without a name, and half-typed declarations have none.
    name: name.trim() || title?.trim() || keyword,
    detail: words.filter((word) => word !== undefined && word !== "").join(" · "),
  };
}

function symbolOf(engine: Engine, declaration: Declaration): DocumentSymbol {
  const { tree } = declaration;
  const children = tree.block ? childrenOf(engine, declaration, tree.block) : [];
  return {
    ...describeDeclaration(declaration),
    kind: symbolKinds[declaration.keyword],
    range: rangeOf(engine, declaration, tree.span),
    selectionRange: engine.range(headerPlace(declaration)),
    ...(children.length === 0 ? {} : { children }),
  };
}

function childrenOf(engine: Engine, declaration: Declaration, block: BlockTree): DocumentSymbol[] {
  return block.entries.flatMap((entry) => entrySymbol(engine, declaration, entry) ?? []);
}

function entrySymbol(engine: Engine, declaration: Declaration, entry: EntryTree): DocumentSymbol | undefined {
  const range = rangeOf(engine, declaration, entry.span);
  if (entry.form === "waive") {
    const code = entry.code?.text ?? "";
    const detail = entry.reason?.text ?? "";
    return { name: `waive ${code}`.trim(), detail, kind: SymbolKind.Event, range, selectionRange: range };
  }
  if (entry.path.text === "") return undefined;
  const { block } = entry;
  const children = block ? childrenOf(engine, declaration, block) : [];
  const { start, end } = entry.form === "field" ? entry.value.span : { start: 0, end: 0 };
  return {
    name: entry.path.text,
    detail: declaration.text.slice(start, end),
    kind: entry.form === "group" ? SymbolKind.Module : block ? SymbolKind.Property : SymbolKind.Field,
    range,
    selectionRange: rangeOf(engine, declaration, entry.path.span),
    ...(children.length === 0 ? {} : { children }),
  };
}
