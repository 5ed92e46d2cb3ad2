import { existsSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { format } from "../../grammar/format.ts";
import { parseDeclaration } from "../../grammar/parse.ts";
import { split } from "../../grammar/split.ts";
import { generatedFiles } from "../../server/generated-files.ts";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");
const files = [...generatedFiles()];

describe("what is written from the declarations is current (`npm run generate`)", () => {
  test.each(files)("%s", (path, text) => {
    const file = join(root, path);
    expect(existsSync(file)).toBe(true);
    expect(readFileSync(file, "utf8")).toBe(text);
  });
});

const examples = files
  .filter(([path]) => path.endsWith(".md"))
  .concat(
    ["README.md", "DEVELOPERS.md"]
      .filter((name) => existsSync(join(root, name)))
      .map((name) => [name, readFileSync(join(root, name), "utf8")]),
  )
  .flatMap(([path, text]) =>
    [...text.matchAll(/```ferrule\n([\s\S]*?)\n```/g)].map((match, index) => [`${path} ${index + 1}`, `${match[1]}\n`]),
  ) as [string, string][];

describe("every example in the documents reads without a problem and is in canonical form", () => {
  test("there are examples", () => {
    expect(examples.length).toBeGreaterThan(5);
  });

  test.each(examples)("%s", (_, text) => {
    const problems = split(text).flatMap((chunk) =>
      chunk.keyword === undefined
        ? []
        : parseDeclaration(text.slice(chunk.start, chunk.end)).problems.map(({ message }) => message),
    );
    expect(problems).toEqual([]);
    expect(format(text).text).toBe(text);
  });
});
