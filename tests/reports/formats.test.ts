import { readFileSync } from "node:fs";
import { createRequire } from "node:module";
import { Ajv } from "ajv";
import { SaxesParser } from "saxes";
import { describe, expect, test } from "vitest";
import type { CollectedWorkshop } from "../../server/reports/collect.ts";
import { githubReport } from "../../server/reports/github.ts";
import { junitReport } from "../../server/reports/junit.ts";
import { sarifReport } from "../../server/reports/sarif.ts";
import { made, mend, type Row } from "./made.ts";

const path = "builds/50% off, really: #1.ferrule";
const text = 'build fellside "<Fellside> & \u0001 29" {\n  category: mountain\n}\n';
const { at, finding, build, workshop } = made({ [path]: text, "parts.ferrule": "part tube a {\n}\n" });

const failing = finding(path, "mountain", {
  code: "drivetrain/largest-cog",
  message: 'Largest cog 52 t & "more" <than>\n46 t, 100 %.',
  related: [{ message: "stated here", at: at("parts.ferrule", "tube") }],
  caution: "A chain that jams throws the rider.",
  mends: () => [mend("Mend it")],
});
const warning = finding(path, "category", { code: "drivetrain/chain-length", severity: "warning", message: "Long." });
const waived = finding(path, "fellside", {
  code: "cockpit/torque-window",
  severity: "information",
  outcome: "waived",
  message: "Waived: tried",
  waiver: { reason: "tried", until: "2027-03-31" },
});
const unknown = finding(path, "fellside", {
  code: "build/missing-fact",
  severity: "information",
  outcome: "unknown",
  message: "Not stated: the chain.",
});
const ofText = finding("parts.ferrule", "{\n}", { code: "language/expected", message: "Expected more." });

const rows: readonly Row[] = [
  { code: "drivetrain/largest-cog", outcome: "fails", said: "fails" },
  { code: "drivetrain/chain-length", outcome: "fails", said: "fails" },
  { code: "cockpit/torque-window", outcome: "waived", said: "fails" },
  { code: "drivetrain/speeds", outcome: "unknown", said: "the chain" },
  { code: "drivetrain/belt-line", outcome: "notApplicable", said: "no belt" },
  { code: "cockpit/bar-space", outcome: "holds", said: "enough" },
];

const everything: readonly CollectedWorkshop[] = [
  workshop([
    { path, findings: [], builds: [build(path, "fellside", rows, [failing, warning, waived, unknown])] },
    { path: "parts.ferrule", findings: [ofText], builds: [] },
  ]),
];

describe("for GitHub", () => {
  test("workflow commands, one a line, with what they cannot hold written as codes", () => {
    expect(githubReport(everything)).toMatchInlineSnapshot(`
      "::error file=builds/50%25 off%2C really%3A #1.ferrule,line=2,endLine=2,col=13,endColumn=21,title=drivetrain/largest-cog::Largest cog 52 t & "more" <than>%0A46 t, 100 %25.%0Astated here (parts.ferrule:1)%0ACaution: A chain that jams throws the rider.
      ::warning file=builds/50%25 off%2C really%3A #1.ferrule,line=2,endLine=2,col=3,endColumn=11,title=drivetrain/chain-length::Long.
      ::notice file=builds/50%25 off%2C really%3A #1.ferrule,line=1,endLine=1,col=7,endColumn=15,title=cockpit/torque-window::Waived: tried
      ::notice file=builds/50%25 off%2C really%3A #1.ferrule,line=1,endLine=1,col=7,endColumn=15,title=build/missing-fact::Not stated: the chain.
      ::error file=parts.ferrule,line=1,endLine=2,title=language/expected::Expected more.
      2 errors, 1 warning, 2 notes. 1 holds, 2 fail, 1 cannot be checked, 1 waived, 1 does not apply.
      "
    `);
  });
});

interface Element {
  readonly name: string;
  readonly attributes: Readonly<Record<string, string>>;
  readonly children: Element[];
  text: string;
}

/** The elements of an XML text. @throws when it is not well-formed. */
function parseXml(xml: string): Element {
  const root: Element = { name: "", attributes: {}, children: [], text: "" };
  const open = [root];
  const parser = new SaxesParser();
  parser.on("error", (error) => {
    throw error;
  });
  parser.on("opentag", ({ name, attributes }) => {
    const element: Element = { name, attributes: attributes as Record<string, string>, children: [], text: "" };
    open.at(-1)?.children.push(element);
    open.push(element);
  });
  parser.on("text", (part) => {
    const element = open.at(-1);
    if (element) element.text += part;
  });
  parser.on("closetag", () => void open.pop());
  parser.write(xml).close();
  return root.children[0] ?? root;
}

