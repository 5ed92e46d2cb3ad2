import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { LineIndex } from "../../server/engine/positions.ts";
import { mends } from "../../server/engine/repairs.ts";
import { prelude } from "../../server/standards/index.ts";

const uri = "file:///a.ferrule";

/** What a text becomes by each repair of what it says twice, by the repair's title. */
function mended(text: string): Readonly<Record<string, string>> {
  const engine = new Engine({ today: "2026-11-25", prelude });
  engine.update([{ uri, text }]);
  const found = (engine.file(uri)?.declarations ?? []).flatMap((declaration) =>
    engine
      .findingsOf(declaration)
      .filter(({ code }) => code === "language/repeated")
      .flatMap((finding) => mends(engine, declaration, finding))
      .map(({ title, edits }) => {
        const lines = new LineIndex(text);
        let after = text;
        for (const { range, newText } of edits) {
          after = after.slice(0, lines.offset(range.start)) + newText + after.slice(lines.offset(range.end));
        }
        return [title, after] as const;
      }),
  );
  return Object.fromEntries(found);
}

describe("what is stated twice in one block", () => {
  it("is mended by taking out either, with its line", () => {
    const text = (first: string, second: string): string =>
      `part chainring a.one "One" {\n${first}  mass: 40 g\n${second}}\n`;
    const both = text("  teeth: 32 t\n", "  teeth: 34 t\n");
    expect(mended(both)).toEqual({
      "Take the second teeth out, which does not count": text("  teeth: 32 t\n", ""),
      "Take the first teeth out, so that this one counts": text("", "  teeth: 34 t\n"),
    });
  });

  it("of two that say the same only one goes", () => {
    expect(mended("part chainring a.one { teeth: 32 t; mass: 40 g; teeth: 32 t }\n")).toEqual({
      "Take the second teeth out, which does not count": "part chainring a.one { teeth: 32 t; mass: 40 g }\n",
    });
  });

  it("leaves comments where they are, and reads clean after", () => {
    const text = "part chainring a.one {\n  teeth: 32 t // measured\n  teeth: 34 t // from the box\n}\n";
    const ways = mended(text);
    expect(Object.values(ways)).toEqual([
      "part chainring a.one {\n  teeth: 32 t // measured\n   // from the box\n}\n",
      "part chainring a.one {\n   // measured\n  teeth: 34 t // from the box\n}\n",
    ]);
    for (const way of Object.values(ways)) expect(mended(way)).toEqual({});
  });

  it("in builds, rules and records too", () => {
    const ways = mended(
      'build b { category: road; category: track }\nrule r "R" { severity: error; require: category is road; severity: warning }\n' +
        'record "1" of b { drivetrain.chain.links: 110; drivetrain.chain.links: 112 }\n',
    );
    expect(Object.keys(ways)).toEqual([
      "Take the second category out, which does not count",
      "Take the first category out, so that this one counts",
      "Take the second severity out, which does not count",
      "Take the first severity out, so that this one counts",
      "Take the second drivetrain.chain.links out, which does not count",
      "Take the first drivetrain.chain.links out, so that this one counts",
    ]);
    for (const way of Object.values(ways)) expect(Object.keys(mended(way))).toHaveLength(4);
  });
});
