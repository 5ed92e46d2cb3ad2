import type { Check } from "../checks/define.ts";
import { checkByCode } from "../checks/table.ts";
import type { Severity } from "../model/finding.ts";
import { comparisonByCode } from "../records/table.ts";
import { findingCodes } from "./codes/index.ts";
import { type CollectedWorkshop, findingsOfFile, type Location, type ReportedFinding } from "./collect.ts";
import { unreadOf } from "./json.ts";

const levels: Readonly<Record<Severity, "error" | "warning" | "note">> = {
  error: "error",
  warning: "warning",
  information: "note",
};

/**
 * Findings in the Static Analysis Results Interchange Format, version 2.1.0 (OASIS standard), as code hosts show
 * them. Waived findings are there as suppressed ones; facts that are missing are results of kind `open`.
 */
export function sarifReport(workshops: readonly CollectedWorkshop[], version: string) {
  const findings = workshops.flatMap(({ files }) => files).flatMap(findingsOfFile);
  const unread = unreadOf(workshops);
  const codes = [...new Set(findings.map(({ code }) => code))].sort();
  const indexes = new Map(codes.map((code, index) => [code, index]));
  return {
    $schema: "https://docs.oasis-open.org/sarif/sarif/v2.1.0/errata01/os/schemas/sarif-schema-2.1.0.json",
    version: "2.1.0",
    runs: [
      {
        tool: {
          driver: { name: "Ferrule", semanticVersion: version, rules: codes.map((code) => rule(code, workshops)) },
        },
        invocations: [
          {
            executionSuccessful: unread.length === 0,
            toolExecutionNotifications: unread.map(({ path, reason }) => ({
              level: "error",
              message: { text: `${path} was not read: ${reason}.` },
            })),
          },
        ],
        columnKind: "utf16CodeUnits",
        results: findings.map((finding) => result(finding, indexes.get(finding.code) ?? -1)),
      },
    ],
  };
}

function rule(code: string, workshops: readonly CollectedWorkshop[]) {
  const check: Pick<Check, "title" | "explanation" | "severity"> | undefined =
    checkByCode(code) ??
    comparisonByCode(code) ??
    // House rules are of their workshop.
    workshops.map(({ engine }) => engine.checks.byCode(code)).find((check) => check !== undefined);
  const explanation = check?.explanation ?? findingCodes.get(code);
  return {
    id: code,
    shortDescription: { text: check?.title ?? code },
    ...(explanation === undefined ? {} : { fullDescription: { text: explanation } }),
    ...(check === undefined ? {} : { defaultConfiguration: { level: levels[check.severity] } }),
  };
}

function result(finding: ReportedFinding, ruleIndex: number) {
  const isOpen = finding.outcome === "unknown";
  return {
    ruleId: finding.code,
    ruleIndex,
    // A result of a kind other than `fail` has no level of its own.
    ...(isOpen ? { kind: "open", level: "none" } : { kind: "fail", level: levels[finding.severity] }),
    message: {
      text: finding.caution === undefined ? finding.message : `${finding.message}\nCaution: ${finding.caution}`,
    },
    locations: [{ physicalLocation: physical(finding.at) }],
    ...(finding.related.length === 0
      ? {}
      : {
          relatedLocations: finding.related.map(({ message, at }, index) => ({
            id: index + 1,
            message: { text: message },
            physicalLocation: physical(at),
          })),
        }),
    ...(finding.waiver === undefined
      ? {}
      : { suppressions: [{ kind: "inSource", status: "accepted", justification: finding.waiver.reason }] }),
  };
}

/** Lines and columns count from one here, and an end column stands after the last character. */
function physical({ path, uri, range }: Location) {
  const { start, end } = range;
  const isOnDisk = uri.startsWith("file:");
  return {
    artifactLocation: { uri: isOnDisk ? path.split("/").map(encodeURIComponent).join("/") : uri },
    region: {
      startLine: start.line + 1,
      startColumn: start.character + 1,
      endLine: end.line + 1,
      endColumn: end.character + 1,
    },
  };
}
