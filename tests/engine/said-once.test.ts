import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { mends } from "../../server/engine/repairs.ts";
import { prelude } from "../../server/standards/index.ts";

/** Everything that is wrong with a text, with what mends it; what a build leaves open aside. */
function said(text: string): readonly { readonly code: string; readonly message: string; readonly mends: string[] }[] {
  const engine = new Engine({ today: "2026-11-25", prelude });
  engine.update([{ uri: "a.ferrule", text }]);
  return (engine.file("a.ferrule")?.declarations ?? []).flatMap((declaration) =>
    engine
      .findingsOf(declaration)
      .filter(({ outcome }) => outcome === "fails")
      .map((finding) => ({
        code: finding.code,
        message: finding.message,
        mends: mends(engine, declaration, finding).map(({ title }) => title),
      })),
  );
}

describe("what the language finds wrong and the field can say better is said once", () => {
  it.each([
    [
      "part pedals a.p { thread: }",
      "thread has no value: write the code of a pedal thread, or none where there is none.",
    ],
    [
      "part pedals a.p {\n  thread:\n}",
      "thread has no value: write the code of a pedal thread, or none where there is none.",
    ],
    ["part hub a.p { mass: }", "mass has no value: write one, such as 372 g, or none where there is none."],
    ["build b { rider { mass: } }", "mass has no value: write one, such as 78 kg, or none where there is none."],
    ["build b {\n  fork:\n}", "fork needs the name of a part, or none."],
    ["build b { drivetrain.chain: }", "drivetrain.chain needs the name of a part, or none."],
    ["part crankset a.c { rings: 50,34 t }", "Tooth counts are joined by dashes: 50-34 t."],
    ["part crankset a.c { rings: 50,34 }", "Tooth counts are joined by dashes: 50-34 t."],
    ["part cassette a.c { cogs: 11,13,15 t }", "Tooth counts are joined by dashes: 11-13-15 t."],
  ])("%s", (text, message) => {
    expect(said(`${text}\n`).map((one) => one.message)).toEqual([message]);
  });

  it("also where two lines lack their values", () => {
    expect(said("part hub a.h {\n  axle:\n  layout:\n}\n").map(({ message }) => message.slice(0, 12))).toEqual([
      "axle has no ",
      "layout has n",
    ]);
  });

  it("but what nobody says better stays", () => {
    expect(said("part hub a.h { own { size: } }\n").map(({ code }) => code)).toEqual(["language/missing-value"]);
    expect(said("part hub a.h { mass: 3,5 kg }\n").map(({ code }) => code)).toEqual(["language/decimal-comma"]);
  });
});

describe("a code that is not declared", () => {
  it("is offered those of its family that are near, joined as they are declared", () => {
    expect(said("part rotor a.r { mount: six bolt 44 }\n")).toEqual([
      {
        code: "value/several-words",
        message: "mount takes one code, and six bolt 44 is several words: the words of a code are joined by dashes.",
        mends: ["Write six-bolt-44"],
      },
    ]);
  });

  it("is not written in quotes unless such a code is declared", () => {
    const own = 'standard rotor-mount "six holes" "Six holes" { fixing: bolts; bolts: 6 }\n';
    expect(said(`${own}part rotor a.r { mount: six hole }\n`)[0]?.mends).toContain('Write "six holes"');
    expect(said("part rotor a.r { mount: six hole }\n")[0]?.mends).not.toContain('Write "six hole"');
  });

  it("has no preferred one where none is near", () => {
    const engine = new Engine({ today: "2026-11-25", prelude });
    engine.update([{ uri: "a.ferrule", text: "part freewheel a.f { thread: nosuch }\n" }]);
    const [declaration] = engine.file("a.ferrule")?.declarations ?? [];
    const found = engine.findingsOf(declaration!).flatMap((finding) => mends(engine, declaration!, finding));
    expect(found.length).toBeGreaterThan(3);
    expect(found.filter(({ preferred }) => preferred)).toEqual([]);
  });
});
