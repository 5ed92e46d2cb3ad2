// `npm run mutate`: changes checks and calculations one operator at a time and sees that a test fails for each.
// `npm run mutate -- [--sample N] [--seed S] [--seconds T] [--list] [PATH[:LINE] ...]` takes only files whose path
// contains a word given (or one line of them), only so many mutants, so long for each, and with --list names those that
// survive.
// The tools are fetched when first wanted, since nothing else needs them.
import { existsSync, mkdirSync, writeFileSync } from "node:fs";
import { createRequire } from "node:module";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { npm, prepare, root } from "./toolchain.mjs";

const tools = { "@stryker-mutator/instrumenter": "10.1.1", "@vitest/expect": "5.1.1", chai: "6.3.0" };

prepare();
const folder = join(root, "dist", "mutation");
if (!existsSync(join(folder, "node_modules", "@stryker-mutator", "instrumenter"))) {
  mkdirSync(folder, { recursive: true });
  writeFileSync(join(folder, "package.json"), JSON.stringify({ private: true, dependencies: tools }));
  const { code, output } = npm(folder, ["install", "--no-audit", "--no-fund"]);
  if (code !== 0) {
    console.error(`The tools for mutation could not be installed:\n${output}`);
    process.exit(1);
  }
}
const fromTools = createRequire(join(folder, "package.json"));
const load = (name) => import(pathToFileURL(fromTools.resolve(name)).href);
const { importTypeScript } = await import("./typescript.mjs");
const { run } = await importTypeScript("tests/mutation/run.ts");
process.exitCode = await run(process.argv.slice(2), {
  instrumenter: await load("@stryker-mutator/instrumenter"),
  expect: await load("@vitest/expect"),
  chai: await load("chai"),
});
