import { describe, expect, test } from "vitest";
import type { Engine } from "../../server/engine/engine.ts";
import { mends } from "../../server/engine/repairs.ts";
import { buildNamed, failing, failures, openSamples, reportOf, sampleFiles } from "./workshop.ts";

const file = "wrong/fellside-draft.ferrule";
const name = "fellside-draft";
const engine = openSamples();
const report = reportOf(engine, name);
const text = sampleFiles.find(({ path }) => path === file)?.text ?? "";

/** What was put wrong on purpose; each line of the file says so beside it. */
const faults = [
  "cockpit/clamp-interface seat.remote",
  "cockpit/torque-window cockpit.handlebar",
  "drivetrain/bottom-bracket-shell drivetrain.bottom-bracket",
  "drivetrain/cage-capacity drivetrain.rear-derailleur",
  "drivetrain/chain-length drivetrain.chain.links",
  "drivetrain/closure-link drivetrain.closure-link",
  "drivetrain/freehub-body drivetrain.cassette",
  "drivetrain/hanger-seat drivetrain.hanger",
  "drivetrain/pedal-thread drivetrain.pedals",
  "drivetrain/ring-clearance drivetrain.chainring",
];

interface Position {
  readonly line: number;
  readonly character: number;
}

interface Edit {
  readonly uri: string;
  readonly range: { readonly start: Position; readonly end: Position };
  readonly newText: string;
}

/** The texts of the files that a quick fix changes, with its edits made in those that `now` was opened with. */
function applied(now: Engine, texts: Readonly<Record<string, string>>, edits: readonly Edit[]): Record<string, string> {
  const after: Record<string, string> = { ...texts };
  for (const uri of new Set(edits.map((edit) => edit.uri))) {
    const before = texts[uri] ?? sampleFiles.find(({ path }) => path === uri)?.text ?? "";
    const lines = now.lines(uri);
    const from = ({ range }: Edit): number => lines.offset(range.start);
    after[uri] = edits
      .filter((edit) => edit.uri === uri)
      .sort((a, b) => from(b) - from(a))
      .reduce(
        (result, edit) => result.slice(0, from(edit)) + edit.newText + result.slice(lines.offset(edit.range.end)),
        before,
      );
  }
  return after;
}

describe("the draft with faults", () => {
  test("has each of its faults found once, and nothing else", () => {
    expect([...failures(report)].sort()).toEqual(faults);
  });

  test("has no fault that is taken for unknown", () => {
    expect(report.counts.unknown).toBe(0);
    expect(report.counts.fails).toBe(faults.length);
  });

  test("says on the line above each fault what is wrong", () => {
    const lines = text.split("\n");
    for (const finding of failing(report)) {
      expect(finding.place.declaration.uri).toBe(file);
      const { line } = engine.range(finding.place).start;
      expect(lines[line - 1]?.trimStart().startsWith("// "), `${finding.code} on line ${line + 1}`).toBe(true);
    }
  });

  const exemplary = ["drivetrain/cage-capacity", "drivetrain/hanger-seat", "cockpit/clamp-interface"];

  test.each(exemplary)("%s: every quick fix mends it and breaks nothing", (code) => {
    const [finding] = failing(report).filter((one) => one.code === code);
    if (!finding) throw new Error(`${code} is not found`);
    const fixes = mends(engine, buildNamed(engine, name), finding).filter(({ unfinished }) => !unfinished);
    expect(fixes.length).toBeGreaterThan(0);
    expect(fixes.filter(({ preferred }) => preferred)).toHaveLength(1);
    const before = new Set(failures(report));
    for (const { title, edits } of fixes) {
      const after = reportOf(openSamples(applied(engine, {}, edits)), name);
      const now = failures(after);
      expect(now, title).not.toContain(`${finding.code} ${finding.path}`);
      expect(
        now.filter((failure) => !before.has(failure)),
        title,
      ).toEqual([]);
      expect(after.counts.unknown, title).toBe(0);
    }
  });

  test("comes clean when the first fix is taken of one finding after another", () => {
    let texts: Record<string, string> = {};
    for (let round = 0; round < faults.length; round++) {
      const now = openSamples(texts);
      const [finding] = failing(reportOf(now, name));
      if (!finding) break;
      const [fix] = mends(now, buildNamed(now, name), finding).filter(({ unfinished }) => !unfinished);
      if (!fix) throw new Error(`nothing mends ${finding.code}: ${finding.message}`);
      texts = applied(now, texts, fix.edits);
    }
    const last = reportOf(openSamples(texts), name);
    expect(failures(last)).toEqual([]);
    expect(last.counts.unknown).toBe(0);
  });
});
