// Takes a picture of the extension in a real workbench, for README.md and for judging a view by eye.
// Usage: npm run generate -- picture            the picture of README.md
//        npm run generate -- picture [--file PATH] [--hover WORDS] [--problems] [--command TITLE ...] [--width N] [--height N]
//        [--scale N] [--setting NAME=JSON ...] [--theme light|dark|high-contrast|high-contrast-light] [--folder PATH] [--output PATH]
import { join, resolve } from "node:path";
import { parseArgs } from "node:util";
import { install, root } from "./toolchain.mjs";

const { build } = await import("./build.mjs");
/** The picture of README.md: the build that is wrong on purpose, the working behind one finding, and the list of all. */
const readme = [
  "--file=wrong/fellside-draft.ferrule",
  "--hover=rear-derailleur:",
  "--problems",
  "--command=View: Toggle Primary Side Bar Visibility",
  "--command=View: Toggle Status Bar Visibility",
  "--setting=editor.hover.above=false",
  "--setting=breadcrumbs.enabled=false",
  '--setting=workbench.activityBar.location="hidden"',
  '--setting=problems.defaultViewMode="table"',
  "--theme=dark",
  "--width=1120",
  "--height=880",
  "--scale=1.5",
];
const given = process.argv.slice(3);
const { values } = parseArgs({
  args: given.length > 0 ? given : readme,
  options: {
    /** Opened in an editor, from the folder. */
    file: { type: "string" },
    /** Words of the file to rest the mouse on. */
    hover: { type: "string" },
    /** Whether to show the Problems view. */
    problems: { type: "boolean", default: false },
    /** Commands of the palette to run once the file is open. */
    command: { type: "string", multiple: true, default: [] },
    /** Settings of the workbench, each as its full name and a JSON value. */
    setting: { type: "string", multiple: true, default: [] },
    width: { type: "string", default: "1200" },
    height: { type: "string", default: "760" },
    scale: { type: "string", default: "2" },
    theme: { type: "string", default: "light" },
    /** The workshop to open; left out, the samples as the tests of the workbench have them. */
    folder: { type: "string" },
    output: { type: "string", default: join(root, "client", "assets", "workbench.png") },
  },
});

const workbenchFolder = join(root, "tests", "workbench");
const failure = install(workbenchFolder, "the workbench and its browser");
if (failure !== undefined) {
  console.error(failure);
  process.exit(1);
}
await build();

const { Workbench } = await import("../tests/workbench/workbench.ts");
const { copyOfSamples } = await import("../tests/workbench/report.ts");
const workbench = await Workbench.start({
  folder: values.folder === undefined ? copyOfSamples() : resolve(values.folder),
  theme: values.theme,
  width: Number(values.width),
  height: Number(values.height),
  scale: Number(values.scale),
  settings: Object.fromEntries(
    values.setting.map((setting) => {
      const [name, ...value] = setting.split("=");
      return [name, JSON.parse(value.join("="))];
    }),
  ),
});
try {
  if (values.file !== undefined) await workbench.openFile(values.file);
  if (values.problems) {
    await workbench.waitForFindings();
    await workbench.problems();
  }
  for (const title of values.command) await workbench.command(title);
  if (values.hover !== undefined) await workbench.hover(values.hover);
  await workbench.page.waitForTimeout(1_000);
  const output = resolve(values.output);
  await workbench.screenshot(output);
  console.log(`Wrote ${output}`);
} finally {
  await workbench.stop();
}
