import { describe, expect, test } from "vitest";
import type { TextEdit } from "vscode-languageserver-types";
import { codeActions } from "../../server/language-features/code-actions.ts";
import { completion } from "../../server/language-features/completion.ts";
import { definition } from "../../server/language-features/definition.ts";
import { diagnostics } from "../../server/language-features/diagnostics.ts";
import { documentSymbols } from "../../server/language-features/document-symbols.ts";
import { checkHover } from "../../server/language-features/hover/checks.ts";
import { hover } from "../../server/language-features/hover.ts";
import { references } from "../../server/language-features/references.ts";
import { rename } from "../../server/language-features/rename.ts";
import { codeOfExplanation } from "../../server/language-features/shared/options.ts";
import { specDigest } from "../../server/records/spec-digest.ts";
import { applied, type Marked, marked, richClient, textAt, uriOf } from "./support.ts";

const parts = `
part rear-derailleur corrie.arm "Corrie arm" { chain-gap: [|6 to 8 mm|]; chain-gap-method: pulley-to-cog }
part stem moor.stub "Stub" { bar-torque: 4 to 6 N·m }
part handlebar moor.wide "Wide" { stem-clamp-torque: <= 5 N·m }
part rim moor.hoop "Hoop" { effective-rim-diameter: 600 mm; hole-offset: 0 mm }
part hub moor.hub "Hub" {
  spoke-holes: 32
  spoke-head: elbow
  spoke-hole-diameter: 2.6 mm
  flange-diameter-left: 45 mm
  flange-diameter-right: 45 mm
  flange-offset-left: 37 mm
  flange-offset-right: 18 mm
}
part spokes moor.spokes "Spokes" { spoke-head: elbow }
part cassette corrie.one "One" { speeds: 12 }
part cassette corrie.two "Two" { speeds: 12 }
part rotor corrie.disc "Disc" { least-thickness: 1.5 mm; thickness: 1.8 mm }
`;
const build = `build fell "Fell" {
  drivetrain { rear-derailleur: corrie.arm; cassette: corrie.one or corrie.two }
  cockpit { stem: moor.stub { spacers-below: 15 mm }; handlebar: moor.wide }
  rear-wheel { hub: moor.hub; rim: moor.hoop; spokes: moor.spokes { cross: 3; lacing: even; tension: 1200 N } }
  front-brake { rotor: none }
}
`;

/** A record with these lines, beside the build and its parts. */
function record(lines: string, of = "fell", marks = parts.replace(/\[\||\|\]/g, "")): Marked {
  return marked({ "p.ferrule": marks, "b.ferrule": build, "r.ferrule": `record "F-1" of ${of} {\n${lines}\n}\n` });
}

function said(source: Marked): string {
  const answer = hover(source.engine, source.uri, source.position, richClient);
  return (answer?.contents as { value: string } | undefined)?.value ?? "";
}

function labels(source: Marked): readonly string[] {
  return completion(source.engine, source.uri, source.position, richClient).items.map(({ label }) => label);
}

function digestOf({ engine }: Marked): string {
  const declaration = engine.workshop.build("fell");
  if (!declaration) throw new Error("no build");
  return specDigest(engine.assemble(declaration));
}

