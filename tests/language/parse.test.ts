import { describe, expect, it } from "vitest";
import { parseDeclaration, parseStray } from "../../grammar/parse.ts";
import { split } from "../../grammar/split.ts";
import type { FieldEntry, GroupEntry, Span } from "../../grammar/tree.ts";
import { describeBlock, describeProblems, problemsOf } from "./support.ts";

function build(body: string): string {
  return `build a {\n  ${body}\n}\n`;
}

function place(text: string, span: Span): string {
  return text.slice(span.start, span.end);
}

describe("headers", () => {
  it.each([
    ['workshop north-yard "North Yard Cycles" {', { name: "north-yard", title: "North Yard Cycles" }],
    [
      'part cassette corrie.wide "Wide" from corrie.narrow {',
      { kind: "cassette", name: "corrie.wide", title: "Wide", from: "corrie.narrow" },
    ],
    [
      'part cassette corrie.wide from corrie.narrow "Wide" {',
      { kind: "cassette", name: "corrie.wide", title: "Wide", from: "corrie.narrow" },
    ],
    ["build a {", { name: "a" }],
    ['standard bottom-bracket "M10 x 1" "Title" {', { kind: "bottom-bracket", name: "M10 x 1", title: "Title" }],
    ['standard axle 12x148 "12 mm" {', { kind: "axle", name: "12x148", title: "12 mm" }],
    ['rule tall "Tall" {', { name: "tall", title: "Tall" }],
    ['record "FL-1" of a {', { name: "FL-1", of: "a" }],
  ])("%s", (line, expected) => {
    const { header, problems } = parseDeclaration(`${line}\n}\n`);
    expect(problems).toEqual([]);
    const found = Object.fromEntries(
      (["kind", "name", "title", "from", "of"] as const).flatMap((part) => {
        const token = header[part];
        return token === undefined ? [] : [[part, token.text]];
      }),
    );
    expect(found).toEqual(expected);
  });

  it.each([
    ["part cassette {\n}\n", 'language/missing-name at "cassette"'],
    ['part "x" {\n}\n', 'language/missing-kind at "part"'],
    ["build a from {\n}\n", 'language/missing-base at "from"'],
    ['record "x" {\n}\n', 'language/missing-build at "\\"x\\""'],
    ['record "x" of {\n}\n', 'language/missing-build at "of"'],
    ["build a b {\n}\n", 'language/unexpected at "b"'],
    ["rule a from b {\n}\n", 'language/unexpected at "from"'],
    ["build a of b {\n}\n", 'language/unexpected at "of"'],
    ["rule a\n", 'language/missing-block at "rule a"'],
  ])("%j", (text, problem) => {
    expect(describeProblems(text)).toEqual([problem]);
  });

  it("need no block after a base", () => {
    expect(describeProblems("part chain a from b\n")).toEqual([]);
  });

  it("carry the documentation above them, and only that", () => {
    const text = "/// One.\n// not this\n//// nor this\n///  Two.\n///\nbuild a {\n  /// inside\n}\n";
    expect(parseDeclaration(text).documentation).toBe("One.\n Two.\n");
  });
});

