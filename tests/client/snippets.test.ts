/** Every snippet, taken as it is offered, is text that the parser reads without complaint and the formatter leaves alone. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { format } from "../../grammar/format.ts";
import { declarationKeywords } from "../../grammar/tree.ts";
import { bikeCategories } from "../../server/vocabulary/words.ts";
import { describeProblems } from "../language/support.ts";

interface Snippet {
  readonly prefix: string;
  readonly description: string;
  readonly body: readonly string[];
}

const snippets: Readonly<Record<string, Snippet>> = JSON.parse(
  readFileSync(new URL("../../client/snippets/ferrule.json", import.meta.url), "utf8"),
);

/** What stands in the text when nothing is typed over: each default, the first of each choice, today's date. */
function expanded({ body }: Snippet): string {
  return (
    body
      .join("\n")
      .replaceAll("\t", "  ")
      .replace(/\$\{\d+\|([^,|]*)[^|]*\|\}/g, "$1")
      .replace(/\$\{\d+:([^}]*)\}/g, "$1")
      .replaceAll("$CURRENT_YEAR", "2026")
      .replaceAll("$CURRENT_MONTH", "11")
      .replaceAll("$CURRENT_DATE", "25")
      // The line of the cursor is there to be written on.
      .replace(/^ *\$0(\n|$)/m, "")
  );
}

/** A snippet as a file of its own: a waiver stands in a build. */
function asFile(snippet: Snippet): string {
  const text = expanded(snippet);
  return snippet.prefix === "waive" ? `build wrapped {\n  ${text}\n}\n` : `${text.trimEnd()}\n`;
}

describe.each(Object.entries(snippets))("the snippet %s", (_name, snippet) => {
  test("leaves no placeholder unexpanded", () => {
    expect(expanded(snippet)).not.toMatch(/\$|\|\}/);
  });

  test("is read without a problem", () => {
    expect(describeProblems(asFile(snippet))).toEqual([]);
  });

  test("has the formatter's own layout", () => {
    expect(format(asFile(snippet)).text).toBe(asFile(snippet));
  });
});

test("there is a snippet for every declaration and for the waiver", () => {
  const prefixes = new Set(Object.values(snippets).map(({ prefix }) => prefix));
  expect([...declarationKeywords, "waive"].filter((keyword) => !prefixes.has(keyword))).toEqual([]);
});

test("a build's categories are those of the vocabulary", () => {
  const choices = /category: \$\{\d+\|([^|]*)\|\}/.exec(snippets.Build?.body.join("\n") ?? "")?.[1];
  expect(choices?.split(",")).toEqual(Object.keys(bikeCategories));
});
