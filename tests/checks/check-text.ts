import { checkByCode } from "../../server/checks/table.ts";
import type { BuildReport } from "../../server/engine/build-report.ts";
import { Engine } from "../../server/engine/engine.ts";
import type { CheckRow } from "../../server/engine/evaluate.ts";
import { type Mend, mends } from "../../server/engine/repairs.ts";
import type { Finding, Outcome } from "../../server/model/finding.ts";
import { prelude } from "../../server/standards/index.ts";

/** A text of its own as a whole workshop, and what the engine says of the build `example` in it. */
export interface CheckedText {
  readonly engine: Engine;
  readonly report: BuildReport;
  /** Every finding of the text, those of its parts and standards included. */
  readonly findings: readonly Finding[];
  row(code: string): CheckRow;
  outcome(code: string): Outcome;
  /** The findings of one check. */
  of(code: string): readonly Finding[];
  /** Paths of the facts for want of which a check cannot be made. */
  missing(code: string): readonly string[];
  /** The outcome of one instance of a check. */
  instance(code: string, name: string): string;
}

const uri = "memory:///workshop/example.ferrule";

/**
 * Checks a text. A slip in the text itself throws, because it would turn facts into unknown ones and prove nothing,
 * unless it is what the test is about.
 */
export function checkText(text: string, slips: "refused" | "allowed" = "refused"): CheckedText {
  const engine = new Engine({ today: "2026-11-25", prelude });
  engine.update([{ uri, text }]);
  engine.complete = true;
  const found = slipsOf(engine);
  if (slips === "refused" && found.length > 0) throw new Error(`${found.join("\n")}\nin\n${text}`);
  return checked(engine);
}

/** What is wrong with a text itself, whatever the checks say of its build. */
export function textSlips(text: string): readonly string[] {
  return slipsOf(checkText(text, "allowed").engine);
}

function slipsOf(engine: Engine): readonly string[] {
  return engine
    .findings(uri)
    .filter(({ code }) => /^(language|value|model)\//.test(code))
    .map(({ code, message }) => `${code}: ${message}`);
}

function checked(engine: Engine): CheckedText {
  const build = engine.workshop.lookup("build example");
  const report = build && engine.report(build);
  if (!report) throw new Error("the text declares no build with the name example");
  const row = (code: string): CheckRow => {
    const found = report.rows.find(({ check }) => check.code === code);
    if (!found) throw new Error(`there is no check ${code}`);
    return found;
  };
  return {
    engine,
    report,
    findings: engine.findings(uri),
    row,
    outcome: (code) => row(code).outcome,
    of: (code) => report.findings.filter((finding) => finding.code === code && finding.outcome === "fails"),
    missing: (code) => row(code).missing.map(({ path }) => path),
    instance(code, name) {
      const found = row(code).instances.find(({ instance }) => instance === name);
      if (!found) throw new Error(`${code} has no instance ${name}`);
      return found.verdict.outcome;
    },
  };
}

/** The texts that the repairs of a check's first finding come to, each with the title it is offered under. */
export function repaired(text: string, code: string): readonly { readonly title: string; readonly text: string }[] {
  const { engine, report, of } = checkText(text);
  const [finding] = of(code);
  if (!finding || !checkByCode(code)) throw new Error(`${code} finds nothing to mend`);
  return mends(engine, report.assembly.declaration, finding)
    .filter(({ unfinished }) => !unfinished)
    .map(({ title, edits }) => ({ title, text: apply(engine, text, edits) }));
}

/** The text that a repair leaves behind. */
export function mendedText(engine: Engine, text: string, { edits }: Mend): string {
  return apply(engine, text, edits);
}

function apply(
  engine: Engine,
  text: string,
  edits: readonly { readonly range: { readonly start: Position; readonly end: Position }; readonly newText: string }[],
): string {
  const lines = engine.lines(uri);
  const offset = ({ line, character }: Position): number => lines.offset({ line, character });
  return [...edits]
    .sort((a, b) => offset(b.range.start) - offset(a.range.start))
    .reduce(
      (result, { range, newText }) => result.slice(0, offset(range.start)) + newText + result.slice(offset(range.end)),
      text,
    );
}

interface Position {
  readonly line: number;
  readonly character: number;
}
