import { describe, expect, test } from "vitest";
import { definition } from "../../server/language-features/definition.ts";
import { documentHighlights } from "../../server/language-features/document-highlights.ts";
import { references } from "../../server/language-features/references.ts";
import { prepareRename, rename } from "../../server/language-features/rename.ts";
import { selectionRanges } from "../../server/language-features/selection-ranges.ts";
import { workspaceSymbols } from "../../server/language-features/workspace-symbols.ts";
import { applied, library, type Marked, marked, richClient, textAt, uriOf } from "./support.ts";

describe("definition", () => {
  /** The marked range is where it leads. */
  function leadsToMark(files: Readonly<Record<string, string>>): void {
    const source = marked(files);
    const links = definition(source.engine, source.uri, source.position, richClient);
    expect(
      links.map(({ targetUri, targetSelectionRange }) => ({ uri: targetUri, range: targetSelectionRange })),
    ).toEqual(source.ranges);
  }

  test("of a part in a slot, as an alternate, and after from", () => {
    const parts = `part cassette [|north.ten|] "Ten" { speeds: 12 }\n`;
    leadsToMark({ "p.ferrule": parts, "b.ferrule": `build x "X" {\n  drivetrain { cassette: nor<|>th.ten }\n}\n` });
    leadsToMark({
      "p.ferrule": parts,
      "b.ferrule": `build x "X" {\n  drivetrain { cassette: none or north.<|>ten }\n}\n`,
    });
    leadsToMark({ "p.ferrule": parts, "b.ferrule": `part cassette other "O" from north.ten<|> { }\n` });
  });

  test("of a build after from and of, and of a record's build", () => {
    leadsToMark({ "b.ferrule": `build [|base|] "Base" { }\nbuild x "X" from ba<|>se { }\n` });
    leadsToMark({ "b.ferrule": `build [|base|] "Base" { }\nrecord "1" of base<|> { }\n` });
  });

  test("of a code, by an alias, and of either half of a composite one", () => {
    const own = `standard freehub-body [|north|] "North" { aliases: polar, arctic }\n`;
    leadsToMark({ "s.ferrule": own, "p.ferrule": `part cassette x "X" { freehub: nor<|>th }\n` });
    leadsToMark({ "s.ferrule": own, "p.ferrule": `part cassette x "X" { freehub: arc<|>tic }\n` });
    leadsToMark({
      "s.ferrule": `standard headset-fit [|NN44|] "North" { }\nstandard headset-fit NN56 "South" { }\n`,
      "p.ferrule": `part headset x "X" { upper: NN<|>44/28.6 }\n`,
    });
  });

  test("of a standard that comes with Ferrule, in its own document", () => {
    const source = marked({ "p.ferrule": `part cassette x "X" { freehub: stepped<|>-driver }\n` });
    const [link] = definition(source.engine, source.uri, source.position, richClient);
    expect(link?.targetUri).toBe("ferrule-standard:/freehub-bodies.ferrule");
    expect(link && textAt(source.engine, link.targetUri, link.targetSelectionRange)).toBe("stepped-driver");
    expect(link && textAt(source.engine, link.targetUri, link.targetRange)).toMatch(/^standard freehub-body[\s\S]*}$/);
  });

  test("of a slot that is named, where the build fills it; of a variant's slot, where the base does", () => {
    const lever = `part brake-lever stop "Stop" { }\npart shift-controller pod "Pod" { }\n`;
    leadsToMark({
      "p.ferrule": lever,
      "b.ferrule": `build x "X" {\n  drivetrain { rear-controller: pod { clamp: rear-brake.le<|>ver } }\n  rear-brake { lever: [|stop|] }\n}\n`,
    });
    leadsToMark({
      "p.ferrule": lever,
      "b.ferrule": `build base "Base" {\n  rear-brake { lever: [|stop|] }\n}\nbuild x "X" from base {\n  rear-brake.le<|>ver: none\n}\n`,
    });
  });

  test("of nothing, where nothing is declared", () => {
    const source = marked({ "b.ferrule": `build x "X" {\n  drivetrain { cassette: no.such<|> }\n}\n` });
    expect(definition(source.engine, source.uri, source.position, richClient)).toEqual([]);
  });
});

const used: Readonly<Record<string, string>> = {
  "parts.ferrule": `/// north.ten is quoted here.\npart cassette [|north.ten|] "north.ten" { speeds: 12 }\npart cassette north.ten-b "B" from [|north.ten|] { }\n`,
  "builds.ferrule": `build x "X" {\n  drivetrain { cassette: north.ten-b or [|north.te<|>n|] }\n  note: "north.ten"\n}\nbuild y "Y" {\n  drivetrain.cassette: [|north.ten|]\n}\n`,
};

