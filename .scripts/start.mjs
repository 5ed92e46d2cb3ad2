// `npm start`: from a fresh clone to findings on the screen. Installs when needed, builds, and checks the samples.
import { spawnSync } from "node:child_process";
import { existsSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { prepare, root } from "./toolchain.mjs";

prepare();
const { build } = await import("./build.mjs");
await build();

/** A build with ten faults, kept to show what is said of them. */
const draft = "samples/wrong/fellside-draft.ferrule";

/** What is found in the builds with planted faults, in a line for each file. */
function plantedFaults() {
  const { status, stdout, stderr } = spawnSync(
    process.execPath,
    [commandLine, "check", "samples/wrong", "--format", "sarif"],
    { cwd: root, encoding: "utf8", maxBuffer: 1 << 28 },
  );
  if (status !== 0 && status !== 1) {
    console.error(stderr);
    process.exit(status ?? 1);
  }
  const found = JSON.parse(stdout)
    .runs.flatMap(({ results }) => results)
    .filter(({ kind, suppressions = [] }) => kind === "fail" && suppressions.length === 0)
    .map(({ ruleId, locations }) => ({ check: ruleId, file: locations[0].physicalLocation.artifactLocation.uri }))
    .filter(({ file }) => file !== draft);
  const lines = [...new Set(found.map(({ file }) => file))].map((file) => {
    const { length } = readFileSync(join(root, file), "utf8").match(/^(?:build|record) /gm) ?? [];
    const faults = found.filter((one) => one.file === file).length;
    const held = file.includes("/records/") ? "records" : "builds";
    return `  ${file.padEnd(46)} ${String(length).padStart(3)} ${held.padEnd(7)} ${String(faults).padStart(4)} faults`;
  });
  const checks = new Set(found.map(({ check }) => check)).size;
  return [
    `The rest of samples/wrong holds faults planted in builds and records, found by ${checks} different checks:`,
    ...lines,
    `  npm exec -- node dist/ferrule.js check ${found[0]?.file}   shows those of one file`,
  ].join("\n");
}

const commandLine = join(root, "dist", "ferrule.js");
if (!existsSync(commandLine) || !existsSync(join(root, "samples"))) {
  console.error("There is no command line or no samples folder here: the checkout is incomplete.");
  process.exit(1);
}
/** Everything but the faults planted one by one, of which there are too many to read. */
const shown = ["samples/*.ferrule", "samples/builds", "samples/parts", "samples/records", draft];
console.log(`$ ferrule check ${shown.join(" ")}\n`);
// A look at the samples leaves nothing running behind.
const { status } = spawnSync(process.execPath, [commandLine, "check", ...shown], {
  cwd: root,
  stdio: "inherit",
  env: { ...process.env, FERRULE_STANDBY: "off" },
});

// 0: nothing wrong; 1: findings, which the samples hold on purpose; anything else is a failure of the program.
if (status !== 0 && status !== 1) process.exit(status ?? 1);
const outcome =
  status === 1
    ? `The findings above are meant: ${draft} is wrong on purpose, beside the builds that are right.`
    : "Everything above holds.";
console.log(`
${outcome}

${plantedFaults()}

Where to go from here:
  npm exec -- node dist/ferrule.js help           every command (npm exec brings the Node it needs)
  npm exec -- node dist/ferrule.js explain CODE   what a check means, why, and its source
  README.md                               using Ferrule in VS Code, in another editor and in CI
  DEVELOPERS.md                           how it is built, and how to add to it`);
