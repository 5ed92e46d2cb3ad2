/**
 * Runs the workbench suites in a browser: `suite/` inside the extension host, `page/` from outside.
 * Writes { passed, failed, skipped } to the file named by FERRULE_TEST_SUMMARY.
 */
import { readdirSync } from "node:fs";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { NoBrowser } from "./browser.ts";
import { pageTests } from "./page/harness.ts";
import { bundleSuite, copyOfSamples, Report } from "./report.ts";
import { outputFolder, Workbench } from "./workbench.ts";

const testsTimeout = 300_000;

async function runInside(report: Report): Promise<void> {
  const tests = await bundleSuite();
  const workbench = await Workbench.start({ folder: copyOfSamples(), tests, onLog: (line) => report.read(line) });
  let timer: ReturnType<typeof setTimeout> | undefined;
  try {
    const expired = new Promise<"expired">((resolve) => {
      timer = setTimeout(() => resolve("expired"), testsTimeout);
    });
    await Promise.race([workbench.testsEnded, expired]);
    report.closeSuite();
    if (report.failed > 0) await workbench.screenshot(join(outputFolder, "suite.png"));
  } finally {
    clearTimeout(timer);
    await workbench.stop();
  }
}

async function runOutside(report: Report): Promise<void> {
  const folder = join(import.meta.dirname, "page");
  for (const name of readdirSync(folder).sort()) {
    if (name.endsWith(".test.ts")) await import(pathToFileURL(join(folder, name)).href);
  }
  if (pageTests.length === 0) return;
  const workbench = await Workbench.start({ folder: copyOfSamples() });
  try {
    for (const { name, body } of pageTests) {
      const started = Date.now();
      try {
        await body(workbench);
        report.add({ name, outcome: "passed", milliseconds: Date.now() - started });
      } catch (error) {
        const picture = join(outputFolder, `${name.replaceAll(/[^\w]+/g, "-")}.png`);
        await workbench.screenshot(picture);
        const detail = `${error instanceof Error ? error.stack : error}\n    picture: tests/workbench/output/${basename(picture)}`;
        report.add({ name, outcome: "failed", detail, milliseconds: Date.now() - started });
      }
      await workbench.closeEditors();
    }
  } finally {
    await workbench.stop();
  }
}

const report = new Report("browser workbench");
try {
  await runInside(report);
  await runOutside(report);
} catch (error) {
  if (error instanceof NoBrowser) report.notRun(error.message);
  else
    report.add({
      name: "the workbench",
      outcome: "failed",
      detail: error instanceof Error ? (error.stack ?? "") : String(error),
    });
}
report.write();
