import type { ResultValue } from "../calculations/define.ts";
import type { Alternates } from "../engine/alternates.ts";
import { workedQuantities } from "../engine/build-report.ts";
import type { Range } from "../engine/positions.ts";
import type { Outcome, Severity } from "../model/finding.ts";
import type { Missing } from "../model/need.ts";
import {
  type CollectedWorkshop,
  type Location,
  locate,
  type ReportedBuild,
  type ReportedFile,
  type ReportedFinding,
  type ReportedWorkshop,
  totals,
} from "./collect.ts";
import { type JsonRecord, jsonRecord } from "./record-json.ts";
import { verdictText } from "./verdict.ts";

/** The version of the shape below; a member is added without a new one, never changed or taken away. */
export const schemaVersion = 1;

/**
 * What `check --format json` writes: the contract with other programs, described by check-report.schema.json.
 * Positions are zero-based lines and UTF-16 units, as in the language server protocol.
 */
export interface JsonReport {
  readonly schemaVersion: number;
  /** The language number the workshop states; the highest when several workshops were asked for. */
  readonly languageVersion: number;
  readonly today: string;
  readonly files: readonly JsonFile[];
  readonly unread: readonly JsonUnread[];
  readonly totals: {
    readonly builds: number;
    readonly records: number;
    readonly errors: number;
    readonly warnings: number;
    readonly information: number;
    /** Checks of builds. */
    readonly counts: JsonCounts;
    /** Comparisons of what records hold. */
    readonly recordCounts: JsonCounts;
  };
}

/** A file of a workshop that could not be read: what is said of the others is said without it. */
export interface JsonUnread {
  readonly path: string;
  readonly reason: string;
}

type JsonCounts = Readonly<Record<Outcome, number>>;

export interface JsonFile {
  readonly path: string;
  /** Findings outside of builds and records: of parts, standards, and text that belongs to no declaration. */
  readonly findings: readonly JsonFinding[];
  readonly builds: readonly JsonBuild[];
  readonly records: readonly JsonRecord<JsonFinding>[];
}

export interface JsonBuild {
  readonly name: string;
  readonly title?: string;
  readonly range: Range;
  readonly counts: JsonCounts;
  readonly findings: readonly JsonFinding[];
  readonly checks: readonly JsonCheck[];
  /** Of the first-named parts. */
  readonly quantities: Readonly<Record<string, { readonly value: ResultValue; readonly unit: string }>>;
  /** What became of slots that name several parts; absent where none does. */
  readonly alternates?: Alternates;
}

export interface JsonFinding {
  readonly code: string;
  readonly severity: Severity;
  readonly outcome: "fails" | "unknown" | "waived";
  readonly path: string;
  readonly message: string;
  /** The file the range is in: a finding of a build can be shown at the part that states the fact. */
  readonly file: string;
  readonly range: Range;
  readonly related: readonly { readonly message: string; readonly file: string; readonly range: Range }[];
  readonly fixes: readonly JsonFix[];
  readonly caution?: string;
  readonly waiver?: { readonly reason: string; readonly until?: string };
}

export interface JsonFix {
  readonly title: string;
  readonly preferred: boolean;
  /** True when a person still has to write something after the edits are made. */
  readonly unfinished: boolean;
  readonly edits: readonly { readonly file: string; readonly range: Range; readonly newText: string }[];
}

export interface JsonCheck {
  readonly code: string;
  readonly outcome: Outcome;
  readonly instances: readonly {
    /** Empty for a check asked once of the build. */
    readonly name: string;
    readonly outcome: Exclude<Outcome, "waived">;
    readonly message: string;
    /** The alternates with which it comes out so; absent for the first-named parts. */
    readonly with?: readonly { readonly slot: string; readonly part: string }[];
  }[];
  readonly missing: readonly JsonMissing[];
}

export interface JsonMissing {
  readonly path: string;
  readonly what: string;
  /** Where it would be stated. */
  readonly file: string;
  readonly range: Range;
}

/**
 * The report as text, in pieces: of many builds it is longer than any one text can be.
 */
