import type { Alternates } from "../engine/alternates.ts";
import type { Outcome } from "../model/finding.ts";
import {
  type CollectedWorkshop,
  type Location,
  type ReportedBuild,
  type ReportedFile,
  type ReportedFinding,
  type ReportedWorkshop,
  totals,
} from "./collect.ts";
import { excerpt } from "./excerpt.ts";
import { type Paint, plain } from "./paint.ts";
import { paragraph, printable } from "./printable.ts";
import { recordText } from "./record-text.ts";
import { instanceText, verdictText } from "./verdict.ts";
import { counted, outcomeCounts, outcomeHeadings, severityCounts, severityWords } from "./words.ts";

export interface TextOptions {
  /** Columns to write in. */
  readonly width: number;
  readonly paint: Paint;
  /** Outcomes whose rows are listed, build by build. */
  readonly list: readonly Outcome[];
}

export const plainText: TextOptions = { width: 80, paint: plain, list: [] };

/**
 * The report a person reads: each finding with the line it is about, then for each build what held and what could
 * not be checked, then one line about it all.
 */
export function textReport(workshops: readonly CollectedWorkshop[], options: TextOptions = plainText): string {
  const lines: string[] = [];
  const all: ReportedFile[] = [];
  for (const workshop of workshops) {
    all.push(...workshop.files);
    for (const file of workshop.files) {
      for (const finding of file.findings) lines.push(...findingText(workshop, finding, options), "");
      for (const build of file.builds) lines.push(...buildText(workshop, build, options), "");
      for (const record of file.records) {
        for (const finding of record.findings) lines.push(...findingText(workshop, finding, options), "");
        lines.push(...recordText(record, placeText(record.at), options), "");
      }
    }
  }
  lines.push(...summary(all, options));
  return `${lines.join("\n")}\n`;
}

function buildText(workshop: ReportedWorkshop, build: ReportedBuild, options: TextOptions): string[] {
  const { declaration, report } = build;
  const { paint, width } = options;
  const lines: string[] = [];
  for (const finding of build.findings) {
    if (!isMissing(finding)) lines.push(...findingText(workshop, finding, options), "");
  }
  const title = declaration.title === undefined ? "" : `  ${printable(declaration.title)}`;
  const name = declaration.name === "" ? "(no name)" : printable(declaration.name);
  lines.push(`${paint.strong(`build ${name}`)}${title}  ${paint.quiet(placeText(build.at))}`);
  const { counts } = report;
  const painted = counts.fails > 0 ? paint.error : counts.unknown > 0 ? paint.warning : paint.good;
  lines.push(...paragraph(outcomeCounts(counts), width, "  ").map(painted));
  if (report.alternates) lines.push(...paragraph(alternatesText(report.alternates), width, "  "));
  lines.push(...missingText(missingFacts(build), options));
  for (const outcome of options.list) lines.push(...rowsText(report.rows, outcome, options));
  return lines;
}

function alternatesText({ combinations, slots, limited }: Alternates): string {
  const which = counted(slots.length, "slot names", "slots name");
  const asked = limited.length === 0 ? "every one that a check can tell apart was checked" : "not all were checked";
  return `${which} several parts: ${combinations} bikes, of which ${asked}`;
}

/** What nobody stated is listed once for each build, fact by fact, rather than shown like a fault. */
const isMissing = ({ code }: ReportedFinding): boolean => code === "build/missing-fact";

/** A missing fact with the checks that wait for it. */
type MissingFact = readonly [what: string, codes: ReadonlySet<string>];

/**
 * The facts that a build lacks, those that most checks wait for first. A template lacks none: what it leaves open is
 * for the builds that derive from it.
 */
function missingFacts({ findings, report }: ReportedBuild): readonly MissingFact[] {
  if (!findings.some(isMissing)) return [];
  const waiting = new Map<string, Set<string>>();
  for (const { check, missing } of report.rows) {
    for (const { what, spoilt } of missing) {
      // What is written but of no use is found where it stands.
      if (!spoilt) waiting.set(what, (waiting.get(what) ?? new Set()).add(check.code));
    }
  }
  return [...waiting].sort((a, b) => b[1].size - a[1].size);
}

/** How many missing facts of a build are named before the rest is only counted. */
const mostMissing = 12;

function missingText(facts: readonly MissingFact[], { width, list }: TextOptions): string[] {
  if (facts.length === 0) return [];
  const lines = [`  ${counted(facts.length, "fact is", "facts are")} not stated:`];
  const shown = list.includes("unknown") ? facts : facts.slice(0, mostMissing);
  for (const [what, codes] of shown) {
    const whom = codes.size <= 2 ? `${[...codes].join(" and ")}` : `${codes.size} checks`;
    lines.push(...paragraph(`${what}; for ${whom}`, width, "      ", "    - "));
  }
  if (shown.length < facts.length) lines.push(`    and ${facts.length - shown.length} more; --list unknown names all`);
  return lines;
}

