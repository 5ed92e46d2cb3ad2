import type { SymbolInformation } from "vscode-languageserver-types";
import type { Engine } from "../engine/engine.ts";
import { type Declaration, headerPlace } from "../model/declaration.ts";
import { describeDeclaration, symbolKinds } from "./document-symbols.ts";
import type { ClientOptions } from "./shared/options.ts";

/** How many symbols one answer holds; a longer list helps nobody. */
const mostSymbols = 250;

/**
 * Declarations whose name, title or kind holds the letters of a query in order, those that hold them in one piece
 * first. Needs the names alone.
 */
export function workspaceSymbols(engines: Iterable<Engine>, query: string, client: ClientOptions): SymbolInformation[] {
  const wanted = query.toLowerCase().replace(/\s+/g, "");
  const found: { readonly engine: Engine; readonly declaration: Declaration; readonly rank: number }[] = [];
  for (const engine of engines) {
    for (const file of engine.workshop.files.values()) {
      for (const declaration of file.declarations) {
        const rank = rankOf(declaration, wanted);
        if (rank !== undefined) found.push({ engine, declaration, rank });
      }
    }
  }
  // The workshop's own before the standards that come with the program.
  found.sort(
    (a, b) =>
      a.rank - b.rank ||
      Number(a.declaration.builtIn) - Number(b.declaration.builtIn) ||
      (a.declaration.name < b.declaration.name ? -1 : 1),
  );
  return found.slice(0, mostSymbols).map(({ engine, declaration }) => {
    const { name, detail } = describeDeclaration(declaration);
    return {
      name,
      kind: symbolKinds[declaration.keyword],
      containerName: detail,
      location: { uri: client.shownUri(declaration.uri), range: engine.range(headerPlace(declaration)) },
    };
  });
}

function rankOf({ name, title, kind, keyword }: Declaration, wanted: string): number | undefined {
  if (wanted === "") return 2;
  const texts = [name, title ?? "", `${kind ?? keyword}`].map((text) => text.toLowerCase().replace(/\s+/g, ""));
  if (texts[0]?.startsWith(wanted)) return 0;
  if (texts.some((text) => text.includes(wanted))) return 1;
  return texts.some((text) => holdsInOrder(text, wanted)) ? 2 : undefined;
}

function holdsInOrder(text: string, wanted: string): boolean {
  let next = 0;
  for (const letter of text) if (letter === wanted[next]) next++;
  return next === wanted.length;
}