describe("entries", () => {
  it.each([
    ["links: 116", ["links: 116"]],
    ["cogs: 10-12-14 t", ["cogs: 10-12-14 t"]],
    ["cockpit.stem.spacers-below: 5 mm", ["cockpit.stem.spacers-below: 5 mm"]],
    ["cassette: corrie.wide or corrie.narrow", ["cassette: corrie.wide | corrie.narrow"]],
    ["tension: 1180, 1150, 1210 N", ["tension: 1180 , 1150 , 1210 N"]],
    ["price: <= GBP 3200", ["price: <= GBP 3200"]],
    ['note: "a; b } // c"', ['note: "a; b } // c"']],
    ['note: "a \\"b\\" \\\\ \\c"', ['note: "a \\"b\\" \\\\ \\\\c"']],
    ["a: 1; b: 2;; c: 3;", ["a: 1", "b: 2", "c: 3"]],
    ["rider { mass: 78 kg; limits { a: 1 } }", ["rider", "  mass: 78 kg", "  limits", "    a: 1"]],
    ["chain: b { links: 116 }", ["chain: b", "  links: 116"]],
    ["waive: b", ["waive: b"]],
    ["part: b", ["part: b"]],
    ['url: "http://a" // b', ['url: "http://a"']],
    ["10x12: b/c", ["10x12: b/c"]],
    ["路: 路", ["路: 路"]],
  ])("%s", (body, expected) => {
    const tree = parseDeclaration(build(body));
    expect(tree.problems).toEqual([]);
    expect(describeBlock(tree.block)).toEqual(expected);
  });

  it.each([
    ["links:", 'language/missing-value at ":"'],
    ["drive", 'language/incomplete-entry at "drive"'],
    [": 116", 'language/expected at ":"'],
    [") links: 116", 'language/unexpected at ")"'],
    ["links: 116: 2", 'language/unexpected at ":"'],
    ["links: , 116", 'language/unexpected at ","'],
    ["links: 116, , 2", 'language/expected at ","'],
    ["chain: or b", 'language/unexpected at "or"'],
    ["chain: b or", 'language/expected at "or"'],
    ["a..b: 1", 'language/empty-path-segment at "a..b"'],
    ["a.: 1", 'language/empty-path-segment at "a."'],
    ["{ a: 1 }", 'language/missing-key at "{"'],
  ])("%s is refused", (body, problem) => {
    expect(describeProblems(build(body))).toEqual([problem]);
  });

  it("know their places", () => {
    const text = build("drivetrain { chain: corrie.link or corrie.long { links: 116 } } // end");
    const group = parseDeclaration(text).block!.entries[0] as GroupEntry;
    const slot = group.block.entries[0] as FieldEntry;
    expect(place(text, group.span)).toBe("drivetrain { chain: corrie.link or corrie.long { links: 116 } }");
    expect(place(text, group.path.span)).toBe("drivetrain");
    expect(place(text, group.block.span)).toBe("{ chain: corrie.link or corrie.long { links: 116 } }");
    expect(place(text, slot.span)).toBe("chain: corrie.link or corrie.long { links: 116 }");
    expect(place(text, slot.value.span)).toBe("corrie.link or corrie.long");
    expect(slot.value.tokens.map(({ span }) => place(text, span))).toEqual(["corrie.link", "or", "corrie.long"]);
    expect(group.block.oneLine && slot.block!.oneLine).toBe(true);
  });

  it("know the places of a path's segments", () => {
    const text = build("cockpit.stem.spacers-below: 5 mm");
    const { path } = parseDeclaration(text).block!.entries[0] as FieldEntry;
    expect(path.segments.map((segment) => [segment.text, place(text, segment.span)])).toEqual([
      ["cockpit", "cockpit"],
      ["stem", "stem"],
      ["spacers-below", "spacers-below"],
    ]);
  });
});

describe("waivers", () => {
  it("have a code, a path, a reason and a date", () => {
    const line = 'waive drivetrain/chain-length at drivetrain.chain "Owner asked" until 2027-03-31';
    expect(describeProblems(build(line))).toEqual([]);
    expect(describeBlock(parseDeclaration(build(line)).block)).toEqual([line]);
  });

  it("may leave out path and date", () => {
    expect(describeProblems(build('waive build/budget-mass "Agreed"'))).toEqual([]);
  });

  it.each([
    ["waive", ['language/missing-code at "waive"', 'language/missing-reason at "waive"']],
    ["waive a/b", ['language/missing-reason at "waive"']],
    ['waive a/b at "x"', ['language/missing-path at "at"']],
    ['waive a/b "x" until', ['language/missing-date at "until"']],
    ['waive a/b "x" 2027-03-31', ['language/unexpected at "2027-03-31"']],
    ['waive a/b "x" { c: d }', ['language/unexpected at "{"']],
  ])("%s is refused", (line, problems) => {
    expect(describeProblems(build(line))).toEqual(problems);
  });
});

