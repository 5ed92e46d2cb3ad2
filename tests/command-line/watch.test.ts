import { type ChildProcess, spawn } from "node:child_process";
import { mkdirSync, renameSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterEach, beforeAll, describe, expect, test } from "vitest";
import { buildOnce, program } from "./built.ts";
import { ferrule, folderWith } from "./run.ts";
import { rightBuild, workshop, wrongBuild } from "./workshops.ts";

beforeAll(buildOnce, 120_000);

/** Checks again and again, in a process of its own. */
class Watching {
  readonly child: ChildProcess;
  readonly ended: Promise<number | null>;
  out = "";
  err = "";
  #wake: (() => void) | undefined;

  constructor(folder: string, words: readonly string[] = []) {
    this.child = spawn(process.execPath, [program, "check", "--watch", ...words], {
      cwd: folder,
      env: { PATH: process.env.PATH, HOME: folder, TZ: "UTC" },
      stdio: ["ignore", "pipe", "pipe"],
    });
    this.child.stdout?.on("data", (data) => this.#take("out", data));
    this.child.stderr?.on("data", (data) => this.#take("err", data));
    this.ended = new Promise((resolve) => this.child.on("close", resolve));
  }

  #take(stream: "out" | "err", data: unknown): void {
    this[stream] += String(data);
    this.#wake?.();
  }

  /** Waits until it has answered so many times and is waiting itself. */
  async answered(times: number): Promise<void> {
    await this.until(() => this.err.split("waiting for changes").length > times);
  }

  async until(condition: () => boolean): Promise<void> {
    while (!condition()) {
      if (this.child.exitCode !== null) throw new Error(`it ended with ${this.child.exitCode}: ${this.err}`);
      await new Promise<void>((resolve) => {
        this.#wake = resolve;
      });
    }
  }

  /** What was written since the last call. */
  take(): string {
    const { out } = this;
    this.out = "";
    return out;
  }

  async interrupt(): Promise<number | null> {
    this.child.kill("SIGINT");
    return this.ended;
  }
}

let watching: Watching | undefined;
afterEach(async () => {
  watching?.child.kill("SIGKILL");
  await watching?.ended;
  watching = undefined;
});

describe("check --watch", () => {
  test("answers as a fresh check does, after every change", async () => {
    const folder = folderWith(workshop);
    watching = new Watching(folder);
    const fresh = (): string => ferrule(folder, ["check"]).out;
    await watching.answered(1);
    expect(watching.take()).toBe(fresh());

    // A part of the library decides about a build that did not change.
    const library = workshop["parts/drivetrain.ferrule"].replace("largest-cog: 46 t", "largest-cog: 52 t");
    writeFileSync(join(folder, "parts/drivetrain.ferrule"), library);
    await watching.answered(2);
    const mended = watching.take();
    expect(mended).toContain("0 errors");
    expect(mended).toBe(`\n${fresh()}`);

    // A file more, in a folder that was not there, and one less.
    mkdirSync(join(folder, "more/deep"), { recursive: true });
    writeFileSync(join(folder, "more/deep/new.ferrule"), wrongBuild.replaceAll("fellside", "scarside"));
    await watching.until(() => watching?.out.includes("scarside") === true);
    rmSync(join(folder, "builds/right.ferrule"));
    await watching.until(() => watching?.out.endsWith(`\n${fresh()}`) === true);
    expect(fresh()).not.toContain("gillside");
  });

  test("sees a file that an editor puts in place of the old one, and ends with the code of the last answer", async () => {
    const folder = folderWith(workshop);
    watching = new Watching(folder, ["builds/wrong.ferrule"]);
    await watching.answered(1);
    expect(watching.take()).toContain("drivetrain/largest-cog");
    writeFileSync(join(folder, "builds/wrong.ferrule~"), rightBuild.replaceAll("gillside", "fellside"));
    renameSync(join(folder, "builds/wrong.ferrule~"), join(folder, "builds/wrong.ferrule"));
    await watching.answered(2);
    expect(watching.take()).not.toContain("drivetrain/largest-cog");
    expect(await watching.interrupt()).toBe(0);
    expect(watching.err).not.toContain("ferrule:");
  });

  test("goes on when what it watches goes away and comes back", async () => {
    const folder = folderWith(workshop);
    watching = new Watching(folder, ["builds/wrong.ferrule"]);
    await watching.answered(1);
    const first = watching.take();
    rmSync(join(folder, "builds/wrong.ferrule"));
    await watching.until(() => watching?.err.includes("builds/wrong.ferrule cannot be read") === true);
    writeFileSync(join(folder, "builds/wrong.ferrule"), wrongBuild);
    await watching.answered(2);
    expect(watching.take()).toBe(`\n${first}`);
    expect(await watching.interrupt()).toBe(1);
  });

  test("does not answer again when nothing changed, nor look into folders that are not read", async () => {
    const folder = folderWith({ ...workshop, "node_modules/a/b.ferrule": wrongBuild, "notes.txt": "" });
    watching = new Watching(folder);
    await watching.answered(1);
    writeFileSync(join(folder, "node_modules/a/b.ferrule"), rightBuild);
    writeFileSync(join(folder, "notes.txt"), "something");
    writeFileSync(join(folder, "builds/wrong.ferrule"), wrongBuild);
    writeFileSync(join(folder, "builds/last.ferrule"), rightBuild.replaceAll("gillside", "lastside"));
    await watching.until(() => watching?.out.includes("lastside") === true);
    await watching.answered(2);
    expect(watching.err.split("waiting for changes")).toHaveLength(3);
  });

  test.each([
    ["standard input", ["-"], "--watch follows files; standard input cannot be watched."],
    ["another format than text", ["--format", "json"], "--watch writes for a person, as text"],
    ["words that name nothing", ["builds/none.ferrule"], "builds/none.ferrule cannot be read: it does not exist."],
  ])("refuses %s", (_, words, said) => {
    const { code, err, out } = ferrule(folderWith(workshop), ["check", "--watch", ...words]);
    expect(err).toContain(said);
    expect(out).toBe("");
    expect(code).toBe(2);
  });
});

describe("check --shard", () => {
  const five = Object.fromEntries(
    ["a", "b", "c", "d", "e"].map((name) => [`builds/${name}.ferrule`, rightBuild.replaceAll("gillside", name)]),
  );
  const paths = (folder: string, shard: string): string[] => {
    const { out, code } = ferrule(folder, ["check", "builds", "--format", "json", "--shard", shard]);
    expect(code).toBe(0);
    return (JSON.parse(out) as { files: { path: string }[] }).files.map(({ path }) => path);
  };

  test("gives every file to one share, and all that it needs", () => {
    const folder = folderWith({ ...workshop, ...five });
    rmSync(join(folder, "builds/wrong.ferrule"));
    expect(paths(folder, "1/3")).toEqual(["builds/a.ferrule", "builds/d.ferrule"]);
    expect(paths(folder, "2/3")).toEqual(["builds/b.ferrule", "builds/e.ferrule"]);
    expect(paths(folder, "3/3")).toEqual(["builds/c.ferrule", "builds/right.ferrule"]);
    expect(paths(folder, "1/1")).toHaveLength(6);
    expect(paths(folder, "6/7")).toEqual(["builds/right.ferrule"]);
    expect(paths(folder, "7/7")).toEqual([]);
  });

  test("counts across workshops, and its exit code speaks of its share", () => {
    const folder = folderWith({
      "one/workshop.ferrule": "",
      "one/parts.ferrule": workshop["parts/drivetrain.ferrule"],
      "one/wrong.ferrule": wrongBuild,
      "two/workshop.ferrule": "",
      "two/a.ferrule": "",
    });
    const shard = (word: string) => ferrule(folder, ["check", "one", "two", "--shard", word]);
    // In the order of paths: parts, workshop and the wrong build of the one, then the files of the other.
    expect([1, 2, 3, 4, 5].map((number) => shard(`${number}/5`).code)).toEqual([0, 0, 1, 0, 0]);
    expect(shard("4/5").out).toContain("1 file");
  });

  test.each(["0/3", "4/3", "1", "a/b", "1/0", "-1/2", "1/20000", "1.5/2"])("refuses %s", (word) => {
    const { code, err } = ferrule(folderWith(workshop), ["check", "--shard", word]);
    expect(err).toContain(`--shard takes which share of how many, such as 2/5, of at most 10000; ${word} was given.`);
    expect(code).toBe(2);
  });
});
