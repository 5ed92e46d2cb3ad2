// `npm run package`: builds and packs the extension into dist/ferrule-VERSION.vsix.
// The packing tool is fetched by npm when it is first needed; it is too large to install with everything else.
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { npm, prepare, root } from "./toolchain.mjs";

prepare();
const { build } = await import("./build.mjs");
await build();
const { version } = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
const file = `dist/ferrule-${version}.vsix`;
const { code, output } = npm(root, [
  "exec",
  "--yes",
  "--",
  "@vscode/vsce@4.1.0",
  "package",
  "--no-dependencies",
  "--allow-missing-repository",
  "--no-rewrite-relative-links",
  `--out=${file}`,
]);
console.log(output.trimEnd());
process.exitCode = code;
