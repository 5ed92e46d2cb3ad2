import { describe, expect, test } from "vitest";
import type { CompletionItem, TextEdit } from "vscode-languageserver-types";
import { completion } from "../../server/language-features/completion.ts";
import { definition } from "../../server/language-features/definition.ts";
import { documentHighlights } from "../../server/language-features/document-highlights.ts";
import { hover } from "../../server/language-features/hover.ts";
import { references } from "../../server/language-features/references.ts";
import { prepareRename, rename } from "../../server/language-features/rename.ts";
import { semanticTokens } from "../../server/language-features/semantic-tokens.ts";
import { applied, library, type Marked, marked, richClient, textAt, uriOf } from "./support.ts";

const builds = `build tall "Tall" {
  category: mountain
  frame: moor.fellside-l
  drivetrain { cassette: corrie.wide-10-52; rear-derailleur: corrie.long-12; crankset: corrie.arm-32 }
  cockpit { stem: moor.stub { spacers-below: 40 mm } }
}

build short "Short" from tall { cockpit.stem.spacers-below: 5 mm }

build town "Town" from tall { category: city }
`;
const parts = `${library}\npart stem moor.stub "Moor stub" { length: 35 mm }\n`;

const rule = (body: string): Marked =>
  marked({ "parts.ferrule": parts, "builds.ferrule": builds, "rules.ferrule": `rule r "Low" {\n${body}\n}\n` });

function hovered(source: Marked): string {
  const found = hover(source.engine, source.uri, source.position, richClient);
  return found ? (found.contents as { value: string }).value : "";
}

function items(source: Marked): CompletionItem[] {
  return [...completion(source.engine, source.uri, source.position, richClient).items].sort((a, b) =>
    (a.sortText ?? a.label) < (b.sortText ?? b.label) ? -1 : 1,
  );
}

const labels = (source: Marked): string[] => items(source).map(({ label }) => label);

function taken(source: Marked, label: string): string {
  const item = items(source).find((one) => one.label === label);
  if (!item) throw new Error(`${label} is not offered: ${labels(source).join(", ")}`);
  return applied(source.text(), [item.textEdit as TextEdit]);
}

describe("hover in a rule", () => {
  test("of a path says what it is, and its value in each build that the rule is for", () => {
    const text = hovered(rule("  when: category is mountain\n  require: cockpit.stem.spacers<|>-below <= 10 mm"));
    expect(text).toMatch(/\*\*spacers-below\*\*/);
    expect(text).toContain("In the builds that the rule is for:");
    expect(text).toMatch(/`tall`.*: `40 mm`/);
    expect(text).toMatch(/`short`.*: `5 mm`/);
    expect(text).not.toMatch(/`town`/);
  });

  test("of a fact, a slot, a number, and what nobody stated", () => {
    expect(hovered(rule("  require: drivetrain.cassette.co<|>gs is none"))).toMatch(/`tall`.*: `10-12-.*52 t`/);
    expect(hovered(rule("  require: drivetrain.casse<|>tte is none"))).toMatch(/`tall`.*: `corrie\.wide-10-52`/);
    expect(hovered(rule("  require: drivetrain.capacity-nee<|>ded <= 42 t"))).toMatch(/`tall`.*: `42 t`/);
    expect(hovered(rule("  require: rider.ma<|>ss <= 42 kg"))).toMatch(/`tall`.*: `not stated`/);
    expect(hovered(rule("  require: lighting.be<|>ll is none"))).toMatch(/`tall`.*: `none`/);
  });

  test("of a word, a code and a part is that of what it stands for", () => {
    expect(hovered(rule("  require: category is moun<|>tain"))).toMatch(/mountain/);
    expect(hovered(rule("  require: drivetrain.cassette.freehub is stepped<|>-driver"))).toMatch(/Source: /);
    expect(hovered(rule("  require: drivetrain.cassette is corrie.wide<|>-10-52"))).toMatch(/Corrie wide 10-52/);
  });

  test("of a function, and of a name that let gives with its value", () => {
    expect(hovered(rule("  require: ma<|>x(drivetrain.cassette.cogs) > 5"))).toMatch(/max\(A, B, \.\.\.\)/);
    const text = hovered(
      rule("  let: total = cockpit.stem.length + cockpit.stem.spacers-below\n  require: to<|>tal < 50 mm"),
    );
    expect(text).toMatch(/\*\*total\*\* = `cockpit\.stem\.length \+ cockpit\.stem\.spacers-below` · a length/);
    expect(text).toMatch(/`tall`.*: `75 mm`/);
    expect(text).toMatch(/`short`.*: `40 mm`/);
  });

  test("of its name says what it comes to for the builds; so does its code in a waiver", () => {
    const files = {
      "parts.ferrule": parts,
      "builds.ferrule": builds,
      "rules.ferrule": `rule l<|>ow "Low" {\n  when: category is mountain\n  require: cockpit.stem.spacers-below <= 10 mm\n  because: "Steerers break."\n}\n`,
    };
    const text = hovered(marked(files));
    expect(text).toMatch(/`rule\/low` · a house rule · error/);
    expect(text).toContain("Steerers break.");
    expect(text).toMatch(/it fails for 1/);
    expect(text).toMatch(/it holds for 1/);
    expect(text).toMatch(/it does not apply for 1/);
    expect(text).toMatch(/✗ `tall`.*is 40 mm and has to be at most 10 mm/);
    const waived = marked({
      ...files,
      "rules.ferrule": files["rules.ferrule"].replace("<|>", ""),
      "builds.ferrule": builds.replace("frame: moor", 'waive rule/lo<|>w "Asked" until 2027-01-01\n  frame: moor'),
    });
    expect(hovered(waived)).toMatch(/a house rule · error/);
    expect(hovered(waived)).toMatch(/In this build it is waived/);
  });

  test("of its name says with which of several named parts it fails", () => {
    const text = hovered(
      marked({
        "parts.ferrule": `${parts}\npart stem moor.long "Moor long" { length: 90 mm }\n`,
        "builds.ferrule": `${builds}\nbuild either "Either" from short { cockpit.stem: moor.stub or moor.long }\n`,
        "rules.ferrule": 'rule l<|>ow "Low" { require: cockpit.stem.length < 50 mm }\n',
      }),
    );
    expect(text).toMatch(/✗ `either`.*: With moor.{1,2}long as cockpit.{1,2}stem: Low: /);
  });

  test("of an expression that is wrong elsewhere still says what a path is", () => {
    expect(hovered(rule("  require: cockpit.stem.spacers<|>-below <= 10 kg"))).toMatch(/\*\*spacers-below\*\*/);
  });
});

