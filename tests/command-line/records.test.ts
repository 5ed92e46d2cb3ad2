import { readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import { beforeAll, describe, expect, test } from "vitest";
import type { JsonReport } from "../../server/reports/json.ts";
import { buildOnce } from "./built.ts";
import { ferrule, folderWith } from "./run.ts";

beforeAll(buildOnce, 120_000);

const schema = JSON.parse(
  readFileSync(new URL("../../server/reports/check-report.schema.json", import.meta.url), "utf8"),
);
const validate = new Ajv2020({ strict: true, allErrors: true, allowUnionTypes: true }).compile<JsonReport>(schema);

const files = {
  "workshop.ferrule": 'workshop yard "Yard" {\n  language: 1\n}\n',
  "parts.ferrule":
    'part rear-derailleur corrie.arm "Arm" { chain-gap: 6 to 8 mm }\npart spokes moor.spokes "Spokes" { spoke-head: elbow }\n',
  "build.ferrule": "build fell {\n  drivetrain.rear-derailleur: corrie.arm\n  rear-wheel.spokes: moor.spokes\n}\n",
  "records/one.ferrule": `record "F-1" of fell {
  date: 2026-11-20
  by: "K. P."
  occasion: built
  drivetrain.chain-gap: 11 mm
  rear-wheel.tension.drive-side: 1000, 1010, 700, 990 N
}
`,
};
const check = (...words: readonly string[]) =>
  ferrule(folderWith(files), ["check", "--today", "2026-11-25", "--no-cache", ...words]);

describe("check", () => {
  test("shows what differs at the measurement, and counts comparisons apart from checks", () => {
    const { out, code } = check("records");
    expect(code).toBe(0);
    expect(out).toContain("records/one.ferrule:5:25  warning  record/chain-gap\n");
    expect(out).toContain("  5 |   drivetrain.chain-gap: 11 mm\n");
    expect(out).toMatch(/Arm: chain-gap 6 to 8 mm \(parts\.ferrule:1:\d+\)/);
    expect(out).toMatch(/Spoke 3 of the drive side has 700 N, 30 % below/);
    expect(out).toContain("Caution: A slack spoke lets its neighbours break");
    expect(out).toContain("record F-1 of fell  2026-11-20, built, K. P.  records/one.ferrule:1:8\n");
    expect(out).toContain("  1 holds, 2 fail, 3 cannot be checked, 0 waived, 0 do not apply\n");
    expect(out.replace(/\s+/g, " ")).toContain("1 file, 0 builds, 1 record: 0 errors, 2 warnings");
    expect(out.replace(/\s+/g, " ")).toContain("Of 6 comparisons of what was measured, 1 holds, 2 fail,");
  });

  test("lists what holds with both numbers, and what cannot be compared", () => {
    const { out } = check("records", "--list", "holds");
    expect(out.replace(/\s+/g, " ")).toContain(
      "- record/slack-spoke (rear-wheel.tension.drive-side): The slackest spoke of the drive side has 700 N, more than 150 N.",
    );
  });

  test("fails by a record's error like by a build's", () => {
    const worse = folderWith({ ...files, "records/one.ferrule": files["records/one.ferrule"].replace("700", "100") });
    expect(ferrule(worse, ["check", "records", "--no-cache"]).code).toBe(1);
    expect(ferrule(worse, ["check", "build.ferrule", "--no-cache"]).code).toBe(0);
  });

  test("says in JSON what was measured, what was expected and what came of it, by its schema", () => {
    const result: unknown = JSON.parse(check("--format", "json").out);
    expect(validate(result), JSON.stringify(validate.errors)).toBe(true);
    const { files: reported, totals } = result as JsonReport;
    expect(totals).toMatchObject({ builds: 1, records: 1, recordCounts: { holds: 1, fails: 2, unknown: 3 } });
    // Builds are counted as ever.
    expect(Object.values(totals.counts).reduce((sum, count) => sum + count, 0)).toBeGreaterThan(100);
    const [record] = reported.find(({ path }) => path === "records/one.ferrule")?.records ?? [];
    expect(record).toMatchObject({
      serial: "F-1",
      build: "fell",
      date: "2026-11-20",
      by: "K. P.",
      occasion: "built",
      spec: { state: "not-stated", today: expect.stringMatching(/^[a-f][0-9a-f]{11}$/) },
      counts: { holds: 1, fails: 2, unknown: 3, waived: 0, notApplicable: 0 },
    });
    expect(record?.measurements).toMatchObject([
      {
        path: "drivetrain.chain-gap",
        written: "11 mm",
        value: 11,
        unit: "mm",
        comparisons: [{ code: "record/chain-gap", outcome: "fails", expected: "6 to 8 mm" }],
      },
      { path: "rear-wheel.tension.drive-side", value: [1000, 1010, 700, 990], unit: "N" },
    ]);
    expect(record?.findings.map(({ code }) => code)).toContain("record/spoke-spread");
    expect(reported.flatMap(({ findings }) => findings)).toEqual([]);
  });

  test("JSON says of a recipe that moved on what it would come to today", () => {
    const moved = files["records/one.ferrule"].replace("  occasion", "  spec: c0ffee\n  occasion");
    const older = folderWith({ ...files, "records/one.ferrule": moved });
    const result: unknown = JSON.parse(ferrule(older, ["check", "--format", "json", "--no-cache"]).out);
    expect(validate(result), JSON.stringify(validate.errors)).toBe(true);
    const [record] = (result as JsonReport).files.flatMap(({ records }) => records);
    expect(record?.spec).toMatchObject({ state: "moved-on", stated: "c0ffee" });
    expect(record?.measurements[0]?.comparisons[0]).toMatchObject({ outcome: "unknown", today: "fails" });
  });

  test("is in the formats of build servers and code hosts", () => {
    const junit = check("--format", "junit").out;
    expect(junit).toContain('<testsuite name="records/one.ferrule#F-1" file="records/one.ferrule" tests="6"');
    expect(junit).toContain('name="record/chain-gap at drivetrain.chain-gap"');
    const sarif = JSON.parse(check("--format", "sarif").out) as {
      runs: {
        results: { ruleId: string }[];
        tool: { driver: { rules: { id: string; shortDescription: { text: string } }[] } };
      }[];
    };
    expect(sarif.runs[0]?.results.map(({ ruleId }) => ruleId)).toContain("record/chain-gap");
    expect(
      sarif.runs[0]?.tool.driver.rules.find(({ id }) => id === "record/chain-gap")?.shortDescription.text,
    ).toContain("The chain gap");
    expect(check("--format", "github").out).toContain("::warning file=records/one.ferrule,line=5,");
  });
});

describe("explain", () => {
  test("knows comparisons and what is said of records beside them", () => {
    const { out } = ferrule(folderWith(files), ["explain", "record/spoke-spread"]);
    expect(out).toContain("record/spoke-spread  warning");
    expect(out).toContain("It fails in this one:");
    expect(ferrule(folderWith(files), ["explain", "record/spec-moved-on"]).out).toContain(
      "digest of the old specification is kept",
    );
    expect(ferrule(folderWith(files), ["explain", "record/spoke-spraed"]).err).toContain(
      "Did you mean record/spoke-spread",
    );
  });

  test("shows the digest of a build, the same as a record is compared with", () => {
    const { out } = ferrule(folderWith(files), ["explain", "build.ferrule#fell"]);
    const digest = /spec: ([a-f][0-9a-f]{11})/.exec(out)?.[1] ?? "";
    const json = JSON.parse(ferrule(folderWith(files), ["explain", "build.ferrule#fell", "--format", "json"]).out) as {
      spec: string;
    };
    expect(json.spec).toBe(digest);
    const stated = files["records/one.ferrule"].replace("  occasion", `  spec: ${digest}\n  occasion`);
    const current = folderWith({ ...files, "records/one.ferrule": stated });
    expect(ferrule(current, ["check", "records"]).out).toContain(`built to ${digest}, as the build stands`);
  });

  test("says of a record what every measurement was compared with, and how it came out", () => {
    const explain = (...words: readonly string[]) => ferrule(folderWith(files), ["explain", ...words]);
    const whole = explain("records/one.ferrule#F-1");
    expect(whole.code).toBe(0);
    expect(whole.out).toMatch(
      /^record F-1 of fell\nCompared with the build as it stands, whose specification is [\w-]+\.\n/,
    );
    expect(whole.out).toContain("\nrecord/chain-gap  ");
    expect(whole.out).toContain("\nrecord/slack-spoke  ");

    const { out } = explain("records/one.ferrule#F-1/rear-wheel.tension.drive-side");
    expect(out).toMatch(/^rear-wheel\.tension\.drive-side\n/);
    expect(out).not.toContain("record/chain-gap");
    // (1000 + 1010 + 700 + 990) / 4 = 925, and what the other three average is 1000.
    expect(out.replace(/\s+/g, " ")).toContain(
      "Measured: rear-wheel.tension.drive-side: 1000, 1010, 700, 990 N (records/one.ferrule:6:",
    );
    expect(out).toMatch(/Working: .*1000/);
    expect(out).toContain("Source: ");
    expect(explain("records/one.ferrule#F-1/record/chain-gap").out).toContain("Expected: 6 to 8 mm");
    expect(explain("records#F-1/drivetrain.chain-gap").out).toContain(
      "From: drivetrain.rear-derailleur.chain-gap: 6 to 8 mm (Arm, parts.ferrule:1:",
    );
  });

  test("says so in JSON, and what there is when a name is wrong", () => {
    const explain = (...words: readonly string[]) => ferrule(folderWith(files), ["explain", ...words]);
    const said = JSON.parse(explain("records/one.ferrule#F-1/drivetrain.chain-gap", "--format", "json").out) as {
      readonly spec: { readonly state: string };
      readonly comparisons: readonly { readonly code: string; readonly outcome: string; readonly expected: string }[];
    };
    expect(said.spec.state).toBe("not-stated");
    expect(said.comparisons).toHaveLength(1);
    expect(said.comparisons[0]).toMatchObject({ code: "record/chain-gap", outcome: "fails", expected: "6 to 8 mm" });

    const wrong = explain("records/one.ferrule#F-1/drivetrain.chain-gpa");
    expect(wrong.code).toBe(2);
    expect(wrong.err).toContain("Did you mean drivetrain.chain-gap?");
    expect(explain("records/one.ferrule#F-2").err).toContain(
      "records/one.ferrule has no build or record F-2. Did you mean F-1?",
    );
  });
});
