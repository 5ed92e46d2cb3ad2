import type { Location, Position } from "vscode-languageserver-types";
import type { Engine } from "../engine/engine.ts";
import { meaningAt } from "./shared/meaning.ts";
import type { ClientOptions } from "./shared/options.ts";
import { locate, rangeOf } from "./shared/place.ts";
import { namedBy, usesOf } from "./shared/uses.ts";

/** Every place that names the part, build or standard at a position. Needs the resolved model. */
export function references(
  engine: Engine,
  uri: string,
  position: Position,
  options: { readonly includeDeclaration: boolean },
  client: ClientOptions,
): Location[] {
  const located = locate(engine, uri, position);
  const target = located && namedBy(meaningAt(engine.workshop, located.declaration, located.offset));
  if (!target) return [];
  return usesOf(engine, target)
    .filter(({ isOwn }) => options.includeDeclaration || !isOwn)
    .map(({ declaration, span }) => ({
      uri: client.shownUri(declaration.uri),
      range: rangeOf(engine, declaration, span),
    }));
}
