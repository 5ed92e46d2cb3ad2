import { describe, expect, test } from "vitest";
import type { BuildReport } from "../../server/engine/build-report.ts";
import type { Engine } from "../../server/engine/engine.ts";
import { LineIndex } from "../../server/engine/positions.ts";
import { type Mend, mends } from "../../server/engine/repairs.ts";
import type { Finding } from "../../server/model/finding.ts";
import { buildNamed, failing, openSamples, reportOf, sampleFiles } from "./workshop.ts";

/*
 * Whatever is offered for a fault planted in samples/wrong is taken, one repair at a time: the fault has to be gone
 * then, and nothing may be wrong that was right before. What could not be asked before may come to light, such as the
 * length of spokes once their lacing is possible; and what is only to be set up anew for it may be asked for, such as a
 * steerer to be cut where spacers go.
 */

const texts = new Map(sampleFiles.map(({ path, text }) => [path, text]));
const files = sampleFiles.filter(({ path }) => /^wrong\/[^/]+$/.test(path)).map(({ path }) => path);

/** The texts of the files that a repair touches, with it taken. */
function taken({ edits }: Mend): readonly { readonly uri: string; readonly text: string }[] {
  const byFile = new Map<string, Mend["edits"][number][]>();
  for (const edit of edits) byFile.set(edit.uri, [...(byFile.get(edit.uri) ?? []), edit]);
  return [...byFile].map(([uri, own]) => {
    const lines = new LineIndex(texts.get(uri) ?? "");
    const placed = own
      .map(({ range, newText }) => ({ start: lines.offset(range.start), end: lines.offset(range.end), newText }))
      .sort((one, other) => other.start - one.start);
    let text = texts.get(uri) ?? "";
    for (const { start, end, newText } of placed) text = text.slice(0, start) + newText + text.slice(end);
    return { uri, text };
  });
}

/** Codes of the checks that held before a repair and are an error after it, which no other set-up mends. */
function broken(before: BuildReport, after: BuildReport): readonly string[] {
  const held = new Set(before.rows.filter(({ outcome }) => outcome === "holds").map(({ check }) => check.code));
  return failing(after)
    .filter(({ severity, code }) => severity === "error" && held.has(code))
    .filter(({ repairs }) => !repairs.some(({ kind }) => kind === "set-setting"))
    .map(({ code }) => code);
}

/** What is wrong with a repair; nothing when it mends. */
function amiss(engine: Engine, name: string, finding: Finding, mend: Mend): readonly string[] {
  const before = reportOf(engine, name);
  const same = (other: Finding): boolean => other.code === finding.code && other.message === finding.message;
  const changed = taken(mend);
  engine.update(changed);
  try {
    const after = reportOf(engine, name);
    return [
      ...(failing(after).some(same) ? [`${name}: "${mend.title}" leaves ${finding.code}`] : []),
      ...broken(before, after).map((one) => `${name}: "${mend.title}" for ${finding.code} brings ${one}`),
    ];
  } finally {
    engine.update(changed.map(({ uri }) => ({ uri, text: texts.get(uri) })));
  }
}

describe("repairs of the faults in samples/wrong", () => {
  const engine = openSamples();

  test.each(files)("%s: each mends its fault and brings no new error", (path) => {
    const names = (engine.file(path)?.declarations ?? [])
      .filter(({ keyword }) => keyword === "build")
      .map(({ name }) => name);
    const found: string[] = [];
    for (const name of names) {
      for (const finding of failing(reportOf(engine, name))) {
        for (const mend of mends(engine, buildNamed(engine, name), finding)) {
          // A waiver mends nothing, and what wants a person's word is not done yet.
          if (mend.unfinished) continue;
          found.push(...amiss(engine, name, finding, mend));
        }
      }
    }
    expect(found).toEqual([]);
  });
});
