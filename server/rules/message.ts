import type { Span, ValueToken } from "../../grammar/tree.ts";
import { nearestSeveral } from "../values/near.ts";
import { everyPath, pathMeaning } from "./paths.ts";
import type { Problems } from "./problems.ts";
import type { MessagePiece } from "./rule.ts";
import type { Typed } from "./typed-expression.ts";

/** A name in braces inside a text. */
const placeholder = /\{\s*([^{}]*?)\s*\}/g;

/** Reads the text of a message: what stands in braces is a path, or a name given by let, whose value is put in. */
export function readMessage(
  token: ValueToken,
  text: string,
  locals: ReadonlyMap<string, Typed>,
  problems: Problems,
): readonly MessagePiece[] {
  const pieces: MessagePiece[] = [];
  let last = 0;
  let from = token.span.start;
  for (const match of text.matchAll(placeholder)) {
    const [whole, name = ""] = match;
    if (match.index > last) pieces.push({ text: text.slice(last, match.index) });
    last = match.index + whole.length;
    const span = spanIn(token, from, problems, whole, name);
    from = span === token.span ? from : span.end;
    const value = named(name, span, locals);
    if (value) pieces.push({ value });
    else {
      pieces.push({ text: whole });
      problems.reportNear(
        span,
        "expression/unknown-path",
        name === ""
          ? "No name stands in these braces; put in a path or a name given by let."
          : `No build has anything called ${name}, so there is nothing to put in here.`,
        nearestSeveral(name, [...locals.keys(), ...everyPath()]),
      );
    }
  }
  if (last < text.length) pieces.push({ text: text.slice(last) });
  return pieces;
}

function named(name: string, span: Span, locals: ReadonlyMap<string, Typed>): Typed | undefined {
  const local = locals.get(name);
  if (local) return { form: "local", name, of: local, type: local.type, span };
  const meaning = pathMeaning(name);
  return meaning && { form: "path", meaning, type: meaning.type, span };
}

/** Where a name in braces stands in the source; the whole text where a `\` makes it unlike what it reads as. */
function spanIn({ span }: ValueToken, from: number, { declaration }: Problems, whole: string, name: string): Span {
  const at = declaration.text.indexOf(whole, from);
  if (at < 0 || at >= span.end) return span;
  const start = at + whole.indexOf(name);
  return { start, end: start + name.length };
}
