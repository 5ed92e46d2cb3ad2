import { lineStartAt, wordEnd } from "../../../grammar/characters.ts";
import { textEnd } from "../../../grammar/split.ts";
import type { Engine } from "../../engine/engine.ts";
import { describeType } from "../../rules/expression-type.ts";
import { readRule } from "../../rules/read-rule.ts";
import { cursorAt } from "./cursor.ts";
import { pathDrafts } from "./expressions.ts";
import { CompletionItemKind, type Draft } from "./items.ts";

/** The name that is being typed between the braces of a rule's message. */
interface MessageName {
  readonly start: number;
  readonly end: number;
  /** What is typed of it, up to the cursor. */
  readonly typed: string;
  readonly isClosed: boolean;
  /** Offset of the text that it stands in. */
  readonly textStart: number;
}

/** What may be put in between the braces of a rule's message; nothing where no such name is being typed. */
export function messageNameDrafts(
  engine: Engine,
  uri: string,
  offset: number,
): { readonly drafts: Draft[]; readonly isCut: boolean; readonly start: number; readonly end: number } | undefined {
  const text = engine.file(uri)?.text ?? "";
  const name = messageNameAt(text, offset);
  if (!name) return undefined;
  const statement = cursorAt(text, name.textStart);
  const [key, colon, ...more] = statement?.before ?? [];
  if (key?.text !== "message" || colon?.text !== ":" || more.length > 0) return undefined;
  const declaration = engine.declarationAt(uri, name.textStart);
  if (declaration?.keyword !== "rule") return undefined;
  const locals = [...readRule(declaration, engine.workshop, "").locals].map(
    ([label, { expression }]): Draft => ({
      label,
      kind: CompletionItemKind.Variable,
      detail: describeType(expression.type),
    }),
  );
  const paths = pathDrafts(name.typed, undefined);
  const drafts = [...(name.typed.includes(".") ? [] : locals), ...paths.drafts];
  return {
    drafts: name.isClosed ? drafts : drafts.map(closed),
    isCut: paths.isCut,
    start: name.start,
    end: name.end,
  };
}

/** With the brace behind it, where the name is whole. */
function closed(draft: Draft): Draft {
  return draft.continues ? draft : { ...draft, insert: `${draft.label}}`, filter: draft.label };
}

function messageNameAt(text: string, offset: number): MessageName | undefined {
  const textStart = textAround(text, offset);
  if (textStart === undefined) return undefined;
  const open = text.lastIndexOf("{", offset - 1);
  if (open <= textStart || text.lastIndexOf("}", offset - 1) > open) return undefined;
  const typed = text.slice(open + 1, offset).trimStart();
  // Behind a blank a second word would begin, and only one name stands in braces.
  if (/\s/.test(typed)) return undefined;
  const start = offset - typed.length;
  const end = Math.max(offset, wordEnd(text, offset));
  return { start, end, typed, isClosed: /^[ \t]*\}/.test(text.slice(end)), textStart };
}

/** Where the text in quotes that an offset is inside of begins; one that is not closed reaches to the end of its line. */
function textAround(text: string, offset: number): number | undefined {
  for (let at = lineStartAt(text, offset); at < offset; at++) {
    if (text.startsWith("//", at)) return undefined;
    if (text[at] !== '"') continue;
    const close = textEnd(text, at);
    if (close < 0 || close > offset) return at;
    at = close - 1;
  }
  return undefined;
}
