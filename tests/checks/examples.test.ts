import { existsSync } from "node:fs";
import { describe, expect, it } from "vitest";
import { checks } from "../../server/checks/table.ts";
import { slotByPath } from "../../server/vocabulary/index.ts";
import { checkText, textSlips } from "./check-text.ts";

describe.each(checks.map((check) => ({ code: check.code, check })))("$code", ({ code, check }) => {
  it("stands in the file of its name", () => {
    expect(existsSync(new URL(`../../server/checks/${code}.ts`, import.meta.url))).toBe(true);
  });

  it("explains itself in three to eight sentences and names a source", () => {
    const sentences = check.explanation.match(/[.?!](\s|$)/g)?.length ?? 0;
    expect(sentences).toBeGreaterThanOrEqual(3);
    expect(sentences).toBeLessThanOrEqual(8);
    expect(check.source).not.toBe("");
    expect(check.title).not.toMatch(/[.]$/);
  });

  it("holds in its holding example", () => {
    expect(textSlips(check.examples.holds)).toEqual([]);
    const text = checkText(check.examples.holds);
    expect(text.outcome(code), JSON.stringify(text.row(code).instances)).toBe("holds");
  });

  // A check of what nobody chose yet has no failing example: what it finds is unknown, never wrong (build.test.ts).
  if (check.examples.fails === "") return;

  it("fails in its failing example, once, and says what would mend it", () => {
    expect(textSlips(check.examples.fails)).toEqual([]);
    const text = checkText(check.examples.fails);
    expect(text.outcome(code), JSON.stringify(text.row(code).instances.map(({ verdict }) => verdict.outcome))).toBe(
      "fails",
    );
    const findings = text.of(code);
    expect(findings).toHaveLength(1);
    for (const finding of findings) {
      expect(finding.message).toMatch(/\.$/);
      expect(finding.path).not.toBe("");
      for (const repair of finding.repairs) {
        if ("slot" in repair) expect(slotByPath(repair.slot), repair.slot).toBeDefined();
      }
    }
  });
});
