/** What package.json promises the editor: every file is there, and each command and walkthrough step leads somewhere. */
import { existsSync, readFileSync } from "node:fs";
import { join, matchesGlob } from "node:path";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";

const root = fileURLToPath(new URL("../..", import.meta.url));
const manifest = JSON.parse(readFileSync(join(root, "package.json"), "utf8"));
const { contributes } = manifest;
const clientSources = ["commands.ts", "status.ts", "extension.ts"].map((name) =>
  readFileSync(join(root, "client", name), "utf8"),
);

/** Every string of a JSON value. */
function strings(value: unknown): string[] {
  if (typeof value === "string") return [value];
  return typeof value === "object" && value !== null ? Object.values(value).flatMap(strings) : [];
}

/** What .vscodeignore lets into the package: each of its `!` lines, as a test of a path. */
const packed = readFileSync(join(root, ".vscodeignore"), "utf8")
  .split("\n")
  .filter((line) => line.startsWith("!"))
  .map((line) => line.slice(1));
const isPacked = (path: string): boolean => packed.some((pattern) => matchesGlob(path, pattern));

describe("contributions", () => {
  const files = strings([contributes, manifest.icon])
    .filter((text) => /^(\.\/)?client\/|^(\.\/)?grammar\//.test(text))
    .map((text) => text.replace(/^\.\//, ""));

  test("every file they name exists and is packed into the extension", () => {
    expect(files.length).toBeGreaterThan(5);
    expect(files.filter((file) => !existsSync(join(root, file)))).toEqual([]);
    expect(files.filter((file) => !isPacked(file))).toEqual([]);
  });

  test("the entry points are packed", () => {
    expect([manifest.main, manifest.browser].map((path: string) => isPacked(path.replace(/^\.\//, "")))).toEqual([
      true,
      true,
    ]);
  });

  test("neither source maps nor the command line are packed: they would make the extension several times as large", () => {
    // A line that lets something in beats every line that keeps something out.
    const large = ["dist/client/browser.js.map", "dist/server/worker.js.map", "dist/ferrule.js"];
    expect(large.filter(isPacked)).toEqual([]);
  });

  test("every command is registered by the extension, and every registered one is listed", () => {
    const listed = contributes.commands.map(({ command }: { command: string }) => command).sort();
    const registered = clientSources
      .flatMap((source) => [...source.matchAll(/registerCommand\("([^"]+)"/g)].map((match) => match[1] as string))
      .sort();
    expect(registered).toEqual(listed);
  });

  test("menus and walkthrough steps use listed commands", () => {
    const listed = new Set(contributes.commands.map(({ command }: { command: string }) => command));
    const used = [
      ...Object.values<{ command: string }[]>(contributes.menus).flatMap((items) => items.map((item) => item.command)),
      ...strings(contributes.walkthroughs).flatMap((text) =>
        [...text.matchAll(/command:(ferrule\.\w+)/g)].map((match) => match[1] as string),
      ),
    ];
    expect(used.length).toBeGreaterThan(0);
    expect(used.filter((command) => !listed.has(command))).toEqual([]);
  });

  test("nothing but the language starts the extension", () => {
    // An editor adds the language and the commands by itself; `*` or a start-up event would slow down every window.
    expect(manifest.activationEvents).toEqual([]);
  });
});
