import { describe, expect, it } from "vitest";
import { mends } from "../../server/engine/repairs.ts";
import { rulesSection } from "../../server/reference/rules-section.ts";
import { ruleFunctions } from "../../server/rules/functions.ts";
import { ruleEntries } from "../../server/vocabulary/rules.ts";
import { at, workshop } from "./support.ts";

/** What is said of a requirement where it is written: code, the place, the message, and what is offered. */
function said(requirement: string): { code: string; place: string; message: string; repairs: string[] }[] {
  const { engine, findings } = workshop(`rule r {\n  require: ${requirement}\n}\n`);
  return findings.map((finding) => ({
    code: finding.code,
    place: at(finding),
    message: finding.message,
    repairs: mends(engine, finding.place.declaration, finding).map(({ title }) => title),
  }));
}

describe("before any build is looked at, an expression is refused", () => {
  it.each<[string, string, string, RegExp, string?]>([
    // What it measures, with both sides and where they come from.
    [
      "cockpit.stem.length + frame.mass > 3 mm",
      "expression/dimension",
      "+",
      /^cockpit\.stem\.length is a length, and frame\.mass is a mass\. The two cannot be added up: they measure/,
    ],
    ["cockpit.stem.length - frame.mass > 3 mm", "expression/dimension", "-", /subtracted/],
    ["frame.mass < 3 N·m", "expression/dimension", "<", /frame\.mass is a mass, and 3 N·m is a torque/],
    ["cockpit.stem.length is 3 kg", "expression/dimension", "is", /a length, and 3 kg is a mass/],
    ["cockpit.stem.length in 3 kg to 4 kg", "expression/dimension", "in", /cannot be compared/],
    ["cockpit.stem.length in 3 mm, 4 kg", "expression/dimension", "in", /4 kg is a mass/],
    ["cockpit.stem.length in 3 mm to frame.mass", "expression/dimension", "to", /frame\.mass is a mass/],
    [
      "cockpit.stem.length * cockpit.stem.length < 3 mm",
      "expression/dimension",
      "<",
      /is an area, and 3 mm is a length/,
    ],
    ["cockpit.stem.length / cockpit.stem.length < 3 mm", "expression/dimension", "<", /is a plain number/],
    ["frame.price < 3 kg", "expression/dimension", "<", /a sum of money, and 3 kg is a mass/],
    ["sum(frame.mass, cockpit.stem.length) > 1 kg", "expression/dimension", "cockpit.stem.length", /taken together/],
    ["round(cockpit.stem.length, 1 g) > 1 mm", "expression/dimension", "1 g", /rounded so/],
    [
      "rider.mass * rider.mass > 3 kg",
      "expression/dimension",
      ">",
      /a quantity that has no name \(mass to the power 2\)/,
    ],
    // A unit that was forgotten.
    [
      "cockpit.stem.spacers-below <= 30",
      "expression/dimension",
      "30",
      /has no unit.*a length: write 30 mm/,
      "Write 30 mm",
    ],
    ["30 >= cockpit.stem.spacers-below", "expression/dimension", "30", /write 30 mm/, "Write 30 mm"],
    ["rider.mass > 50", "expression/dimension", "50", /write 50 kg/, "Write 50 kg"],
    ["frame.price > 500", "expression/dimension", "500", /write GBP 500/, "Write GBP 500"],
    ["GBP 3 + 4 > GBP 5", "expression/dimension", "4", /write GBP 4/, "Write GBP 4"],
    // Money.
    ["GBP 3 < EUR 4", "expression/currency", "<", /a sum in GBP, and EUR 4 is a sum in EUR.*no rate of exchange/],
    ["GBP 3 + EUR 4 < GBP 9", "expression/currency", "+", /added up: no rate/],
    // Words.
    [
      "category is muontain",
      "expression/unknown-word",
      "muontain",
      /^category is never muontain: it is one of mountain, .*Did you mean mountain\?$/,
      "Write mountain",
    ],
    ["category in road, gravle", "expression/unknown-word", "gravle", /Did you mean gravel\?/, "Write gravel"],
    [
      "mountian in frame.categories",
      "expression/unknown-word",
      "mountian",
      /frame\.categories is never/,
      "Write mountain",
    ],
    // Codes and parts.
    [
      "drivetrain.cassette.freehub is steped-driver",
      "model/unknown-standard",
      "steped-driver",
      /freehub-body/,
      "Write stepped-driver",
    ],
    [
      "drivetrain.cassette is corrie.wid",
      "model/unknown-part",
      "corrie.wid",
      /No part is declared/,
      "Write corrie.wide",
    ],
    ["drivetrain.cassette is gill.bell", "model/wrong-kind", "gill.bell", /is a cassette.*gill\.bell is a bell/],
    // Paths and functions.
    [
      "cockpit.stem.spacer-below <= 30 mm",
      "expression/unknown-path",
      "cockpit.stem.spacer-below",
      /Did you mean cockpit\.stem\.spacers-below\?/,
      "Write cockpit.stem.spacers-below",
    ],
    [
      "drivetrain.capacity-neded <= 3 t",
      "expression/unknown-path",
      "drivetrain.capacity-neded",
      /capacity-needed/,
      "Write drivetrain.capacity-needed",
    ],
    ["drivetrain is none", "expression/unknown-path", "drivetrain", /a group of slots; name one of them/],
    ["height <= 30 mm", "expression/unknown-path", "height", /No build has anything called height/],
    [
      "maximum(1, 2) > 1",
      "expression/unknown-function",
      "maximum",
      /There is no function maximum; there are min, max, sum/,
    ],
    ["rund(1) > 1", "expression/unknown-function", "rund", /Did you mean round\?/, "Write round"],
    ["abs(1, 2) > 1", "expression/arguments", "abs", /abs is written abs\(A\)/],
    ["min() > 1", "expression/arguments", "min", /min is written min\(A, B, \.\.\.\)/],
    [
      "round(cockpit.stem.length) > 1 mm",
      "expression/arguments",
      "cockpit.stem.length",
      /round\(cockpit\.stem\.length, 1 mm\)/,
    ],
    ["max(category) > 1", "expression/type", "category", /takes numbers and lists of numbers; this is a word of a set/],
    // Numbers, names, yes and no.
    ["cockpit.stem.length", "expression/type", "cockpit.stem.length", /A condition is expected here.*is a length/],
    ["cockpit.stem.length and category is road", "expression/type", "cockpit.stem.length", /A condition is expected/],
    ["not cockpit.stem.length", "expression/type", "cockpit.stem.length", /A condition is expected/],
    ["category < 3", "expression/type", "category", /A number is expected here; category is a word of a set/],
    ["category + 1 > 3", "expression/type", "category", /A number is expected/],
    [
      "cockpit.stem.length is frame.material",
      "expression/type",
      "is",
      /a length, and frame\.material is a word of a set.*never the same/,
    ],
    [
      "drivetrain.cassette is drivetrain.crankset",
      "expression/type",
      "is",
      /a cassette.*, and drivetrain\.crankset is a crankset/,
    ],
    ["drivetrain.cassette.freehub is frame.rear-axle", "expression/type", "is", /never the same/],
    ["cockpit.stem.length <= 3 to 4 mm", "expression/type", "3 to 4 mm", /A range stands after in/],
    ["cockpit.stem.length <= 4 ± 1 mm", "expression/type", "4 ± 1 mm", /One number is expected after <=/],
    // Lists.
    [
      "drivetrain.cassette.cogs <= 52 t",
      "expression/list",
      "drivetrain.cassette.cogs",
      /is a list: compare min\(drivetrain\.cassette\.cogs\)/,
    ],
    ["frame.categories is mountain", "expression/list", "frame.categories", /is a list/],
    ["category is mountain, gravel", "expression/list", "is", /Several choices stand after in\./, "Write in"],
    ["category is not mountain, gravel", "expression/list", "is not", /after not in\./, "Write not in"],
    // Ranges of what is allowed.
    [
      "rear-wheel.tube.tyre-widths <= 3 mm",
      "expression/range",
      "rear-wheel.tube.tyre-widths",
      /min\(rear-wheel\.tube\.tyre-widths\)/,
    ],
    ["sum(budget.mass) <= 3 kg", "expression/range", "budget.mass", /a range of what is allowed/],
    ["budget.mass <= 3 kg", "expression/range", "budget.mass", /a range of what is allowed/],
    // Values.
    ["cockpit.stem.length < 3 furlongs", "value/unknown-unit", "furlongs", /is no unit that Ferrule knows/],
    ["cockpit.stem.length < 3,5 mm", "language/decimal-comma", "3,5", /point/],
    ["frame.model is Fellside", "value/unquoted-text", "Fellside", /stand in quotes/, 'Write "Fellside"'],
    ["today > 2026-02-30", "value/no-such-day", "2026-02-30", /February 2026 has 28 days/],
    [
      "drivetrain.rear-controller.clamp is rear-brake.levr",
      "model/unknown-slot",
      "rear-brake.levr",
      /Did you mean rear-brake\.lever\?/,
    ],
  ])("%s", (requirement, code, place, message, repair) => {
    const found = said(requirement);
    expect(found.map((one) => [one.code, one.place])).toEqual([[code, place]]);
    expect(found[0]?.message).toMatch(message);
    if (repair !== undefined) expect(found[0]?.repairs).toContain(repair);
  });

  it("names both sides of an operator as related places", () => {
    const { findings } = workshop("rule r {\n  require: cockpit.stem.length + frame.mass > 3 mm\n}\n");
    expect(findings[0]?.related.map(({ message, place }) => [message, at({ place } as never)])).toEqual([
      ["cockpit.stem.length is a length", "cockpit.stem.length"],
      ["frame.mass is a mass", "frame.mass"],
    ]);
  });

  it("says one thing once: what stands around a mistake has no finding of its own", () => {
    const requirement = "not (cockpit.stem.lenth + 3 mm <= 5 mm) and round(cockpit.stem.lenth, 1 mm) in 3 mm, 4 mm";
    expect(said(requirement).map(({ code }) => code)).toEqual(["expression/unknown-path", "expression/unknown-path"]);
  });

  it("and is asked of no build then", () => {
    const { engine } = workshop("rule r {\n  require: category is muontain\n}\n");
    const report = engine.report(engine.workshop.build("example")!)!;
    expect(report.rows.some(({ check }) => check.code === "rule/r")).toBe(false);
    expect(Object.values(report.counts).reduce((sum, one) => sum + one, 0)).toBe(report.rows.length);
  });
});

