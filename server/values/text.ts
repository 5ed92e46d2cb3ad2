import type { ValueToken } from "../../grammar/tree.ts";
import { error, excerpt, quote, type ReadContext, type Reading, replacement, spanOf, unread } from "./problems.ts";
import type { TextType } from "./types.ts";

/** Reads a text in quotes. Without them there is an error, and the words are kept as the text all the same. */
export function readText(_type: TextType, tokens: readonly ValueToken[], context: ReadContext): Reading<string> {
  const [first] = tokens;
  if (tokens.length === 1 && first?.kind === "text") {
    return { value: first.text, written: quote(first.text), problems: [] };
  }
  const span = spanOf(tokens, context.span);
  if (tokens.length === 0)
    return unread(undefined, [error("missing", `${context.field} needs a text in quotes.`, span)]);
  let text = "";
  for (const token of tokens) text += text === "" || token.kind === "comma" ? token.text : ` ${token.text}`;
  const written = quote(text);
  const message = `${context.field} is a text and stands in quotes: ${excerpt(written)}.`;
  return {
    value: text,
    written,
    problems: [error("unquoted-text", message, span, [replacement(span, written, "Put it in quotes")])],
  };
}
