/** The problem matcher of package.json finds each finding in what `ferrule check` prints to a terminal. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { Engine } from "../../server/engine/engine.ts";
import { collect } from "../../server/reports/collect.ts";
import { plain } from "../../server/reports/paint.ts";
import { textReport } from "../../server/reports/text.ts";
import { prelude } from "../../server/standards/index.ts";

interface Pattern {
  readonly regexp: string;
  readonly file?: number;
  readonly line?: number;
  readonly column?: number;
  readonly severity?: number;
  readonly code?: number;
  readonly message?: number;
}

const { problemMatchers, problemPatterns } = JSON.parse(
  readFileSync(new URL("../../package.json", import.meta.url), "utf8"),
).contributes;
const patterns: readonly Pattern[] = problemPatterns.find(({ name }: { name: string }) => name === "ferrule").patterns;

/** What an editor reads from a program's lines: the patterns hold for so many lines on end. */
function problemsIn(lines: readonly string[]): Record<string, string>[] {
  return lines.flatMap((_, start) => {
    const problem: Record<string, string> = {};
    for (const [index, { regexp, ...groups }] of patterns.entries()) {
      const match = new RegExp(regexp).exec(lines[start + index] ?? "");
      if (match === null) return [];
      for (const [property, group] of Object.entries(groups)) problem[property] = match[group as number] ?? "";
    }
    return [problem];
  });
}

const uri = "file:///workshop/parts.ferrule";
const source = `part cassette corrie.wide "Corrie wide" {
  speeds: 12
  mass: 372 kgg
  freehub: stepped-drive
}

part bucket corrie.bucket {
}
`;

const engine = new Engine({ today: "2026-11-25", prelude });
engine.update([{ uri, text: source }]);
const workshop = collect({ engine, uris: [uri], pathOf: () => "shop floor/parts.ferrule" });
const findings = workshop.files.flatMap((file) => file.findings);

describe("the problem matcher", () => {
  test.each([40, 80, 200])("finds every finding of a report %d columns wide", (width) => {
    const report = textReport([workshop], { width, paint: plain, list: [] });
    const problems = problemsIn(report.split("\n"));
    expect(findings.length).toBeGreaterThanOrEqual(3);
    expect(problems.map(({ message: _, ...rest }) => rest)).toEqual(
      findings.map(({ at, code, severity }) => ({
        file: "shop floor/parts.ferrule",
        line: String(at.range.start.line + 1),
        column: String(at.range.start.character + 1),
        severity: severity === "information" ? "note" : severity,
        code,
      })),
    );
    for (const [index, { message }] of problems.entries()) {
      expect(message?.length).toBeGreaterThan(0);
      expect(findings[index]?.message.startsWith(message ?? "?")).toBe(true);
    }
  });

  test("keeps what it finds apart from what the extension publishes", () => {
    // An editor begins a task by clearing what its matcher owns: under one name, that would be the server's findings.
    const client = readFileSync(new URL("../../client/language-server.ts", import.meta.url), "utf8");
    const collection = /diagnosticCollectionName: "([^"]+)"/.exec(client)?.[1];
    const owners = problemMatchers.map(({ owner }: { owner: string }) => owner);
    expect(collection).toBeDefined();
    expect(owners).toHaveLength(1);
    expect(owners).not.toContain(collection);
  });
});
