import type { Position, Range } from "vscode-languageserver-types";
import type { Span } from "../../../grammar/tree.ts";
import type { Engine } from "../../engine/engine.ts";
import type { Declaration, Place } from "../../model/declaration.ts";

/** A position of a file as the declaration that stands there and an offset from its start. */
export interface Located {
  readonly declaration: Declaration;
  readonly offset: number;
}

/** The declaration at a position of a file; `undefined` where none stands. */
export function locate(engine: Engine, uri: string, position: Position): Located | undefined {
  const offset = engine.lines(uri).offset(position);
  const declaration = engine.declarationAt(uri, offset);
  return declaration && { declaration, offset: offset - declaration.start };
}

/** The range of a stretch of a declaration in its file. */
export function rangeOf(engine: Engine, declaration: Declaration, span: Span): Range {
  return engine.range({ declaration, span });
}

export interface FileRange {
  readonly uri: string;
  readonly range: Range;
}

/** Where a place is, by file and line. */
export function fileRangeOf(engine: Engine, place: Place): FileRange {
  return { uri: place.declaration.uri, range: engine.range(place) };
}

/** True when two ranges share a position; ranges that only touch do. */
export function touch(one: Range, other: Range): boolean {
  return !isBefore(one.end, other.start) && !isBefore(other.end, one.start);
}

export function isBefore(one: Position, other: Position): boolean {
  return one.line < other.line || (one.line === other.line && one.character < other.character);
}
