import type { CheckRow } from "../engine/evaluate.ts";
import type { CollectedWorkshop, ReportedBuild, ReportedFile, ReportedFinding, ReportedRecord } from "./collect.ts";
import { unreadOf } from "./json.ts";
import { rowText } from "./record-row.ts";
import { verdictText } from "./verdict.ts";

interface Case {
  readonly name: string;
  readonly className: string;
  readonly body: readonly string[];
  readonly kind: "passed" | "failed" | "skipped";
}

/**
 * The report as JUnit XML, which most build servers show as a table of tests: a suite for each build with a case for
 * each check, one for each record with a case for each comparison, and one for each file with what is wrong outside of them. What fails as a warning or a note is
 * no failed test; what cannot be checked, is waived or does not apply was skipped, and says why.
 */
export function junitReport(workshops: readonly CollectedWorkshop[]): string {
  const suites = workshops
    .flatMap(({ files }) => files)
    .flatMap((file) => {
      const builds = file.builds.map((build) =>
        suite(`${file.path}#${build.declaration.name}`, file.path, buildCases(file, build)),
      );
      const records = file.records.map((record) => {
        const name = `${file.path}#${record.declaration.name}`;
        return suite(name, file.path, recordCases(name, record));
      });
      const declared = [...builds, ...records];
      const text = file.findings.map((finding) => findingCase(file.path, finding));
      return text.length === 0 && declared.length > 0 ? declared : [suite(file.path, file.path, text), ...declared];
    });
  for (const { path, reason } of unreadOf(workshops)) {
    const message = `${path} was not read: ${reason}.`;
    const body = [`<failure type="unread" message="${escaped(message)}"/>`];
    suites.push(suite(path, path, [{ name: "the file can be read", className: path, body, kind: "failed" }]));
  }
  const all = suites.flatMap(({ cases }) => cases);
  return [
    '<?xml version="1.0" encoding="UTF-8"?>',
    `<testsuites name="ferrule check" ${numbers(all)}>`,
    ...suites.flatMap(({ lines }) => lines),
    "</testsuites>",
    "",
  ].join("\n");
}

function suite(name: string, path: string, cases: readonly Case[]) {
  const lines = [
    `  <testsuite name="${escaped(name)}" file="${escaped(path)}" ${numbers(cases)}>`,
    ...cases.flatMap(({ name: caseName, className, body }) => {
      const open = `    <testcase name="${escaped(caseName)}" classname="${escaped(className)}" time="0"`;
      return body.length === 0
        ? [`${open}/>`]
        : [`${open}>`, ...body.map((line) => `      ${line}`), "    </testcase>"];
    }),
    "  </testsuite>",
  ];
  return { cases, lines };
}

function numbers(cases: readonly Case[]): string {
  const of = (kind: Case["kind"]): number => cases.filter((one) => one.kind === kind).length;
  return `tests="${cases.length}" failures="${of("failed")}" errors="0" skipped="${of("skipped")}" time="0"`;
}

function buildCases(file: ReportedFile, build: ReportedBuild): Case[] {
  const className = `${file.path}#${build.declaration.name}`;
  const codes = new Set(build.report.rows.map(({ check }) => check.code));
  const ofText = build.findings.filter(({ code, outcome }) => !codes.has(code) && outcome === "fails");
  return [
    ...ofText.map((finding) => findingCase(className, finding)),
    ...build.report.rows.map((row) => rowCase(className, row, build.findings)),
  ];
}

/** A case for each comparison of what was measured. */
function recordCases(className: string, { report, findings }: ReportedRecord): Case[] {
  const codes = new Set(report.rows.map(({ comparison }) => comparison.code));
  const ofText = findings.filter(({ code, outcome }) => !codes.has(code) && outcome === "fails");
  return [
    ...ofText.map((finding) => findingCase(className, finding)),
    ...report.rows.map((row): Case => {
      const { code } = row.comparison;
      const name = `${code} at ${row.measured.path}`;
      if (row.outcome === "holds") return { name, className, body: [], kind: "passed" };
      if (row.outcome !== "fails") {
        return { name, className, body: [`<skipped message="${escaped(rowText(row))}"/>`], kind: "skipped" };
      }
      const own = findings.filter((one) => one.code === code && one.path === row.measured.path);
      return { ...failure(own.filter(({ outcome }) => outcome === "fails")), name, className };
    }),
  ];
}

function rowCase(className: string, row: CheckRow, findings: readonly ReportedFinding[]): Case {
  const { code } = row.check;
  const own = findings.filter((finding) => finding.code === code && finding.outcome === "fails");
  if (row.outcome === "fails") return { ...failure(own), name: code, className };
  if (row.outcome === "holds") return { name: code, className, body: [], kind: "passed" };
  const why =
    row.outcome === "waived"
      ? findings.filter((finding) => finding.code === code).map(({ message }) => message)
      : row.instances.map(({ verdict }) => verdictText(verdict));
  return {
    name: code,
    className,
    body: [`<skipped message="${escaped([...new Set(why)].join("; "))}"/>`],
    kind: "skipped",
  };
}

function findingCase(className: string, finding: ReportedFinding): Case {
  const { path, range } = finding.at;
  const name = `${finding.code} at ${path}:${range.start.line + 1}:${range.start.character + 1}`;
  return { ...failure([finding]), name, className };
}

/** Failing findings as one case's body: errors fail the case, anything less is put down as its output. */
function failure(findings: readonly ReportedFinding[]): Pick<Case, "body" | "kind"> {
  const errors = findings.filter(({ severity }) => severity === "error");
  const rest = findings.filter(({ severity }) => severity !== "error");
  const body: string[] = [];
  if (errors.length > 0) {
    const message = escaped(errors.map((finding) => finding.message).join(" "));
    body.push(`<failure type="error" message="${message}">${escaped(errors.map(full).join("\n\n"))}</failure>`);
  }
  if (rest.length > 0) body.push(`<system-out>${escaped(rest.map(full).join("\n\n"))}</system-out>`);
  return { body, kind: errors.length > 0 ? "failed" : "passed" };
}

function full(finding: ReportedFinding): string {
  const place = ({ path, range }: ReportedFinding["at"]): string =>
    `${path}:${range.start.line + 1}:${range.start.character + 1}`;
  return [
    `${place(finding.at)}: ${finding.severity}: ${finding.message}`,
    ...finding.related.map(({ message, at }) => `${place(at)}: ${message}`),
    ...(finding.caution === undefined ? [] : [`Caution: ${finding.caution}`]),
  ].join("\n");
}

/** Characters that XML 1.0 cannot hold at all, lone halves of surrogate pairs included. */
const notXml = /(?![\t\n\r\u007f-\u009f])\p{Cc}|[\p{Cs}\ufffe\uffff]/gu;

function escaped(text: string): string {
  return text
    .replace(notXml, "\ufffd")
    .replaceAll("&", "&amp;")
    .replaceAll("<", "&lt;")
    .replaceAll(">", "&gt;")
    .replaceAll('"', "&quot;")
    .replaceAll("\r", "&#13;")
    .replaceAll("\n", "&#10;");
}
