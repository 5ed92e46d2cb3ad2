// What every script needs before it can start: the packages of package-lock.json installed, and the toolchain's own Node.
// This file runs under whatever Node and npm a machine has (Node 18 or later), so it uses nothing newer.
import { spawnSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";

/** The project's root folder. */
export const root = dirname(dirname(fileURLToPath(import.meta.url)));

function readJson(path) {
  try {
    return JSON.parse(readFileSync(path, "utf8"));
  } catch {
    return undefined;
  }
}

/**
 * Whether `folder/node_modules` holds exactly what `folder/package-lock.json` asks for.
 * npm writes what it installed to a lock file of its own; the two are compared package by package, so that a checkout
 * moved to another commit is noticed and one installed by hand is not installed again.
 */
function isInstalled(folder) {
  const wanted = readJson(join(folder, "package-lock.json"))?.packages;
  const present = readJson(join(folder, "node_modules", ".package-lock.json"))?.packages;
  if (!wanted || !present) return false;
  for (const [path, entry] of Object.entries(wanted)) {
    if (path === "") continue;
    const found = present[path];
    // A package for another operating system is optional and rightly absent.
    if (found === undefined ? !entry.optional : found.version !== entry.version) return false;
  }
  return Object.keys(present).every((path) => wanted[path] !== undefined);
}

const digestOfLock = (folder) =>
  createHash("sha256")
    .update(readFileSync(join(folder, "package-lock.json")))
    .digest("hex");

const stampOf = (folder) => join(folder, "node_modules", ".installed-from-lock");

/** Whether we installed from this very lock file: then nothing more can be had from it by installing again. */
function hasStamp(folder) {
  return existsSync(stampOf(folder)) && readFileSync(stampOf(folder), "utf8") === digestOfLock(folder);
}

/**
 * Runs npm in a folder, with its output shown only when it fails.
 * @returns the exit code and everything npm said.
 */
export function npm(folder, commandArguments) {
  const script = process.env.npm_execpath;
  const options = { cwd: folder, encoding: "utf8", env: { ...process.env, npm_config_loglevel: "error" } };
  const result =
    script?.endsWith("js") === true
      ? spawnSync(process.execPath, [script, ...commandArguments], options)
      : spawnSync("npm", commandArguments, { ...options, shell: process.platform === "win32" });
  const output = `${result.stdout ?? ""}${result.stderr ?? ""}${result.error ? `${result.error.message}\n` : ""}`;
  return { code: result.status ?? 1, output };
}

/**
 * Installs a folder's packages when they are missing or differ from its lock file.
 * @returns nothing when the packages are there, otherwise what npm said.
 */
export function install(folder, label) {
  if (hasStamp(folder) || isInstalled(folder)) return undefined;
  const started = Date.now();
  console.log(`Installing ${label} (first run, or package-lock.json has changed) ...`);
  const { code, output } = npm(folder, ["ci", "--no-audit", "--no-fund"]);
  if (code !== 0) return output;
  writeFileSync(stampOf(folder), digestOfLock(folder));
  console.log(`Installed ${label} in ${((Date.now() - started) / 1000).toFixed(0)} s.`);
  return undefined;
}

/** The Node that package-lock.json pins: its version, and where npm put it. */
function pinnedNode() {
  const version = readJson(join(root, "package-lock.json"))?.packages?.["node_modules/node"]?.version;
  const folder = join(root, "node_modules", "node", "bin");
  return { version, path: [join(folder, "node"), join(folder, "node.exe")].find((path) => existsSync(path)) };
}

/**
 * Makes sure that the packages are installed and that the calling script runs under the pinned Node.
 * Under another Node, the script is run again by the right one and this process ends with its exit code.
 */
export function prepare() {
  const failure = install(root, "the toolchain's packages");
  if (failure !== undefined) {
    console.error(failure);
    console.error("npm could not install the packages: see its message above, then run this again.");
    process.exit(1);
  }
  const { version, path } = pinnedNode();
  if (process.version === `v${version}`) return;
  if (path === undefined) {
    if (Number.parseInt(process.versions.node, 10) >= 22) return;
    console.error(
      `The toolchain needs Node 22 or later and this is ${process.version}. npm normally brings Node ${version} with it; ` +
        "its install script did not run. Allow install scripts (npm config set ignore-scripts false), delete node_modules and run this again.",
    );
    process.exit(1);
  }
  const again = spawnSync(path, process.argv.slice(1), {
    stdio: "inherit",
    env: {
      ...process.env,
      PATH: `${dirname(path)}${process.platform === "win32" ? ";" : ":"}${process.env.PATH ?? ""}`,
    },
  });
  process.exit(again.status ?? 1);
}
