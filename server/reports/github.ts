import type { Severity } from "../model/finding.ts";
import { type CollectedWorkshop, findingsOfFile, type ReportedFinding, totals } from "./collect.ts";
import { unreadOf } from "./json.ts";
import { counted, outcomeCounts, severityCounts } from "./words.ts";

const commands: Readonly<Record<Severity, string>> = { error: "error", warning: "warning", information: "notice" };

/**
 * Findings as workflow commands, one a line, which GitHub Actions shows beside the lines of a change. Lines and
 * columns count from one there.
 */
export function githubReport(workshops: readonly CollectedWorkshop[]): string {
  const files = workshops.flatMap(({ files }) => files);
  const findings = files.flatMap(findingsOfFile);
  const { severities, outcomes, records, measured } = totals(files);
  const ofRecords = records === 0 ? "" : ` ${counted(records, "record")}: ${outcomeCounts(measured)}.`;
  const last = `${severityCounts(severities)}. ${outcomeCounts(outcomes)}.${ofRecords}`;
  const unread = unreadOf(workshops).map(
    ({ path, reason }) => `::error file=${property(path)}::${data(`${path} was not read: ${reason}.`)}`,
  );
  return [...unread, ...findings.map(command), last, ""].join("\n");
}

function command(finding: ReportedFinding): string {
  const { path, range } = finding.at;
  const properties = [
    `file=${property(path)}`,
    `line=${range.start.line + 1}`,
    `endLine=${range.end.line + 1}`,
    // Columns mean something only for a stretch of one line.
    ...(range.start.line === range.end.line
      ? [`col=${range.start.character + 1}`, `endColumn=${range.end.character + 1}`]
      : []),
    `title=${property(finding.code)}`,
  ];
  const message = [
    finding.message,
    ...finding.related.map(({ message: said, at }) => `${said} (${at.path}:${at.range.start.line + 1})`),
    ...(finding.caution === undefined ? [] : [`Caution: ${finding.caution}`]),
  ].join("\n");
  return `::${commands[finding.severity]} ${properties.join(",")}::${data(message)}`;
}

/** The message of a command: percent signs and line ends are written as codes. */
function data(text: string): string {
  return text.replaceAll("%", "%25").replaceAll("\r", "%0D").replaceAll("\n", "%0A");
}

/** A property of a command: colons and commas as well. */
function property(text: string): string {
  return data(text).replaceAll(":", "%3A").replaceAll(",", "%2C");
}
