import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checks, instancesOf } from "../../server/checks/table.ts";
import { combinations } from "../../server/engine/alternates.ts";
import { BuildEvaluation, type InstanceResult } from "../../server/engine/evaluate.ts";
import { mends } from "../../server/engine/repairs.ts";
import type { Assembly } from "../../server/model/assembly.ts";
import { checkText, repaired } from "../checks/check-text.ts";
import { openSamples, reportOf } from "../samples/workshop.ts";

const small = (build: string): string => `
part rear-derailleur a.short "Short cage" { largest-cog: 42 t; mass: 250 g }
part rear-derailleur a.long "Long cage" { largest-cog: 52 t; mass: 300 g }
part cassette a.narrow "Narrow" { cogs: 11-13-15-17-19-21-24-28-32-36-42 t }
part cassette a.wide "Wide" { cogs: 10-12-14-16-18-21-24-28-32-38-45-52 t }
part cassette a.plain "Plain" { speeds: 11 }
part handlebar a.bar "Bar" { mass: 200 g }
part handlebar a.rise "Rise" { mass: 260 g }
part chainring a.ring "Ring" { teeth: 32 t }
build example "Example" {
${build}
}
`;
const clashing = "drivetrain/largest-cog";

describe("a slot that names several parts", () => {
  it("is checked with each of them, and the clash names the smallest set of parts", () => {
    const { of } = checkText(
      small(`  drivetrain.rear-derailleur: a.long or a.short
  drivetrain.cassette: a.narrow or a.wide
  cockpit.handlebar: a.bar or a.rise`),
    );
    const found = of(clashing);
    expect(found).toHaveLength(1);
    expect(found[0]?.message).toMatch(
      /^With a\.(short|wide) as drivetrain\.\S+ and a\.(short|wide) as drivetrain\.\S+: /,
    );
    expect(found[0]?.message).not.toContain("a.rise");
  });

  it("names one part where it clashes with what is there whatever else is chosen", () => {
    const { of } = checkText(
      small(`  drivetrain.rear-derailleur: a.short
  drivetrain.cassette: a.narrow or a.wide
  cockpit.handlebar: a.bar or a.rise`),
    );
    expect(of(clashing).map(({ message }) => message.slice(0, message.indexOf(":")))).toEqual([
      "With a.wide as drivetrain.cassette",
    ]);
  });

  it("says what the first-named parts already show once only", () => {
    const { of } = checkText(
      small(`  drivetrain.rear-derailleur: a.short
  drivetrain.cassette: a.wide
  cockpit.handlebar: a.bar or a.rise`),
    );
    expect(of(clashing)).toHaveLength(1);
    expect(of(clashing)[0]?.message).not.toMatch(/^With /);
  });

  it("asks for a fact that only an alternate lacks", () => {
    const { outcome, row, findings } = checkText(
      small(`  drivetrain.rear-derailleur: a.long
  drivetrain.cassette: a.narrow or a.plain`),
    );
    expect(outcome(clashing)).toBe("unknown");
    expect(
      row(clashing)
        .missing.map(({ what }) => what)
        .join(),
    ).toContain("Plain");
    expect(findings.some(({ code, message }) => code === "build/missing-fact" && message.includes("Plain"))).toBe(true);
  });

  it("has one wheel bought whole in both of its places, whichever it is", () => {
    const wheels = (wheel: string) =>
      checkText(`
part built-wheel a.light "Light" { axle: 12x142; mass: 700 g }
part built-wheel a.heavy "Heavy" { axle: 12x148; mass: 900 g }
part frame a.frame "Frame" { rear-axle: 12x142 }
build example "Example" {
  frame: a.frame
  rear-wheel { ${wheel} }
}
`);
    const same = wheels("hub: a.light or a.heavy; rim: a.light or a.heavy");
    expect(same.outcome("wheel/built-wheel")).toBe("holds");
    expect(same.of("wheel/axle").map(({ message }) => message.slice(0, message.indexOf(":")))).toEqual([
      "With a.heavy as rear-wheel.hub",
    ]);
    expect(combinations(same.report.assembly).map(({ slots }) => [...slots].map(([, { name }]) => name))).toEqual([
      ["a.frame", "a.light", "a.light"],
      ["a.frame", "a.heavy", "a.heavy"],
    ]);
    expect(wheels("hub: a.light or a.heavy; rim: a.light").outcome("wheel/built-wheel")).toBe("fails");
  });

  it("names a wheel bought whole no longer in both of its places at once", () => {
    const text = `
part built-wheel a.light "Light" { axle: 12x142 }
part built-wheel a.heavy "Heavy" { axle: 12x148 }
part frame a.frame "Frame" { rear-axle: 12x142 }
build example "Example" {
  frame: a.frame
  rear-wheel { hub: a.light or a.heavy; rim: a.light or a.heavy }
}
`;
    const leftOut = repaired(text, "wheel/axle").find(({ title }) => title.startsWith("Name "));
    expect(leftOut?.title).toBe("Name a.heavy no longer among the parts for rear-wheel.hub and rear-wheel.rim");
    expect(leftOut?.text).toContain("rear-wheel { hub: a.light; rim: a.light }");
  });

  it("passes over a name that no part has, which is a finding of its own", () => {
    const { outcome, findings } = checkText(
      small(`  drivetrain.rear-derailleur: a.long
  drivetrain.cassette: a.narrow or a.missing`),
      "allowed",
    );
    expect(outcome(clashing)).toBe("holds");
    expect(findings.map(({ code }) => code)).toContain("model/unknown-part");
  });

  it("can be waived like any finding", () => {
    const { outcome } = checkText(
      small(`  drivetrain.rear-derailleur: a.short
  drivetrain.cassette: a.narrow or a.wide
  waive ${clashing} at drivetrain.cassette "Tried on the stand" until 2027-01-01
  waive ${clashing} at drivetrain.rear-derailleur "Tried on the stand" until 2027-01-01`),
    );
    expect(outcome(clashing)).toBe("waived");
  });

  it("says so when there are more combinations than are tried", () => {
    const names = Array.from(
      { length: 40 },
      (_, index) => `part cassette b.c${index} "C" { cogs: 11-${28 + index} t }`,
    );
    const cages = Array.from(
      { length: 40 },
      (_, index) => `part rear-derailleur b.d${index} "D" { largest-cog: 90 t }`,
    );
    const { findings, of } = checkText(
      `${names.join("\n")}\n${cages.join("\n")}\nbuild example {
  drivetrain.cassette: ${names.map((_, index) => `b.c${index}`).join(" or ")}
  drivetrain.rear-derailleur: ${cages.map((_, index) => `b.d${index}`).join(" or ")}
}\n`,
      "allowed",
    );
    expect(of(clashing)).toHaveLength(0);
    const limit = findings.filter(({ code }) => code === "build/alternates-limit");
    expect(limit).toHaveLength(1);
    expect(limit[0]).toMatchObject({ severity: "information", outcome: "unknown" });
    expect(limit[0]?.message).toContain("1600 bikes");
    expect(limit[0]?.message).toContain(clashing);
  });
});

