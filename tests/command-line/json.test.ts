import { readFileSync } from "node:fs";
import { join } from "node:path";
import { Ajv2020 } from "ajv/dist/2020.js";
import { beforeAll, describe, expect, test } from "vitest";
import type { JsonFinding, JsonReport } from "../../server/reports/json.ts";
import { buildOnce } from "./built.ts";
import { ferrule, folderWith } from "./run.ts";
import { library, workshop, wrongBuild } from "./workshops.ts";

beforeAll(buildOnce, 120_000);

const schema = JSON.parse(
  readFileSync(new URL("../../server/reports/check-report.schema.json", import.meta.url), "utf8"),
);
const validate = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile<JsonReport>(schema);

function report(folder: string, words: readonly string[] = []): JsonReport {
  const { out, err } = ferrule(folder, ["check", "--format", "json", "--today", "2026-11-25", ...words]);
  expect(err).toBe("");
  const parsed: unknown = JSON.parse(out);
  expect(validate(parsed), JSON.stringify(validate.errors)).toBe(true);
  return parsed as JsonReport;
}

function allFindings(of: JsonReport): JsonFinding[] {
  return of.files.flatMap((file) => [...file.findings, ...file.builds.flatMap((build) => build.findings)]);
}

describe("check --format json", () => {
  test("follows its schema and says what the contract says", () => {
    const result = report(folderWith(workshop));
    expect(result.schemaVersion).toBe(1);
    expect(result.languageVersion).toBe(1);
    expect(result.today).toBe("2026-11-25");
    const build = result.files.find(({ path }) => path === "builds/wrong.ferrule")?.builds[0];
    expect(build?.name).toBe("fellside");
    const counts = Object.values(build?.counts ?? {}).reduce((sum, count) => sum + count, 0);
    expect(build?.checks).toHaveLength(counts);
    expect(build?.quantities["drivetrain.cog-difference"]).toBeUndefined();
    const row = build?.checks.find(({ code }) => code === "drivetrain/largest-cog");
    expect(row?.outcome).toBe("fails");
    expect(row?.instances).toEqual([{ name: "", outcome: "fails", message: expect.stringContaining("52 t") }]);
    const unknown = build?.checks.find(({ outcome }) => outcome === "unknown");
    expect(unknown?.missing.length).toBeGreaterThan(0);
  });

  test("gives numbers with their units", () => {
    const ring = "part chainring corrie.ring-32 { teeth: 32 t }\npart crankset corrie.crank { rings: none }\n";
    const build = wrongBuild.replace(
      "drivetrain {",
      "drivetrain {\n    crankset: corrie.crank\n    chainring: corrie.ring-32",
    );
    const result = report(folderWith({ "all.ferrule": library + ring + build }));
    expect(result.files[0]?.builds[0]?.quantities["drivetrain.capacity-needed"]).toEqual({ value: 42, unit: "t" });
  });

  test("a finding has its range, the other places, and fixes that mend it", () => {
    const folder = folderWith(workshop);
    const finding = allFindings(report(folder)).find(({ code }) => code === "drivetrain/largest-cog");
    expect(finding).toMatchObject({
      severity: "error",
      outcome: "fails",
      file: "builds/wrong.ferrule",
      range: { start: { line: 3, character: 14 }, end: { line: 3, character: 31 } },
    });
    expect(finding?.related.map(({ file, range }) => [file, range.start.line])).toContainEqual([
      "parts/drivetrain.ferrule",
      12,
    ]);
    const swap = finding?.fixes.find(({ title }) => title.includes("corrie.narrow-10-44"));
    const [edit] = swap?.edits ?? [];
    expect(edit).toMatchObject({ file: "builds/wrong.ferrule", range: finding?.range });
    const lines = readFileSync(join(folder, "builds/wrong.ferrule"), "utf8").split("\n");
    const { start, end } = edit!.range;
    const line = lines[start.line] ?? "";
    lines[start.line] = line.slice(0, start.character) + edit!.newText + line.slice(end.character);
    const { out } = ferrule(folder, ["check", "-", "--as", "builds/wrong.ferrule"], { input: lines.join("\n") });
    expect(out).not.toContain("largest-cog");
  });

  test("columns are UTF-16 units from zero, lines end in any way", () => {
    const text =
      'part tube a "\u{1f6b2}" { mass: 1 g }\r\npart tube b "é\u0301" { masss: 1 g; price: "\u{1f6b2}\u{1f6b2}" }\r\n';
    const found = allFindings(report(folderWith({ "odd.ferrule": text })));
    const field = found.find(({ code }) => code === "language/unknown-field");
    // part tube b "é◌́" { comes before it on the second line.
    expect(field?.range).toEqual({ start: { line: 1, character: 19 }, end: { line: 1, character: 24 } });
    const price = found.find(({ path }) => path === "price");
    expect(price?.range.start).toEqual({ line: 1, character: 38 });
    expect(price?.range.end).toEqual({ line: 1, character: 44 });
  });

  test("waivers are there with their reason", () => {
    const waived = wrongBuild.replace(/}\n$/, '  waive drivetrain/largest-cog "Tried" until 2027-03-31\n}\n');
    const result = report(folderWith({ ...workshop, "builds/wrong.ferrule": waived }));
    const finding = allFindings(result).find(({ code }) => code === "drivetrain/largest-cog");
    expect(finding).toMatchObject({ outcome: "waived", waiver: { reason: "Tried", until: "2027-03-31" } });
    expect(result.totals.counts.waived).toBe(1);
  });

  test("house rules stand among the checks, under any name", () => {
    const rule = 'rule Climbers.light "Light" {\n  require: drivetrain.cassette.speeds <= 7\n  severity: warning\n}\n';
    const result = report(folderWith({ ...workshop, "rules.ferrule": rule }));
    const [build] = result.files.find(({ path }) => path === "builds/wrong.ferrule")?.builds ?? [];
    expect(build?.checks.at(-1)).toMatchObject({ code: "rule/Climbers.light", outcome: "fails" });
    expect(allFindings(result).filter(({ code }) => code === "rule/Climbers.light")).toHaveLength(2);
    expect(allFindings(result).find(({ code }) => code === "rule/Climbers.light")).toMatchObject({
      severity: "warning",
      path: "drivetrain.cassette.speeds",
    });
  });

  test("of anything at all it follows its schema", () => {
    const broken =
      'part\n}}} "x\npart cassette { : : }\nbuild b from b { drivetrain { cassette: "x" or } }\n\u0000'.replace(
        "\u0000",
        "",
      );
    report(
      folderWith({ "broken.ferrule": broken, "empty.ferrule": "", "rule.ferrule": "rule r { require: 1 < 2 }\n" }),
    );
  });
});
