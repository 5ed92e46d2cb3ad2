import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { mends } from "../../server/engine/repairs.ts";
import { verdictText } from "../../server/reports/verdict.ts";
import { prelude } from "../../server/standards/index.ts";
import { checkText } from "../checks/check-text.ts";

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

  it("is said to be none, with what to do", () => {
    const found = said("part hub a.h { axle: 12x149 }\n");
    expect(found.map(({ code }) => code)).toEqual(["model/unknown-standard"]);
    expect(found[0]?.message).toBe(
      "12x149 is not an axle that anybody declares, so nothing can be checked against it. Write one that is declared, or declare it: standard axle 12x149 { ... }.",
    );
    expect(found[0]?.mends[0]).toBe("Write 12x142");
  });

  it("leaves a question open in the build, and is no fact that nobody stated", () => {
    const text = `
part freewheel a.f "Free" { thread: nosuch }
build example { drivetrain.cassette: a.f }
`;
    const { report, findings } = checkText(text, "allowed");
    const row = report.rows.find(({ check }) => check.code === "drivetrain/freewheel-thread");
    expect(row?.outcome).toBe("unknown");
    const [instance] = row?.instances ?? [];
    expect(instance && verdictText(instance.verdict)).toMatch(/^not known: thread of Free .*nosuch/);
    const asked = findings.filter(({ code, message }) => code === "build/missing-fact" && message.includes("nosuch"));
    expect(asked).toEqual([]);
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

it("a part in the plural is fitted in the plural", () => {
  const { findings } = checkText("build example { category: city }\n");
  const asked = findings.map(({ message }) => message).join(" ");
  expect(asked).toContain("which spokes are fitted");
  expect(asked).toContain("which pair of pedals is fitted");
  expect(asked).not.toContain("spokes is");
});
