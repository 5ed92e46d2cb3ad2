import { entriesAt } from "../../../grammar/navigation.ts";
import { type DeclarationKeyword, declarationKeywords } from "../../../grammar/tree.ts";
import type { Engine } from "../../engine/engine.ts";
import { Declaration } from "../../model/declaration.ts";
import { type Cursor, cursorAt } from "./cursor.ts";

/** A declaration with the statement that is being typed taken out of it, so that half of a line spoils nothing. */
export interface Around {
  readonly cursor: Cursor;
  /** As it stands in the file. */
  readonly original: Declaration;
  /** With the statement made whole: its value `none`, or a name of no meaning where the name itself is being typed. */
  readonly mended: Declaration;
  /** Path of the block that the statement stands in; empty for the declaration's own. */
  readonly path: string;
}

/** What is being typed, and where. */
export type Context =
  | { readonly where: "top"; readonly cursor: Cursor }
  | {
      readonly where: "header";
      readonly cursor: Cursor;
      readonly keyword: DeclarationKeyword;
      readonly original: Declaration | undefined;
    }
  | ({ readonly where: "key" } & Around)
  | ({ readonly where: "value"; readonly key: string } & Around)
  | ({ readonly where: "waive" } & Around);

/** Says what is being typed at an offset of a file; `undefined` in a comment or a text. Needs the syntax alone. */
export function contextAt(engine: Engine, uri: string, offset: number): Context | undefined {
  const text = engine.file(uri)?.text ?? "";
  const cursor = cursorAt(text, offset);
  if (!cursor) return undefined;
  const original = engine.declarationAt(uri, cursor.start);
  const keyword = headerKeyword(cursor);
  if (keyword) return { where: "header", cursor, keyword, original };
  if (!original) return { where: "top", cursor };

  const colon = cursor.before.findIndex(({ kind, text: mark }) => kind === "mark" && mark === ":");
  const key = colon < 0 ? undefined : text.slice(cursor.start, cursor.before[colon]?.start).trim();
  const from = cursor.start - original.start;
  const to = Math.max(from, cursor.end - original.start);
  const whole = `${key === undefined || key === "" ? placeholder : key}: none`;
  const mendedText = original.text.slice(0, from) + whole + original.text.slice(to);
  const { kind, name, title, of, from: base, uri: home, builtIn, start } = original;
  const mended = new Declaration(
    {
      keyword: original.keyword,
      start,
      end: start + mendedText.length,
      name,
      ...(kind === undefined ? {} : { kind }),
      ...(title === undefined ? {} : { title }),
      ...(base === undefined ? {} : { from: base }),
      ...(of === undefined ? {} : { of }),
    },
    mendedText,
    home,
    builtIn,
  );
  const entries = entriesAt(mended.tree, from);
  const last = entries.at(-1);
  if (!last || last.span.start !== from) return { where: "top", cursor };
  const path = entries
    .slice(0, -1)
    .map((entry) => (entry.form === "waive" ? "" : entry.path.text))
    .join(".");
  const around = { cursor, original, mended, path };
  if (key !== undefined) return { where: "value", key, ...around };
  return cursor.before[0]?.text === "waive" ? { where: "waive", ...around } : { where: "key", ...around };
}

/** Stands for a name that is still being typed. */
const placeholder = "being-typed";

/** The keyword of the header that is being typed behind it. */
function headerKeyword({ isFirst, before }: Cursor): DeclarationKeyword | undefined {
  const [first, second] = before;
  if (!isFirst || first?.kind !== "word" || second?.text === ":") return undefined;
  return declarationKeywords.find((keyword) => keyword === first.text);
}

/** Every path that a declaration's block states, through groups and dotted names alike. */
export function statedPaths(declaration: Declaration): ReadonlySet<string> {
  const paths = new Set<string>();
  const collect = (block: Declaration["tree"]["block"], prefix: string): void => {
    for (const entry of block?.entries ?? []) {
      if (entry.form === "waive") continue;
      const path = prefix === "" ? entry.path.text : `${prefix}.${entry.path.text}`;
      paths.add(path);
      // `cockpit.stem: ...` states something of `cockpit` too.
      for (let dot = path.lastIndexOf("."); dot > 0; dot = path.lastIndexOf(".", dot - 1))
        paths.add(path.slice(0, dot));
      if (entry.block) collect(entry.block, path);
    }
  };
  collect(declaration.tree.block, "");
  return paths;
}
