import type { ValueToken } from "../../grammar/tree.ts";
import { isBareWord, quotedWord } from "./code.ts";
import { splitAtCommas } from "./lists.ts";
import { error, excerpt, type ReadContext, type Reading, replacement, spanOf, unread } from "./problems.ts";
import type { PartType, SlotReferenceType } from "./types.ts";

/** Reads the name of a part or the path of a slot: one word, without quotes. The model looks it up. */
export function readReference(
  type: PartType | SlotReferenceType,
  tokens: readonly ValueToken[],
  context: ReadContext,
): Reading<string> {
  const span = spanOf(tokens, context.span);
  const what =
    type.type === "part"
      ? "the name of a part, such as moor.stub-35"
      : "a slot of this build, such as rear-brake.lever";
  const lists = splitAtCommas(tokens);
  if (lists.items.length > 1) {
    const names = lists.items.map((item) => item.map((token) => token.text).join(" "));
    const alternates = names.join(" or ");
    const mendable = type.type === "part" && names.every((name) => isBareWord(name));
    const message =
      type.type === "part"
        ? `${context.field} takes one part; alternates are joined by or: ${excerpt(alternates)}.`
        : `${context.field} takes one slot, not a list.`;
    const fixes = mendable ? [replacement(span, alternates)] : [];
    return unread(undefined, [...lists.problems, error("one-only", message, span, fixes)]);
  }
  const [first, ...rest] = lists.items[0] ?? [];
  if (first === undefined || rest.length > 0 || (first.kind !== "word" && first.kind !== "text")) {
    const written = excerpt(tokens);
    const message = `${context.field} is ${what}${written === "" ? "" : `; ${written} is not one word`}.`;
    return unread(undefined, [...lists.problems, error("not-a-name", message, span)]);
  }
  const name = first.text.trim();
  if (first.kind === "word") return { value: name, written: name, problems: lists.problems };
  if (isBareWord(name))
    return { value: name, written: name, problems: [...lists.problems, quotedWord(first, context)] };
  const message = `${context.field} is ${what}, not a text in quotes.`;
  return unread(undefined, [...lists.problems, error("not-a-name", message, span)]);
}
