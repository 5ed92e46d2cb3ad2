import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { formatEdits } from "../../grammar/format.ts";
import { declarationLimit, problemLimit } from "../../grammar/limits.ts";
import { blockAt, entriesAt, pathAt, tokenAt } from "../../grammar/navigation.ts";
import { parseDeclaration, parseStray } from "../../grammar/parse.ts";
import { split } from "../../grammar/split.ts";
import type { BlockTree, DeclarationTree, Span } from "../../grammar/tree.ts";
import { anyText } from "./arbitraries.ts";

/** Every place a tree holds, so that none can lie outside the text or run backwards. */
function spansOf(value: unknown, found: Span[] = []): Span[] {
  if (Array.isArray(value)) for (const each of value) spansOf(each, found);
  else if (typeof value === "object" && value !== null) {
    if ("start" in value && "end" in value) found.push(value as Span);
    for (const each of Object.values(value)) spansOf(each, found);
  }
  return found;
}

function depthOf(block: BlockTree | undefined): number {
  if (block === undefined) return 0;
  const inner = block.entries.map((entry) => (entry.form === "waive" ? 0 : depthOf(entry.block)));
  return 1 + Math.max(0, ...inner);
}

function checkTree(tree: DeclarationTree, text: string): void {
  for (const { start, end } of spansOf(tree)) {
    expect(start).toBeGreaterThanOrEqual(0);
    expect(end).toBeGreaterThanOrEqual(start);
    expect(end).toBeLessThanOrEqual(text.length);
  }
  expect(depthOf(tree.block)).toBeLessThanOrEqual(16);
  expect(tree.problems.length).toBeLessThanOrEqual(problemLimit + 1);
  for (const { message, code } of tree.problems) {
    expect(code).toMatch(/^language\/[a-z-]+$/);
    expect(message).toMatch(/[.?]$/);
  }
}

describe("any text", () => {
  it("is parsed without throwing, with every place inside the text", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        for (const { start, end, keyword } of split(text)) {
          const own = text.slice(start, end);
          if (keyword === undefined)
            expect(spansOf(parseStray(own)).every((span) => span.end <= own.length)).toBe(true);
          else checkTree(parseDeclaration(own), own);
        }
        checkTree(parseDeclaration(text), text);
        parseStray(text);
      }),
      { numRuns: 1000 },
    );
  });

  it("can be asked about at every offset", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const tree = parseDeclaration(`build a {\n${text}\n}\n`);
        for (let offset = -1; offset < text.length + 20; offset++) {
          tokenAt(tree, offset);
          blockAt(tree, offset);
          pathAt(tree, offset);
          for (const { span } of entriesAt(tree, offset)) {
            expect(offset >= span.start && offset <= span.end).toBe(true);
          }
        }
      }),
    );
  });
});

describe("hostile text", () => {
  const big = 100_000;
  const hostile: Record<string, string> = {
    "opening braces": `build a {\n${"{".repeat(big)}`,
    "opening braces on lines": `build a {\n${"a {\n".repeat(big)}`,
    "closing braces on lines": `build a {\n${"}\n".repeat(big)}`,
    "matched braces": `build a ${"{".repeat(big)}${"}".repeat(big)}`,
    "opening parentheses": `rule a {\n  require: ${"(".repeat(big)}`,
    negations: `rule a {\n  require: ${"not ".repeat(big)}a`,
    "a long sum": `rule a {\n  require: a${" + a".repeat(big)}`,
    "escaped quotes": `build a {\n  b: c${'"\\'.repeat(big)}`,
    "curly quotes": `build a {\n  b: c${"“ a".repeat(big)}`,
    "single quotes": `build a {\n  b: ${"'a ".repeat(big)}`,
    "inch marks": `build a {\n  b: ${'1"'.repeat(big)}`,
    "hash signs": `build a {\n  b: ${"#a ".repeat(big)}`,
    addresses: `build a {\n  b: ${"b://".repeat(big)}`,
    "commas in numbers": `build a {\n  b: ${"1,2".repeat(big)}`,
    "many words": `build a {\n  b: ${"c ".repeat(big)}`,
    alternates: `build a {\n  b: c${" or c".repeat(big)}`,
    dots: `build a {\n  ${"a.".repeat(big)}: b`,
    "dash items": `build a {\n  b:\n${"- c\n".repeat(big)}`,
    "open brackets": `build a {\n${"b: [\n".repeat(big)}`,
    "keys without values": `build a {\n${"b:\n".repeat(big)}`,
    "deeper and deeper lines": `build a {\n${Array.from({ length: 1300 }, (_, depth) => `${" ".repeat(depth)}a:\n`).join("")}`,
    "invisible characters": `build a {\n  b: ${"\u200bx ".repeat(big)}`,
    "null characters": `build a {\n${"\0".repeat(big)}`,
    "lone surrogates": `build a {\n  b: ${"\ud800 \udc00 ".repeat(big)}`,
    "header words": `build ${"from a ".repeat(big)}{\n}`,
    declarations: "build a {\n".repeat(big / 10),
    comments: "//\n".repeat(big),
    "carriage returns": `build a {${"\r".repeat(big)}}`,
  };

  it.each(Object.entries(hostile))("is read and formatted in reasonable time: %s", (_title, text) => {
    const started = performance.now();
    for (const { start, end, keyword } of split(text)) {
      const own = text.slice(start, end);
      if (keyword === undefined) parseStray(own);
      else expect(parseDeclaration(own).problems.length).toBeLessThanOrEqual(problemLimit + 1);
    }
    formatEdits(text);
    // Anything worse than linear takes minutes here; a slow machine takes seconds.
    expect(performance.now() - started).toBeLessThan(15_000);
  });

  it("of 50 MB is split and refused with one problem", () => {
    const text = `build a {\n${"  frame: moor.fellside-l\n".repeat(2_000_000)}}\n`;
    expect(text.length).toBeGreaterThan(50_000_000);
    const [chunk, ...others] = split(text);
    expect(others).toEqual([]);
    const tree = parseDeclaration(text.slice(chunk!.start, chunk!.end));
    expect(tree.problems.map(({ code }) => code)).toEqual(["language/too-long"]);
    expect(tree.header.name?.text).toBe("a");
    expect(parseStray("x ".repeat(declarationLimit)).map(({ code }) => code)).toEqual(["language/too-long"]);
  });

  it("says how many problems are not listed", () => {
    const tree = parseDeclaration(`build a {\n${"b =\n".repeat(500)}}\n`);
    expect(tree.problems).toHaveLength(problemLimit + 1);
    expect(tree.problems.at(-1)!.code).toBe("language/more-problems");
    expect(tree.problems.at(-1)!.message).toMatch(/^\d+ further problems/);
  });
});
