import type { BuildReport } from "../engine/build-report.ts";
import type { Engine } from "../engine/engine.ts";
import type { Range } from "../engine/positions.ts";
import { type Mend, mends } from "../engine/repairs.ts";
import { type Declaration, headerPlace, type Place } from "../model/declaration.ts";
import type { Finding, Outcome, Severity } from "../model/finding.ts";
import type { RecordReport } from "../records/report.ts";

/** A stretch of a file, with the file's name as reports show it. */
export interface Location {
  readonly uri: string;
  readonly path: string;
  readonly range: Range;
}

/** A finding with everything about it looked up, ready to be written down in any format. */
export interface ReportedFinding {
  readonly code: string;
  readonly severity: Severity;
  readonly outcome: Finding["outcome"];
  readonly message: string;
  /** The path in the build or part that it is about; empty for none. */
  readonly path: string;
  readonly at: Location;
  readonly related: readonly { readonly message: string; readonly at: Location }[];
  readonly caution?: string;
  readonly waiver?: { readonly reason: string; readonly until?: string };
  /** Worked out against the libraries when asked for, which can take a while. */
  mends(): readonly Mend[];
}

export interface ReportedBuild {
  readonly declaration: Declaration;
  readonly at: Location;
  readonly report: BuildReport;
  readonly findings: readonly ReportedFinding[];
}

/** A record of a bicycle as built. */
export interface ReportedRecord {
  readonly declaration: Declaration;
  readonly at: Location;
  readonly report: RecordReport;
  readonly findings: readonly ReportedFinding[];
}

export interface ReportedFile {
  readonly uri: string;
  readonly path: string;
  /** What is to be said outside of its builds and records. */
  readonly findings: readonly ReportedFinding[];
  readonly builds: readonly ReportedBuild[];
  readonly records: readonly ReportedRecord[];
}

/** Everything to be said of a file. */
export function findingsOfFile({ findings, builds, records }: ReportedFile): readonly ReportedFinding[] {
  return [...findings, ...[...builds, ...records].flatMap((declared) => declared.findings)];
}

/** One workshop and what of it is to be reported. */
export interface ReportedWorkshop {
  readonly engine: Engine;
  /** The files asked for, in the order of the report. */
  readonly uris: readonly string[];
  /** A file's name as reports show it. */
  readonly pathOf: (uri: string) => string;
  /** Files too large to be read, with their size in bytes. */
  readonly tooLarge?: ReadonlyMap<string, number>;
}

/** A workshop with everything that a report says of it. */
export interface CollectedWorkshop extends ReportedWorkshop {
  readonly files: readonly ReportedFile[];
  /** Files that could not be read, with why; paths as shown. */
  readonly unread?: readonly { readonly path: string; readonly reason: string }[];
}

/** Works out everything a report says, by file and by build. */
export function collect(workshop: ReportedWorkshop): CollectedWorkshop {
  return { ...workshop, files: workshop.uris.map((uri) => collectFile(workshop, uri)) };
}

function collectFile(workshop: ReportedWorkshop, uri: string): ReportedFile {
  const { engine } = workshop;
  const path = workshop.pathOf(uri);
  const findings: ReportedFinding[] = [];
  const builds: ReportedBuild[] = [];
  const records: ReportedRecord[] = [];
  const bytes = workshop.tooLarge?.get(uri);
  if (bytes !== undefined) findings.push(tooLarge(uri, path, bytes));
  for (const problem of engine.fileProblems(uri)) {
    findings.push({
      ...problem,
      outcome: "fails",
      path: "",
      at: { uri, path, range: engine.fileRange(uri, problem.span) },
      related: [],
      mends: () => [],
    });
  }
  for (const declaration of engine.file(uri)?.declarations ?? []) {
    const own = engine.findingsOf(declaration).map((finding) => reported(workshop, declaration, finding));
    const at = locate(workshop, headerPlace(declaration));
    const report = engine.report(declaration);
    const record = engine.record(declaration);
    if (report) builds.push({ declaration, at, report, findings: own.sort(byPlace(uri)) });
    else if (record) records.push({ declaration, at, report: record, findings: own.sort(byPlace(uri)) });
    else findings.push(...own);
  }
  return { uri, path, findings: findings.sort(byPlace(uri)), builds, records };
}

