// `npm start`: from a fresh clone to findings on the screen. Installs when needed, builds, and checks the samples.
import { spawnSync } from "node:child_process";
import { existsSync } from "node:fs";
import { join } from "node:path";
import { prepare, root } from "./toolchain.mjs";

prepare();
const { build } = await import("./build.mjs");
await build();

const commandLine = join(root, "dist", "ferrule.js");
if (!existsSync(commandLine) || !existsSync(join(root, "samples"))) {
  console.error("There is no command line or no samples folder here: the checkout is incomplete.");
  process.exit(1);
}
console.log("$ ferrule check samples\n");
const { status } = spawnSync(process.execPath, [commandLine, "check", "samples"], { cwd: root, stdio: "inherit" });

// 0: nothing wrong; 1: findings, which the samples hold on purpose; anything else is a failure of the program.
if (status !== 0 && status !== 1) process.exit(status ?? 1);
const outcome =
  status === 1
    ? "The findings above are meant: samples/ holds a build that is wrong on purpose, beside the ones that are right."
    : "Everything in samples/ holds.";
console.log(`
${outcome}

Where to go from here:
  npm exec -- node dist/ferrule.js help           every command (npm exec brings the Node it needs)
  npm exec -- node dist/ferrule.js explain CODE   what a check means, why, and its source
  README.md                               using Ferrule in VS Code, in another editor and in CI
  DEVELOPERS.md                           how it is built, and how to add to it`);