export function* jsonPieces(workshops: readonly CollectedWorkshop[], today: string): Iterable<string> {
  const files = workshops.flatMap((workshop) => workshop.files.map((file) => ({ workshop, file })));
  const whole = jsonReport(
    workshops.map((workshop) => ({ ...workshop, files: [] })),
    today,
    workshops,
  );
  const [head = "", tail = ""] = JSON.stringify(whole, undefined, 2).split('"files": []');
  yield `${head}"files": [`;
  for (const [index, { workshop, file }] of files.entries()) {
    const text = JSON.stringify(jsonFile(workshop, file), undefined, 2).replaceAll("\n", "\n    ");
    yield `${index === 0 ? "" : ","}\n    ${text}`;
  }
  yield `${files.length === 0 ? "" : "\n  "}]${tail}\n`;
}

function jsonFile(workshop: ReportedWorkshop, file: ReportedFile): JsonFile {
  return {
    path: file.path,
    findings: file.findings.map((finding) => jsonFinding(workshop, finding)),
    builds: file.builds.map((build) => jsonBuild(workshop, build)),
    records: file.records.map((record) =>
      jsonRecord(
        record,
        record.findings.map((finding) => jsonFinding(workshop, finding)),
      ),
    ),
  };
}

/**
 * The report as data.
 * @param counted whose findings and outcomes the totals are of, where that is not what is written out.
 */
export function jsonReport(
  workshops: readonly CollectedWorkshop[],
  today: string,
  counted: readonly CollectedWorkshop[] = workshops,
): JsonReport {
  const { builds, records, severities, outcomes, measured } = totals(counted.flatMap(({ files }) => files));
  return {
    schemaVersion,
    languageVersion: Math.max(1, ...workshops.map(({ engine }) => engine.languageNumber)),
    today,
    files: workshops.flatMap((workshop) => workshop.files.map((file) => jsonFile(workshop, file))),
    unread: unreadOf(workshops),
    totals: {
      builds,
      records,
      errors: severities.error,
      warnings: severities.warning,
      information: severities.information,
      counts: outcomes,
      recordCounts: measured,
    },
  };
}

/** Files that could not be read, with why. */
export function unreadOf(workshops: readonly CollectedWorkshop[]): readonly JsonUnread[] {
  return workshops.flatMap(({ unread = [] }) => unread.map(({ path, reason }) => ({ path, reason })));
}

function jsonBuild(workshop: ReportedWorkshop, { declaration, report, at, findings }: ReportedBuild): JsonBuild {
  const quantities: Record<string, { value: ResultValue; unit: string }> = {};
  for (const worked of workedQuantities(report)) {
    if (worked.state === "known") quantities[worked.row.path] = { value: worked.value, unit: worked.unit };
  }
  return {
    name: declaration.name,
    ...(declaration.title === undefined ? {} : { title: declaration.title }),
    range: at.range,
    counts: report.counts,
    findings: findings.map((finding) => jsonFinding(workshop, finding)),
    checks: report.rows.map((row) => ({
      code: row.check.code,
      outcome: row.outcome,
      instances: row.instances.map(({ instance, verdict, combination }) => ({
        name: instance,
        outcome: verdict.outcome,
        message: verdictText(verdict),
        ...(combination
          ? { with: combination.parts.map(({ slot, installed }) => ({ slot, part: installed.name })) }
          : {}),
      })),
      missing: row.missing.map((missing) => jsonMissing(workshop, missing)),
    })),
    quantities,
    ...(report.alternates ? { alternates: report.alternates } : {}),
  };
}

function jsonMissing(workshop: ReportedWorkshop, { path, what, place }: Missing): JsonMissing {
  return { path, what, ...inFile(locate(workshop, place)) };
}

function jsonFinding(workshop: ReportedWorkshop, finding: ReportedFinding): JsonFinding {
  const { code, severity, outcome, path, message, caution, waiver } = finding;
  return {
    code,
    severity,
    outcome,
    path,
    message,
    ...inFile(finding.at),
    related: finding.related.map((related) => ({ message: related.message, ...inFile(related.at) })),
    fixes: finding.mends().map(({ title, preferred, unfinished, edits }) => ({
      title,
      preferred,
      unfinished,
      edits: edits.map(({ uri, range, newText }) => ({ file: workshop.pathOf(uri), range, newText })),
    })),
    ...(caution === undefined ? {} : { caution }),
    ...(waiver === undefined ? {} : { waiver }),
  };
}

function inFile({ path, range }: Location): { readonly file: string; readonly range: Range } {
  return { file: path, range };
}
