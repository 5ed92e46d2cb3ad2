import { describe, expect, it } from "vitest";
import { blockAt, entryAt, pathAt, type TokenAt, tokenAt } from "../../grammar/navigation.ts";
import { parseDeclaration } from "../../grammar/parse.ts";

/** The tree of a text with one `|` in it, and the offset of that cursor. */
function at(source: string): { tree: ReturnType<typeof parseDeclaration>; offset: number; text: string } {
  const offset = source.indexOf("|");
  const text = source.replace("|", "");
  return { tree: parseDeclaration(text), offset, text };
}

function described(token: TokenAt | undefined): string | undefined {
  return token === undefined ? undefined : `${token.role} ${token.text}${token.segment ? ` #${token.segment}` : ""}`;
}

describe("the token at a cursor", () => {
  it.each([
    ["bu|ild a {\n}\n", "keyword build"],
    ["part cas|sette a {\n}\n", "kind cassette"],
    ['part cassette a| "B" from c {\n}\n', "name a"],
    ['part cassette a "|B" from c {\n}\n', "title B"],
    ['part cassette a "B" from c| {\n}\n', "from c"],
    ['record "x" of b| {\n}\n', "of b"],
    ["build a {\n  cockpit.st|em.spacers-below: 5 mm\n}\n", "key stem #1"],
    ["build a {\n  cockpit|.stem: b\n}\n", "key cockpit"],
    ["build a {\n  driv|etrain {\n  }\n}\n", "key drivetrain"],
    ["build a {\n  chain: b or c|\n}\n", "value c"],
    ["build a {\n  chain: b o|r c\n}\n", "value or"],
    ["build a {\n  mass: |<=5 kg\n}\n", "value <="],
    ["build a {\n  mass: <=|5 kg\n}\n", "value 5"],
    ['build a {\n  waive dr/ch|ain at b.c "d" until 2027-01-01\n}\n', "waive-code dr/chain"],
    ['build a {\n  waive dr/chain at b.c| "d" until 2027-01-01\n}\n', "waive-path c #1"],
    ['build a {\n  waive dr/chain at b.c "|d" until 2027-01-01\n}\n', "waive-reason d"],
    ['build a {\n  waive dr/chain at b.c "d" until 2027|-01-01\n}\n', "waive-until 2027-01-01"],
    ["build a {\n|\n}\n", undefined],
    ["build a {\n  chain: | \n}\n", undefined],
    ["build a {\n  // cha|in\n}\n", undefined],
  ])("%j", (source, expected) => {
    const { tree, offset } = at(source);
    expect(described(tokenAt(tree, offset))).toBe(expected);
  });
});

describe("the path at a cursor", () => {
  it.each([
    ["build a {\n  drivetrain {\n    chain: b { li|nks: 116 }\n  }\n}\n", "drivetrain.chain.links"],
    ["build a {\n  drivetrain {\n    chain: b { | }\n  }\n}\n", "drivetrain.chain"],
    ["build a {\n  drivetrain {\n    |\n  }\n}\n", "drivetrain"],
    ["build a {\n  cockpit.stem.spacers-below: |5 mm\n}\n", "cockpit.stem.spacers-below"],
    ["build a {\n  drivetrain {\n    chain: |\n  }\n}\n", "drivetrain.chain"],
    ["build a {\n  |\n  frame: b\n}\n", ""],
    ["build |a {\n}\n", ""],
    ["build a {\n  drivetrain {\n    chain: b\n    |\n", "drivetrain"],
  ])("%j", (source, expected) => {
    const { tree, offset } = at(source);
    expect(pathAt(tree, offset).join(".")).toBe(expected);
  });
});

describe("the block and the entry at a cursor", () => {
  it.each([
    ["build a |{\n  b { c: d }\n}\n", undefined, undefined],
    ["build a {|\n  b { c: d }\n}\n", "{\n  b { c: d }\n}", undefined],
    ["build a {\n  b |{ c: d }\n}\n", "{\n  b { c: d }\n}", "b { c: d }"],
    ["build a {\n  b { c|: d }\n}\n", "{ c: d }", "c: d"],
    ["build a {\n  b { c: d }|\n}\n", "{\n  b { c: d }\n}", "b { c: d }"],
    ["build a {\n  b { c: d }\n}|\n", undefined, undefined],
  ])("%j", (source, block, entry) => {
    const { tree, offset, text } = at(source);
    const cut = (span: { start: number; end: number } | undefined): string | undefined =>
      span === undefined ? undefined : text.slice(span.start, span.end);
    expect(cut(blockAt(tree, offset)?.span)).toBe(block);
    expect(cut(entryAt(tree, offset)?.span)).toBe(entry);
  });
});
