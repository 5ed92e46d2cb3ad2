import { describe, expect, it, test } from "vitest";
import { engineOf, recorded, said, uri } from "./record-text.ts";

const parts = `
part stem moor.stub "Stub" { length: 50 mm; bar-torque: 4 to 6 N·m }
part handlebar moor.wide "Wide" { stem-clamp-torque: <= 5 N·m }
part chain corrie.link "Link" { speeds: 12; wear-limit: 0.5 % }
part cassette corrie.wide "Wide 10-52" { speeds: 12; cogs: 10-12-14-16-18-21-24-28-32-38-45-52 t }
part cassette corrie.close "Close 11-34" { speeds: 12; cogs: 11-12-13-14-15-17-19-21-24-27-30-34 t }

build example "Example" {
  category: mountain
  cockpit { stem: moor.stub { spacers-below: 15 mm }; handlebar: moor.wide { cut-width: 760 mm } }
  drivetrain { chain: corrie.link { links: 116 }; cassette: corrie.wide or corrie.close; crankset: none }
}
`;

/** A record with these lines in it. */
function record(lines: string, header = 'record "A-1" of example'): string {
  return `${parts}\n${header} {\n  date: 2026-11-20\n  by: "K. P."\n${lines}\n}\n`;
}

describe("paths", () => {
  it("may be dotted, in blocks, or behind the part that was fitted", () => {
    for (const lines of [
      "  drivetrain.chain.links: 116",
      "  drivetrain {\n    chain.links: 116\n  }",
      "  drivetrain {\n    chain {\n      links: 116\n    }\n  }",
      "  drivetrain.chain { links: 116 }",
      "  drivetrain.chain: corrie.link { links: 116 }",
    ]) {
      const text = recorded(record(lines));
      expect(said(text.row("record/chain-links")), lines).toContain("116 links, as the build states");
    }
  });

  it("are settings, facts, numbers, aims, parts and measurements", () => {
    const text = recorded(
      record(
        [
          "  cockpit.stem.spacers-below: 15 mm",
          "  cockpit.stem.length: 50 mm",
          "  drivetrain.cassette.cogs: 10-12-14-16-18-21-24-28-32-38-45-52 t",
          "  drivetrain.greatest-cog-step: 20 %",
          "  category: mountain",
          "  drivetrain.chain: corrie.link",
          "  torque.stem-bar: 5 N·m",
          "  whole.test-ride: 20 min",
        ].join("\n"),
      ),
    );
    expect(text.report.rows.map(({ measured, outcome }) => `${measured.path} ${outcome}`)).toEqual([
      "cockpit.stem.spacers-below holds",
      "cockpit.stem.length holds",
      "drivetrain.cassette.cogs holds",
      "drivetrain.greatest-cog-step holds",
      "category holds",
      "drivetrain.chain holds",
      "torque.stem-bar holds",
      "whole.test-ride notApplicable",
    ]);
  });

  it.each([
    ["drivetrain.chain-gapp", "7 mm", "drivetrain.chain-gap"],
    ["rear-wheel.tension.drive-sid", "1000 N", "rear-wheel.tension.drive-side"],
    ["torque.stem-barr", "5 N·m", "torque.stem-bar"],
    ["cockpit.stem.spacers-bellow", "15 mm", "cockpit.stem.spacers-below"],
    ["dat", "2026-11-20", "date"],
  ])("%s is no path, and %s is meant", (path, value, meant) => {
    const text = recorded(record(`  ${path}: ${value}`).replace("  date: 2026-11-20\n", ""), "allowed");
    const [finding] = text.of("language/unknown-field");
    expect(finding?.message).toContain(meant);
    expect(finding && text.at(finding)).toBe(path);
    expect(text.repaired("language/unknown-field")).toContain(`  ${meant}: ${value}`);
  });

  it("in a block are completed from where the block stands", () => {
    const text = recorded(record("  drivetrain {\n    chain-waer: 0.2 %\n  }"), "allowed");
    expect(text.repaired("language/unknown-field")).toContain("    chain-wear: 0.2 %");
  });

  it("hold one value each: the first counts, and the second is found", () => {
    const text = recorded(record("  drivetrain.chain.links: 116\n  drivetrain { chain.links: 114 }"), "allowed");
    expect(text.of("language/repeated")).toHaveLength(1);
    expect(text.row("record/chain-links").outcome).toBe("holds");
  });
});

