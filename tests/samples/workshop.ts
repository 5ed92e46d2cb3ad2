import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import type { BuildReport } from "../../server/engine/build-report.ts";
import { Engine } from "../../server/engine/engine.ts";
import type { Declaration } from "../../server/model/declaration.ts";
import type { Finding } from "../../server/model/finding.ts";
import { prelude } from "../../server/standards/index.ts";

/** One file of the samples: its path below their folder, with forward slashes, and its text. */
export interface SampleFile {
  readonly path: string;
  readonly text: string;
}

const root = fileURLToPath(new URL("../../samples/", import.meta.url));

export const sampleFiles: readonly SampleFile[] = readdirSync(root, { recursive: true, encoding: "utf8" })
  .map((path) => path.replaceAll("\\", "/"))
  .filter((path) => path.endsWith(".ferrule"))
  .sort()
  .map((path) => ({ path, text: readFileSync(join(root, path), "utf8") }));

/** The day on which the samples are read; their one waiver ends after it. */
export const today = "2026-11-25";

/** The samples as a whole workshop, with other texts for some of the files. */
export function openSamples(instead: Readonly<Record<string, string>> = {}, day = today): Engine {
  const engine = new Engine({ today: day, prelude });
  engine.update(sampleFiles.map(({ path, text }) => ({ uri: path, text: instead[path] ?? text })));
  engine.complete = true;
  return engine;
}

export function buildNamed(engine: Engine, name: string): Declaration {
  const build = engine.workshop.lookup(`build ${name}`);
  if (!build) throw new Error(`the samples have no build ${name}`);
  return build;
}

export function reportOf(engine: Engine, name: string): BuildReport {
  const report = engine.report(buildNamed(engine, name));
  if (!report) throw new Error(`${name} has no report`);
  return report;
}

/** What fails in a build, as `code path`, so that it can be compared with what is expected. */
export function failures(report: BuildReport): readonly string[] {
  return failing(report).map(({ code, path }) => `${code} ${path}`);
}

export function failing(report: BuildReport): readonly Finding[] {
  return report.findings.filter(({ outcome }) => outcome === "fails");
}