describe("what mends a clash of alternates", () => {
  const text = small(`  drivetrain.rear-derailleur: a.short
  drivetrain.cassette: a.narrow or a.wide`);
  const { engine, report, of } = checkText(text);
  const offered = mends(engine, report.assembly.declaration, of(clashing)[0]!);
  const mended = offered
    .filter(({ unfinished }) => !unfinished)
    .map(({ title, edits }) => {
      const [edit] = edits;
      const lines = engine.lines(edit!.uri);
      const [start, end] = [lines.offset(edit!.range.start), lines.offset(edit!.range.end)];
      return { title, text: text.slice(0, start) + edit!.newText + text.slice(end) };
    });

  it("is offered: a cage that takes both, and to name the part no longer", () => {
    expect(mended.map(({ title }) => title)).toEqual(
      expect.arrayContaining([
        expect.stringContaining("a.long"),
        "Name a.wide no longer among the parts for drivetrain.cassette",
      ]),
    );
  });

  it.each(mended)("leaves nothing that fails: $title", ({ title, text: after }) => {
    // A number corrected where the part is declared is the maker's to say, and holds as well.
    expect(checkText(after).of(clashing), title).toHaveLength(0);
  });

  it("never offers a part that would clash with another alternate", () => {
    const eleven = `part rear-derailleur a.other "Other" { largest-cog: 52 t; least-largest-cog: 44 t }
${small(`  drivetrain.rear-derailleur: a.short
  drivetrain.cassette: a.narrow or a.wide`)}`;
    const titles = swapsOf(eleven);
    expect(titles.filter((title) => title.includes("a.long"))).toHaveLength(1);
    // It takes the wide cassette, but its upper jockey wheel is too far from the narrow one.
    expect(titles.filter((title) => title.includes("a.other"))).toEqual([]);
  });

  it("never offers a part that the slot names already", () => {
    const titles = swapsOf(
      small(`  drivetrain.rear-derailleur: a.long or a.short
  drivetrain.cassette: a.narrow or a.wide`),
    );
    expect(titles.filter((title) => title.startsWith("Fit "))).toEqual([]);
    expect(titles).toContain("Name a.short no longer among the parts for drivetrain.rear-derailleur");
  });
});

