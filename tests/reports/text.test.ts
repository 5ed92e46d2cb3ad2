import { describe, expect, test } from "vitest";
import { coloured, plain } from "../../server/reports/paint.ts";
import { plainText, type TextOptions, textReport } from "../../server/reports/text.ts";
import { made, mend, type Row } from "./made.ts";

const library = `part cassette corrie.wide "Corrie wide" {
  cogs: 10-52 t
}

part rear-derailleur corrie.mid "Corrie mid" {
  largest-cog: 46 t
}
`;
const bike = `build fellside "Fellside 29" {
  drivetrain {
    cassette: corrie.wide
  }
}
`;
const texts = { "parts/library.ferrule": library, "builds/fellside.ferrule": bike };
const { at, finding, build, workshop } = made(texts);

const tooLarge = finding("builds/fellside.ferrule", "corrie.wide", {
  code: "drivetrain/largest-cog",
  message: "Largest cog 52 t, but Corrie mid takes at most 46 t: fit a cassette of 46 t or less.",
  related: [
    { message: "Corrie wide: cogs 10-52 t", at: at("parts/library.ferrule", "10-52 t") },
    { message: "Corrie mid: largest-cog 46 t", at: at("parts/library.ferrule", "46 t") },
  ],
  caution: "A chain that jams throws the rider.",
  mends: () => [mend("Fit Corrie narrow (corrie.narrow) as drivetrain.cassette"), mend("Waive it here, with a reason")],
});
const missing = finding("builds/fellside.ferrule", "fellside", {
  code: "build/missing-fact",
  severity: "information",
  outcome: "unknown",
});
const rows: readonly Row[] = [
  { code: "drivetrain/largest-cog", outcome: "fails", said: "Largest cog 52 t." },
  { code: "drivetrain/speeds", outcome: "unknown", said: "speeds of Corrie wide" },
  { code: "drivetrain/capacity", outcome: "unknown", said: "speeds of Corrie wide; which chain is fitted" },
  { code: "drivetrain/indexing", outcome: "unknown", said: "speeds of Corrie wide" },
  { code: "drivetrain/belt-line", outcome: "notApplicable", said: "drivetrain.chain is no belt" },
  { code: "cockpit/diameter", outcome: "holds", said: "31.8 mm and 31.8 mm." },
  {
    code: "cockpit/clamps",
    outcome: "holds",
    instances: [
      { name: "left", outcome: "holds", said: "One clamp for one lever." },
      { name: "right", outcome: "notApplicable", said: "nothing is there" },
    ],
  },
  { code: "cockpit/torque", outcome: "waived", said: "It was 6 N·m." },
];

function report(options: Partial<TextOptions> = {}, findings = [tooLarge, missing]): string {
  const files = [
    {
      path: "builds/fellside.ferrule",
      findings: [],
      builds: [build("builds/fellside.ferrule", "fellside", rows, findings)],
    },
    { path: "parts/library.ferrule", findings: [], builds: [] },
  ];
  return textReport([workshop(files)], { ...plainText, ...options });
}

