import { expect, test } from "vitest";
import { workedQuantities } from "../../server/engine/build-report.ts";
import type { Engine } from "../../server/engine/engine.ts";
import { mends } from "../../server/engine/repairs.ts";
import { specDigest } from "../../server/records/spec-digest.ts";
import { sampleFiles } from "../samples/workshop.ts";
import { engineOf } from "./record-text.ts";

/** Everything the engine says of builds, in plain data. */
function aboutBuilds(engine: Engine): unknown {
  return [...engine.workshop.declared("build")]
    .sort((one, other) => (one.name < other.name ? -1 : 1))
    .map((declaration) => {
      const report = engine.report(declaration);
      return {
        name: declaration.name,
        text: declaration.text,
        digest: report && specDigest(report.assembly),
        counts: report?.counts,
        findings: engine
          .findingsOf(declaration)
          .map(({ code, message, path, severity }) => [code, message, path, severity]),
        numbers:
          report && workedQuantities(report).map((worked) => [worked.row.path, "value" in worked && worked.value]),
        slots:
          report && [...report.assembly.slots].map(([path, { name, settings }]) => [path, name, [...settings.keys()]]),
      };
    });
}

const all = Object.fromEntries(sampleFiles.map(({ path, text }) => [path, text]));
const withoutRecords = Object.fromEntries(
  sampleFiles.filter(({ path }) => !path.includes("records/")).map(({ path, text }) => [path, text]),
);
const engine = engineOf(all);
for (const file of Object.keys(all)) engine.findings(file);

test("builds are what they are without any record", () => {
  expect(Object.keys(withoutRecords).length).toBeLessThan(Object.keys(all).length);
  expect(aboutBuilds(engine)).toEqual(aboutBuilds(engineOf(withoutRecords)));
});

test("no repair of a record touches anything but the record", () => {
  const records = [...engine.workshop.declared("record")];
  const edits = records.flatMap((declaration) =>
    engine
      .findingsOf(declaration)
      .flatMap((finding) => mends(engine, declaration, finding))
      .flatMap((mend) => mend.edits.map(({ uri, range }) => ({ declaration, uri, range }))),
  );
  expect(edits.length).toBeGreaterThan(0);
  for (const { declaration, uri, range } of edits) {
    expect(uri).toBe(declaration.uri);
    const lines = engine.lines(uri);
    expect(lines.offset(range.start)).toBeGreaterThanOrEqual(declaration.start);
    expect(lines.offset(range.end)).toBeLessThanOrEqual(declaration.start + declaration.text.length);
  }
});
