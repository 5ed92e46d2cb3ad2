import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

const root = join(dirname(fileURLToPath(import.meta.url)), "..", "..");

/**
 * The stages, first to last. A file may import from its own stage and from earlier ones. What shares a row stands side
 * by side: neither may import from the other.
 */
const stages: readonly (readonly string[])[] = [
  ["grammar"],
  ["server/values"],
  ["server/vocabulary"],
  ["server/model"],
  ["server/calculations"],
  ["server/checks"],
  ["server/rules", "server/records"],
  ["server/standards"],
  ["server/engine"],
  ["server/suggest", "server/library", "server/interchange"],
  ["server/language-features", "server/reports", "server/reference", "server/workshop-files"],
  ["server/language-server"],
  ["server"],
  ["server/command-line"],
  ["client"],
];

function sources(folder: string): string[] {
  return readdirSync(join(root, folder), { withFileTypes: true }).flatMap((entry) => {
    const path = `${folder}/${entry.name}`;
    if (entry.isDirectory()) return sources(path);
    return /\.ts$/.test(entry.name) && !entry.name.endsWith(".d.ts") ? [path] : [];
  });
}

/** The stage of a file: its top folder in grammar and client, its second folder in the server. */
function stageOf(file: string): string {
  const parts = file.split("/");
  if (parts[0] !== "server") return parts[0] ?? "";
  return parts.length > 2 ? `server/${parts[1]}` : "server";
}

function importsOf(file: string): { specifier: string; target: string | undefined }[] {
  const text = readFileSync(join(root, file), "utf8");
  const specifiers = [...text.matchAll(/(?:\bfrom\s*|\bimport\s*\(?\s*)"([^"]+)"/g)].map((match) => match[1] ?? "");
  return specifiers.map((specifier) => ({
    specifier,
    target: specifier.startsWith(".")
      ? relative(root, join(root, dirname(file), specifier)).replaceAll("\\", "/")
      : undefined,
  }));
}

const files = ["grammar", "server", "client"].flatMap(sources);
const order = new Map(stages.flatMap((row, index) => row.map((stage) => [stage, index] as const)));

/** Imports that run against the order, as "file -> target". */
function backward(importing: readonly string[], imports = importsOf): string[] {
  return importing.flatMap((file) =>
    imports(file).flatMap(({ target }) => {
      if (target === undefined) return [];
      const from = stageOf(file);
      const to = stageOf(target);
      if (from === to) return [];
      const allowed = (order.get(to) ?? Number.POSITIVE_INFINITY) < (order.get(from) ?? -1);
      return allowed ? [] : [`${file} -> ${target}`];
    }),
  );
}

describe("stages point one way", () => {
  test("every source file belongs to a stage", () => {
    expect(files.length).toBeGreaterThan(50);
    expect(files.filter((file) => !order.has(stageOf(file)))).toEqual([]);
  });

  test("no stage imports from a later one or from its neighbour", () => {
    expect(backward(files)).toEqual([]);
  });

  test("the test itself sees a wrong import", () => {
    const wrong = () => [{ specifier: "../engine/engine.ts", target: "server/engine/engine.ts" }];
    expect(backward(["server/model/part.ts"], wrong)).toEqual(["server/model/part.ts -> server/engine/engine.ts"]);
  });

  test("the engine and everything before it knows no editor, no protocol and no files", () => {
    const pure = files.filter((file) => (order.get(stageOf(file)) ?? 99) <= (order.get("server/engine") ?? 0));
    const outside = pure.flatMap((file) =>
      importsOf(file)
        .filter(({ specifier }) => /^(node:|vscode|fs$|path$|os$|url$)/.test(specifier))
        .map(({ specifier }) => `${file} -> ${specifier}`),
    );
    expect(outside).toEqual([]);
  });
});