describe("what a person sees", () => {
  test("a finding, its build and the whole, in 80 columns", () => {
    expect(report()).toMatchInlineSnapshot(`
      "builds/fellside.ferrule:3:15  error  drivetrain/largest-cog
        Largest cog 52 t, but Corrie mid takes at most 46 t: fit a cassette of 46 t or
        less.
        3 |     cassette: corrie.wide
          |               ^^^^^^^^^^^
        Corrie wide: cogs 10-52 t (parts/library.ferrule:2:9)
        2 |   cogs: 10-52 t
          |         ^^^^^^^
        Corrie mid: largest-cog 46 t (parts/library.ferrule:6:16)
        6 |   largest-cog: 46 t
          |                ^^^^
        Caution: A chain that jams throws the rider.
        Fix: Fit Corrie narrow (corrie.narrow) as drivetrain.cassette
        Fix: Waive it here, with a reason

      build fellside  Fellside 29  builds/fellside.ferrule:1:7
        2 hold, 1 fails, 3 cannot be checked, 1 waived, 1 does not apply
        2 facts are not stated:
          - speeds of Corrie wide; for 3 checks
          - which chain is fitted; for drivetrain/capacity

      2 files, 1 build: 1 error, 0 warnings, 0 notes, 2 facts not stated. Of 8 checks,
      2 hold, 1 fails, 3 cannot be checked, 1 waived, 1 does not apply.
      "
    `);
  });

  test("in a narrow window", () => {
    const text = report({ width: 44 });
    expect(text).toMatchInlineSnapshot(`
      "builds/fellside.ferrule:3:15  error  drivetrain/largest-cog
        Largest cog 52 t, but Corrie mid takes at
        most 46 t: fit a cassette of 46 t or less.
        3 |     cassette: corrie.wide
          |               ^^^^^^^^^^^
        Corrie wide: cogs 10-52 t
          (parts/library.ferrule:2:9)
        2 |   cogs: 10-52 t
          |         ^^^^^^^
        Corrie mid: largest-cog 46 t
          (parts/library.ferrule:6:16)
        6 |   largest-cog: 46 t
          |                ^^^^
        Caution: A chain that jams throws the
          rider.
        Fix: Fit Corrie narrow (corrie.narrow)
          as drivetrain.cassette
        Fix: Waive it here, with a reason

      build fellside  Fellside 29  builds/fellside.ferrule:1:7
        2 hold, 1 fails, 3 cannot be checked, 1
        waived, 1 does not apply
        2 facts are not stated:
          - speeds of Corrie wide; for 3 checks
          - which chain is fitted; for
            drivetrain/capacity

      2 files, 1 build: 1 error, 0 warnings, 0
      notes, 2 facts not stated. Of 8 checks, 2
      hold, 1 fails, 3 cannot be checked, 1
      waived, 1 does not apply.
      "
    `);
    // A line with a place stays whole, so that a terminal or a build server finds the place in it.
    const wrapped = text.split("\n").filter((line) => line.startsWith("  "));
    for (const line of wrapped) expect(line.length).toBeLessThanOrEqual(44);
  });

  test("rows on request, each outcome under its own heading", () => {
    const text = report({ list: ["holds", "fails", "unknown", "waived", "notApplicable"] }, []);
    expect(text).toMatchInlineSnapshot(`
      "build fellside  Fellside 29  builds/fellside.ferrule:1:7
        2 hold, 1 fails, 3 cannot be checked, 1 waived, 1 does not apply
        Holds:
          - cockpit/diameter: 31.8 mm and 31.8 mm.
          - cockpit/clamps (left): One clamp for one lever.
        Fails:
          - drivetrain/largest-cog: Largest cog 52 t.
        Cannot be checked:
          - drivetrain/speeds: not stated: speeds of Corrie wide
          - drivetrain/capacity: not stated: speeds of Corrie wide; which chain is
            fitted
          - drivetrain/indexing: not stated: speeds of Corrie wide
        Waived:
          - cockpit/torque: It was 6 N·m.
        Does not apply:
          - drivetrain/belt-line: drivetrain.chain is no belt

      2 files, 1 build: 0 errors, 0 warnings, 0 notes. Of 8 checks, 2 hold, 1 fails, 3
      cannot be checked, 1 waived, 1 does not apply.
      "
    `);
  });

  test("notes are counted as they are shown: what is missing fact by fact, what else is to be known by itself", () => {
    const limit = finding("builds/fellside.ferrule", "fellside", {
      code: "build/alternates-limit",
      severity: "information",
      outcome: "unknown",
      message: "Not all of the bikes were tried.",
    });
    const text = report({}, [missing, { ...missing }, limit]);
    expect(text).toContain("note  build/alternates-limit");
    expect(text).toContain("2 files, 1 build: 0 errors, 0 warnings, 1 note, 2 facts not stated.");
  });

  test("colour marks the same text and nothing else", () => {
    const text = report({ paint: coloured });
    expect(text).toContain("\u001b[1;31merror\u001b[22;39m");
    // biome-ignore lint/suspicious/noControlCharactersInRegex: escape codes are what it takes away.
    expect(text.replace(/\u001b\[[\d;]*m/g, "")).toBe(report({ paint: plain }));
  });

  test("more missing facts than a person reads are counted", () => {
    const many: Row[] = Array.from({ length: 15 }, (_, index) => ({
      code: `x/check-${index}`,
      outcome: "unknown",
      said: `fact ${index}`,
    }));
    const files = (list: TextOptions["list"]) =>
      textReport(
        [
          workshop([
            {
              path: "builds/fellside.ferrule",
              findings: [],
              builds: [build("builds/fellside.ferrule", "fellside", many, [missing])],
            },
          ]),
        ],
        { ...plainText, list },
      );
    expect(files([])).toContain("    and 3 more; --list unknown names all\n");
    expect(files([])).not.toContain("fact 14");
    expect(files(["unknown"])).toContain("    - fact 14; for x/check-14\n");
  });

  test("a build of which nothing is missing or wrong", () => {
    const files = [
      {
        path: "builds/fellside.ferrule",
        findings: [],
        builds: [build("builds/fellside.ferrule", "fellside", rows.slice(5, 6))],
      },
    ];
    expect(textReport([workshop(files)])).toMatchInlineSnapshot(`
      "build fellside  Fellside 29  builds/fellside.ferrule:1:7
        1 holds, 0 fail, 0 cannot be checked, 0 waived, 0 do not apply

      1 file, 1 build: 0 errors, 0 warnings, 0 notes. Of 1 check, 1 holds, 0 fail, 0
      cannot be checked, 0 waived, 0 do not apply.
      "
    `);
  });

  test("nothing but parts", () => {
    expect(textReport([workshop([{ path: "parts/library.ferrule", findings: [], builds: [] }])])).toBe(
      "1 file, 0 builds: 0 errors, 0 warnings, 0 notes.\n",
    );
  });

  test("what a file says cannot give the terminal orders", () => {
    const hostile = made({ "a\u001b[2Jb.ferrule": 'build x "\u202ereversed" {\n  note: "\u001b]0;owned\u0007"\n}\n' });
    const path = "a\u001b[2Jb.ferrule";
    const wrong = hostile.finding(path, '"\u001b]0;owned\u0007"', { message: "\u001b[31mred", code: "x/y" });
    const files = [{ path, findings: [wrong], builds: [hostile.build(path, "x", [])] }];
    const text = textReport([hostile.workshop(files)]);
    // biome-ignore lint/suspicious/noControlCharactersInRegex: control characters are what it looks for.
    expect(text).not.toMatch(/[\u0000-\u0009\u000b-\u001f\u007f-\u009f\u202e]/);
    expect(text).toContain('2 |   note: "␛]0;owned␇"');
  });
});
