import { mkdirSync, readdirSync, readFileSync, renameSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, expect, test, vi } from "vitest";
import { cachedProgram, keepProgram } from "../../server/command-line/code-cache.ts";
import { folderWith } from "./run.ts";

afterEach(() => vi.unstubAllEnvs());

const program = {
  source: "exports.run = () => 'a program of some length';",
  code: Buffer.from([1, 2, 3, 250, 0, 7, 9]),
};

/** A cache with a program kept in it for a command, and the file that it is kept in. */
function keeping(files: Readonly<Record<string, string>> = {}) {
  const cache = join(folderWith({ "cache/note": "", ...files }), "cache");
  vi.stubEnv("FERRULE_CACHE", cache);
  keepProgram("check", program);
  const names = (): string[] => readdirSync(cache).filter((name) => name.startsWith("code-"));
  return { cache, names, file: join(cache, names().find((name) => name.endsWith("-check")) ?? "none") };
}

test("a program is kept for its command alone", () => {
  keeping();
  expect(cachedProgram("check")).toEqual(program);
  expect(cachedProgram("format")).toBeUndefined();
});

test("a kept program of which a single bit differs, or that has another length, is none", () => {
  const { file } = keeping();
  const whole = readFileSync(file);
  for (let bit = 0; bit < whole.length * 8; bit++) {
    const damaged = Buffer.from(whole);
    damaged[bit >> 3] = (whole[bit >> 3] as number) ^ (1 << (bit & 7));
    writeFileSync(file, damaged);
    expect(cachedProgram("check"), `bit ${bit}`).toBeUndefined();
  }
  for (let length = 0; length < whole.length; length++) {
    writeFileSync(file, whole.subarray(0, length));
    expect(cachedProgram("check"), `${length} bytes`).toBeUndefined();
    // What is not on the disk yet when a machine loses its power reads as noughts.
    writeFileSync(file, Buffer.concat([whole.subarray(0, length), Buffer.alloc(whole.length - length)]));
    if (whole.subarray(length).some((byte) => byte !== 0)) {
      expect(cachedProgram("check"), `noughts from ${length}`).toBeUndefined();
    }
  }
  writeFileSync(file, whole);
  expect(cachedProgram("check")).toEqual(program);
});

test("what others left is cleared away as far as it can be, and nothing of one's own is left half-done", () => {
  const { cache, names, file } = keeping({
    "cache/code-0123456789abcdef-13.6.233.17-node.53-x64-check": "",
    "cache/code-0123456789abcdef-13.6.233.17-node.53-x64-check.4711": "",
    "cache/code-fedcba9876543210-immovable/inside": "",
    "cache/check-answer": "",
  });
  expect(names().sort()).toEqual(["code-fedcba9876543210-immovable", file.slice(cache.length + 1)].sort());
  expect(cachedProgram("check")).toEqual(program);

  writeFileSync(`${file}.12345`, "half");
  keepProgram("check", program);
  expect(names()).toHaveLength(2);

  // Where it cannot be put in its place.
  renameSync(file, `${file}-before`);
  mkdirSync(file);
  keepProgram("check", program);
  expect(names().filter((name) => name.includes(`-check.`))).toEqual([]);
  expect(readdirSync(cache)).toContain("check-answer");
});

test("what somebody else wrote is left alone, whatever it is called", () => {
  const { cache } = keeping({ "cache/code-of-conduct.md": "ours", "cache/code-0123456789abcdef.md": "ours" });
  expect(readFileSync(join(cache, "code-of-conduct.md"), "utf8")).toBe("ours");
  expect(readFileSync(join(cache, "code-0123456789abcdef.md"), "utf8")).toBe("ours");
});
