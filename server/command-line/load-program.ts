import { readFileSync } from "node:fs";
import { Script } from "node:vm";
import { cachedCode, keepCode } from "./code-cache.ts";
import type { Program } from "./program.ts";

/** True in the one file that ships, which carries the program behind it; put in by the bundler. */
declare const ferruleIsPacked: boolean;

let program: Promise<Program> | undefined;

/** Loads everything that is not needed to find and read files, once. */
export function loadProgram(): Promise<Program> {
  program ??= typeof ferruleIsPacked === "boolean" && ferruleIsPacked ? unpack() : import("./program.ts");
  return program;
}

/** Stands alone on the line above the packed program; put together here so that it stands nowhere else in the file. */
const packedBelow = ["", "//! program", ""].join("\n");

/**
 * Runs the program that stands in this very file, as comments: there it costs next to nothing until it is wanted, and
 * V8 can take it from compiled code kept from an earlier run, which it never does for a file that node was started with.
 */
async function unpack(): Promise<Program> {
  const file = readFileSync(__filename, "latin1");
  const at = file.indexOf(packedBelow) + packedBelow.length;
  const source = file.slice(at + 2).replaceAll("\n//", "\n");
  const kept = cachedCode();
  const script = new Script(`(function (exports, require, module, __filename, __dirname) {${source}\n})`, {
    filename: __filename,
    ...(kept === undefined ? {} : { cachedData: kept }),
  });
  if (kept === undefined || script.cachedDataRejected) {
    // At the end, when V8 has compiled what was used: that is what the next run begins with.
    process.once("exit", () => keepCode(script.createCachedData()));
  }
  const module = { exports: {} as Program };
  script.runInThisContext()(module.exports, require, module, __filename, __dirname);
  return module.exports;
}
