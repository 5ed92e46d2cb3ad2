import { Engine } from "../../server/engine/engine.ts";
import { mends } from "../../server/engine/repairs.ts";
import type { Finding } from "../../server/model/finding.ts";
import type { RecordRow } from "../../server/records/judge.ts";
import type { RecordReport } from "../../server/records/report.ts";
import { prelude } from "../../server/standards/index.ts";

/** A text of its own as a whole workshop, and what the engine says of the record `A-1` in it. */
export interface RecordedText {
  readonly engine: Engine;
  readonly report: RecordReport;
  /** Findings of the record. */
  readonly findings: readonly Finding[];
  /** The row of a comparison; of the one at a path where there are several. */
  row(code: string, path?: string): RecordRow;
  /** Findings with a code. */
  of(code: string): readonly Finding[];
  /** What the text at a finding's place is. */
  at(finding: Finding): string;
  /** The text with a finding's first repair made. */
  repaired(code: string): string;
}

export const uri = "memory:///workshop/example.ferrule";
export const today = "2026-11-25";

export function engineOf(texts: Readonly<Record<string, string>>): Engine {
  const engine = new Engine({ today, prelude });
  engine.update(Object.entries(texts).map(([name, text]) => ({ uri: name, text })));
  return engine;
}

/**
 * Reads a text and judges its record. A slip in the text throws, because it would turn what was measured into nothing
 * and prove nothing, unless it is what the test is about.
 */
export function recorded(text: string, slips: "refused" | "allowed" = "refused", serial = "A-1"): RecordedText {
  const engine = engineOf({ [uri]: text });
  const found = engine
    .findings(uri)
    .filter(({ code }) => /^(language|value|model)\//.test(code))
    .map(({ code, message }) => `${code}: ${message}`);
  if (slips === "refused" && found.length > 0) throw new Error(`${found.join("\n")}\nin\n${text}`);
  const declaration = engine.workshop.lookup(`record ${serial}`);
  const report = declaration && engine.record(declaration);
  if (!declaration || !report) throw new Error(`the text has no record ${serial}`);
  const findings = engine.findingsOf(declaration);
  return {
    engine,
    report,
    findings,
    row(code, path) {
      const rows = report.rows.filter(
        ({ comparison, measured }) => comparison.code === code && (path === undefined || measured.path === path),
      );
      const [row] = rows;
      if (!row || rows.length > 1) throw new Error(`${rows.length} rows of ${code} at ${path ?? "any path"}`);
      return row;
    },
    of: (code) => findings.filter((finding) => finding.code === code),
    at: ({ place: { declaration: at, span } }) => at.text.slice(span.start, span.end),
    repaired(code) {
      const finding = findings.find((one) => one.code === code);
      const [mend] = finding ? mends(engine, declaration, finding) : [];
      if (!mend) throw new Error(`nothing mends ${code}`);
      const lines = engine.lines(uri);
      return [...mend.edits]
        .sort((one, other) => lines.offset(other.range.start) - lines.offset(one.range.start))
        .reduce(
          (result, { range, newText }) =>
            result.slice(0, lines.offset(range.start)) + newText + result.slice(lines.offset(range.end)),
          text,
        );
    },
  };
}

/** The sentence of a row, whatever came of it. */
export function said({ verdict }: RecordRow): string {
  if (verdict.outcome === "unknown") return verdict.missing.map(({ what }) => what).join("; ");
  return verdict.outcome === "notApplicable" ? verdict.reason : verdict.message;
}