describe("values are read by the readers of everything else", () => {
  it("a wrong unit is an error with a conversion, and counts as not measured", () => {
    const text = recorded(record("  torque.stem-bar: 5 mm"), "allowed");
    expect(text.findings.filter(({ severity }) => severity === "error").map(({ code }) => code)).toEqual([
      expect.stringMatching(/^value\//),
    ]);
    expect(text.report.rows).toEqual([]);
  });

  it("a unit of another system is the same length", () => {
    const text = recorded(record("  cockpit.handlebar.cut-width: 29.92 in"));
    expect(text.row("record/as-specified").outcome).toBe("holds");
  });

  it("what was measured is one value, also where a part states a range", () => {
    const text = recorded(record("  cockpit.stem.bar-torque: 4 to 6 N·m"), "allowed");
    expect(text.report.rows).toEqual([]);
    expect(text.findings.some(({ code, severity }) => code.startsWith("value/") && severity === "error")).toBe(true);
  });

  it("inside a part's own range it holds, outside it fails", () => {
    expect(recorded(record("  cockpit.stem.bar-torque: 5 N·m")).row("record/as-specified").outcome).toBe("holds");
    const outside = recorded(record("  cockpit.stem.bar-torque: 7 N·m"));
    expect(said(outside.row("record/as-specified"))).toContain("7 N·m, and Stub states 4 to 6 N·m");
    expect(outside.row("record/as-specified").outcome).toBe("fails");
  });

  it("counts and words have to be the same, numbers within what a careful hand repeats", () => {
    const outcome = (line: string): string => recorded(record(`  ${line}`)).row("record/as-specified").outcome;
    expect(outcome("drivetrain.cassette.speeds: 11")).toBe("fails");
    expect(outcome("category: gravel")).toBe("fails");
    expect(outcome("drivetrain.cassette.cogs: 10-12-14-16-18-21-24-28-32-38-45-51 t")).toBe("fails");
    expect(outcome("cockpit.stem.spacers-below: 15.5 mm")).toBe("holds");
    expect(outcome("cockpit.stem.spacers-below: 15.6 mm")).toBe("fails");
  });
});

describe("a part in a record says which of several was fitted", () => {
  it("and what else was measured is compared with that one", () => {
    const gears = "  drivetrain.cassette.cogs: 11-12-13-14-15-17-19-21-24-27-30-34 t";
    expect(recorded(record(gears)).row("record/as-specified").outcome).toBe("fails");
    const fitted = recorded(record(`  drivetrain.cassette: corrie.close\n${gears}`));
    expect(fitted.report.counts).toMatchObject({ holds: 2, fails: 0 });
  });

  it("one that the build does not name is a finding, and changes nothing", () => {
    const text = recorded(record("  drivetrain.cassette: corrie.other\n  drivetrain.cassette.speeds: 12"));
    const [finding] = text.of("record/as-specified");
    expect(finding?.message).toContain("corrie.other was fitted");
    expect(finding?.message).toContain("corrie.wide or corrie.close");
    expect(text.report.counts).toMatchObject({ holds: 1, fails: 1 });
  });
});

test("what is measured where the build has nothing is a finding, and what it has not said is unknown", () => {
  const none = recorded(record("  drivetrain.crankset.mass: 600 g"));
  expect(none.of("record/nothing-there")[0]?.related.map(({ place }) => place.declaration.keyword)).toEqual(["build"]);
  const unsaid = recorded(record("  front-brake.rotor-thickness: 1.7 mm"));
  expect(unsaid.row("record/rotor-thickness").outcome).toBe("unknown");
  expect(unsaid.of("record/missing-fact")[0]).toMatchObject({
    severity: "information",
    outcome: "unknown",
    path: "front-brake.rotor-thickness",
    message: expect.stringContaining("which rotor is fitted"),
  });
});

test("a waive does not belong into a record", () => {
  const text = recorded(record('  waive record/chain-gap "Later" until 2027-01-01'), "allowed");
  expect(text.of("language/misplaced-waive")).toHaveLength(1);
});

describe("the build that a record is of", () => {
  it("has to be declared, and a near name is offered", () => {
    const text = recorded(record("  drivetrain.chain.links: 116", 'record "A-1" of exampel'), "allowed");
    expect(text.of("model/unknown-build")[0]).toMatchObject({ severity: "error" });
    expect(text.repaired("model/unknown-build")).toContain('record "A-1" of example {');
    expect(text.report.rows).toEqual([]);
  });

  it("is pending, not wrong, until every file is read", () => {
    const engine = engineOf({ [uri]: record("  date: 2026-11-20", 'record "A-1" of elsewhere') });
    const declaration = engine.workshop.lookup("record A-1");
    engine.complete = false;
    const codes = () => (declaration ? engine.findingsOf(declaration) : []).map(({ code }) => code);
    expect(codes()).not.toContain("model/unknown-build");
    engine.complete = true;
    expect(codes()).toContain("model/unknown-build");
  });

  it("can have several records, each judged by itself", () => {
    const other = record("  drivetrain.chain.links: 114", 'record "A-2" of example').slice(parts.length);
    const text = record("  drivetrain.chain.links: 116") + other;
    expect(recorded(text).row("record/chain-links").outcome).toBe("holds");
    expect(recorded(text, "refused", "A-2").row("record/chain-links").outcome).toBe("fails");
  });
});

test("a record without a serial is told so, and its build is not called undeclared", () => {
  const build = 'build example "Example" { }\n';
  const { findings } = recorded(
    `${build}record "" of example { date: 2026-11-20; by: "K."; spec: 0123456789ab }\n`,
    "allowed",
    "",
  );
  expect(findings.map(({ code }) => code)).toContain("record/no-serial");
  const engine = engineOf({ [uri]: `${build}record of example { date: 2026-11-20; by: "K." }\n` });
  const codes = engine.findings(uri).map(({ code }) => code);
  expect(codes).toContain("language/missing-name");
  expect(codes).not.toContain("model/unknown-build");
});

test("a serial that stands twice is an error at both, each with the place of the other", () => {
  const engine = engineOf({
    a: record("  drivetrain.chain.links: 116"),
    b: 'record "A-1" of example {\n  date: 2026-11-21\n  by: "J."\n}\n',
  });
  for (const [file, other] of [
    ["a", "b"],
    ["b", "a"],
  ] as const) {
    const found = engine.findings(file).filter(({ code }) => code === "model/duplicate-name");
    expect(found.map(({ severity, related }) => [severity, related[0]?.place.declaration.uri])).toEqual([
      ["error", other],
    ]);
  }
});

describe("days", () => {
  const dated = (first: string, second: string, serials: readonly [string, string] = ["A-1", "A-2"]): string =>
    `${parts}
record "${serials[0]}" of example { date: ${first}; by: "K." }
record "${serials[1]}" of example { date: ${second}; by: "K." }
`;
  const codes = (text: string, serial: string): readonly string[] =>
    recorded(text, "refused", serial).findings.map(({ code }) => code);

  it("to come are found, today is not", () => {
    expect(codes(dated("2026-11-26", "2026-11-26"), "A-1")).toContain("record/future-date");
    expect(codes(dated("2026-11-25", "2026-11-25"), "A-1")).not.toContain("record/future-date");
  });

  it("against the order of the serials are found at the later one, beside the one before", () => {
    const text = dated("2026-11-20", "2026-11-19");
    expect(codes(text, "A-1")).not.toContain("record/date-order");
    const [finding] = recorded(text, "refused", "A-2").of("record/date-order");
    expect(finding).toMatchObject({ severity: "information" });
    expect(finding?.related[0]?.place.declaration.name).toBe("A-1");
    expect(codes(dated("2026-11-20", "2026-11-20"), "A-2")).not.toContain("record/date-order");
  });

  it("of serials that are not of one series say nothing of each other", () => {
    expect(codes(dated("2026-11-20", "2026-11-19", ["A-1", "B-2"]), "B-2")).not.toContain("record/date-order");
    expect(codes(dated("2026-11-20", "2026-11-19", ["one", "two"]), "two")).not.toContain("record/date-order");
  });

  it("and whoever measured are asked for", () => {
    const text = `${parts}\nrecord "A-1" of example {\n  drivetrain.chain.links: 116\n}\n`;
    const [finding] = recorded(text).of("record/incomplete");
    expect(finding).toMatchObject({ severity: "information", outcome: "unknown" });
    expect(finding?.message).toContain("on which day and by whom");
    expect(recorded(record("")).of("record/incomplete")).toEqual([]);
  });
});
