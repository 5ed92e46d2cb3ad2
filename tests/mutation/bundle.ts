import { readFileSync } from "node:fs";
import { relative } from "node:path";
import { build } from "esbuild";

/**
 * Test files and all they test as one function of what they import from outside, so that they can be loaded anew in
 * the same process: a mutant may change what is worked out while a module loads. It only fills `files` with what loads
 * each test file, by its path from the root.
 * @param texts other texts for some files, by absolute path.
 */
export async function bundleTests(
  root: string,
  testFiles: readonly string[],
  texts: ReadonlyMap<string, string>,
): Promise<string> {
  const entry = testFiles
    .map((file) => `files[${JSON.stringify(relative(root, file))}] = () => require(${JSON.stringify(file)});`)
    .join("\n");
  const { outputFiles } = await build({
    absWorkingDir: root,
    stdin: { contents: entry, resolveDir: root, loader: "js" },
    bundle: true,
    write: false,
    format: "cjs",
    platform: "node",
    target: "node22",
    packages: "external",
    loader: { ".ferrule": "text" },
    define: { "import.meta.url": "metaUrl" },
    logLevel: "error",
    plugins: [
      {
        name: "mutants",
        setup({ onLoad }) {
          onLoad({ filter: /\.ts$/ }, ({ path }) => {
            const contents = texts.get(path);
            return contents === undefined ? undefined : { contents, loader: "ts" };
          });
          // A test finds files beside itself; each module keeps its own address.
          onLoad({ filter: /tests\/.*\.ts$/ }, ({ path }) => ({
            contents: readFileSync(path, "utf8").replaceAll("import.meta.url", JSON.stringify(`file://${path}`)),
            loader: "ts",
          }));
        },
      },
    ],
  });
  return outputFiles[0]?.text ?? "";
}
