import { describe, expect, it } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import type { Finding } from "../../server/model/finding.ts";
import { prelude } from "../../server/standards/index.ts";

const today = "2026-11-25";
const parts = `
part frame moor.fellside "Fellside" { mass: 2150 g; price: GBP 700.00 }
part rear-derailleur corrie.short "Short" { largest-cog: 36 t; speeds: 12 }
part cassette corrie.wide "Wide" { cogs: 10-12-14-16-18-21-24-28-32-38-45-52 t; speeds: 12 }
standard brake-fluid mineral-oil "Mineral oil" { base: mineral }
part brake-lever corrie.stop "Stop" { actuation: hydraulic; brake-fluid: mineral-oil }
part caliper corrie.grip "Grip" { actuation: hydraulic; brake-fluid: DOT-4 }
`;
const code = "drivetrain/largest-cog";

function engineWith(builds: string, day = today): Engine {
  const engine = new Engine({ today: day, prelude });
  engine.update([
    { uri: "parts.ferrule", text: parts },
    { uri: "builds.ferrule", text: builds },
  ]);
  return engine;
}

const build = (lines: string, cassette = "corrie.wide"): string => `build example "Example" {
  frame: moor.fellside
  drivetrain { rear-derailleur: corrie.short; cassette: ${cassette} }
  ${lines}
}
`;

function of(builds: string, name = "example", day = today) {
  const engine = engineWith(builds, day);
  const report = engine.report(engine.workshop.build(name)!)!;
  const aboutWaivers = report.findings.filter(({ code: own }) => /waiver/.test(own));
  const finding = report.findings.find(({ code: own }) => own === code) as Finding;
  const row = report.rows.find(({ check }) => check.code === code)!;
  return {
    engine,
    report,
    finding,
    row,
    said: aboutWaivers.map(({ code: own, severity }) => `${own} ${severity}`),
    aboutWaivers,
  };
}

