import {
  chmodSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { buildOnce } from "./built.ts";
import { ferrule, folderWith, type Ran } from "./run.ts";
import { workshop, wrongBuild } from "./workshops.ts";

beforeAll(buildOnce, 120_000);

/** A workshop and a cache, with a way to check one in the other. */
function remembering() {
  const folder = folderWith(workshop);
  const cache = join(folder, "cache");
  const check = (...words: string[]): Ran =>
    ferrule(folder, ["check", ...words], { environment: { FERRULE_CACHE: cache } });
  const kept = (prefix: string): string[] => readdirSync(cache).filter((name) => name.startsWith(prefix));
  /** Puts another answer into the cache, to see whether it is given. */
  const falsify = (): void => {
    for (const name of kept("check-")) {
      const file = join(cache, name);
      writeFileSync(
        file,
        readFileSync(file, "latin1").replaceAll("drivetrain/largest-cog", "drivetrain/tsegral-goc"),
        "latin1",
      );
    }
  };
  return { folder, cache, check, kept, falsify };
}

describe("a remembered answer", () => {
  test("is given again, the same in every byte, and says the same exit code", () => {
    const { check, kept, falsify } = remembering();
    const first = check("builds");
    expect(first.code).toBe(1);
    expect(kept("check-")).toHaveLength(1);
    expect(check("builds")).toEqual(first);
    falsify();
    expect(check("builds").out).toBe(first.out.replaceAll("drivetrain/largest-cog", "drivetrain/tsegral-goc"));
  });

  test.each<[string, (folder: string) => void]>([
    ["a changed build", (folder) => writeFileSync(join(folder, "builds/wrong.ferrule"), `${wrongBuild} `)],
    ["a changed library", (folder) => writeFileSync(join(folder, "parts/drivetrain.ferrule"), "")],
    ["a new file", (folder) => writeFileSync(join(folder, "parts/new.ferrule"), "")],
    [
      "a change of the same length at the same time",
      (folder) => {
        const file = join(folder, "builds/wrong.ferrule");
        writeFileSync(file, wrongBuild.replace("mountain", "downhill"));
        utimesSync(file, new Date(0), new Date(0));
      },
    ],
  ])("is not given after %s", (_, change) => {
    const { folder, check, falsify } = remembering();
    check("builds/wrong.ferrule");
    falsify();
    expect(check("builds/wrong.ferrule").out).toContain("tsegral-goc");
    change(folder);
    expect(check("builds/wrong.ferrule").out).not.toContain("tsegral-goc");
  });

  test("is not given to another question", () => {
    const { check, falsify } = remembering();
    check("builds/wrong.ferrule");
    falsify();
    expect(check("builds/wrong.ferrule", "--today", "2031-01-01").out).toContain("drivetrain/largest-cog");
    expect(check("builds/wrong.ferrule", "--list", "fails").out).toContain("drivetrain/largest-cog");
    expect(check("builds/wrong.ferrule", "--format", "json").out).toContain("drivetrain/largest-cog");
    expect(check("builds").out).toContain("drivetrain/largest-cog");
    expect(check("builds/wrong.ferrule", "--no-cache").out).toContain("drivetrain/largest-cog");
    expect(check("builds/wrong.ferrule", "--fail-on", "never").code).toBe(0);
  });

  test("is not kept when something could not be read", () => {
    const { folder, check, kept } = remembering();
    writeFileSync(join(folder, "parts/binary.ferrule"), new Uint8Array([0]));
    expect(check().code).toBe(2);
    expect(kept("check-")).toEqual([]);
  });

  test("that was damaged is worked out anew", () => {
    const { cache, check, kept } = remembering();
    const first = check("builds");
    for (const name of [...kept("check-"), ...kept("code-")]) writeFileSync(join(cache, name), "damaged");
    expect(check("builds")).toEqual(first);
    expect(check("builds")).toEqual(first);
  });

  test("that cannot be kept leaves nothing half-written", () => {
    const { cache, check, kept } = remembering();
    const first = check("builds");
    const [name = ""] = kept("check-");
    rmSync(join(cache, name));
    mkdirSync(join(cache, name));
    expect(check("builds")).toEqual(first);
    expect(kept("check-")).toEqual([name]);
  });

  test("makes way after some time", () => {
    const { cache, check, kept } = remembering();
    mkdirSync(cache, { mode: 0o700 });
    const nameOf = (index: number): string => `check-${String(index).padStart(16, "0")}`;
    // The last is what somebody else wrote, who named this folder.
    const names = [...Array.from({ length: 40 }, (_, index) => nameOf(index)), "check-list.md"];
    for (const [index, name] of names.entries()) {
      const day = name === "check-list.md" ? 0 : index;
      writeFileSync(join(cache, name), "");
      utimesSync(join(cache, name), new Date(day * 1000), new Date(day * 1000));
    }
    check("builds/right.ferrule");
    expect(kept("check-")).toHaveLength(33);
    expect(kept("check-")).toContain(nameOf(39));
    expect(kept("check-")).not.toContain(nameOf(8));
    expect(kept("check-")).toContain("check-list.md");
  });
});

describe("the cache folder", () => {
  test("belongs to its user alone, or is not used", () => {
    if (process.platform === "win32") return;
    const { cache, check, kept } = remembering();
    mkdirSync(cache);
    chmodSync(cache, 0o777);
    expect(check("builds").code).toBe(1);
    expect(kept("")).toEqual([]);
    chmodSync(cache, 0o700);
    expect(check("builds").code).toBe(1);
    expect(kept("").length).toBeGreaterThan(0);
  });

  test("is no link", () => {
    if (process.platform === "win32") return;
    const { cache, check } = remembering();
    const elsewhere = folderWith({});
    symlinkSync(elsewhere, cache);
    expect(check("builds").code).toBe(1);
    expect(readdirSync(elsewhere)).toEqual([]);
  });

  test("off, unwritable or nowhere, everything works", () => {
    const folder = folderWith({ ...workshop, file: "" });
    const without = (environment: NodeJS.ProcessEnv): number | null => ferrule(folder, ["check"], { environment }).code;
    expect(without({ FERRULE_CACHE: "off" })).toBe(1);
    expect(without({ FERRULE_CACHE: join(folder, "file", "below") })).toBe(1);
    expect(without({ FERRULE_CACHE: "", HOME: "", XDG_CACHE_HOME: "relative" })).toBe(1);
    expect(readdirSync(folder).sort()).toEqual(["builds", "file", "parts", "workshop.ferrule"]);
  });

  test("lies in the user's own", () => {
    if (process.platform !== "linux") return;
    const folder = folderWith(workshop);
    ferrule(folder, ["check"], { environment: { FERRULE_CACHE: undefined } });
    expect(readdirSync(join(folder, ".cache", "ferrule")).some((name) => name.startsWith("check-"))).toBe(true);
  });
});
