import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseDeclaration } from "../../grammar/parse.ts";
import { split } from "../../grammar/split.ts";
import type { Chunk } from "../../grammar/tree.ts";
import { anyText, declarationText } from "./arbitraries.ts";

function texts(source: string): string[] {
  return split(source).map((chunk) => source.slice(chunk.start, chunk.end));
}

function names({ start: _start, end: _end, ...rest }: Chunk): object {
  return rest;
}

describe("chunks", () => {
  it("tile any text exactly, none of them empty", () => {
    fc.assert(
      fc.property(anyText, (text) => {
        const chunks = split(text);
        expect(texts(text).join("")).toBe(text);
        expect(chunks.every((chunk) => chunk.end > chunk.start)).toBe(true);
        // Only the first can be without a keyword.
        expect(chunks.slice(1).every((chunk) => chunk.keyword !== undefined)).toBe(true);
      }),
    );
  });

  it("are found again in any joining of declarations", () => {
    fc.assert(
      fc.property(fc.array(declarationText, { minLength: 1, maxLength: 6 }), (declarations) => {
        expect(texts(declarations.join("\n"))).toEqual(
          declarations.map((each, index) => (index < declarations.length - 1 ? `${each}\n` : each)),
        );
      }),
    );
  });

  it.each([
    ["\n", "line feeds"],
    ["\r\n", "carriage returns with line feeds"],
    ["\r", "carriage returns"],
  ])("are found with %j as line end (%s)", (lineEnd) => {
    const source = ["build a {", "}", "", "/// b", "part chain b {", "}", ""].join(lineEnd);
    expect(texts(source)).toEqual([
      ["build a {", "}", "", ""].join(lineEnd),
      ["/// b", "part chain b {", "}", ""].join(lineEnd),
    ]);
  });
});

describe("a declaration starts", () => {
  it.each([
    [
      "whatever the braces before it say",
      "build a {\n  rider {\nbuild b {\n}\n",
      ["build a {\n  rider {\n", "build b {\n}\n"],
    ],
    ["with blanks before it", "build a {\n}\n\t  build b {\n}\n", ["build a {\n}\n", "\t  build b {\n}\n"]],
    ["with a text after its keyword", 'record"A 1" of b {\n}\n', ['record"A 1" of b {\n}\n']],
    ["after a byte order mark", "\ufeffbuild a {\n}\n", ["\ufeffbuild a {\n}\n"]],
    [
      "with the comments straight above it",
      "build a {\n}\n// x\n/// y\nbuild b {\n}\n",
      ["build a {\n}\n", "// x\n/// y\nbuild b {\n}\n"],
    ],
    [
      "but not with comments above an empty line",
      "// x\n\n/// y\nbuild b {\n}\n",
      ["// x\n\n", "/// y\nbuild b {\n}\n"],
    ],
    [
      "even inside an unclosed text",
      'build a {\n  note: "x\nbuild b {\n}\n',
      ['build a {\n  note: "x\n', "build b {\n}\n"],
    ],
  ])("%s", (_title, source, expected) => {
    expect(texts(source)).toEqual(expected);
  });

  it.each([
    "part: x",
    "build {",
    "rule",
    "record = 1",
    "builder b {",
    "rule-x y",
    "standard // x",
    "  part\n",
    "x build a {",
  ])("not at `%s`", (line) => {
    const source = `build a {\n${line}\n}\n`;
    expect(texts(source)).toEqual([source]);
  });
});

describe("the names of a chunk", () => {
  it.each<[string, object]>([
    ['workshop north-yard "North Yard" {', { keyword: "workshop", name: "north-yard", title: "North Yard" }],
    ["part cassette corrie.wide {", { keyword: "part", kind: "cassette", name: "corrie.wide" }],
    [
      'part cassette b "B \\"2\\"" from a {',
      { keyword: "part", kind: "cassette", name: "b", title: 'B "2"', from: "a" },
    ],
    ['build b from a "B" {', { keyword: "build", name: "b", title: "B", from: "a" }],
    ['standard axle 12x148 "12 by 148" {', { keyword: "standard", kind: "axle", name: "12x148", title: "12 by 148" }],
    ['standard axle "M10 x 1" "Solid" {', { keyword: "standard", kind: "axle", name: "M10 x 1", title: "Solid" }],
    ['record "FL 1" of a {', { keyword: "record", name: "FL 1", of: "a" }],
    ["build b from {", { keyword: "build", name: "b" }],
    ["build b", { keyword: "build", name: "b" }],
    ["part cassette", { keyword: "part", kind: "cassette" }],
    ['build b // "x" from y', { keyword: "build", name: "b" }],
  ])("%s", (header, expected) => {
    expect(split(`${header}\n}\n`).map(names)).toEqual([expected]);
  });

  it("agree with the parser on every well-formed header", () => {
    fc.assert(
      fc.property(declarationText, (text) => {
        const [chunk] = split(text);
        const { header, problems } = parseDeclaration(text);
        expect(problems).toEqual([]);
        expect(names(chunk!)).toEqual({
          keyword: header.keyword,
          ...Object.fromEntries(
            (["kind", "name", "title", "from", "of"] as const)
              .filter((part) => header[part] !== undefined)
              .map((part) => [part, header[part]!.text]),
          ),
        });
      }),
    );
  });
});
