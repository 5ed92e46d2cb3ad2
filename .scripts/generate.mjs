// `npm run generate`: writes every file that is derived from the tables (TextMate grammar, reference pages, schemas).
// `npm run generate -- picture` takes the README's picture in a real workbench instead.
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { writeIndexes } from "./generate-indexes.mjs";
import { prepare, root } from "./toolchain.mjs";

prepare();

/** `server/generated-files.ts` exports `generatedFiles(): ReadonlyMap<string, string>`, from a path below the root to its text. */
async function writeGeneratedFiles() {
  writeIndexes();
  const { importTypeScript } = await import("./typescript.mjs");
  const { generatedFiles } = await importTypeScript("server/generated-files.ts");
  for (const [path, text] of generatedFiles()) {
    const file = join(root, path);
    const unchanged = existsSync(file) && readFileSync(file, "utf8") === text;
    console.log(`${unchanged ? "unchanged" : "written  "} ${path}`);
    if (unchanged) continue;
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
}

if (process.argv[2] === "picture") await import("./picture.mjs");
else await writeGeneratedFiles();
