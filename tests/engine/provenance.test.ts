import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import type { Finding } from "../../server/model/finding.ts";
import { prelude } from "../../server/standards/index.ts";

const library = `
part rear-derailleur corrie.short "Short" { speeds: 11; largest-cog: 36 t; total-capacity: 39 t }
part cassette corrie.close "Close" { speeds: 11; cogs: 11-13-15-17-19-21-23-25-27-30-34 t }
part cassette corrie.wide "Wide" { speeds: 11; cogs: 11-13-15-17-19-21-24-28-32-37-42 t }
part crankset corrie.double "Double" { rings: 46-30 t }
part frame moor.fellside "Fellside" { mass: 2000 g }
part fork moor.gill "Gill" { mass: 900 g }
rule light "Frames under 1.5 kg" { require: frame.mass < 1.5 kg }

build base "Base" {
  frame: moor.fellside
  drivetrain { rear-derailleur: corrie.short; cassette: corrie.close; crankset: corrie.double }
}
build model "Model" from base {
  drivetrain.cassette: corrie.wide
}
build size "Size" from model {
  fork: moor.gill
}
build geared "Geared" from model {
  drivetrain.crankset: corrie.double
}
build heavy "Heavy" from base {
  budget.mass: <= 2.5 kg
  fork: moor.gill
}
`;

const engine = new Engine({ today: "2026-11-25", prelude });
engine.update([{ uri: "file:///all.ferrule", text: library }]);

function finding(build: string, code: string): Finding {
  const found = engine.report(engine.workshop.build(build)!)?.findings.filter((one) => one.code === code) ?? [];
  expect(found, `${code} in ${build}`).toHaveLength(1);
  return found[0]!;
}

/** What a finding says of where its values come from, each with the text there and its declaration. */
function related(build: string, code: string): readonly string[] {
  return finding(build, code)
    .related.filter(({ message }) => /inherited|taken over|itself|^stated here/.test(message))
    .map(({ message, place: { declaration, span } }) => {
      return `${message} | ${declaration.name}: ${declaration.text.slice(span.start, span.end)}`;
    });
}

const capacity = "drivetrain/cage-capacity";

describe("a finding of a variant", () => {
  it("is there from the build on that brought it in", () => {
    const row = engine.report(engine.workshop.build("base")!)?.rows.find(({ check }) => check.code === capacity);
    expect(row?.outcome).toBe("holds");
  });

  it("is its own where what it states goes wrong with what it took over", () => {
    expect(related("model", capacity)).toEqual([
      "taken over from base: stated here | base: corrie.short",
      "of this build itself: drivetrain.cassette | model: corrie.wide",
    ]);
  });

  it("is inherited where its base alone states all that was asked, however much else it states itself", () => {
    expect(related("size", capacity)).toEqual([
      "inherited from base: stated here | base: corrie.short",
      // The base's own cassette would do: it is the model that brought the fault in.
      "inherited from model: drivetrain.cassette | model: corrie.wide",
    ]);
  });

  it("names every statement of its own that was read", () => {
    expect(related("geared", capacity)).toEqual([
      "taken over from base: stated here | base: corrie.short",
      "of this build itself: drivetrain.crankset | geared: corrie.double",
    ]);
  });

  it("about a fact of a part says which base names the part", () => {
    expect(related("size", "rule/light")).toEqual([
      "inherited from base: named here | base: moor.fellside",
      "stated here | moor.fellside: 2000 g",
    ]);
    // In the build that names the part itself there is nobody to inherit from.
    expect(related("base", "rule/light")).toEqual(["stated here | moor.fellside: 2000 g"]);
  });

  it("that stands at what the variant states is plainly its own", () => {
    const { place } = finding("heavy", "build/budget-mass");
    expect(place.declaration.name).toBe("heavy");
    expect(related("heavy", "build/budget-mass")).toEqual([]);
  });
});

describe("a circle of from", () => {
  it.each([
    ["build a from a { }", ["a derives from itself."]],
    [
      "build a from b { }\nbuild b from a { }",
      ["a derives from itself, by way of b.", "b derives from itself, by way of a."],
    ],
    ["part stem s from s { }", ["s derives from itself."]],
  ])("%s is said at every declaration in it", (text, messages) => {
    const circular = new Engine({ today: "2026-11-25", prelude });
    circular.update([{ uri: "file:///all.ferrule", text: `${text}\n` }]);
    const found = circular.findings("file:///all.ferrule").filter(({ code }) => code === "model/derivation");
    expect(found.map(({ message }) => message)).toEqual(messages);
  });
});