describe("a waiver", () => {
  it("turns what fails into what is waived, with the reason, the day and what was found", () => {
    const { finding, row, report, said } = of(build(`waive ${code} "Owner asked" until 2027-01-31`));
    expect(finding).toMatchObject({ outcome: "waived", severity: "information", repairs: [] });
    expect(finding.message).toMatch(/^Waived until 2027-01-31: Owner asked \(.*52 t/);
    expect(finding.waiver).toEqual({ reason: "Owner asked", until: "2027-01-31" });
    expect(finding.related[0]?.message).toBe("waived here");
    expect(row.outcome).toBe("waived");
    expect([report.counts.waived, report.counts.fails]).toEqual([1, 0]);
    expect(said).toEqual([]);
  });

  it.each([
    ["at the slot", "drivetrain.cassette", "waived"],
    ["at the fact", "drivetrain.cassette.cogs", "waived"],
    ["at the assembly", "drivetrain", "waived"],
    ["at another slot", "drivetrain.chain", "fails"],
    ["at a slot whose name begins alike", "drivetrain.cassette-extra", "fails"],
  ])("%s", (_, path, outcome) => {
    expect(of(build(`waive ${code} at ${path} "Owner asked" until 2027-01-31`)).row.outcome).toBe(outcome);
  });

  it("silences its own code alone", () => {
    const { row, said } = of(build('waive drivetrain/smallest-cog "Owner asked" until 2027-01-31'));
    expect(row.outcome).toBe("fails");
    expect(said.length).toBeGreaterThan(0);
  });

  it("counts on its last day, and no longer on the next", () => {
    const text = build(`waive ${code} "Owner asked" until ${today}`);
    expect(of(text).row.outcome).toBe("waived");
    const late = of(text, "example", "2026-11-26");
    expect(late.row.outcome).toBe("fails");
    expect(late.said).toEqual(["build/out-of-date-waiver warning"]);
    expect(late.aboutWaivers[0]?.message).toContain("ended on 2026-11-25");
  });

  it("ends in a running engine when the day changes", () => {
    const { engine } = of(build(`waive ${code} "Owner asked" until ${today}`));
    engine.today = "2026-11-26";
    const report = engine.report(engine.workshop.build("example")!)!;
    expect(report.counts.waived).toBe(0);
  });

  it.each([
    [`waive ${code} "Owner asked"`, "build/endless-waiver information", "waived"],
    [`waive ${code} "  " until 2027-01-31`, "build/waiver-reason error", "fails"],
    [`waive ${code} "Owner asked" until 2027-02-30`, "build/waiver-date error", "fails"],
    ['waive drivetrain/larges-cog "Owner asked" until 2027-01-31', "build/unknown-waiver error", "fails"],
  ])("%s", (line, said, outcome) => {
    const found = of(build(line));
    expect(found.said).toEqual([said]);
    expect(found.row.outcome).toBe(outcome);
  });

  it("that silences nothing is said, where it stands", () => {
    const { said, aboutWaivers } = of(build(`waive ${code} "Owner asked" until 2027-01-31`, "none"));
    expect(said).toEqual(["build/idle-waiver information"]);
    const { place } = aboutWaivers[0]!;
    expect(place.declaration.text.slice(place.span.start, place.span.end)).toMatch(/^waive/);
  });

  it("that names another place than the one that fails says where it fails", () => {
    const { aboutWaivers, row } = of(build(`waive ${code} at frame "Owner asked" until 2027-01-31`));
    expect(row.outcome).toBe("fails");
    expect(aboutWaivers.map(({ message }) => message)).toEqual([
      `Nothing here fails ${code} at frame, so this waiver silences nothing. It fails at drivetrain.cassette.`,
    ]);
  });

  it.each([
    `waive ${code} "Owner asked" until`,
    `waive ${code} at "Owner asked" until 2027-01-31`,
    `waive ${code} at until 2027-01-31 "Owner asked"`,
    `waive ${code} frame "Owner asked" until 2027-01-31`,
  ])("%s does not count, since it would silence more than was meant", (line) => {
    const { row, said } = of(build(line));
    expect(row.outcome).toBe("fails");
    expect(said).toEqual([]);
  });

  it("beside another of the same build is idle, unless it lasts longer", () => {
    const two = (first: string, second: string) =>
      of(build(`waive ${code} "One" ${first}\n  waive ${code} "Two" ${second}`));
    const { aboutWaivers, finding } = two("until 2027-01-31", "until 2027-02-28");
    expect(finding.message).toMatch(/^Waived until 2027-02-28: Two/);
    expect(aboutWaivers.map(({ code: own, path }) => [own, path])).toEqual([["build/idle-waiver", ""]]);
    expect(aboutWaivers[0]?.message).toContain('as "Two"');
    const { place } = aboutWaivers[0]!;
    expect(place.declaration.text.slice(place.span.start, place.span.end)).toContain('"One"');
    expect(two("until 2027-02-28", "until 2027-01-31").said).toEqual([]);
    expect(two("", "until 2027-01-31").said).toEqual(["build/endless-waiver information"]);
    expect(two("until 2027-01-31", "").said.sort()).toEqual([
      "build/endless-waiver information",
      "build/idle-waiver information",
    ]);
  });

  it("of what is asked in several places needs its path", () => {
    const text = (at: string) =>
      `build example { rear-brake { lever: corrie.stop; caliper: corrie.grip } front-brake { lever: corrie.stop; caliper: corrie.grip }\n waive brake/fluid ${at}"Bench test" until 2027-01-31\n}\n`;
    const bare = of(text(""));
    expect(bare.said).toEqual(["build/waiver-path error"]);
    const failing = bare.report.findings.filter(({ code: own }) => own === "brake/fluid").map(({ path }) => path);
    expect(failing).toHaveLength(2);
    expect(bare.aboutWaivers[0]?.message).toContain(`"Bench test". It fails at ${failing.join(" and ")}.`);
    const { report } = of(text("at rear-brake "));
    const found = report.findings.filter(({ code: own }) => own === "brake/fluid");
    expect(found.map(({ outcome, path }) => [outcome, path.split(".")[0]]).sort()).toEqual([
      ["fails", "front-brake"],
      ["waived", "rear-brake"],
    ]);
    // One of two is not all of it.
    expect(report.rows.find(({ check }) => check.code === "brake/fluid")?.outcome).toBe("fails");
  });

  it("of what guards somebody stays a warning, and keeps its caution", () => {
    const { engine, report } = of(
      'build example { rear-brake { lever: corrie.stop; caliper: corrie.grip }\n waive brake/fluid at rear-brake "Bench test" until 2027-01-31\n}\n',
    );
    expect(engine.checks.byCode("brake/fluid")?.safety).toBe(true);
    const found = report.findings.find(({ code: own }) => own === "brake/fluid");
    expect(found).toMatchObject({ outcome: "waived", severity: "warning" });
    expect(found?.caution).toMatch(/\w.*\.$/s);
  });

  it("of what endangers somebody in one way alone stays a warning in that way", () => {
    const bike = (links: number): string => `
part frame a.frame "Frame" { chainstay: 415 mm; rear-travel: none }
part cassette a.cogs "Cogs" { cogs: 11-13-15-17-19-21-24-28-32-36 t; speeds: 10 }
part crankset a.crank "Crank" { rings: 46 t }
part rear-derailleur a.arm "Arm" { largest-cog: 36 t; chain-allowance-rigid: 2; set-up: cable; capacity: 39 t }
part chain a.chain "Chain" { speeds: 10 }
build example "One" {
  frame: a.frame
  drivetrain { rear-derailleur: a.arm; cassette: a.cogs; crankset: a.crank; chain: a.chain { links: ${links} }; front-derailleur: none }
  waive drivetrain/chain-length "Owner asked" until 2027-01-31
}
`;
    const waived = (links: number) => {
      const { engine, report } = of(bike(links));
      expect(engine.checks.byCode("drivetrain/chain-length")?.safety).toBeUndefined();
      return report.findings.find(({ code: own }) => own === "drivetrain/chain-length");
    };
    expect(waived(104)).toMatchObject({ outcome: "waived", severity: "warning" });
    expect(waived(118)).toMatchObject({ outcome: "waived", severity: "information" });
  });

  it("is inherited, and judged where it stands", () => {
    const builds = `${build(`waive ${code} "Owner asked" until 2026-01-31`)}build variant from example { }\n`;
    expect(of(builds, "variant").said).toEqual([]);
    expect(of(builds).said).toEqual(["build/out-of-date-waiver warning"]);
    const lasting = builds.replace("2026-01-31", "2027-01-31");
    expect(of(lasting, "variant").row.outcome).toBe("waived");
    const idle = `${build(`waive ${code} "Owner asked" until 2027-01-31`)}build variant from example { drivetrain.cassette: none }\n`;
    expect(of(idle, "variant").said).toEqual([]);
  });

  it("of a variant says why in place of the base's, and neither is idle", () => {
    const builds = `${build(`waive ${code} "Base asked" until 2027-01-31`)}build variant from example {\n  waive ${code} "Variant asked" until 2027-02-28\n}\n`;
    const { finding, said } = of(builds, "variant");
    expect(finding.message).toMatch(/^Waived until 2027-02-28: Variant asked/);
    expect(said).toEqual([]);
  });
});