describe("definition, references and rename in a rule", () => {
  test("a path leads to where the builds that it is for state it", () => {
    const source = rule("  when: category is mountain\n  require: cockpit.stem.spacers<|>-below <= 10 mm");
    const links = definition(source.engine, source.uri, source.position, richClient);
    expect(
      links.map(({ targetUri, targetSelectionRange }) => textAt(source.engine, targetUri, targetSelectionRange)),
    ).toEqual(["5 mm", "40 mm"]);
  });

  test("a part, a code, a build and a name of its own lead to their declarations", () => {
    const target = (source: Marked): string[] =>
      definition(source.engine, source.uri, source.position, richClient).map(({ targetUri, targetSelectionRange }) =>
        textAt(source.engine, targetUri, targetSelectionRange),
      );
    expect(target(rule("  require: drivetrain.cassette is corrie.wide<|>-10-52"))).toEqual(["corrie.wide-10-52"]);
    expect(target(rule("  require: drivetrain.cassette.freehub is stepped<|>-driver"))).toEqual(["stepped-driver"]);
    expect(target(rule("  require: category is city\n  expect { holds: to<|>wn }"))).toEqual(["town"]);
    expect(target(rule("  let: total = 3 mm\n  require: to<|>tal > 2 mm"))).toEqual(["total"]);
    const waiver = marked({
      "builds.ferrule": 'build b { waive rule/lo<|>w "x" }\n',
      "rules.ferrule": "rule low { require: category is city }\n",
    });
    expect(target(waiver)).toEqual(["low"]);
  });

  test("a part, a build and a standard are referred to by rules as by builds", () => {
    const files = {
      "parts.ferrule": "part cassette [|north|] { }\n",
      "builds.ferrule": "build [|b|] { drivetrain.cassette: [|north|] }\n",
      "rules.ferrule": `rule r { require: drivetrain.cassette in [|no<|>rth|], none; expect { holds: [|b|] } }\n`,
    };
    const source = marked(files);
    const found = references(source.engine, source.uri, source.position, { includeDeclaration: true }, richClient);
    expect(found.map(({ uri, range }) => textAt(source.engine, uri, range))).toEqual(["north", "north", "north"]);
    const build = marked({
      ...files,
      "rules.ferrule": files["rules.ferrule"].replace("<|>", ""),
      "builds.ferrule": files["builds.ferrule"].replace("[|b|]", "[|b<|>|]"),
    });
    const named = references(build.engine, build.uri, build.position, { includeDeclaration: false }, richClient);
    expect(named.map(({ uri, range }) => [uri, textAt(build.engine, uri, range)])).toEqual([
      [uriOf("rules.ferrule"), "b"],
    ]);
  });

  test("a rename of a part, a build or a rule reaches rules, waivers and what rules expect", () => {
    const files = {
      "parts.ferrule": "part cassette north { }\n",
      "builds.ferrule": 'build b { drivetrain.cassette: north; waive rule/low "x" }\n',
      "rules.ferrule": "rule low { require: drivetrain.cassette is north; expect { holds: b } }\n",
    };
    const renamed = (file: keyof typeof files, mark: string, newName: string): string[] => {
      const source = marked({ ...files, [file]: files[file].replace(mark, `${mark.slice(0, 1)}<|>${mark.slice(1)}`) });
      const result = rename(source.engine, source.uri, source.position, newName);
      if (result.state === "refused") return [result.reason];
      return Object.keys(files).map((name) => applied(source.text(uriOf(name)), result.edits.get(uriOf(name)) ?? []));
    };
    expect(renamed("parts.ferrule", "north", "south")).toEqual(
      Object.values(files).map((text) => text.replaceAll("north", "south")),
    );
    expect(renamed("rules.ferrule", "low", "high")).toEqual(
      Object.values(files).map((text) => text.replaceAll("low", "high")),
    );
    expect(renamed("builds.ferrule", "low", "high")).toEqual(
      Object.values(files).map((text) => text.replaceAll("low", "high")),
    );
    expect(renamed("builds.ferrule", "b {", "c")[2]).toContain("expect { holds: c }");
    const twice = { ...files, "rules.ferrule": `${files["rules.ferrule"]}rule high { require: category is city }\n` };
    const source = marked({ ...twice, "rules.ferrule": twice["rules.ferrule"].replace("rule low", "rule l<|>ow") });
    expect(rename(source.engine, source.uri, source.position, "high")).toMatchObject({ state: "refused" });
  });

  test("a name of its own is renamed where it is given, used, and put into the message", () => {
    const body = `  let { total: 3 mm + 1 mm }\n  let: twice = total * 2\n  require: to<|>tal < 2 mm and twice > 1 mm\n  message: "{total} of {twice}"`;
    const source = rule(body);
    expect(prepareRename(source.engine, source.uri, source.position)).toMatchObject({
      state: "ready",
      placeholder: "total",
    });
    const result = rename(source.engine, source.uri, source.position, "sum-of-it");
    expect(result.state === "ready" && applied(source.text(), result.edits.get(source.uri) ?? [])).toBe(
      source.text().replaceAll("total", "sum-of-it"),
    );
    expect(rename(source.engine, source.uri, source.position, "twice")).toMatchObject({ state: "refused" });
    for (const taken of ["category", "today", "none", "not"]) {
      expect(rename(source.engine, source.uri, source.position, taken)).toMatchObject({ state: "refused" });
    }
    expect(rename(source.engine, source.uri, source.position, "a b")).toMatchObject({ state: "refused" });
    const found = references(source.engine, source.uri, source.position, { includeDeclaration: false }, richClient);
    expect(found).toHaveLength(3);
    expect(documentHighlights(source.engine, source.uri, source.position)).toHaveLength(4);
  });
});