describe("references", () => {
  test("are every place that names the same declaration, and no title, remark or longer name", () => {
    const source = marked(used);
    const found = references(source.engine, source.uri, source.position, { includeDeclaration: true }, richClient);
    expect(sorted(found)).toEqual(sorted(source.ranges));
    const without = references(source.engine, source.uri, source.position, { includeDeclaration: false }, richClient);
    expect(without).toHaveLength(source.ranges.length - 1);
  });

  test("of a code are found under its other names too", () => {
    const source = marked({
      "s.ferrule": `standard freehub-body [|no<|>rth|] "North" { aliases: [|polar|] }\n`,
      "p.ferrule": `part cassette a "A" { freehub: [|north|] }\npart hub b "B" { freehub: [|polar|] }\npart frame north "N" { }\n`,
    });
    const found = references(source.engine, source.uri, source.position, { includeDeclaration: true }, richClient);
    expect(sorted(found)).toEqual(sorted(source.ranges));
  });

  test("in the same file are highlighted", () => {
    const source = marked(used);
    const highlighted = documentHighlights(source.engine, source.uri, source.position).map(({ range }) => ({
      uri: source.uri,
      range,
    }));
    expect(sorted(highlighted)).toEqual(sorted(source.ranges.filter(({ uri }) => uri === source.uri)));
  });
});

function sorted(places: readonly { uri: string; range: { start: { line: number; character: number } } }[]): string[] {
  return places.map((place) => JSON.stringify(place)).sort();
}

describe("rename", () => {
  const renamed = (source: Marked, name: string): Record<string, string> => {
    const result = rename(source.engine, source.uri, source.position, name);
    if (result.state === "refused") throw new Error(result.reason);
    return Object.fromEntries([...result.edits].map(([uri, edits]) => [uri, applied(source.text(uri), edits)]));
  };

  test("changes the declaration and every use, and nothing else", () => {
    const source = marked(used);
    const texts = renamed(source, "south.ten");
    expect(texts[uriOf("builds.ferrule")]).toBe(
      `build x "X" {\n  drivetrain { cassette: north.ten-b or south.ten }\n  note: "north.ten"\n}\nbuild y "Y" {\n  drivetrain.cassette: south.ten\n}\n`,
    );
    expect(texts[uriOf("parts.ferrule")]).toBe(
      `/// north.ten is quoted here.\npart cassette south.ten "north.ten" { speeds: 12 }\npart cassette north.ten-b "B" from south.ten { }\n`,
    );
  });

  test("is refused for a name that is taken, for one that is no word, and for what comes with Ferrule", () => {
    const source = marked(used);
    const refused = (name: string): string => {
      const result = rename(source.engine, source.uri, source.position, name);
      return result.state === "refused" ? result.reason : "";
    };
    expect(refused("north.ten-b")).toContain("already called");
    expect(refused("two words")).toContain("cannot be a name");
    expect(refused("none")).toContain("cannot be a name");
    const builtIn = marked({ "p.ferrule": `part cassette x "X" { freehub: stepped<|>-driver }\n` });
    expect(prepareRename(builtIn.engine, builtIn.uri, builtIn.position)).toMatchObject({ state: "refused" });
    const field = marked({ "p.ferrule": `part cassette x "X" { free<|>hub: north }\n` });
    expect(prepareRename(field.engine, field.uri, field.position)).toBeUndefined();
  });
});

describe("other ways through a workshop", () => {
  test("symbols of the workshop are found by name, title or letters in order, its own before those that come along", () => {
    const source = marked({ "parts.ferrule": library });
    const names = (query: string) => workspaceSymbols([source.engine], query, richClient).map(({ name }) => name);
    expect(names("corrie.wide")).toEqual(["corrie.wide-10-52"]);
    expect(names("Corrie long 12")).toEqual(["corrie.long-12"]);
    expect(names("crwd1052")).toEqual(["corrie.wide-10-52"]);
    expect(names("12x148")).toContain("12x148");
    expect(names("no such thing at all")).toEqual([]);
  });

  test("a selection grows from the word to the file", () => {
    const source = marked({
      "b.ferrule": `build x "X" {\n  cockpit {\n    stem: moor.stub { spacers-below: 1<|>5 mm }\n  }\n}\n`,
    });
    const grown: string[] = [];
    for (
      let selection = selectionRanges(source.engine, source.uri, [source.position])[0];
      selection !== undefined;
      selection = selection.parent
    ) {
      grown.push(textAt(source.engine, source.uri, selection.range));
    }
    expect(grown.slice(0, 4)).toEqual(["15", "15 mm", "spacers-below: 15 mm", "{ spacers-below: 15 mm }"]);
    expect(grown.at(-1)).toBe(source.text());
    for (let index = 1; index < grown.length; index++) expect(grown[index]).toContain(grown[index - 1]);
  });
});
