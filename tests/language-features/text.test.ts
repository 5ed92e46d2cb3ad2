import { describe, expect, test } from "vitest";
import { diagnostics } from "../../server/language-features/diagnostics.ts";
import { documentSymbols, flatSymbols } from "../../server/language-features/document-symbols.ts";
import { foldingRanges } from "../../server/language-features/folding-ranges.ts";
import { formatDocument, formatLines, formatTyped } from "../../server/language-features/formatting.ts";
import { inlayHints } from "../../server/language-features/inlay-hints.ts";
import { semanticTokens, semanticTokensLegend } from "../../server/language-features/semantic-tokens.ts";
import { applied, library, marked, plain, richClient } from "./support.ts";

describe("semantic tokens", () => {
  /** Each token as `text type.modifier`, in order. */
  function tokens(text: string, range?: Parameters<typeof semanticTokens>[2]): string[] {
    const source = marked({ "a.ferrule": text });
    const lines = source.text().split("\n");
    const { data } = semanticTokens(source.engine, source.uri, range);
    const found: string[] = [];
    let line = 0;
    let character = 0;
    for (let index = 0; index < data.length; index += 5) {
      const [down = 0, along = 0, length = 0, type = 0, bits = 0] = data.slice(index, index + 5);
      character = down === 0 ? character + along : along;
      line += down;
      const modifiers = semanticTokensLegend.tokenModifiers.filter((_, bit) => bits & (1 << bit));
      const word = lines[line]?.slice(character, character + length);
      found.push([word, [semanticTokensLegend.tokenTypes[type], ...modifiers].join(".")].join(" "));
    }
    return found;
  }

  test("tell keywords, kinds, names, fields, numbers, units, codes and words apart", () => {
    expect(
      tokens(
        `/// Stocked.\npart cassette north.ten "Ten" from other {\n  speeds: 12\n  mass: 372 g // weighed\n  freehub: stepped-driver\n  material: steel\n  single-cogs: yes\n}\n`,
      ),
    ).toEqual([
      "/// Stocked. comment.documentation",
      "part keyword",
      "cassette type.defaultLibrary",
      "north.ten class.declaration",
      '"Ten" string',
      "from keyword",
      "other class",
      "speeds property.defaultLibrary",
      "12 number",
      "mass property.defaultLibrary",
      "372 number",
      "g unit",
      "// weighed comment",
      "freehub property.defaultLibrary",
      "stepped-driver parameter",
      "material property.defaultLibrary",
      "steel enumMember",
      "single-cogs property.defaultLibrary",
      "yes enumMember",
    ]);
  });

  test("tell assemblies, slots, parts, settings and waivers apart", () => {
    expect(
      tokens(
        `build x "X" {\n  drivetrain {\n    chain: a or none { links: 116 }\n  }\n  cockpit.stem.flipped: no\n  waive drivetrain/chain-length at drivetrain.chain "why" until 2027-01-01\n  unknown: thing\n}\n`,
      ).slice(3),
    ).toEqual([
      "drivetrain namespace.defaultLibrary",
      "chain variable.defaultLibrary",
      "a class",
      "or keyword",
      "none keyword",
      "links property.defaultLibrary",
      "116 number",
      "cockpit namespace.defaultLibrary",
      "stem variable.defaultLibrary",
      "flipped property.defaultLibrary",
      "no enumMember",
      "waive keyword",
      "drivetrain/chain-length function",
      "at keyword",
      "drivetrain variable",
      "chain variable",
      '"why" string',
      "until keyword",
      "2027-01-01 number",
      "unknown property",
    ]);
  });

  test("of a range are those of the whole that touch it", () => {
    const text = `part cassette a "A" { speeds: 12 }\npart cassette b "B" { speeds: 11 }\n`;
    const range = { start: { line: 1, character: 0 }, end: { line: 1, character: 15 } };
    expect(tokens(text, range)).toEqual(["part keyword", "cassette type.defaultLibrary", "b class.declaration"]);
  });
});

