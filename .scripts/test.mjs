// `npm test`: installs what it needs and runs every suite. The last line is "N passed, N failed", then skips if any.
// `npm test -- PATH ...` runs only the vitest files whose path contains one of the words given.
import { spawn } from "node:child_process";
import { existsSync, mkdtempSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { install, prepare, root } from "./toolchain.mjs";

prepare();
const { build } = await import("./build.mjs");

const filters = process.argv.slice(2);
const scratch = mkdtempSync(join(tmpdir(), "ferrule-test-"));
process.on("exit", () => rmSync(scratch, { recursive: true, force: true }));

/** Runs a command with its output on the screen. @returns its exit code, 1 when it could not start or was killed. */
function run(command, commandArguments, environment = {}) {
  return new Promise((resolve) => {
    const child = spawn(command, commandArguments, {
      cwd: root,
      stdio: "inherit",
      env: { ...process.env, ...environment },
    });
    child.on("error", (error) => {
      console.error(error.message);
      resolve(1);
    });
    child.on("close", (code) => resolve(code ?? 1));
  });
}

const workbenchFolder = join(root, "tests", "workbench");
const bin = (name) => join(root, "node_modules", ".bin", process.platform === "win32" ? `${name}.cmd` : name);

/** A suite that is one yes-or-no question, counted as one test. */
async function single(command, commandArguments) {
  const code = await run(command, commandArguments);
  return { passed: code === 0 ? 1 : 0, failed: code === 0 ? 0 : 1, skipped: [] };
}

/** A suite that writes { passed, failed, skipped } to the file named by FERRULE_TEST_SUMMARY. */
async function counted(name, command, commandArguments) {
  const file = join(scratch, `${name}.json`);
  const code = await run(command, commandArguments, { FERRULE_TEST_SUMMARY: file });
  if (!existsSync(file)) {
    console.error(`The ${name} suite ended (exit code ${code}) without saying what it ran.`);
    return { passed: 0, failed: 1, skipped: [] };
  }
  const summary = JSON.parse(readFileSync(file, "utf8"));
  if (code !== 0 && summary.failed === 0) {
    console.error(`The ${name} suite ended with exit code ${code} although no test of it failed.`);
    summary.failed = 1;
  }
  return summary;
}

async function bundles() {
  try {
    const result = await build();
    console.log(result === "built" ? "Built dist/." : "dist/ is up to date.");
    return { passed: 1, failed: 0, skipped: [] };
  } catch (error) {
    console.error(error.message);
    return { passed: 0, failed: 1, skipped: [] };
  }
}

/** A suite in a real workbench, whose packages are large and therefore installed only here. */
async function inWorkbench(suite) {
  const failure = install(workbenchFolder, "the workbench and its browser");
  if (failure === undefined) return suite();
  console.error(failure);
  console.error("npm could not install the workbench: see its message above.");
  return { passed: 0, failed: 1, skipped: [] };
}

const workbench = (runner) => inWorkbench(() => counted(runner, process.execPath, [join(workbenchFolder, runner)]));
const workbenchTypes = () => inWorkbench(() => single(bin("tsc"), ["--noEmit", "--project", workbenchFolder]));

const vitest = {
  title: "Tests",
  run: () =>
    counted("vitest", process.execPath, [
      join(root, "node_modules", "vitest", "vitest.mjs"),
      "run",
      "--config=tests/vitest.config.ts",
      "--reporter=default",
      `--reporter=${join(root, ".scripts", "vitest-summary.mjs")}`,
      ...filters,
    ]),
};
const suites =
  filters.length > 0
    ? [vitest]
    : [
        { title: "Bundles", run: bundles },
        { title: "Lint and format", run: () => single(bin("biome"), ["check", "--error-on-warnings"]) },
        { title: "Types", run: () => single(bin("tsc"), ["--noEmit"]) },
        { title: "Types of the extension", run: () => single(bin("tsc"), ["--noEmit", "--project", "client"]) },
        vitest,
        { title: "Types of the workbench's tests", run: workbenchTypes },
        { title: "A real workbench in a browser", run: () => workbench("run-browser.ts") },
        { title: "A real workbench on the desktop", run: () => workbench("run-desktop.ts") },
      ];

const total = { passed: 0, failed: 0, skipped: [] };
const results = [];
for (const suite of suites) {
  console.log(`\n== ${suite.title}`);
  const started = performance.now();
  const { passed, failed, skipped } = await suite.run();
  total.passed += passed;
  total.failed += failed;
  total.skipped.push(...skipped);
  const seconds = ((performance.now() - started) / 1000).toFixed(1);
  results.push(`${suite.title}: ${passed} passed, ${failed} failed, ${skipped.length} skipped (${seconds} s)`);
}

console.log(`\n== Summary\n${results.join("\n")}`);
for (const { name, reason } of total.skipped) console.log(`Skipped: ${name}: ${reason}`);
if (total.passed + total.failed === 0) console.log("Nothing ran, which counts as a failure.");
const skips = total.skipped.length > 0 ? `, ${total.skipped.length} skipped` : "";
console.log(`${total.passed} passed, ${total.failed} failed${skips}`);
process.exitCode = total.failed > 0 || total.passed === 0 ? 1 : 0;