describe("JUnit XML", () => {
  const root = parseXml(junitReport(everything));
  const cases = root.children.flatMap((suite) => suite.children);
  const caseOf = (name: string) => cases.find(({ attributes }) => attributes.name === name);

  test("has a suite for each build and each file with findings, whose numbers add up", () => {
    expect(root.name).toBe("testsuites");
    expect(root.children.map(({ attributes }) => attributes.name)).toEqual([`${path}#fellside`, "parts.ferrule"]);
    expect(root.attributes).toMatchObject({ tests: "7", failures: "2", skipped: "3", errors: "0" });
    for (const suite of root.children) {
      expect(Number(suite.attributes.tests)).toBe(suite.children.length);
      const kinds = suite.children.map(({ children }) => children[0]?.name);
      expect(Number(suite.attributes.failures)).toBe(kinds.filter((kind) => kind === "failure").length);
      expect(Number(suite.attributes.skipped)).toBe(kinds.filter((kind) => kind === "skipped").length);
    }
  });

  test("an error fails, anything less is output, what was not judged is skipped with its reason", () => {
    const [failure] = caseOf("drivetrain/largest-cog")?.children ?? [];
    expect(failure?.name).toBe("failure");
    expect(failure?.attributes.message).toContain('Largest cog 52 t & "more" <than>\n46 t, 100 %.');
    expect(failure?.text).toContain("parts.ferrule:1:6: stated here\nCaution: A chain that jams");
    expect(caseOf("drivetrain/chain-length")?.children.map(({ name }) => name)).toEqual(["system-out"]);
    expect(caseOf("cockpit/torque-window")?.children[0]?.attributes.message).toBe("Waived: tried");
    expect(caseOf("drivetrain/speeds")?.children[0]?.attributes.message).toBe("not stated: the chain");
    expect(caseOf("drivetrain/belt-line")?.children[0]?.attributes.message).toBe("no belt");
    expect(caseOf("cockpit/bar-space")?.children).toEqual([]);
    expect(caseOf("language/expected at parts.ferrule:1:13")?.children[0]?.name).toBe("failure");
  });

  test("holds no character that XML cannot", () => {
    const hostile = made({ "a.ferrule": "build x {\n}\n" });
    const message = `a${String.fromCharCode(0, 8, 0x1b, 0xd800, 0xfffe)}b\u{1f6b2}`;
    const files = [{ path: "a.ferrule", findings: [hostile.finding("a.ferrule", "x", { message })], builds: [] }];
    const [suite] = parseXml(junitReport([hostile.workshop(files)])).children;
    expect(suite?.children[0]?.children[0]?.attributes.message).toBe(`a${"\ufffd".repeat(5)}b\u{1f6b2}`);
  });
});

describe("SARIF", () => {
  const require = createRequire(import.meta.url);
  // The schema that OASIS published, in the form that this package carries.
  const { $schema, id, ...schema } = JSON.parse(
    readFileSync(require.resolve("@microsoft/jest-sarif/lib/schemas/sarif-2.1.0-rtm.5.json"), "utf8"),
  );
  const validate = new Ajv({ strict: false, validateFormats: false, unicodeRegExp: false }).compile(schema);
  const report = sarifReport(everything, "0.1.0");
  const [run] = report.runs;

  test("is valid against the published schema", () => {
    expect(String($schema)).toContain("json-schema.org");
    expect(validate(JSON.parse(JSON.stringify(report))), JSON.stringify(validate.errors)).toBe(true);
    // The schema is there and says no to what is no SARIF.
    expect(validate({ version: "2.1.0" })).toBe(false);
    expect(validate({ ...report, version: "2.0.0" })).toBe(false);
  });

  test("results point to their rule, their place, and the other places", () => {
    const result = run?.results[0];
    expect(result).toMatchObject({ ruleId: "drivetrain/largest-cog", kind: "fail", level: "error" });
    expect(run?.tool.driver.rules[result?.ruleIndex ?? -1]?.id).toBe("drivetrain/largest-cog");
    expect(result?.locations[0]?.physicalLocation).toEqual({
      artifactLocation: { uri: "builds/50%25%20off%2C%20really%3A%20%231.ferrule" },
      region: { startLine: 2, startColumn: 13, endLine: 2, endColumn: 21 },
    });
    expect(result?.relatedLocations?.[0]?.message.text).toBe("stated here");
  });

  test("waived ones are suppressed, what is not known is open", () => {
    const byCode = new Map(run?.results.map((result) => [result.ruleId, result]));
    expect(byCode.get("cockpit/torque-window")?.suppressions).toEqual([
      { kind: "inSource", status: "accepted", justification: "tried" },
    ]);
    expect(byCode.get("build/missing-fact")).toMatchObject({ kind: "open", level: "none" });
  });

  test("rules say what they mean", () => {
    const rule = run?.tool.driver.rules.find((one) => one.id === "drivetrain/largest-cog");
    expect(rule?.fullDescription?.text).toContain("derailleur");
  });
});