describe("symbols", () => {
  const text = `part cassette north.ten "Ten" {\n  speeds: 12\n}\nbuild x "X" from y {\n  drivetrain {\n    chain: a { links: 116 }\n  }\n  waive a/b "c" until 2027-01-01\n}\npart `;

  test("of a document are its declarations with what stands in them", () => {
    const source = marked({ "a.ferrule": text });
    const outline = (symbols: ReturnType<typeof documentSymbols>): unknown[] =>
      symbols.map(({ name, detail, children }) => [name, detail, ...(children ? [outline(children)] : [])]);
    expect(outline(documentSymbols(source.engine, source.uri))).toEqual([
      ["north.ten", "cassette · Ten", [["speeds", "12"]]],
      [
        "x",
        "X · from y",
        [
          ["drivetrain", "", [["chain", "a", [["links", "116"]]]]],
          ["waive a/b", "c"],
        ],
      ],
    ]);
  });

  test("hold their children, and a flat list names what each is in", () => {
    const source = marked({ "a.ferrule": text });
    const check = (symbols: ReturnType<typeof documentSymbols>): void => {
      for (const { name, range, selectionRange, children } of symbols) {
        expect(name).not.toBe("");
        expect(range.start.line <= selectionRange.start.line && selectionRange.end.line <= range.end.line).toBe(true);
        if (children) check(children);
      }
    };
    check(documentSymbols(source.engine, source.uri));
    const flat = flatSymbols(source.engine, source.uri, source.uri);
    expect(flat.map(({ name, containerName }) => `${containerName ?? ""}/${name}`)).toContain("chain/links");
  });

  test("that have no name yet are named by their keyword", () => {
    const source = marked({ "a.ferrule": `part cassette {\n}\nrecord "" of x {\n}\n` });
    expect(documentSymbols(source.engine, source.uri).map(({ name }) => name)).toEqual(["part", "record"]);
  });
});

describe("folding", () => {
  test("takes blocks of several lines and runs of remarks, and leaves the closing line in view", () => {
    const source = marked({
      "a.ferrule": `// one\n// two\npart cassette a "A" {\n  speeds: 12\n  own { bin: 3 }\n}\n\n// alone\nbuild x "X" {\n  rider {\n    mass: 70 kg\n  }\n}\n`,
    });
    expect(foldingRanges(source.engine, source.uri)).toEqual([
      { startLine: 2, endLine: 4 },
      { startLine: 8, endLine: 11 },
      { startLine: 9, endLine: 10 },
      { startLine: 0, endLine: 1, kind: "comment" },
    ]);
  });
});

describe("formatting", () => {
  const messy = `part cassette a "A" {\nspeeds:12\n    mass:  372 g // weighed\n}\npart cassette b "B" {\nspeeds:11\n}\n`;

  test("of a document makes it canonical and is done after once", () => {
    const text = applied(messy, formatDocument(messy));
    expect(text).toBe(
      `part cassette a "A" {\n  speeds: 12\n  mass: 372 g // weighed\n}\n\npart cassette b "B" {\n  speeds: 11\n}\n`,
    );
    expect(formatDocument(text)).toEqual([]);
  });

  test("of a range leaves the other lines alone", () => {
    const range = { start: { line: 1, character: 2 }, end: { line: 1, character: 4 } };
    expect(applied(messy, formatLines(messy, range))).toBe(messy.replace("speeds:12", "  speeds: 12"));
  });

  test("while typing: behind a new line the line above, behind a brace its block, and never the cursor's own line", () => {
    const { text, position } = plain(`part cassette a "A" {\nspeeds:12\n<|>\n}\n`);
    expect(applied(text, formatTyped(text, position, "\n"))).toBe(`part cassette a "A" {\n  speeds: 12\n\n}\n`);
    const closed = plain(`part cassette a "A" {\nspeeds:12\n}<|>\npart cassette b "B" {\nspeeds:11\n}\n`);
    expect(applied(closed.text, formatTyped(closed.text, closed.position, "}"))).toBe(
      `part cassette a "A" {\n  speeds: 12\n}\npart cassette b "B" {\nspeeds:11\n}\n`,
    );
    const half = plain(`build x "X" {\ndrivetrain {\nchain:\n<|>`);
    expect(formatTyped(half.text, half.position, "\n")).toEqual([]);
  });

  test("leaves a declaration with an error as it is, and does the others", () => {
    const text = messy.replace("mass:  372 g", "mass:");
    expect(applied(text, formatDocument(text))).toBe(text.replace("speeds:11", "  speeds: 11"));
  });
});

