import { readFileSync } from "node:fs";
import { Script } from "node:vm";
import { cachedProgram, keepProgram } from "./code-cache.ts";
import type { Program } from "./command.ts";

/** True in the one file that ships, which carries the program behind it; put in by the bundler. */
declare const ferruleIsPacked: boolean;

let program: Promise<Program> | undefined;

/**
 * Loads everything that is not needed to find and read files, once.
 * @param command what it is loaded for.
 */
export function loadProgram(command: string): Promise<Program> {
  program ??= typeof ferruleIsPacked === "boolean" && ferruleIsPacked ? unpack(command) : import("./program.ts");
  return program;
}

/** Stands alone on the line above the packed program; put together here so that it stands nowhere else in the file. */
const packedBelow = ["", "//! program", ""].join("\n");

/**
 * Runs the program that stands in this very file, deflated, as a comment: there it costs little until it is wanted, and
 * V8 can take it from compiled code kept from an earlier run, which it never does for a file that node was started with.
 */
async function unpack(command: string): Promise<Program> {
  const kept = cachedProgram(command);
  const source = kept?.source ?? (await inflated());
  const script = new Script(`(function (exports, require, module, __filename, __dirname) {${source}\n})`, {
    filename: __filename,
    ...(kept === undefined ? {} : { cachedData: kept.code }),
  });
  if (kept === undefined || script.cachedDataRejected) {
    // At the end, when V8 has compiled what was used: that is what the next run begins with.
    process.once("exit", () => keepProgram(command, { source, code: script.createCachedData() }));
  }
  const module = { exports: {} as Program };
  script.runInThisContext()(module.exports, require, module, __filename, __dirname);
  return module.exports;
}

async function inflated(): Promise<string> {
  const { inflateRawSync } = await import("node:zlib");
  const file = readFileSync(__filename, "latin1");
  const packed = file.slice(file.indexOf(packedBelow) + packedBelow.length + "//".length);
  return inflateRawSync(Buffer.from(packed, "base64")).toString("latin1");
}
