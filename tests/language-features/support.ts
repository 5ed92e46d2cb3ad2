import type { Position, Range, TextEdit } from "vscode-languageserver-types";
import { Engine } from "../../server/engine/engine.ts";
import { LineIndex } from "../../server/engine/positions.ts";
import { type ClientOptions, markdownHelp, plainClient } from "../../server/language-features/shared/options.ts";
import { prelude } from "../../server/standards/index.ts";

/**
 * A workshop given as texts whose marks ask the question: `<|>` is the cursor, `[|...|]` a range that is expected in
 * the answer. The marks are taken out before the engine sees the text.
 */
export interface Marked {
  readonly engine: Engine;
  /** The file that the cursor, or the only range, stands in; the last file when there is none. */
  readonly uri: string;
  readonly position: Position;
  /** Marked ranges by file, in the order of the text. */
  readonly ranges: readonly { readonly uri: string; readonly range: Range }[];
  text(uri?: string): string;
}

export const today = "2026-11-25";

/** @param files name to marked text. */
export function marked(files: Readonly<Record<string, string>>): Marked {
  const engine = new Engine({ today, prelude });
  let cursor: { uri: string; offset: number } | undefined;
  const found: { uri: string; start: number; end: number }[] = [];
  const texts = new Map<string, string>();
  for (const [name, text] of Object.entries(files)) {
    const uri = uriOf(name);
    let plain = "";
    let start = -1;
    for (let offset = 0; offset < text.length; ) {
      if (text.startsWith("<|>", offset)) {
        cursor = { uri, offset: plain.length };
        offset += 3;
      } else if (text.startsWith("[|", offset)) {
        start = plain.length;
        offset += 2;
      } else if (text.startsWith("|]", offset)) {
        found.push({ uri, start, end: plain.length });
        offset += 2;
      } else plain += text[offset++];
    }
    texts.set(uri, plain);
    engine.setOpen(uri, true);
    engine.update([{ uri, text: plain }]);
  }
  const uri = cursor?.uri ?? found[0]?.uri ?? [...texts.keys()].at(-1) ?? "";
  return {
    engine,
    uri,
    position: engine.lines(uri).position(cursor?.offset ?? found[0]?.start ?? 0),
    ranges: found.map((one) => ({ uri: one.uri, range: engine.fileRange(one.uri, one) })),
    text: (of = uri) => engine.file(of)?.text ?? "",
  };
}

export function uriOf(name: string): string {
  return `file:///workshop/${name}`;
}

/** One marked text and the place of its cursor, for what needs the text alone. */
export function plain(markedText: string): { readonly text: string; readonly position: Position } {
  const offset = markedText.indexOf("<|>");
  const text = markedText.replace("<|>", "");
  return { text, position: new LineIndex(text).position(offset) };
}

/** A text with edits applied as an editor applies them. */
export function applied(text: string, edits: readonly TextEdit[]): string {
  const lines = new LineIndex(text);
  const sorted = [...edits]
    .map(({ range, newText }, index) => ({
      start: lines.offset(range.start),
      end: lines.offset(range.end),
      newText,
      index,
    }))
    .sort((a, b) => b.start - a.start || b.index - a.index);
  let result = text;
  for (const { start, end, newText } of sorted) result = result.slice(0, start) + newText + result.slice(end);
  return result;
}

/** The text of a range of a file. */
export function textAt(engine: Engine, uri: string, range: Range): string {
  const lines = engine.lines(uri);
  return (engine.file(uri)?.text ?? "").slice(lines.offset(range.start), lines.offset(range.end));
}

/** A client that shows and takes everything. */
export const richClient: ClientOptions = {
  ...plainClient,
  snippets: true,
  insertReplace: false,
  symbolTree: true,
  documentChanges: true,
  explanationLinks: true,
  helpText: markdownHelp,
};

/** The library that most tests build on: what it takes to gear a bicycle, and a few that do not fit. */
export const library = `
/// Twelve-speed wide-range cassette, stocked by the box.
part cassette corrie.wide-10-52 "Corrie wide 10-52" {
  speeds: 12
  cogs: 10-12-14-16-18-21-24-28-32-38-45-52 t
  freehub: stepped-driver
  mass: 372 g
  price: GBP 184.00
}

part cassette corrie.close-11-34 "Corrie close 11-34" {
  speeds: 12
  cogs: 11-12-13-14-15-17-19-21-24-27-30-34 t
  freehub: stepped-driver
  mass: 310 g
}

part rear-derailleur corrie.long-12 "Corrie long 12" {
  speeds: 12
  mount: M10x1
  total-capacity: 42 t
  largest-cog: 52 t
  mass: 290 g
}

part rear-derailleur corrie.short-12 "Corrie short 12" {
  speeds: 12
  mount: M10x1
  total-capacity: 26 t
  largest-cog: 36 t
  mass: 240 g
}

part crankset corrie.arm-32 "Corrie arm 32" {
  rings: 32 t
  mass: 620 g
}

part hanger moor.eye "Moor eye" { seat: coaxial-12; derailleur-mount: M10x1 }

part frame moor.fellside-l "Moor Fellside, large" {
  hanger-seat: coaxial-12
  rear-axle: 12x148
}
`;