describe("where a further entry goes", () => {
  it.each([
    ["build a {\n  frame: b|\n}\n", "after the last entry"],
    ["build a {\n  frame: b // c|\n}\n", "after its comment"],
    ["build a {\n  frame: b\n  // c|\n}\n", "after a comment of its own"],
    ["build a {|\n}\n", "just inside an empty block"],
    ["build a { frame: b| }\n", "before the blank of a one-line block"],
    ["build a {\n  frame: b|\n\n", "after the last entry of an open block"],
    ["build a {\n  frame: b\n  fork { c: d }|\n} // end\n", "after the last block"],
  ])("%j: %s", (source) => {
    const { block } = parseDeclaration(source.replace("|", ""));
    expect(block!.insertAt).toBe(source.indexOf("|"));
  });
});

describe("braces", () => {
  it.each([
    ["build a {\n  frame: b\n", ['language/missing-closing-brace at "{"']],
    ["build a {\n}\n}\n", ['language/stray-brace at "}"']],
    ["build a {\n  }\n  frame: b\n}\n", ['language/stray-brace at "}"']],
    ["build a\n  frame: b\n}\n", ['language/missing-opening-brace at "a"']],
    ["build a {\n  rider { mass: 1 kg\n}\n", ['language/missing-closing-brace at "{"']],
    ["build a {\n  rider {\n}\n", ['language/missing-closing-brace at "{"']],
    ["build a\n{\n}\n", ['language/brace-on-own-line at "{"']],
    ["build a { frame: b\n  fork: c\n}\n", ['language/block-spans-lines at "{"']],
  ])("%j", (text, problems) => {
    expect(describeProblems(text)).toEqual(problems);
  });

  it("are mended by their fixes", () => {
    for (const text of ["build a {\n  rider { mass: 1 kg\n}\n", "build a {\n  rider {\n    mass: 1 kg\n}\n"]) {
      const [problem] = problemsOf(text);
      const [change] = problem!.fix!.changes;
      const mended = text.slice(0, change!.span.start) + change!.text + text.slice(change!.span.end);
      expect(problemsOf(mended)).toEqual([]);
      expect(describeBlock(parseDeclaration(mended).block)).toEqual(["rider", "  mass: 1 kg"]);
    }
  });

  it("are read sixteen deep, and one problem says so beyond", () => {
    const nested = (depth: number): string => `build a {\n${"b {\n".repeat(depth)}${"}\n".repeat(depth)}}\n`;
    expect(describeProblems(nested(15))).toEqual([]);
    expect(describeProblems(nested(16))).toEqual(['language/nesting-limit at "{"']);
    expect(describeProblems(nested(5000))).toEqual(['language/nesting-limit at "{"']);
    expect(describeBlock(parseDeclaration(nested(40)).block)).toHaveLength(15);
  });
});

describe("text outside declarations", () => {
  it("may be blanks and comments", () => {
    expect(parseStray(" \n// a comment\n\n/// another\n\t\n")).toEqual([]);
  });

  it.each([
    ["frame: b\nfork: c\n", ["language/outside-declaration"]],
    ["biuld a {\n  frame: b\n}\n", ["language/unknown-declaration"]],
    ["build\n", ["language/incomplete-declaration"]],
    ["}\n", ["language/stray-brace"]],
    ["@@@ $$$ {{{ ))\n", ["language/outside-declaration"]],
  ])("%j", (text, codes) => {
    expect(parseStray(text).map(({ code }) => code)).toEqual(codes);
  });

  it("is told apart from a declaration that comes before it", () => {
    const text = "build a {\n}\nframe: b\nprat chain c {\n}\n";
    expect(describeProblems(text)).toEqual([
      'language/outside-declaration at "frame: b"',
      'language/unknown-declaration at "prat"',
    ]);
  });
});

describe("a tree", () => {
  it("is the same wherever its declaration stands in the file", () => {
    const text = "build a {\n  frame: b\n}\n";
    const moved = `// above\n\nbuild z {\n}\n\n${text}`;
    const [, , chunk] = split(moved);
    expect(parseDeclaration(moved.slice(chunk!.start, chunk!.end))).toEqual(parseDeclaration(text));
  });
});
