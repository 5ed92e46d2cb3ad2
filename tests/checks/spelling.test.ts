import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { mends } from "../../server/engine/repairs.ts";
import { prelude } from "../../server/standards/index.ts";

/** Words that people write for others: what they are told, and what is put in their place. */
function offered(text: string): readonly string[] {
  const engine = new Engine({ today: "2026-11-25", prelude });
  engine.update([{ uri: "a.ferrule", text }]);
  const declarations = engine.file("a.ferrule")?.declarations ?? [];
  return declarations.flatMap((declaration) =>
    engine
      .findingsOf(declaration)
      .filter(({ severity }) => severity === "error" || severity === "warning")
      .flatMap((finding) => mends(engine, declaration, finding).map(({ title }) => title)),
  );
}

describe("a word of the trade that the vocabulary calls otherwise", () => {
  it.each([
    ["part frame a.b { weight: 3 kg }", "Write mass"],
    ["part shift-controller a.b { clamp: band-22.2 }", "Write mount"],
    ["build a { rear-break.lever: none }", "Write rear-brake.lever"],
    ["build a { drivetrain.chian: none }", "Write drivetrain.chain"],
    ["build a { drivetrain { shifter: none } }", "Write rear-controller"],
    ["part frame a.b { rear-travel: 0 mm }", "Write none"],
    ["part bottom-bracket a.b { shell-widths: 68/73 mm }", "Write 68 to 73 mm"],
    ["part rear-derailleur a.b { mount: threaded }", "Write M10x1"],
    ["part bottom-bracket a.b { shell: ISO-86 }", "Write ISO-68"],
    ["standard axle 12x149 { mates: 12x184 }", "Write 12x148"],
    ["part cassette a.b { cogs: 11,34 t }", "Write 11-34 t"],
  ])("%s: %s", (text, title) => {
    expect(offered(`${text}\n`)).toContain(title);
  });

  it("a mate that is declared is no finding", () => {
    expect(offered("standard axle 12x149 { mates: 12x148 }\n")).toEqual([]);
  });

  it("one of several mates is written anew alone", () => {
    const engine = new Engine({ today: "2026-11-25", prelude });
    const text = "standard axle 12x149 { mates: 12x142, 12x184 }\n";
    engine.update([{ uri: "a.ferrule", text }]);
    const [declaration] = engine.file("a.ferrule")?.declarations ?? [];
    const [finding] = engine.findingsOf(declaration!);
    const [mend] = mends(engine, declaration!, finding!);
    const [edit] = mend!.edits;
    const lines = engine.lines("a.ferrule");
    expect(text.slice(lines.offset(edit!.range.start), lines.offset(edit!.range.end))).toBe("12x184");
  });
});