function tooLarge(uri: string, path: string, bytes: number): ReportedFinding {
  const start = { line: 0, character: 0 };
  return {
    code: "language/file-too-large",
    severity: "error",
    outcome: "fails",
    message: `This file has ${bytes} bytes, more than are read. Split it into several.`,
    path: "",
    at: { uri, path, range: { start, end: start } },
    related: [],
    mends: () => [],
  };
}

function reported(workshop: ReportedWorkshop, declaration: Declaration, finding: Finding): ReportedFinding {
  const { code, severity, outcome, message, path, caution, waiver } = finding;
  // What could be put where nobody chose yet is for whoever chooses: an editor asks for it slot by slot. A report would
  // search the libraries for every open slot of every build.
  const leftOut = outcome === "unknown" ? "insert-part" : undefined;
  return {
    code,
    severity,
    outcome,
    message,
    path,
    at: locate(workshop, finding.place),
    related: finding.related.map((related) => ({ message: related.message, at: locate(workshop, related.place) })),
    ...(caution === undefined ? {} : { caution }),
    ...(waiver === undefined ? {} : { waiver }),
    mends: () => workshop.engine.shown(() => mends(workshop.engine, declaration, finding, leftOut)),
  };
}

/** Where a place is, in lines. */
export function locate(workshop: ReportedWorkshop, place: Place): Location {
  const { uri } = place.declaration;
  return { uri, path: workshop.pathOf(uri), range: workshop.engine.range(place) };
}

/** In the order of the text; what is shown in another file (a library) comes after. */
function byPlace(uri: string): (a: ReportedFinding, b: ReportedFinding) => number {
  return (a, b) =>
    Number(a.at.uri !== uri) - Number(b.at.uri !== uri) ||
    (a.at.path < b.at.path ? -1 : a.at.path > b.at.path ? 1 : 0) ||
    a.at.range.start.line - b.at.range.start.line ||
    a.at.range.start.character - b.at.range.start.character;
}

/** Findings of all files by severity, and rows of all builds and of all records by outcome. */
export interface Totals {
  readonly builds: number;
  readonly records: number;
  readonly severities: Readonly<Record<Severity, number>>;
  /** Checks of builds. */
  readonly outcomes: Readonly<Record<Outcome, number>>;
  /** Comparisons of what was measured. */
  readonly measured: Readonly<Record<Outcome, number>>;
}

export function totals(files: readonly ReportedFile[]): Totals {
  const severities: Record<Severity, number> = { error: 0, warning: 0, information: 0 };
  for (const finding of files.flatMap(findingsOfFile)) severities[finding.severity]++;
  const builds = files.flatMap((file) => file.builds);
  const records = files.flatMap((file) => file.records);
  return {
    builds: builds.length,
    records: records.length,
    severities,
    outcomes: sum(builds.map(({ report }) => report.counts)),
    measured: sum(records.map(({ report }) => report.counts)),
  };
}

function sum(counts: readonly Readonly<Record<Outcome, number>>[]): Readonly<Record<Outcome, number>> {
  const all: Record<Outcome, number> = { holds: 0, fails: 0, unknown: 0, waived: 0, notApplicable: 0 };
  for (const one of counts) for (const outcome of Object.keys(all) as Outcome[]) all[outcome] += one[outcome];
  return all;
}

const ranks: Readonly<Record<Severity, number>> = { information: 0, warning: 1, error: 2 };

/** True when some finding is at least so grave. */
export function hasAtLeast(files: readonly ReportedFile[], severity: Severity): boolean {
  const { severities } = totals(files);
  return (Object.keys(severities) as Severity[]).some((one) => ranks[one] >= ranks[severity] && severities[one] > 0);
}
