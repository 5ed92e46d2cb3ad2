// Bundles everything that ships into dist/. Usage: build.mjs [--development] [--watch]
// `--development` adds source maps and keeps names; `--watch` rebuilds on change.
// A build whose inputs have not changed since the last one is skipped.
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { pathToFileURL } from "node:url";
import { packProgram } from "./pack-program.mjs";
import { prepare, root } from "./toolchain.mjs";

const output = join(root, "dist");

/**
 * Runs before anything else in the command line, so it keeps to syntax that any Node of the last ten years reads:
 * the bundle itself needs Node 22 and would otherwise end in a stack trace.
 */
const commandLineBanner = [
  "#!/usr/bin/env node",
  '"use strict";',
  "if (parseInt(process.versions.node, 10) < 22) {",
  '  console.error("ferrule needs Node 22 or later; this is Node " + process.versions.node + ". Install a newer Node (https://nodejs.org) and run it again.");',
  "  process.exit(2);",
  "}",
].join("\n");

/**
 * Every bundle: where it starts, where it ends up and what will run it.
 * All are CommonJS or plain scripts: a browser's extension host refuses ES modules, and the command line starts sooner.
 * For the same reason package.json names no `type`: an extension host goes by it, and our sources are only ever bundled.
 */
const bundles = [
  {
    name: "command line",
    entry: "server/command-line/main.ts",
    file: "ferrule.js",
    options: {
      platform: "node",
      format: "cjs",
      target: "node22",
      banner: { js: commandLineBanner },
      // The packed program is a script of node:vm, which has no import().
      supported: { "dynamic-import": false },
      define: { ferruleVersion: JSON.stringify(JSON.parse(readFileSync(join(root, "package.json"), "utf8")).version) },
    },
    // Not while developing: a program in comments has no source map and cannot be stepped through.
    shippedPlugins: () => [packProgram("server/command-line/program.ts")],
  },
  {
    name: "language server for Node",
    entry: "server/node.ts",
    file: "server/node.js",
    options: { platform: "node", format: "cjs", target: "node22" },
  },
  {
    name: "language server for a browser worker",
    entry: "server/worker.ts",
    file: "server/worker.js",
    options: { platform: "browser", format: "iife", target: "es2023" },
  },
  {
    name: "extension for the desktop",
    entry: "client/desktop.ts",
    file: "client/desktop.js",
    options: { platform: "node", format: "cjs", target: "node22", external: ["vscode"] },
  },
  {
    name: "extension for a browser",
    entry: "client/browser.ts",
    file: "client/browser.js",
    options: { platform: "browser", format: "cjs", target: "es2023", external: ["vscode"] },
  },
];

function optionsOf(bundle, development) {
  return {
    absWorkingDir: root,
    entryPoints: [bundle.entry],
    outfile: join(output, bundle.file),
    bundle: true,
    charset: "utf8",
    legalComments: "none",
    loader: { ".ferrule": "text" },
    minify: !development,
    sourcemap: development ? "linked" : false,
    logLevel: "warning",
    ...bundle.options,
    plugins: development ? [] : (bundle.shippedPlugins?.() ?? []),
  };
}

function filesBelow(folder) {
  return readdirSync(folder, { withFileTypes: true }).flatMap((entry) => {
    const path = join(folder, entry.name);
    return entry.isDirectory() ? filesBelow(path) : [path];
  });
}

/** A digest of everything a build reads: our sources, the lock file (for the packages) and this script. */
function digestOfInputs(development) {
  const hash = createHash("sha256").update(development ? "development" : "production");
  const sources = ["grammar", "server", "client"]
    .map((folder) => join(root, folder))
    .filter((folder) => existsSync(folder));
  const files = [...sources.flatMap(filesBelow), join(root, "package-lock.json"), import.meta.filename];
  for (const file of files.sort()) hash.update(`\0${file}\0`).update(readFileSync(file));
  return hash.digest("hex");
}

/**
 * Builds every bundle whose entry point exists.
 * @param {{ development?: boolean, force?: boolean }} [settings]
 * @returns what was done: `"unchanged"` or `"built"`.
 */
export async function build({ development = false, force = false } = {}) {
  const stampFile = join(output, ".stamp");
  const stamp = digestOfInputs(development);
  const present = bundles.filter((bundle) => existsSync(join(root, bundle.entry)));
  const complete = present.every((bundle) => existsSync(join(output, bundle.file)));
  if (!force && complete && existsSync(stampFile) && readFileSync(stampFile, "utf8") === stamp) return "unchanged";

  const esbuild = await import("esbuild");
  for (const bundle of bundles.filter((candidate) => !present.includes(candidate))) {
    console.log(`No ${bundle.entry} yet: the ${bundle.name} is not built.`);
  }
  mkdirSync(output, { recursive: true });
  await Promise.all(present.map((bundle) => esbuild.build(optionsOf(bundle, development))));
  writeFileSync(stampFile, stamp);
  return "built";
}

async function watch() {
  const esbuild = await import("esbuild");
  await build({ development: true });
  for (const bundle of bundles.filter((candidate) => existsSync(join(root, candidate.entry)))) {
    const context = await esbuild.context({ ...optionsOf(bundle, true), logLevel: "info" });
    await context.watch();
  }
  console.log("Watching for changes.");
}

if (import.meta.url === pathToFileURL(process.argv[1] ?? "").href) {
  prepare();
  const development = process.argv.includes("--development");
  if (process.argv.includes("--watch")) {
    await watch();
  } else {
    const started = performance.now();
    const result = await build({ development, force: process.argv.includes("--force") }).catch((error) => {
      console.error(error.message);
      process.exit(1);
    });
    console.log(
      result === "built" ? `Built dist/ in ${Math.round(performance.now() - started)} ms.` : "dist/ is up to date.",
    );
  }
}
