import { describe, expect, test } from "vitest";
import { openSamples, sampleFiles } from "../samples/workshop.ts";

const engine = openSamples();
const recordsIn = (folder: string) =>
  sampleFiles
    .filter(({ path }) => path.startsWith(folder))
    .flatMap(({ path }) => engine.file(path)?.declarations ?? [])
    .flatMap((declaration) => engine.record(declaration) ?? []);

describe("the records of the samples", () => {
  const records = recordsIn("records/");

  test("are several, of several builds, for more than one occasion", () => {
    expect(records.length).toBeGreaterThanOrEqual(3);
    expect(new Set(records.map(({ declaration }) => declaration.of)).size).toBeGreaterThanOrEqual(3);
    const occasions = records.map(({ text }) => text.about.get("occasion"));
    expect(new Set(occasions.map((one) => one?.state === "stated" && one.value)).size).toBeGreaterThanOrEqual(2);
  });

  test("agree with their builds in everything that was measured, be it with those of today", () => {
    for (const { rows, declaration } of records) {
      const differing = rows.filter(
        ({ verdict }) => verdict.outcome !== "holds" && verdict.outcome !== "notApplicable",
      );
      expect(
        differing.map(({ comparison, measured }) => `${comparison.code} ${measured.path}`),
        declaration.name,
      ).toEqual([]);
    }
  });

  test("state the specification, which one of them has seen move on", () => {
    // A recipe of the samples may move on at any time; then the two new ones say so as well, and nothing fails by it.
    const states = Object.fromEntries(records.map(({ declaration, builtTo }) => [declaration.name, builtTo?.state]));
    expect(states).toMatchObject({
      "FL-0031": expect.stringMatching(/^(current|moved-on)$/),
      "FM-0034": expect.stringMatching(/^(current|moved-on)$/),
      "WA-0012": "moved-on",
    });
    for (const { builtTo, counts, declaration } of records) {
      expect(counts.fails, declaration.name).toBe(0);
      const said = engine.findingsOf(declaration).filter(({ code }) => code === "record/spec-moved-on");
      expect(said.length, declaration.name).toBe(builtTo?.state === "moved-on" ? 1 : 0);
    }
  });

  test("hold more than a dozen kinds of comparison between them", () => {
    const kinds = new Set(records.flatMap(({ rows }) => rows.map(({ comparison }) => comparison.code)));
    expect(kinds.size).toBeGreaterThan(12);
  });
});

describe("samples/wrong/records", () => {
  const files = sampleFiles.filter(({ path }) => path.startsWith("wrong/records/"));

  test.each(files.map(({ path, text }) => [path, text]))(
    "%s: each fault is found once, and nothing else is",
    (path, text) => {
      const lines = text.split("\n");
      const planted = lines.flatMap((line, index) => {
        const code = /^\s*\/\/ expect: (\S+)$/.exec(line)?.[1];
        return code === undefined ? [] : [`${index + 2} ${code}`];
      });
      const found = engine
        .findings(path)
        .filter(({ outcome }) => outcome === "fails")
        .map(({ code, place }) => `${engine.range(place).start.line + 1} ${code}`);
      expect(found.sort()).toEqual(planted.sort());
      expect(planted.length).toBeGreaterThan(5);
    },
  );

  test("the one bad spoke is named by its place, with both numbers", () => {
    const findings = files.flatMap(({ path }) => engine.findings(path));
    const spokes = findings.filter(({ code }) => code === "record/spoke-spread");
    expect(spokes.map(({ message }) => message)).toEqual([
      expect.stringMatching(/^Spoke 7 of the drive side has 780 N, 34\.2 % below the 1185 N that the other 15 average/),
    ]);
  });
});
