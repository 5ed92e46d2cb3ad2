import { type DocumentHighlight, DocumentHighlightKind, type Position } from "vscode-languageserver-types";
import type { Engine } from "../engine/engine.ts";
import { localOf, localUses } from "./shared/local-uses.ts";
import { meaningAt } from "./shared/meaning.ts";
import { locate, rangeOf } from "./shared/place.ts";
import { namedBy, usesOf } from "./shared/uses.ts";

/** The places of one file that name what stands at a position. Needs the resolved model. */
export function documentHighlights(engine: Engine, uri: string, position: Position): DocumentHighlight[] {
  const located = locate(engine, uri, position);
  if (!located) return [];
  const { declaration: rule } = located;
  const meaning = meaningAt(engine.workshop, rule, located.offset);
  const local = localOf(meaning);
  if (local) {
    return localUses(engine.workshop, rule, local).map((span) => ({
      range: rangeOf(engine, rule, span),
      kind: span.start === local.span.start ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }));
  }
  const target = namedBy(meaning);
  if (!target) return [];
  return usesOf(engine, target)
    .filter(({ declaration }) => declaration.uri === uri)
    .map(({ declaration, span, isOwn }) => ({
      range: rangeOf(engine, declaration, span),
      kind: isOwn ? DocumentHighlightKind.Write : DocumentHighlightKind.Read,
    }));
}
