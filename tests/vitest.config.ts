import { readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { defineConfig } from "vitest/config";

export default defineConfig({
  root: fileURLToPath(new URL("..", import.meta.url)),
  plugins: [
    {
      name: "ferrule-text",
      enforce: "pre",
      /** A `.ferrule` file imported by code is its text, as in the bundles. */
      load(id) {
        const path = id.split("?", 1)[0] ?? id;
        if (!path.endsWith(".ferrule")) return undefined;
        return `export default ${JSON.stringify(readFileSync(path, "utf8"))};`;
      },
    },
  ],
  test: {
    include: ["tests/**/*.test.ts"],
    exclude: ["**/node_modules/**", "tests/workbench/**"],
    testTimeout: 20_000,
  },
});
