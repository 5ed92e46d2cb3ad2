import { type FoldingRange, FoldingRangeKind } from "vscode-languageserver-types";
import type { BlockTree } from "../../grammar/tree.ts";
import type { Engine } from "../engine/engine.ts";
import type { Declaration } from "../model/declaration.ts";

/** Blocks of several lines, and runs of comment lines. Needs the syntax alone. */
export function foldingRanges(engine: Engine, uri: string): FoldingRange[] {
  const file = engine.file(uri);
  if (!file) return [];
  const ranges: FoldingRange[] = [];
  for (const declaration of file.declarations) {
    if (declaration.tree.block) foldBlock(engine, declaration, declaration.tree.block, ranges);
  }
  return [...ranges, ...commentRuns(file.text)];
}

function foldBlock(engine: Engine, declaration: Declaration, block: BlockTree, ranges: FoldingRange[]): void {
  const { start, end } = engine.range({ declaration, span: block.span });
  // The line of the closing brace stays in view.
  if (end.line - 1 > start.line) ranges.push({ startLine: start.line, endLine: end.line - 1 });
  for (const entry of block.entries) {
    if (entry.form !== "waive" && entry.block) foldBlock(engine, declaration, entry.block, ranges);
  }
}

function commentRuns(text: string): FoldingRange[] {
  const runs: FoldingRange[] = [];
  let start = -1;
  const lines = text.split(/\r\n|\r|\n/);
  for (let line = 0; line <= lines.length; line++) {
    const isComment = lines[line]?.trimStart().startsWith("//") ?? false;
    if (isComment && start < 0) start = line;
    if (!isComment && start >= 0) {
      if (line - 1 > start) runs.push({ startLine: start, endLine: line - 1, kind: FoldingRangeKind.Comment });
      start = -1;
    }
  }
  return runs;
}