describe("a part named twice in one slot", () => {
  it("is said, with the repair", () => {
    const { findings } = checkText(small("  drivetrain.cassette: a.narrow or a.narrow"), "allowed");
    expect(findings.map(({ code }) => code)).toContain("model/alternate-named-twice");
  });
});

function swapsOf(text: string): readonly string[] {
  const checked = checkText(text);
  const [finding] = checked.of(clashing);
  return mends(checked.engine, checked.report.assembly.declaration, finding!).map(({ title }) => title);
}

/** A sample build with alternates put into some of its slots, from the parts that its other slots could have. */
function withAlternates(slots: readonly (readonly [string, string])[]): string {
  return `build tried from fellside-l {\n${slots.map(([slot, names]) => `  ${slot}: ${names}`).join("\n")}\n}\n`;
}

const lists = {
  "drivetrain.rear-derailleur": ["corrie.long-12", "corrie.mid-12", "corrie.pull-12", "corrie.drop-11-short"],
  "drivetrain.cassette": ["corrie.wide-10-52", "corrie.wide-11-50", "corrie.gravel-11-42"],
  "drivetrain.chainring": ["corrie.ring-32", "corrie.ring-30", "corrie.ring-32-large"],
  "cockpit.stem": ["moor.stub-35", "moor.reach-90"],
  "rear-wheel.tyre": ["beck.rough-61-622", "beck.swift-30-622"],
} as const;

describe("all combinations", () => {
  const declared = new Set([...openSamples().workshop.declared("part")].map(({ name }) => name));
  const entries = Object.entries(lists).flatMap(([slot, names]) => {
    const known = names.filter((name) => declared.has(name));
    return known.length > 0 ? [[slot, known] as const] : [];
  });

  it("are judged as brute force judges them", { timeout: 120_000 }, () => {
    expect(entries.length).toBeGreaterThanOrEqual(4);
    const choice = fc.tuple(
      ...entries.map(([slot, names]) =>
        fc.shuffledSubarray([...names], { minLength: 1 }).map((some) => [slot, some.join(" or ")] as const),
      ),
    );
    fc.assert(
      fc.property(choice, (slots) => {
        const engine = openSamples({ "builds/tried.ferrule": "" });
        engine.update([{ uri: "builds/tried.ferrule", text: withAlternates(slots) }]);
        const report = reportOf(engine, "tried");
        const bikes = combinations(report.assembly).map(
          (assembly) => [assembly, new BuildEvaluation(assembly, engine.workshop)] as const,
        );
        for (const [row, check] of checks.entries()) {
          for (const instance of instancesOf(check)) {
            const results = report.rows[row]!.instances.filter((result) => result.instance === instance.name);
            for (const [bike, evaluation] of bikes) {
              const verdict = evaluation.ask(check, instance);
              const clashing = results.filter((result) => result.verdict.outcome === "fails" && has(bike, result));
              if (verdict.outcome === "fails") {
                // Either a named clash or what the first-named parts show in the same words or as a sum.
                const [primary] = results;
                const said = clashing.length > 0 || primary?.verdict.outcome === "fails";
                expect(said, `${check.code} ${instance.name} fails with ${names(bike)}`).toBe(true);
              } else {
                expect(clashing, `${check.code} ${instance.name} does not fail with ${names(bike)}`).toEqual([]);
              }
              if (bike === bikes[0]![0]) expect(results[0]?.verdict.outcome).toBe(verdict.outcome);
              if (verdict.outcome === "unknown") {
                const asked = results.flatMap((result) =>
                  result.verdict.outcome === "unknown" ? result.verdict.missing.map(({ what }) => what) : [],
                );
                expect(asked).toEqual(expect.arrayContaining(verdict.missing.map(({ what }) => what)));
              }
            }
          }
        }
      }),
      { numRuns: 12 },
    );
  });
});

/** Whether a bike has all the parts of a clash. */
function has(bike: Assembly, { combination }: InstanceResult): boolean {
  return combination?.parts.every(({ slot, installed }) => bike.slots.get(slot)?.name === installed.name) ?? false;
}

function names(bike: Assembly): string {
  return Object.keys(lists)
    .map((slot) => bike.slots.get(slot)?.name)
    .join(", ");
}
