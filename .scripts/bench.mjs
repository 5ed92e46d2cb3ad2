// `npm run bench`: builds, then runs the benchmarks of tests/bench and prints their figures.
// `npm run bench -- WORD ...` runs only those whose name contains a word given.
import { existsSync } from "node:fs";
import { join } from "node:path";
import { prepare, root } from "./toolchain.mjs";

/** Each is tests/bench/NAME.ts and exports `run(): Promise<void>`. */
const benchmarks = ["command-line-start", "keystroke", "suggest"];

prepare();
const { build } = await import("./build.mjs");
await build();
const { importTypeScript } = await import("./typescript.mjs");
const words = process.argv.slice(2);
for (const name of benchmarks) {
  const file = `tests/bench/${name}.ts`;
  if (!existsSync(join(root, file))) continue;
  if (words.length > 0 && !words.some((word) => name.includes(word))) continue;
  const { run } = await importTypeScript(file);
  await run();
}
