import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
// @ts-expect-error A script without types; its two exports are used as they are.
import { indexes, indexText } from "../../.scripts/generate-indexes.mjs";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

test.each(indexes as [string, string][])("server/%s/index.ts lists every file of its folder", (name, type) => {
  expect(readFileSync(join(root, "server", name, "index.ts"), "utf8")).toBe(indexText(name, type));
});