describe("every example that is shown to people", () => {
  const names = { ...Object.fromEntries(ruleFunctions.map(({ name, example }) => [name, `${example} is ${example}`])) };
  it.each(Object.entries(names))("of the function %s goes together", (_, requirement) => {
    expect(said(requirement)).toEqual([]);
  });

  it.each(Object.entries(ruleEntries))("of the entry %s goes together", (name, entry) => {
    const example = entry.form === "field" ? ("example" in entry.field ? entry.field.example : "") : entry.example;
    const written = entry.form === "block" ? example : `${name}: ${example}`;
    const line = example === "" ? "" : written;
    const { findings } = workshop(
      `rule r {\n  ${line}\n  ${name === "require" ? "" : "require: category is road"}\n}\n`,
    );
    // The builds of an example are of another workshop.
    expect(findings.filter(({ code }) => code !== "model/unknown-build").map(({ message }) => message)).toEqual([]);
  });

  it("of the page of the language goes together", () => {
    const rules = rulesSection().flatMap((part) => /```ferrule\n([\s\S]*?)\n```/.exec(part)?.[1] ?? []);
    expect(rules).toHaveLength(1);
    const { findings } = workshop(`${rules.join("\n")}\n`);
    expect(findings.filter(({ code }) => code !== "model/unknown-build").map(({ message }) => message)).toEqual([]);
  });
});
