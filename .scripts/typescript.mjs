// Runs one of our TypeScript modules outside the bundles that ship (generators, benchmarks).
import { mkdirSync } from "node:fs";
import { basename, join } from "node:path";
import { pathToFileURL } from "node:url";
import { root } from "./toolchain.mjs";

/**
 * Bundles a module of ours, with packages left where they are and `.ferrule` files as text, and imports it.
 * @param {string} entry path from the project's root
 * @returns the module's exports
 */
export async function importTypeScript(entry) {
  const { build } = await import("esbuild");
  const folder = join(root, "dist", ".tools");
  mkdirSync(folder, { recursive: true });
  const outfile = join(folder, `${basename(entry, ".ts")}.mjs`);
  await build({
    absWorkingDir: root,
    entryPoints: [entry],
    outfile,
    bundle: true,
    format: "esm",
    platform: "node",
    target: "node22",
    packages: "external",
    loader: { ".ferrule": "text" },
    sourcemap: "inline",
    logLevel: "warning",
  });
  return import(pathToFileURL(outfile).href);
}
