import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { applyChanges, format, formatEdits } from "../../grammar/format.ts";
import { formatDocument, formatTyped } from "../../server/language-features/formatting.ts";
import { canonicalValues } from "../../server/model/canonical-values.ts";
import { readValue } from "../../server/values/read.ts";
import { kindByName } from "../../server/vocabulary/index.ts";

function formatted(text: string): string {
  return format(text, canonicalValues).text;
}

describe("values are written in their one spelling, by the type of their field", () => {
  test.each([
    ["cassette", "cogs: 10-52T", "cogs: 10-52 t"],
    ["cassette", "cogs: 10, 12, 14", "cogs: 10-12-14 t"],
    ["cassette", "lockring-torque: 40Nm", "lockring-torque: 40 N·m"],
    ["cassette", "price: £184.00", "price: GBP 184.00"],
    ["cassette", "price: 184.00 GBP", "price: GBP 184.00"],
    ["crankset", "rings: 50 - 34", "rings: 50-34 t"],
    ["crankset", "rings: 50/34T", "rings: 50-34 t"],
    ["frame", "chainstay: 43.50cm", "chainstay: 43.50 cm"],
    ["frame", "rear-axle: 12×148", "rear-axle: 12x148"],
    ["rear-derailleur", "largest-cog: 52T", "largest-cog: 52 t"],
    ["rear-derailleur", "largest-cog: 52", "largest-cog: 52 t"],
  ])("%s { %s }", (kind, given, wanted) => {
    expect(formatted(`part ${kind} a.part "A" { ${given} }\n`)).toBe(`part ${kind} a.part "A" { ${wanted} }\n`);
  });

  test("settings of a build are, by a path, in a block and where a base names the part", () => {
    const text = (pressure: string, tension: string): string => `build b "B" from a {
  rear-wheel.tyre.pressure: ${pressure}
  front-wheel {
    tyre { pressure: ${pressure} }
    spokes: beck.plain-2 { tension: ${tension} } // as the rim's maker says
  }
}
`;
    expect(formatted(text("1.6bar", "1100N"))).toBe(text("1.6 bar", "1100 N"));
  });

  test("measurements of a record are, and what a standard states", () => {
    expect(formatted('record "1" of b { drivetrain.chain-gap: 7mm }\n')).toBe(
      'record "1" of b { drivetrain.chain-gap: 7 mm }\n',
    );
    expect(formatted('standard axle 9x99 "A" { diameter: 9mm }\n')).toBe('standard axle 9x99 "A" { diameter: 9 mm }\n');
  });

  test.each([
    ["a currency sign of several countries", "part cassette a.part { price: $184.00 }"],
    ["a unit whose capitals leave a doubt", "part frame a.part { chainstay: 430MM }"],
    ["a unit of another dimension", "part cassette a.part { mass: 56.5cm }"],
    ["a code that looks like a length", "part saddle a.part { rail: 7mm }"],
    ["text", 'part cassette a.part { note: "52T" }'],
    ["a field that there is not", "part cassette a.part { nosuch: 56.5cm }"],
    ["the shop's own data", "part cassette a.part { own { mass: 52T } }"],
    ["a rule", "rule r { require: drivetrain.chain.links < 120 }"],
  ])("left alone is %s", (_, text) => {
    expect(formatted(`${text}\n`)).toBe(`${text}\n`);
  });

  test("a block is broken into lines by the width of what is written in the end", () => {
    const note = "n".repeat(59);
    const text = (torque: string): string =>
      `part cassette a.part "A" { note: "${note}"; lockring-torque: ${torque} }\n`;
    expect(text("40Nm").length - 1).toBe(120 - 1);
    expect(text("40 N·m").length - 1).toBe(120 + 1);
    expect(formatted(text("40Nm"))).toBe(
      `part cassette a.part "A" {\n  note: "${note}"\n  lockring-torque: 40 N·m\n}\n`,
    );
  });

  test("the editor gets the smallest edits, as the line is left too", () => {
    const text = 'part cassette a.part "A" {\n  cogs: 10-52T\n  \n}\n';
    const edits = [{ range: { start: { line: 1, character: 13 }, end: { line: 1, character: 14 } }, newText: " t" }];
    expect(formatTyped(text, { line: 2, character: 2 }, "\n")).toEqual(edits);
    expect(formatDocument(text)).toContainEqual(edits[0]);
  });
});

test("whatever is written, the formatter keeps what it means and is content with its own text", () => {
  const number = fc.oneof(fc.integer({ min: 0, max: 400 }).map(String), fc.constantFrom("1.50", "1 1/8", ".5", "27.2"));
  const unit = fc.constantFrom("mm", "cm", "in", '"', "Nm", "N m", "T", "t", "g", "kg", "", "MM", "%", "°");
  const value = fc
    .tuple(
      number,
      fc.constantFrom("", " "),
      unit,
      fc.constantFrom("", "-", " - ", " to ", "±", ", ", " x "),
      number,
      unit,
    )
    .map((parts) => parts.join(""));
  const field = fc.constantFrom("cogs", "mass", "lockring-torque", "speeds", "freehub", "spacer-width", "price");
  const types = kindByName("cassette")?.fields ?? {};
  fc.assert(
    fc.property(field, value, (name, written) => {
      const text = `part cassette a.part "A" { ${name}: ${written} }\n`;
      const { changes, refused } = formatEdits(text, canonicalValues);
      if (refused) return;
      const once = applyChanges(text, changes);
      expect(formatted(once)).toBe(once);
      const type = types[name]?.type;
      if (!type) return;
      expect(meaning(type, once)).toEqual(meaning(type, text));
    }),
    { numRuns: 400 },
  );
});

function meaning(type: Parameters<typeof readValue>[0], text: string): unknown {
  const parts = text.slice(text.indexOf(": ") + 2, text.lastIndexOf(" }"));
  const tokens = parts
    .split(/(,)| /)
    .filter((word) => word)
    .map((word, index) => ({
      kind: word === "," ? ("comma" as const) : ("word" as const),
      text: word,
      span: { start: index, end: index + 1 },
    }));
  return readValue(type, tokens).value;
}