describe("completion in an expression", () => {
  test("begins with what a build has, its groups, functions, and names given before", () => {
    const found = labels(rule("  let: total = 3 mm\n  require: <|>"));
    expect(found).toEqual(expect.arrayContaining(["total", "category", "frame", "drivetrain.", "max", "not"]));
  });

  test("goes on path by path", () => {
    expect(labels(rule("  require: drivetrain.<|>"))).toEqual(
      expect.arrayContaining(["drivetrain.cassette", "drivetrain.cassette.", "drivetrain.capacity-needed"]),
    );
    const stem = labels(rule("  require: cockpit.stem.<|>"));
    expect(stem).toEqual(
      expect.arrayContaining(["cockpit.stem.spacers-below", "cockpit.stem.length", "cockpit.stem.mass"]),
    );
    expect(stem).not.toContain("max");
    expect(taken(rule("  require: cockpit.stem.sp<|>"), "cockpit.stem.spacers-below")).toContain(
      "require: cockpit.stem.spacers-below\n",
    );
  });

  test("finds a path by its last name", () => {
    expect(labels(rule("  require: spacers<|>"))).toContain("cockpit.stem.spacers-below");
  });

  test("offers the words, codes and parts that a path is compared with, first", () => {
    expect(labels(rule("  when: category is <|>"))[0]).toBe("mountain");
    expect(labels(rule("  when: category in mountain, <|>"))).toContain("gravel");
    expect(labels(rule("  when: category is not <|>"))).toContain("road");
    expect(labels(rule("  when: category is mountain and <|>"))[0]).not.toBe("mountain");
    expect(labels(rule("  require: drivetrain.cassette.freehub is <|>"))).toContain("stepped-driver");
    const cassettes = labels(rule("  require: drivetrain.cassette is <|>"));
    expect(cassettes.slice(0, 2)).toEqual(["corrie.close-11-34", "corrie.wide-10-52"]);
    expect(cassettes).toContain("none");
    expect(cassettes).not.toContain("corrie.arm-32");
  });

  test("offers operators behind an operand, and units behind a number", () => {
    expect(labels(rule("  require: cockpit.stem.length <|>"))).toEqual(
      expect.arrayContaining(["<=", "is not", "in", "and", "+"]),
    );
    expect(labels(rule("  require: cockpit.stem.length <= 30 <|>"))[0]).toBe("mm");
    expect(labels(rule("  require: rider.mass <= 30 <|>"))[0]).toBe("kg");
    expect(taken(rule("  require: cockpit.stem.length <= 30<|>"), "cm")).toContain("<= 30 cm\n");
    expect(labels(rule("  require: drivetrain.capacity-needed <= 42 <|>"))).toEqual(["t"]);
  });

  test("puts what measures the same first", () => {
    const found = labels(rule("  require: cockpit.stem.length <= cockpit.stem.<|>"));
    expect(found.indexOf("cockpit.stem.spacers-below")).toBeLessThan(found.indexOf("cockpit.stem.mass"));
  });

  test("offers what may be put in between the braces of a message", () => {
    const before = "  let: total = 3 mm\n  require: total <= 4 mm\n  message: ";
    const found = labels(rule(`${before}"Too much: {<|>"`));
    expect(found).toEqual(expect.arrayContaining(["total", "category", "drivetrain."]));
    expect(found).not.toContain("max");
    expect(taken(rule(`${before}"Too much: {to<|>"`), "total")).toContain('"Too much: {total}"\n');
    expect(taken(rule(`${before}"Too {much}: { to<|> } in all"`), "total")).toContain("{ total } in all");
    expect(taken(rule(`${before}"{drivetrain.capacity-ne<|>}"`), "drivetrain.capacity-needed")).toContain(
      '"{drivetrain.capacity-needed}"',
    );
    expect(taken(rule(`${before}"{drive<|>"`), "drivetrain.")).toContain('"{drivetrain."');
    expect(labels(rule(`${before}"{cockpit.stem.<|>`))).toContain("cockpit.stem.length");
    // Outside of the braces, in other texts and in comments there is nothing to offer.
    for (const elsewhere of [
      `${before}"Too <|>{total}"`,
      `${before}"{total} <|>"`,
      `${before}"{total <|>"`,
      `${before}4 // {<|>`,
    ])
      expect(labels(rule(elsewhere))).toEqual([]);
    expect(labels(rule('  require: category is city\n  reason: "{<|>"'))).toEqual([]);
  });

  test("offers what the blocks of a rule take", () => {
    expect(labels(rule("  require: category is city\n  <|>"))).toEqual(
      expect.arrayContaining(["require", "expect", "set", "message"]),
    );
    expect(labels(rule("  require: category is city\n  expect {\n    <|>\n  }"))).toEqual([
      "holds",
      "fails",
      "unknown",
      "not-applicable",
    ]);
    expect(labels(rule("  require: category is city\n  expect {\n    holds: <|>\n  }"))).toEqual([
      "short",
      "tall",
      "town",
    ]);
    expect(labels(rule("  require: category is city\n  set {\n    cockpit.stem.<|>\n  }"))).toContain(
      "cockpit.stem.spacers-below",
    );
    expect(labels(rule("  require: category is city\n  set {\n    category: <|>\n  }"))).toContain("city");
    expect(labels(rule("  require: category is city\n  set {\n    drivetrain.cassette: <|>\n  }"))).toContain(
      "corrie.wide-10-52",
    );
  });

  test("of a waiver offers rules with the checks", () => {
    const source = marked({
      "builds.ferrule": "build b {\n  category: mountain\n  waive <|>\n}\n",
      "rules.ferrule": 'rule low "Low" { require: category is city }\n',
    });
    expect(labels(source)[0]).toBe("rule/low");
  });
});

test("any place of any rule is answered", () => {
  const text = `rule r "Low" {
  when: category is mountain and drivetrain.cassette in corrie.wide-10-52, none
  let { total: cockpit.stem.length + 3 mm; other: max(1, 2) }
  let: x = total * 2
  require: not (x in 3 mm to 5 mm, 7 mm) or drivetrain.cassette.freehub is stepped-driver
  message: "{total} and {category}"
  set { cockpit.stem.spacers-below: 3 mm; lighting.bell: none }
  expect { holds: tall, town; fails: short }
  until: 2027-01-01
}
`;
  const source = marked({ "parts.ferrule": parts, "builds.ferrule": builds, "rules.ferrule": text });
  const { engine, uri } = source;
  for (let offset = 0; offset <= text.length; offset++) {
    const position = engine.lines(uri).position(offset);
    hover(engine, uri, position, richClient);
    completion(engine, uri, position, richClient);
    definition(engine, uri, position, richClient);
    prepareRename(engine, uri, position);
  }
  expect(semanticTokens(engine, uri).data.length).toBeGreaterThan(100);
});
