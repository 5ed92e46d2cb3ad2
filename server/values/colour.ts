import colourNames from "color-name";
import type { ValueToken } from "../../grammar/tree.ts";
import { quotedWord } from "./code.ts";
import { didYouMean, nearestSeveral } from "./near.ts";
import { error, excerpt, type ReadContext, type Reading, replacement, spanOf, unread, warning } from "./problems.ts";
import type { ColourType } from "./types.ts";

/** The colour names of CSS Color Module Level 4, section 6.1. */
export const namesOfColours: readonly string[] = Object.keys(colourNames);

/** Reads a colour: a CSS name or `#` and three, four, six or eight hexadecimal digits. In small letters. */
export function readColour(_type: ColourType, tokens: readonly ValueToken[], context: ReadContext): Reading<string> {
  const span = spanOf(tokens, context.span);
  const [first] = tokens;
  const isPlain = tokens.length > 0 && tokens.every((token) => token.kind === "word" || token.kind === "text");
  const text = tokens.map((token) => token.text.trim()).join(" ");
  const joined = text.toLowerCase().replace(/[\s_-]/g, "");
  const isColour = isHex(joined) || isColourName(joined);
  if (isPlain && isColour && first !== undefined) {
    if (joined !== text.toLowerCase() || tokens.length > 1) {
      const message = `This colour is written ${joined}.`;
      return {
        value: joined,
        written: joined,
        problems: [warning("colour-form", message, span, [replacement(span, joined)])],
      };
    }
    return { value: joined, written: joined, problems: first.kind === "text" ? [quotedWord(first, context)] : [] };
  }
  const message = `${context.field} is a colour: # and six hexadecimal digits such as #2f5d50, or a CSS name such as darkgreen; ${excerpt(text)} is neither.`;
  if (isPlain && isHex(`#${joined.replace(/^0x/, "")}`)) {
    return unread(undefined, [
      error("not-a-colour", message, span, [replacement(span, `#${joined.replace(/^0x/, "")}`)]),
    ]);
  }
  const near = isPlain ? nearestSeveral(joined, namesOfColours) : [];
  const fixes = near.map((name) => replacement(span, name));
  return unread(undefined, [error("not-a-colour", message + didYouMean(near), span, fixes)]);
}

function isHex(text: string): boolean {
  return /^#(?:[\da-f]{3,4}|[\da-f]{6}|[\da-f]{8})$/.test(text);
}

function isColourName(text: string): boolean {
  return Object.hasOwn(colourNames, text);
}
