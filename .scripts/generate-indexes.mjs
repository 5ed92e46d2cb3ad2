// Writes the two lists of what the folders hold: server/checks/index.ts and server/calculations/index.ts.
// A check or a calculation is one file; nobody has to add it to a list by hand. A test holds the lists current.
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";

const root = join(dirname(fileURLToPath(import.meta.url)), "..");
const notMembers = new Set(["define.ts", "table.ts", "show.ts", "index.ts"]);

function members(folder) {
  const found = [];
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const path = join(folder, entry.name);
    if (entry.isDirectory()) {
      if (entry.name !== "shared") found.push(...members(path));
    } else if (entry.name.endsWith(".ts") && !notMembers.has(entry.name)) found.push(path);
  }
  return found.sort();
}

const stem = (file) => file.replace(/\.ts$/, "");

/** The text an index should have. */
export function indexText(name, type) {
  const folder = join(root, "server", name);
  const files = members(folder).map((path) => relative(folder, path).replaceAll("\\", "/"));
  const variable = (file) =>
    file
      .replace(/\.ts$/, "")
      .replace(/[/-]+(.)/g, (_, letter) => letter.toUpperCase())
      .replace(/[^A-Za-z0-9]/g, "");
  return [
    "// Written by `npm run generate` from the files of this folder; edit those instead.",
    // In the order in which the formatter keeps imports, so that it has nothing to change here.
    ...[...files, "define.ts"]
      .sort((a, b) => (stem(a) < stem(b) ? -1 : 1))
      .map((file) =>
        file === "define.ts"
          ? `import type { ${type} } from "./define.ts";`
          : `import ${variable(file)} from "./${file}";`,
      ),
    "",
    `export const ${name}: readonly ${type}[] = [`,
    ...files.map((file) => `  ${variable(file)},`),
    "];",
    "",
  ].join("\n");
}

export const indexes = [
  ["checks", "Check"],
  ["calculations", "Calculation"],
];

export function writeIndexes() {
  for (const [name, type] of indexes) {
    const path = join(root, "server", name, "index.ts");
    const text = indexText(name, type);
    let before = "";
    try {
      before = readFileSync(path, "utf8");
    } catch {
      // The first time there is none.
    }
    if (before !== text) writeFileSync(path, text);
  }
}

if (process.argv[1] === fileURLToPath(import.meta.url)) writeIndexes();
