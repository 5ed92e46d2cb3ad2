import { describe, expect, test } from "vitest";
import { checks } from "../../server/checks/table.ts";
import { openSamples, reportOf, sampleFiles } from "./workshop.ts";

/*
 * samples/wrong holds builds with faults planted in them. `// expect: CODE` above a line says that a check with this
 * code finds something on that line, once for each such remark; nothing else may be found anywhere in the file.
 */

/** Checks that never fail, each with its reason. */
const neverFail: Readonly<Record<string, string>> = {
  "build/missing-slot": "what nobody chose yet is not known, and never wrong",
};

/** Told where facts are missing; not a check, but expected in the same way. */
const missing = "build/missing-fact";

const expectation = /^\s*\/\/ expect: (\S+)$/;

interface Planted {
  readonly code: string;
  /** Of the line that is wrong, from 1. */
  readonly line: number;
  /** Whether words stand above that say what is wrong. */
  readonly said: boolean;
}

function planted(text: string): readonly Planted[] {
  const lines = text.split("\n");
  return lines.flatMap((line, index) => {
    const code = expectation.exec(line)?.[1];
    if (code === undefined) return [];
    const after = lines.slice(index).findIndex((other) => !other.trimStart().startsWith("//"));
    const above = lines.slice(0, index).reverse();
    const remark = above.find((other) => !expectation.test(other)) ?? "";
    return [{ code, line: index + after + 1, said: remark.trimStart().startsWith("// ") }];
  });
}

/** Builds only: what was measured on a bike is compared elsewhere. */
const files = sampleFiles.filter(({ path }) => /^wrong\/[^/]+$/.test(path) && path !== "wrong/fellside-draft.ferrule");
const engine = openSamples();
const houseRules = engine.checks.rules.map(({ code }) => code);
const builds = files.flatMap(({ path }) =>
  (engine.file(path)?.declarations ?? []).filter(({ keyword }) => keyword === "build").map(({ name }) => name),
);

describe("the faults in samples/wrong", () => {
  test.each(files.map(({ path, text }) => [path, text]))(
    "%s: each is found once, and nothing else is",
    (path, text) => {
      const found = engine
        .findings(path)
        .filter(({ outcome, code }) => outcome === "fails" || code === missing)
        .map((finding) => `${engine.range(finding.place).start.line + 1} ${finding.code}`);
      expect(found.sort()).toEqual(
        planted(text)
          .map(({ code, line }) => `${line} ${code}`)
          .sort(),
      );
    },
  );

  test.each(files.map(({ path, text }) => [path, text]))("%s: each is explained in words", (_, text) => {
    expect(planted(text).filter(({ said }) => !said)).toEqual([]);
  });

  test("make every check fail at least once, save those that never do", () => {
    const failing = new Set(files.flatMap(({ text }) => planted(text).map(({ code }) => code)));
    const passing = checks.map(({ code }) => code).filter((code) => !failing.has(code));
    expect(passing.sort(), "add a build to samples/wrong in which it fails").toEqual(Object.keys(neverFail).sort());
  });

  test("are planted one or a few to a build, derived from a good one, in which nothing else is amiss", () => {
    const good = new Set(
      [...engine.workshop.declared("build")].filter(({ uri }) => uri.startsWith("builds/")).map(({ name }) => name),
    );
    for (const { path, text } of files) {
      const headers = [...text.matchAll(/^build (\S+) ".*" from (\S+) \{$/gm)];
      expect(headers.length, path).toBe([...text.matchAll(/^build /gm)].length);
      for (const [, name, base] of headers) expect(good.has(base ?? ""), `${name} from ${base}`).toBe(true);
    }
    for (const name of builds) {
      const { fails } = reportOf(engine, name).counts;
      expect(fails, name).toBeLessThanOrEqual(8);
    }
  });

  test.each(builds)("%s: what holds, fails, is waived, unknown or does not apply are all the checks", (name) => {
    const { counts, rows } = reportOf(engine, name);
    const { holds, fails, unknown, waived, notApplicable } = counts;
    const asked = [...checks.map(({ code }) => code), ...houseRules];
    expect(holds + fails + unknown + waived + notApplicable).toBe(asked.length);
    expect(rows.map(({ check }) => check.code).sort()).toEqual(asked.sort());
    expect(holds).toBeGreaterThan(60);
  });

  test("use every part that was declared for them", () => {
    for (const { path, text } of files) {
      for (const [, name] of text.matchAll(/^(?:part|standard) \S+ (odd\S+)/gm)) {
        const uses = text.split(/\s+/).filter((word) => word.replace(/[;,]$/, "") === name).length;
        expect(uses, `${path}: ${name}`).toBeGreaterThan(1);
      }
    }
  });
});
