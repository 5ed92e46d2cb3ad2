/**
 * Where a place in a declaration's text is in its tree. All offsets count from the start of the declaration.
 *
 * A place just after a token still belongs to it: that is where the cursor stands while it is typed.
 */

import type { BlockTree, DeclarationTree, EntryTree, PathTree, Span, ValueToken } from "./tree.ts";

/** The entries that hold an offset, outermost first. */
export function entriesAt(tree: DeclarationTree, offset: number): EntryTree[] {
  const found: EntryTree[] = [];
  let block = tree.block;
  while (block !== undefined && holds(block.span, offset)) {
    const entry: EntryTree | undefined = entryIn(block, offset);
    if (entry === undefined) break;
    found.push(entry);
    block = entry.form === "waive" ? undefined : entry.block;
  }
  return found;
}

/** The innermost entry that holds an offset. */
export function entryAt(tree: DeclarationTree, offset: number): EntryTree | undefined {
  return entriesAt(tree, offset).at(-1);
}

/** The innermost block that holds an offset strictly inside its braces. */
export function blockAt(tree: DeclarationTree, offset: number): BlockTree | undefined {
  let innermost: BlockTree | undefined;
  let block = tree.block;
  while (block !== undefined && isInside(block, offset)) {
    innermost = block;
    const entry: EntryTree | undefined = entryIn(block, offset);
    block = entry === undefined || entry.form === "waive" ? undefined : entry.block;
  }
  return innermost;
}

/**
 * The names from the declaration's block down to an offset: `["drivetrain", "chain", "links"]`. With the offset in
 * a block but in none of its entries, the path of that block, which is where a new entry would be.
 */
export function pathAt(tree: DeclarationTree, offset: number): string[] {
  const names: string[] = [];
  for (const entry of entriesAt(tree, offset)) {
    if (entry.form === "waive") break;
    names.push(...entry.path.segments.map((segment) => segment.text));
  }
  return names;
}

export type TokenRole =
  /** The keyword of the declaration, its kind, name, title, base (`from`) or build (`of`). */
  | "keyword"
  | "kind"
  | "name"
  | "title"
  | "from"
  | "of"
  /** A segment of an entry's key. */
  | "key"
  /** A token of an entry's value. */
  | "value"
  /** A part of a waiver. */
  | "waive-code"
  | "waive-path"
  | "waive-reason"
  | "waive-until";

export interface TokenAt {
  readonly role: TokenRole;
  readonly text: string;
  readonly span: Span;
  /** The entry it stands in; absent in the header. */
  readonly entry?: EntryTree;
  /** The token itself, where it is one of a value or a header. */
  readonly token?: ValueToken;
  /** Which segment of a path it is, and the path. */
  readonly path?: PathTree;
  readonly segment?: number;
}

/** The token that holds an offset, or that ends there. */
export function tokenAt(tree: DeclarationTree, offset: number): TokenAt | undefined {
  const { header } = tree;
  if (holds(header.keywordSpan, offset)) {
    return { role: "keyword", text: header.keyword, span: header.keywordSpan };
  }
  for (const role of ["kind", "name", "title", "from", "of"] as const) {
    const token = header[role];
    if (token !== undefined && holds(token.span, offset)) return { role, text: token.text, span: token.span, token };
  }
  const entry = entryAt(tree, offset);
  if (entry === undefined) return undefined;
  if (entry.form === "waive") {
    for (const part of ["code", "reason", "until"] as const) {
      const token = entry[part];
      if (token !== undefined && holds(token.span, offset)) {
        return { role: `waive-${part}`, text: token.text, span: token.span, token, entry };
      }
    }
    return entry.at === undefined ? undefined : segmentAt("waive-path", entry.at, offset, entry);
  }
  const segment = segmentAt("key", entry.path, offset, entry);
  if (segment !== undefined || entry.form === "group") return segment;
  // A token that starts at the offset is meant rather than one that ends there.
  const { tokens } = entry.value;
  const token =
    tokens.find(({ span }) => offset >= span.start && offset < span.end) ??
    tokens.find(({ span }) => holds(span, offset));
  return token === undefined ? undefined : { role: "value", text: token.text, span: token.span, token, entry };
}

function segmentAt(role: TokenRole, path: PathTree, offset: number, entry: EntryTree): TokenAt | undefined {
  const index = path.segments.findIndex(({ span }) => holds(span, offset));
  const segment = path.segments[index];
  if (segment === undefined) return undefined;
  return { role, text: segment.text, span: segment.span, entry, path, segment: index };
}

function holds(span: Span, offset: number): boolean {
  return offset >= span.start && offset <= span.end;
}

function isInside(block: BlockTree, offset: number): boolean {
  return offset > block.span.start && offset < Math.max(block.span.end, block.insertAt + 1);
}

/** The entry of a block that holds an offset; where one ends as the next starts, the next. */
function entryIn(block: BlockTree, offset: number): EntryTree | undefined {
  const { entries } = block;
  let low = 0;
  let high = entries.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (entries[middle]!.span.start <= offset) low = middle + 1;
    else high = middle;
  }
  const entry = entries[low - 1];
  return entry !== undefined && holds(entry.span, offset) ? entry : undefined;
}
