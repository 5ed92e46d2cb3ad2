import type { Location, Position } from "vscode-languageserver-types";
import type { Engine } from "../engine/engine.ts";
import { localOf, localUses } from "./shared/local-uses.ts";
import { meaningAt } from "./shared/meaning.ts";
import type { ClientOptions } from "./shared/options.ts";
import { locate, rangeOf } from "./shared/place.ts";
import { namedBy, usesOf } from "./shared/uses.ts";

/** Every place that names the part, build, standard, rule or rule's own name at a position. Needs the resolved model. */
export function references(
  engine: Engine,
  uri: string,
  position: Position,
  options: { readonly includeDeclaration: boolean },
  client: ClientOptions,
): Location[] {
  const located = locate(engine, uri, position);
  if (!located) return [];
  const { declaration: rule } = located;
  const meaning = meaningAt(engine.workshop, rule, located.offset);
  const local = localOf(meaning);
  if (local) {
    return localUses(engine.workshop, rule, local)
      .filter(({ start }) => options.includeDeclaration || start !== local.span.start)
      .map((span) => ({ uri: client.shownUri(uri), range: rangeOf(engine, rule, span) }));
  }
  const target = namedBy(meaning);
  if (!target) return [];
  return usesOf(engine, target)
    .filter(({ isOwn }) => options.includeDeclaration || !isOwn)
    .map(({ declaration, span }) => ({
      uri: client.shownUri(declaration.uri),
      range: rangeOf(engine, declaration, span),
    }));
}