describe("findings", () => {
  test("keep their places when lines come in above, also those of declarations that nobody touched", () => {
    const body = `build x "X" {\n  drivetrain {\n    rear-derailleur: [|corrie.short-12|]\n    cassette: corrie.wide-10-52\n    crankset: corrie.arm-32\n  }\n}\n`;
    const source = marked({ "parts.ferrule": library, "b.ferrule": body });
    const rangeOf = () =>
      diagnostics(source.engine, source.uri, richClient).find(({ code }) => code === "drivetrain/cage-capacity")?.range;
    expect(rangeOf()).toEqual(source.ranges[0]?.range);
    source.engine.update([{ uri: source.uri, text: `// one\n\n${source.text()}` }]);
    expect(rangeOf()?.start.line).toBe((source.ranges[0]?.range.start.line ?? 0) + 2);
    // A library that moves takes the related places along.
    const related = () =>
      diagnostics(source.engine, source.uri, richClient)
        .find(({ code }) => code === "drivetrain/cage-capacity")
        ?.relatedInformation?.map(({ location }) => location.range.start.line);
    const before = related();
    source.engine.update([{ uri: "file:///workshop/parts.ferrule", text: `// one\n${library}` }]);
    expect(related()).toEqual(before?.map((line) => line + 1));
  });

  test("of a former name are struck through, of an idle waiver faded, and each has a key of its own", () => {
    const source = marked({
      "b.ferrule": `build x "X" {\n  waive drivetrain/cage-capacity "none yet" until 2027-01-01\n  nonsense: 1\n  nonsens: 2\n}\n`,
    });
    const found = diagnostics(source.engine, source.uri, richClient);
    expect(found.find(({ code }) => code === "build/idle-waiver")?.tags).toEqual([1]);
    const keys = found.map(({ data }) => data.key);
    expect(new Set(keys).size).toBe(keys.length);
  });

  test("of a check lead to its explanation where the client can open it", () => {
    const source = marked({
      "parts.ferrule": library,
      "b.ferrule": `build x "X" {\n  drivetrain { rear-derailleur: corrie.short-12; cassette: corrie.wide-10-52; crankset: corrie.arm-32 }\n}\n`,
    });
    const href = (client: typeof richClient) =>
      diagnostics(source.engine, source.uri, client).find(({ code }) => code === "drivetrain/cage-capacity")
        ?.codeDescription?.href;
    expect(href(richClient)).toBe("ferrule-explanation:/drivetrain/cage-capacity.md");
    expect(href({ ...richClient, explanationLinks: false })).toBeUndefined();
  });
});

describe("inlay hints", () => {
  test("show the numbers of an assembly behind its opening line", () => {
    const source = marked({
      "parts.ferrule": library,
      "b.ferrule": `build x "X" {\n  drivetrain {\n    cassette: corrie.wide-10-52\n    crankset: corrie.arm-32\n  }\n}\n`,
    });
    const everything = { start: { line: 0, character: 0 }, end: { line: 9, character: 0 } };
    const [hint, ...others] = inlayHints(source.engine, source.uri, everything, richClient);
    expect(others).toEqual([]);
    expect(hint?.position).toEqual({ line: 1, character: 14 });
    expect(hint?.label).toContain("capacity-needed 42 t");
    const elsewhere = { start: { line: 3, character: 0 }, end: { line: 4, character: 0 } };
    expect(inlayHints(source.engine, source.uri, elsewhere, richClient)).toEqual([]);
  });
});
