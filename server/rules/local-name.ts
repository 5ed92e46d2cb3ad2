import { pathMeaning } from "./paths.ts";

/** Words of the expression language that no name can take the place of. */
const words: ReadonlySet<string> = new Set(["today", "none", "yes", "no", "and", "or", "not", "is", "in", "to"]);

/** Why `let` cannot give this name; `undefined` where it can. */
export function localNameProblem(name: string): string | undefined {
  if (words.has(name) || pathMeaning(name)) return `${name} means something already; choose another name.`;
  return /^[\p{L}_][\p{L}\d_-]*$/u.test(name)
    ? undefined
    : `${name} cannot be a name: write one word that begins with a letter.`;
}