describe("hover", () => {
  test("on a path and on its value shows measured beside expected, with where each was stated", () => {
    for (const line of ["  drivetrain.chain-ga<|>p: 11 mm", "  drivetrain.chain-gap: 1<|>1 mm"]) {
      const text = said(record(line));
      expect(text).toContain("✗ **The chain gap is the one that the derailleur's maker states** · `record/chain-gap`");
      expect(text).toContain("- Measured: 11 mm");
      expect(text).toContain("- Expected: 6 to 8 mm");
      expect(text).toMatch(/`drivetrain\.rear-derailleur\.chain-gap`: 6 to 8 mm \(Corrie arm, \[p\.ferrule:2\]/);
      expect(text).toContain("Chain gap, measured as the derailleur's maker says");
    }
  });

  test("on tensions shows the working of mean, spread and balance", () => {
    const text = said(
      record(
        "  rear-wheel.tension.drive-side: 1200, 1<|>180, 1220 N\n  rear-wheel.tension.non-drive-side: 590, 580, 592 N",
      ),
    );
    expect(text).toContain("Mean: (1200 + 1180 + 1220) ÷ 3 = 1200 N");
    expect(text).toMatch(/Expected on the non-drive side: 1200 N × 48\.9\d? % = 587\.\d N/);
    expect(text).toContain("20 % either way of one spoke from what the others of its side average");
    // From the other side too, since both are compared.
    const other = said(
      record(
        "  rear-wheel.tension.drive-side: 1200, 1180, 1220 N\n  rear-wheel.tension.non-drive-side: 590, 5<|>80, 592 N",
      ),
    );
    expect(other).toContain("`record/spoke-balance`");
  });

  test("carries the caution of what fails", () => {
    const source = record("  front-brake.rotor-th<|>ickness: 1.4 mm");
    source.engine.update([{ uri: uriOf("b.ferrule"), text: build.replace("rotor: none", "rotor: corrie.disc") }]);
    expect(said(source)).toMatch(/Caution:\*\* A rotor worn below its least thickness/);
  });

  test("on the serial counts what came of it, on the build shows the digest to write", () => {
    const source = record("  drivetrain.chain-gap: 7 mm");
    const digest = digestOf(source);
    const at = (file: string, word: string): string => {
      const uri = uriOf(file);
      const position = source.engine.lines(uri).position((source.engine.file(uri)?.text ?? "").indexOf(word) + 1);
      const answer = hover(source.engine, uri, position, richClient);
      return (answer?.contents as { value: string } | undefined)?.value ?? "";
    };
    expect(at("r.ferrule", "F-1")).toContain("**F-1** · a record of `fell`");
    expect(at("r.ferrule", "F-1")).toContain("0 comparisons fail, 0 cannot be made, 1 hold and 0 do not apply");
    expect(at("b.ferrule", "fell")).toContain(`\`spec: ${digest}\``);
  });

  test("on the specification says which one it is and which it is today", () => {
    const source = record("  spec: 3f9<|>a1c");
    expect(said(source)).toContain(`Built to \`3f9a1c\`; the build is \`${digestOf(source)}\` today.`);
    expect(said(source)).not.toContain("Read as");
  });
});

describe("completion", () => {
  test("offers what can be measured on what the build has, and nothing of what it has not", () => {
    const offered = labels(record("  <|>"));
    for (const path of [
      "date",
      "spec",
      "drivetrain.chain-gap",
      "torque.stem-bar",
      "rear-wheel.tension.drive-side",
      "cockpit.stem.spacers-below",
    ]) {
      expect(offered).toContain(path);
    }
    expect(offered).not.toContain("front-brake.rotor-thickness");
    expect(offered).not.toContain("fork.sag");
  });

  test("offers facts of a part once its slot is typed, and names in a block", () => {
    expect(labels(record("  cockpit.stem.<|>"))).toContain("cockpit.stem.bar-torque");
    expect(labels(record("  drivetrain {\n    <|>\n  }"))).toContain("chain-gap");
  });

  test("leaves out what is measured already", () => {
    expect(labels(record("  drivetrain.chain-gap: 7 mm\n  <|>"))).not.toContain("drivetrain.chain-gap");
  });

  test("offers today's digest, the parts that the build names, and units", () => {
    const spec = record("  spec: <|>");
    expect(labels(spec)).toEqual([digestOf(spec)]);
    expect(labels(record("  drivetrain.cassette: <|>"))).toEqual(["corrie.one", "corrie.two"]);
    expect(labels(record("  drivetrain.chain-gap: 7<|>"))).toContain("mm");
    expect(labels(record("  torque.stem-bar: 5 <|>"))).toContain("N·m");
    expect(labels(record("  rear-wheel.tension-drive-side: 1180 <|>"))).toContain("N");
  });
});

describe("definition", () => {
  test("of a measurement is what it is compared with", () => {
    const source = record("  drivetrain.chain-<|>gap: 7 mm", "fell", parts);
    const links = definition(source.engine, source.uri, source.position, richClient);
    expect(
      links.map(({ targetUri, targetSelectionRange }) => textAt(source.engine, targetUri, targetSelectionRange)),
    ).toContain("6 to 8 mm");
  });

  test("of a setting is where the build states it, of what rests on the record alone the part it was measured on", () => {
    const target = (lines: string): readonly string[] => {
      const source = record(lines);
      return definition(source.engine, source.uri, source.position, richClient).map(
        ({ targetUri, targetSelectionRange }) => textAt(source.engine, targetUri, targetSelectionRange),
      );
    };
    expect(target("  cockpit.stem.spacers-<|>below: 15 mm")).toEqual(["15 mm"]);
    expect(target("  rear-wheel.run-out.late<|>ral: 0.2 mm")).toEqual(["moor.hoop"]);
  });
});

test("a build that is given another name takes its records with it", () => {
  const source = record("  drivetrain.chain-gap: 7 mm", "fe<|>ll");
  const answer = rename(source.engine, source.uri, source.position, "wold");
  if (answer.state !== "ready") throw new Error(answer.reason);
  const renamed = (file: string): string =>
    applied(source.text(uriOf(file)), answer.edits.get(uriOf(file)) as TextEdit[]);
  expect(renamed("b.ferrule")).toContain('build wold "Fell"');
  expect(renamed("r.ferrule")).toContain('record "F-1" of wold {');
  const uses = references(source.engine, source.uri, source.position, { includeDeclaration: true }, richClient);
  expect(uses.map(({ uri }) => uri).sort()).toEqual([uriOf("b.ferrule"), uriOf("r.ferrule")]);
});

test("the outline holds the record with what was measured", () => {
  const source = record('  date: 2026-11-20\n  by: "K."\n  drivetrain {\n    chain-gap: 7 mm\n  }');
  const [symbol] = documentSymbols(source.engine, source.uri);
  expect(symbol).toMatchObject({ name: "F-1", detail: "of fell" });
  expect(symbol?.children?.map(({ name, detail }) => [name, detail])).toEqual([
    ["date", "2026-11-20"],
    ["by", '"K."'],
    ["drivetrain", ""],
  ]);
});

test("what differs is shown at the value, with the part's own statement beside it", () => {
  const source = record("  drivetrain.chain-gap: [|11 mm|]");
  const found = diagnostics(source.engine, source.uri, richClient).find(({ code }) => code === "record/chain-gap");
  expect(found?.range).toEqual(source.ranges[0]?.range);
  // The code leads to why it matters.
  const address = found?.codeDescription?.href ?? "";
  expect(checkHover(codeOfExplanation(address) ?? "")).toContain("decides how soon a shift takes");
  expect(found?.relatedInformation?.map(({ message }) => message)).toEqual(["Corrie arm: chain-gap 6 to 8 mm"]);
});

test("a quick fix writes today's digest", () => {
  const source = record("  spec: [|3f9a1c|]");
  const [range] = source.ranges;
  if (!range) throw new Error("no mark");
  const request = { range: range.range, diagnostics: [], only: ["quickfix"] };
  const actions = codeActions(source.engine, source.uri, request, richClient, () => null);
  expect(actions.map(({ title }) => title)).toContain(`Write the digest of today: spec: ${digestOf(source)}`);
});