function rowsText(
  rows: ReportedBuild["report"]["rows"],
  outcome: Outcome,
  { width, paint }: TextOptions,
): readonly string[] {
  const lines: string[] = [];
  // What is waived fails all the same; nobody is told twice.
  const own = outcome === "waived" ? "fails" : outcome;
  for (const row of rows) {
    if (row.outcome !== outcome) continue;
    for (const instance of row.instances) {
      // A row has the worst outcome of its instances; those that come out better were not asked for.
      if (instance.verdict.outcome !== own) continue;
      const said = `${row.check.code}${instanceText(instance)}: ${verdictText(instance.verdict)}`;
      lines.push(...paragraph(said, width, "      ", "    - "));
    }
  }
  const heading = `  ${outcomeHeadings[outcome]}:`;
  return lines.length === 0 ? [`${heading} ${paint.quiet("nothing")}`] : [heading, ...lines];
}

function findingText(workshop: ReportedWorkshop, finding: ReportedFinding, options: TextOptions): string[] {
  const { paint, width } = options;
  const gutter = String(Math.max(...[finding, ...finding.related].map(({ at }) => at.range.start.line + 1))).length + 2;
  const severity = paint[finding.severity](severityWords[finding.severity]);
  const lines = [`${placeText(finding.at)}  ${severity}  ${paint.strong(printable(finding.code))}`];
  lines.push(...paragraph(finding.message, width, "  "));
  lines.push(...excerptText(workshop, finding.at, gutter, options, paint[finding.severity]));
  for (const related of finding.related) {
    lines.push(...paragraph(`${related.message} (${placeText(related.at)})`, width, "    ", "  "));
    lines.push(...excerptText(workshop, related.at, gutter, options, paint.information));
  }
  if (finding.caution !== undefined) {
    const [first = "", ...rest] = paragraph(`Caution: ${finding.caution}`, width, "    ", "  ");
    lines.push(paint.warning(first), ...rest.map((line) => paint.warning(line)));
  }
  for (const mend of finding.mends()) lines.push(...paragraph(`Fix: ${mend.title}`, width, "    ", "  "));
  return lines;
}

function excerptText(
  workshop: ReportedWorkshop,
  at: Location,
  gutter: number,
  options: TextOptions,
  mark: (text: string) => string,
): string[] {
  const file = workshop.engine.file(at.uri);
  if (!file || file.text === "") return [];
  return excerpt(
    { text: file.text, lines: workshop.engine.lines(at.uri) },
    at.range,
    options.width,
    gutter,
    options.paint,
    mark,
  );
}

/** `builds/fellside.ferrule:12:5`, counted from one as editors and terminals do. */
export function placeText({ path, range }: Location): string {
  return `${printable(path)}:${range.start.line + 1}:${range.start.character + 1}`;
}

function summary(files: readonly ReportedFile[], { paint, width }: TextOptions): string[] {
  const { builds, records, severities, outcomes, measured } = totals(files);
  const unknown = outcomes.unknown + measured.unknown;
  const painted = severities.error > 0 ? paint.error : severities.warning + unknown > 0 ? paint.warning : paint.good;
  const all = (counts: Readonly<Record<Outcome, number>>) =>
    Object.values(counts).reduce((sum, count) => sum + count, 0);
  // Notes are counted as they are shown above: missing facts one by one, everything else as a note.
  const ofBuilds = files.flatMap((file) => file.builds);
  const asked = ofBuilds.reduce((sum, build) => sum + build.findings.filter(isMissing).length, 0);
  const facts = ofBuilds.reduce((sum, build) => sum + missingFacts(build).length, 0);
  const shown = severityCounts({ ...severities, information: severities.information - asked });
  const lacking = facts === 0 ? "" : `, ${counted(facts, "fact")} not stated`;
  const said = [
    `${[
      counted(files.length, "file"),
      counted(builds, "build"),
      ...(records === 0 ? [] : [counted(records, "record")]),
    ].join(", ")}: ${shown}${lacking}.`,
    ...(builds === 0 ? [] : [`Of ${counted(all(outcomes), "check")}, ${outcomeCounts(outcomes)}.`]),
    ...(records === 0
      ? []
      : [`Of ${counted(all(measured), "comparison")} of what was measured, ${outcomeCounts(measured)}.`]),
  ];
  return paragraph(said.join(" "), width, "").map(painted);
}
