import type { Position, SelectionRange } from "vscode-languageserver-types";
import { entriesAt, tokenAt } from "../../grammar/navigation.ts";
import type { Span } from "../../grammar/tree.ts";
import type { Engine } from "../engine/engine.ts";
import { locate, rangeOf } from "./shared/place.ts";

/** What a growing selection takes in: word, value, entry, the entries around it, the declaration. Needs the syntax alone. */
export function selectionRanges(engine: Engine, uri: string, positions: readonly Position[]): SelectionRange[] {
  return positions.map((position) => selectionRange(engine, uri, position));
}

function selectionRange(engine: Engine, uri: string, position: Position): SelectionRange {
  const text = engine.file(uri)?.text ?? "";
  let selection: SelectionRange = { range: engine.fileRange(uri, { start: 0, end: text.length }) };
  const located = locate(engine, uri, position);
  if (!located) return selection;
  const { declaration, offset } = located;
  const { tree } = declaration;
  const spans: Span[] = [tree.span];
  for (const entry of entriesAt(tree, offset)) {
    if (entry.form !== "waive" && entry.block) spans.push(entry.span, entry.block.span);
    else spans.push(entry.span);
    if (entry.form === "field") spans.push(entry.value.span);
  }
  const token = tokenAt(tree, offset);
  if (token) spans.push(token.span);
  let last: Span = { start: 0, end: declaration.text.length };
  for (const span of spans) {
    const holdsPlace = span.start <= offset && offset <= span.end;
    const isInside = span.start >= last.start && span.end <= last.end;
    if (!holdsPlace || !isInside || (span.start === last.start && span.end === last.end)) continue;
    selection = { range: rangeOf(engine, declaration, span), parent: selection };
    last = span;
  }
  return selection;
}
