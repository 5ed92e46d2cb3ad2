import type { ValueToken } from "../../grammar/tree.ts";
import { error, type ValueProblem } from "./problems.ts";

export interface TokenLists {
  /** The tokens of each item; never an empty item. */
  readonly items: readonly (readonly ValueToken[])[];
  readonly problems: readonly ValueProblem[];
}

/**
 * Parts a value at its commas. A comma after the last item is left to the language, which reports it; one with
 * nothing before it is an error here.
 */
export function splitAtCommas(tokens: readonly ValueToken[]): TokenLists {
  const items: ValueToken[][] = [];
  const problems: ValueProblem[] = [];
  let item: ValueToken[] = [];
  for (const token of tokens) {
    if (token.kind !== "comma") {
      item.push(token);
      continue;
    }
    if (item.length > 0) items.push(item);
    else {
      problems.push(
        error("empty-item", "There is nothing before this comma.", token.span, [
          { title: "Remove the comma", changes: [{ span: token.span, text: "" }] },
        ]),
      );
    }
    item = [];
  }
  if (item.length > 0) items.push(item);
  return { items, problems };
}
