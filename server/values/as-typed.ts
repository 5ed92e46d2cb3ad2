import type { ValueToken } from "../../grammar/tree.ts";
import type { FieldType } from "./types.ts";

const lists: ReadonlySet<FieldType["type"]> = new Set(["quantities", "teeth"]);

/**
 * The tokens of a value as somebody typed them, where its field takes a list of numbers. The language takes the comma
 * of `1180,1150` for a decimal one, since it cannot know that the field is a list.
 * @param text in which the tokens stand.
 */
export function asTyped(type: FieldType, tokens: readonly ValueToken[], text: string): readonly ValueToken[] {
  if (!lists.has(type.type)) return tokens;
  return tokens.map((token) => {
    if (token.kind !== "word") return token;
    const typed = text.slice(token.span.start, token.span.end);
    return /\d,\d/.test(typed) ? { ...token, text: typed } : token;
  });
}
