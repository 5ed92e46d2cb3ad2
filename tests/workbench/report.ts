/** What the two runners of the workbench suites share: the bundle of the suite, its folder, and the counting of results. */
import { cpSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { tmpdir } from "node:os";
import { basename, dirname, join } from "node:path";
import { extensionFolder } from "./workbench.ts";

const suiteFolder = join(import.meta.dirname, "suite");

/** The mark at the start of a console line that tells a result; `suite/harness.ts` writes it. */
const mark = "ferrule-workbench-test ";

/** One result, as `suite/harness.ts` prints it. */
export interface Result {
  readonly name: string;
  readonly outcome: "passed" | "failed" | "skipped";
  readonly detail?: string;
  readonly milliseconds?: number;
}

/** Bundles every `suite/*.test.ts` into one module that either extension host loads. @returns its path */
export async function bundleSuite(): Promise<string> {
  const esbuild: typeof import("esbuild") = createRequire(join(extensionFolder, "package.json"))("esbuild");
  const files = readdirSync(suiteFolder).filter((name) => name.endsWith(".test.ts"));
  const imports = files.sort().map((name) => `import "./${name}";`);
  const outfile = join(extensionFolder, "dist", "tests", "workbench-suite.js");
  await esbuild.build({
    stdin: { contents: [...imports, 'export { run } from "./harness.ts";'].join("\n"), resolveDir: suiteFolder },
    outfile,
    bundle: true,
    format: "cjs",
    platform: "browser",
    external: ["vscode"],
    loader: { ".ferrule": "text" },
    sourcemap: "inline",
    logLevel: "warning",
  });
  return outfile;
}

/**
 * A copy of the samples that a test may change, removed when this process ends. Of the builds that are wrong on purpose it
 * holds the draft only: the Problems view shows as many rows as fit on the screen.
 * @returns its path
 */
export function copyOfSamples(): string {
  const folder = mkdtempSync(join(tmpdir(), "ferrule-workbench-"));
  process.on("exit", () => rmSync(folder, { recursive: true, force: true }));
  const workshop = join(folder, "workshop");
  const samples = join(extensionFolder, "samples");
  const wrong = join(samples, "wrong");
  const isShown = (path: string) => dirname(path) !== wrong || basename(path) === "fellside-draft.ferrule";
  if (existsSync(samples)) cpSync(samples, workshop, { recursive: true, filter: isShown });
  else mkdirSync(workshop);
  return workshop;
}

/** Prints results as they come and counts them. */
export class Report {
  passed = 0;
  failed = 0;
  readonly skipped: { name: string; reason: string }[] = [];
  readonly #label: string;
  #suiteEnded = false;

  /** @param label which workbench this is, put before each name */
  constructor(label: string) {
    this.#label = label;
  }

  /** Counts and prints one result. */
  add({ name, outcome, detail, milliseconds }: Result): void {
    if (outcome === "passed") this.passed += 1;
    else if (outcome === "failed") this.failed += 1;
    else this.skipped.push({ name: `${this.#label}: ${name}`, reason: detail ?? "no reason given" });
    const time = milliseconds === undefined ? "" : ` (${milliseconds} ms)`;
    console.log(`${outcome.padEnd(7)} ${this.#label}: ${name}${time}`);
    if (detail !== undefined) console.log(`    ${detail.replaceAll("\n", "\n    ")}`);
  }

  /** Takes a console line of the extension host: a result is counted, anything else ignored. */
  read(line: string): void {
    const start = line.indexOf(mark);
    if (start < 0) return;
    const message: Result | { end: number } = JSON.parse(line.slice(start + mark.length));
    if ("end" in message) this.#suiteEnded = true;
    else this.add(message);
  }

  /** Called when the extension host has ended: a suite that did not reach its end has failed. */
  closeSuite(): void {
    if (!this.#suiteEnded)
      this.add({ name: "the suite in the extension host", outcome: "failed", detail: "it did not reach its end" });
  }

  /** Says plainly that nothing could run here. */
  notRun(reason: string): void {
    console.log(`not run: ${reason}`);
    this.skipped.push({ name: this.#label, reason: `not run: ${reason}` });
  }

  /** Writes the counts for `npm test`, when it asked for them, and sets the exit code. */
  write(): void {
    const file = process.env.FERRULE_TEST_SUMMARY;
    const { passed, failed, skipped } = this;
    if (file !== undefined) writeFileSync(file, JSON.stringify({ passed, failed, skipped }));
    process.exitCode = failed > 0 ? 1 : 0;
  }
}
