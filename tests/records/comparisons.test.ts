import { readdirSync } from "node:fs";
import { describe, expect, it, test } from "vitest";
import { comparisons } from "../../server/records/table.ts";
import { measurements, slotByPath } from "../../server/vocabulary/index.ts";
import { recorded, said } from "./record-text.ts";

test("every file of the folder is in the table, and stands under its code", () => {
  const files = readdirSync(new URL("../../server/records/checks", import.meta.url));
  expect(comparisons.map(({ code }) => `${code.replace("record/", "")}.ts`).sort()).toEqual(files.sort());
});

/** What is kept and compared with nothing, and what the generic comparison judges. */
const withoutOwn = ["whole.test-ride", "front-wheel.circumference", "rear-wheel.circumference"];

test("every row of the table of measurements is judged by something", () => {
  const judged = new Set(
    comparisons.flatMap(({ instances }) => instances.flatMap(({ path, beside }) => [path, beside ?? path])),
  );
  expect(Object.keys(measurements).filter((path) => !judged.has(path))).toEqual(withoutOwn.reverse().sort());
});

test("every row says what it is compared with, from which source, and on which slot it is measured", () => {
  for (const [path, row] of Object.entries(measurements)) {
    expect(row.comparedWith, path).not.toBe("");
    expect(row.source, path).not.toBe("");
    if (row.on !== undefined) expect(slotByPath(row.on), path).toBeDefined();
    for (const { of, by, share, most, least, source } of Object.values(row.tolerances)) {
      expect([of, source], path).not.toContain("");
      expect([by, share, most, least].filter((limit) => limit !== undefined).length, path).toBeGreaterThan(0);
    }
  }
});

test("a measurement never takes the place of a slot, a setting or a fact", () => {
  const taken = Object.keys(measurements).filter((path) => {
    const dot = path.lastIndexOf(".");
    return slotByPath(path) !== undefined || slotByPath(path.slice(0, dot)) !== undefined;
  });
  expect(taken).toEqual([]);
});

describe.each(comparisons.map((comparison) => ({ code: comparison.code, comparison })))(
  "$code",
  ({ code, comparison }) => {
    it("explains itself in three to eight sentences and names a source", () => {
      const sentences = comparison.explanation.match(/[.?!](\s|$)/g)?.length ?? 0;
      expect(sentences).toBeGreaterThanOrEqual(3);
      expect(sentences).toBeLessThanOrEqual(8);
      expect(comparison.source).not.toBe("");
      expect(comparison.title).not.toMatch(/\.$/);
      // What guards somebody's safety says so.
      if (comparison.safety) expect(comparison.caution).toMatch(/\.$/);
    });

    if (comparison.examples.holds !== "") {
      it("holds in its holding example", () => {
        const text = recorded(comparison.examples.holds);
        const rows = text.report.rows.filter((row) => row.comparison.code === code);
        expect(
          rows.map(({ outcome }) => outcome),
          rows.map(said).join("\n"),
        ).toContain("holds");
        expect(rows.filter(({ outcome }) => outcome !== "holds")).toEqual([]);
        expect(text.of(code)).toEqual([]);
      });
    }

    it("fails in its failing example, once, where it was measured", () => {
      const text = recorded(comparison.examples.fails);
      const [finding, ...more] = text.of(code);
      expect(more).toEqual([]);
      expect(finding).toMatchObject({ code, outcome: "fails", severity: expect.stringMatching(/error|warning/) });
      expect(finding?.message).toMatch(/^[A-Z0-9a-z].*\.$/);
      expect(finding?.place.declaration.keyword).toBe("record");
      expect(text.report.counts.fails).toBeGreaterThanOrEqual(1);
    });
  },
);
