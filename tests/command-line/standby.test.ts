import { spawn, spawnSync } from "node:child_process";
import {
  chmodSync,
  closeSync,
  existsSync,
  lstatSync,
  mkdirSync,
  mkdtempSync,
  openSync,
  readdirSync,
  readFileSync,
  readlinkSync,
  realpathSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { createServer } from "node:net";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { afterEach, beforeAll, describe, expect, test } from "vitest";
import type { ReadWorkshop } from "../../server/command-line/read-workshops.ts";
import { packAnswer, unpackAnswer } from "../../server/command-line/standby/message.ts";
import { startStandby, wantsStandby } from "../../server/command-line/standby/start.ts";
import { watchedFolders } from "../../server/command-line/standby/watched-folders.ts";
import { buildOnce, program } from "./built.ts";
import { ferrule, folderWith, type Ran } from "./run.ts";
import { rightBuild, workshop, wrongBuild } from "./workshops.ts";

beforeAll(buildOnce, 120_000);

const caches: string[] = [];

afterEach(() => {
  for (const cache of caches.splice(0)) {
    run(cache, cache, ["standby", "--stop"]);
    rmSync(cache, { recursive: true, force: true });
  }
});

function run(cache: string, folder: string, words: readonly string[], environment: NodeJS.ProcessEnv = {}): Ran {
  return ferrule(folder, words, { environment: { FERRULE_CACHE: cache, ...environment } });
}

/** A workshop, and a cache with a short path, as that of a socket has to be. */
function standingBy(files: Readonly<Record<string, string>> = workshop) {
  const folder = folderWith(files);
  const cache = realpathSync(mkdtempSync(join(tmpdir(), "fs-")));
  caches.push(cache);
  const ask = (...words: string[]): Ran => run(cache, folder, words);
  const alone = (...words: string[]): Ran => ferrule(folder, words);
  const sockets = (): string[] => readdirSync(cache).filter((name) => name.endsWith(".socket"));
  const socket = (): string => join(cache, sockets()[0] ?? "none");
  const state = () => {
    const { out } = ask("standby");
    const match = /process (\d+), ferrule \S+, (\d+) checks? answered, (\d+) workshops? held/.exec(out);
    return match ? { process: Number(match[1]), answered: Number(match[2]), workshops: Number(match[3]) } : undefined;
  };
  return { folder, cache, ask, alone, sockets, socket, state };
}

async function until(condition: () => boolean): Promise<void> {
  while (!condition()) await new Promise((resolve) => setTimeout(resolve, 20));
}

function isRunning(process_: number): boolean {
  try {
    process.kill(process_, 0);
    return true;
  } catch {
    return false;
  }
}

// There is none on Windows, which its help says.
describe.skipIf(process.platform === "win32")("a standby", () => {
  test("answers what a check without it answers, in every format, and after every edit", () => {
    const { folder, ask, alone, state } = standingBy();
    expect(ask("standby").out).toBe("No standby is running. Checks are worked out from the start.\n");
    expect(ask("standby", "--start", "builds").out).toContain("A standby is running: process ");
    const questions = [
      ["check"],
      ["check", "builds/wrong.ferrule"],
      ["check", "builds/wrong.ferrule", "--format", "json"],
      ["check", "--format", "sarif"],
      ["check", "--format", "junit", "--fail-on", "never"],
      ["check", "--format", "github", "--fail-on", "information"],
      ["check", "--units", "inch", "--list", "fails,unknown"],
      ["check", "--today", "2031-01-01", "--list", "holds"],
      ["check", "--shard", "1/2"],
    ];
    let asked = 0;
    const compare = (...asking: readonly string[][]): void => {
      for (const words of asking) expect(ask(...words)).toEqual(alone(...words));
      asked += asking.length;
      expect(state()?.answered).toBe(asked);
    };
    compare(...questions);
    const library = workshop["parts/drivetrain.ferrule"];
    for (const [path, text] of [
      ["builds/wrong.ferrule", rightBuild.replaceAll("gillside", "fellside")],
      ["parts/drivetrain.ferrule", library.replace("largest-cog: 46 t", "largest-cog: 30 t")],
      ["parts/new.ferrule", wrongBuild.replaceAll("fellside", "scarside")],
      ["builds/wrong.ferrule", "build half {\n  frame:"],
    ] as const) {
      writeFileSync(join(folder, path), text);
      compare(["check"], ["check", "builds/wrong.ferrule", "--format", "json"]);
    }
    rmSync(join(folder, "parts/new.ferrule"));
    rmSync(join(folder, "builds/wrong.ferrule"));
    compare(["check", "--format", "json"]);
  }, 60_000);

  test("answers for standard input, and says what cannot be read", () => {
    const { folder, cache, ask, alone, state } = standingBy();
    ask("standby", "--start");
    const words = ["check", "-", "--as", "builds/wrong.ferrule"];
    const options = { input: rightBuild.replaceAll("gillside", "fellside") };
    const answer = ferrule(folder, words, { ...options, environment: { FERRULE_CACHE: cache } });
    expect(answer).toEqual(ferrule(folder, words, options));
    expect(answer.code).toBe(0);
    writeFileSync(join(folder, "parts/binary.ferrule"), new Uint8Array([0]));
    expect(ask("check")).toEqual(alone("check"));
    expect(ask("check").code).toBe(2);
    expect(state()?.answered).toBe(3);
  });

  test("remembers its answer for the asker, and is not asked for one that is remembered", async () => {
    const { cache, ask, state } = standingBy();
    ask("standby", "--start");
    const first = ask("check", "builds");
    await until(() => readdirSync(cache).some((name) => /^check-[^.]+$/.test(name)));
    expect(ask("check", "builds")).toEqual(first);
    expect(state()?.answered).toBe(1);
  });

  test("is not asked where that is not wanted", () => {
    const { cache, folder, ask, state } = standingBy();
    ask("standby", "--start");
    ask("check", "--no-cache");
    run(cache, folder, ["check"], { FERRULE_STANDBY: "off" });
    expect(state()?.answered).toBe(0);
    expect(run(cache, folder, ["standby"], { FERRULE_STANDBY: "off" }).out).toContain("FERRULE_STANDBY=off");
    for (const [named, reason] of [
      ["off", "FERRULE_CACHE=off"],
      [join(cache, "a".repeat(100)), `the path of ${cache}/aaa`],
      [join(cache, "told"), "none that is yours alone"],
    ] as const) {
      writeFileSync(join(cache, "told"), "");
      const here = { FERRULE_CACHE: named };
      expect(run(cache, folder, ["standby"], here)).toMatchObject({ code: 0, out: expect.stringContaining(reason) });
      const started = run(cache, folder, ["standby", "--start"], here);
      expect(started).toEqual({ code: 2, out: "", err: expect.stringContaining(reason) });
    }
  });

  test("holds a few workshops, each by itself", () => {
    const { cache, ask, state } = standingBy();
    ask("standby", "--start");
    for (let index = 0; index < 6; index++) {
      const folder = folderWith(index % 2 === 0 ? workshop : { ...workshop, "builds/wrong.ferrule": rightBuild });
      expect(run(cache, folder, ["check"])).toEqual(ferrule(folder, ["check"]));
    }
    expect(state()).toMatchObject({ answered: 6, workshops: 4 });
  });

  test("works out again what changed before it is asked", async () => {
    const { folder, ask, alone, state } = standingBy();
    ask("standby", "--start");
    ask("check", "builds/wrong.ferrule");
    // However long that takes, and in whatever state a file is caught: the answer is one to what the asker reads.
    for (const text of [rightBuild, wrongBuild, "", wrongBuild.replaceAll("fellside", "scarside")]) {
      writeFileSync(join(folder, "builds/wrong.ferrule"), text);
      await new Promise((resolve) => setTimeout(resolve, 100));
      expect(ask("check", "builds/wrong.ferrule")).toEqual(alone("check", "builds/wrong.ferrule"));
    }
    expect(state()?.answered).toBe(5);
  });

  test.skipIf(process.platform !== "linux")("watches where files of the workshop lie, and not all below", async () => {
    const { folder, ask, state } = standingBy();
    for (let index = 0; index < 200; index++)
      mkdirSync(join(folder, "photographs", String(index)), { recursive: true });
    ask("standby", "--start");
    ask("check");
    const { process: process_ } = state() ?? {};
    const watched = (): number => {
      const descriptors = `/proc/${process_}/fdinfo`;
      const texts = readdirSync(descriptors).map((name) => readFileSync(join(descriptors, name), "utf8"));
      return texts.join("").split("\ninotify ").length - 1;
    };
    // What it goes on to watch once it has answered is watched when it has answered again.
    await until(() => watched() > 0);
    ask("check", "builds");
    ask("check", "builds", "--list", "holds");
    expect(watched()).toBeLessThan(30);
  });

  test("listens to its user alone", () => {
    const { ask, socket, cache, folder, sockets } = standingBy();
    ask("standby", "--start");
    expect(lstatSync(socket()).mode & 0o077).toBe(0);
    ask("standby", "--stop");
    chmodSync(cache, 0o777);
    expect(ask("standby", "--start").code).toBe(2);
    expect(run(cache, folder, ["check"], { FERRULE_STANDBY: "on" }).code).toBe(1);
    expect(sockets()).toEqual([]);
    chmodSync(cache, 0o700);
  });
});

describe.skipIf(process.platform === "win32")("a standby's life", () => {
  test("begins by itself only where it is wanted", async () => {
    const { cache, folder, sockets, state } = standingBy();
    expect(run(cache, folder, ["check"]).err).toBe("");
    expect(run(cache, folder, ["check", "--no-cache"], { FERRULE_STANDBY: "on" }).err).toBe("");
    expect(sockets()).toEqual([]);
    const first = run(cache, folder, ["check", "builds/right.ferrule"], { FERRULE_STANDBY: "on" });
    expect(first.err).toContain("a standby was started");
    await until(() => state() !== undefined);
    expect(state()).toMatchObject({ answered: 0, workshops: 1 });
    expect(run(cache, folder, ["standby", "--stop"]).out).toContain("has ended");
    expect(run(cache, folder, ["check", "builds/wrong.ferrule"], { FERRULE_STANDBY: "on" }).err).toBe("");
    await until(() => state() !== undefined);
  });

  test.each([
    [{}, true, true],
    [{}, false, false],
    [{ CI: "true" }, true, false],
    [{ CI: "1" }, true, false],
    [{ CI: "false" }, true, true],
    [{ CI: "" }, true, true],
    [{ FERRULE_STANDBY: "off" }, true, false],
    [{ FERRULE_STANDBY: "on" }, false, true],
    [{ FERRULE_STANDBY: "on", CI: "true" }, false, true],
  ])("with %o in a terminal: %s, it is wanted: %s", (environment, isTerminal, isWanted) => {
    expect(wantsStandby(environment, () => isTerminal)).toBe(isWanted);
  });

  test("is not begun by what writes to a terminal and reads from none, as a hook of git does", () => {
    const { cache, folder, sockets } = standingBy();
    const here = `cd '${folder}' && FERRULE_CACHE='${cache}' '${process.execPath}' '${program}' check`;
    // Without the program that lends a terminal there is nothing to be seen.
    const inTerminal = (command: string): number | null =>
      spawnSync("script", ["-qec", command, "/dev/null"], { env: { PATH: process.env.PATH }, timeout: 30_000 }).status;
    if (inTerminal("test -t 0 && test -t 1") !== 0) return;
    expect(inTerminal(`${here} builds < /dev/null`)).toBe(1);
    expect(existsSync(join(cache, "standby-told"))).toBe(false);
    expect(inTerminal(here)).toBe(1);
    expect(existsSync(join(cache, "standby-told"))).toBe(true);
    return until(() => sockets().length === 1);
  });

  test("listens and remembers in the folder that was named from where the asker was", async () => {
    const { cache, folder, ask } = standingBy();
    const near = { FERRULE_CACHE: relative(folder, cache) };
    expect(run(cache, folder, ["standby", "--start"], near).out).toContain("A standby is running");
    expect(ask("check").code).toBe(1);
    expect(ask("standby").out).toContain("1 check answered");
    await until(() => readdirSync(cache).some((name) => /^check-[^.]+$/.test(name)));
    ask("standby", "--stop");
    await until(() => !readdirSync(cache).some((name) => name.endsWith(".socket")));
  });

  test.skipIf(process.platform !== "linux")("holds nothing open that its asker had open", async () => {
    const { cache, folder, state } = standingBy();
    const lock = join(folder, "lock");
    const descriptor = openSync(lock, "w");
    const { status } = spawnSync(process.execPath, [program, "check"], {
      cwd: folder,
      env: { PATH: process.env.PATH, FERRULE_CACHE: cache, FERRULE_STANDBY: "on" },
      stdio: [...new Array<"ignore">(200).fill("ignore"), descriptor],
    });
    closeSync(descriptor);
    expect(status).toBe(1);
    await until(() => state() !== undefined);
    const open = `/proc/${state()?.process}/fd`;
    const held = readdirSync(open).map((name) => readlinkSync(join(open, name)));
    expect(held.length).toBeGreaterThan(3);
    expect(held).not.toContain(lock);
  });

  test("is not asked of Node what was asked for the check alone, such as a debugger", async () => {
    const { cache, folder, state } = standingBy({
      ...workshop,
      "mark.cjs": 'require("node:fs").appendFileSync(__dirname + "/marks", "mark\\n");',
    });
    const told = { FERRULE_STANDBY: "on", NODE_OPTIONS: `--require ${join(folder, "mark.cjs")}` };
    expect(run(cache, folder, ["check"], told).code).toBe(1);
    await until(() => state() !== undefined);
    expect(readFileSync(join(folder, "marks"), "utf8")).toBe("mark\n");
  });

  test("is not begun where its words have no room, and the check is none the worse", async () => {
    const { cache } = standingBy();
    expect(await startStandby(join(cache, "one.socket"), ["x".repeat(4 * 1024 * 1024)], cache)).toBe(false);
  });

  test("is not begun where it cannot listen", async () => {
    const { cache, folder, ask } = standingBy();
    expect(await startStandby(join(cache, "gone", "one.socket"), [], cache)).toBe(false);
    chmodSync(cache, 0o500);
    // Who may do anything may write there too.
    if (process.getuid?.() === 0) return chmodSync(cache, 0o700);
    expect(ask("standby", "--start")).toMatchObject({ code: 2, out: "" });
    expect(ask("standby", "--start").err).toContain(`in the cache folder, ${cache}`);
    expect(run(cache, folder, ["check"], { FERRULE_STANDBY: "on" }).err).toBe("");
    chmodSync(cache, 0o700);
  });

  test("is spoken of once, however many checks leave one at a time", async () => {
    const { cache, folder } = standingBy();
    const said = await Promise.all(
      Array.from({ length: 5 }, async () => {
        const child = spawn(process.execPath, [program, "check"], {
          cwd: folder,
          env: { PATH: process.env.PATH, FERRULE_CACHE: cache, FERRULE_STANDBY: "on" },
          stdio: ["ignore", "ignore", "pipe"],
        });
        let err = "";
        child.stderr.on("data", (data) => {
          err += String(data);
        });
        await new Promise((resolve) => child.on("close", resolve));
        return err;
      }),
    );
    expect(said.filter((text) => text !== "")).toEqual([expect.stringContaining("This is said once.\n")]);
  });

  test("ends when told to, with its process and its socket", async () => {
    const { ask, state, sockets } = standingBy();
    ask("standby", "--start");
    const process_ = state()?.process ?? 0;
    expect(isRunning(process_)).toBe(true);
    expect(ask("standby", "--stop").out).toBe(`The standby, process ${process_}, has ended.\n`);
    expect(isRunning(process_)).toBe(false);
    expect(sockets()).toEqual([]);
    expect(ask("standby", "--stop").out).toBe("No standby is running.\n");
  });

  test("ends when nobody has asked for a while", async () => {
    const { cache, folder, sockets, state } = standingBy();
    const child = spawn(process.execPath, [program, "standby", "--serve", "--seconds", "1"], {
      cwd: folder,
      env: { PATH: process.env.PATH, FERRULE_CACHE: cache },
      stdio: "ignore",
    });
    const ended = new Promise((resolve) => child.on("close", resolve));
    await until(() => state() !== undefined);
    expect(await ended).toBe(0);
    expect(sockets()).toEqual([]);
  });

  test("is one at a time", () => {
    const { ask, state } = standingBy();
    ask("standby", "--start");
    const first = state()?.process;
    expect(ask("standby", "--start").out).toContain(`process ${first}`);
    const second = ask("standby", "--serve");
    expect(second.err).toContain("another standby is running");
    expect(second.code).toBe(2);
    expect(state()?.process).toBe(first);
  });

  test("that was killed is no hindrance, and another takes its place", async () => {
    const { ask, alone, state, socket } = standingBy();
    ask("standby", "--start");
    const first = state()?.process ?? 0;
    process.kill(first, "SIGKILL");
    await until(() => !isRunning(first));
    expect(existsSync(socket())).toBe(true);
    expect(ask("check")).toEqual(alone("check"));
    expect(ask("standby").out).toContain("No standby is running");
    ask("standby", "--start");
    expect(state()?.process).not.toBe(first);
    expect(ask("check", "builds")).toEqual(alone("check", "builds"));
    expect(state()?.answered).toBe(1);
  });

  test("whose place another one has taken leaves it to that one", async () => {
    const { ask, state, socket } = standingBy();
    ask("standby", "--start");
    const first = state()?.process ?? 0;
    rmSync(socket());
    ask("standby", "--start");
    const second = state()?.process ?? 0;
    expect(second).not.toBe(first);
    process.kill(first, "SIGTERM");
    await until(() => !isRunning(first));
    expect(state()?.process).toBe(second);
  });

  test("that hangs is not waited for", () => {
    const { ask, alone, state } = standingBy();
    ask("standby", "--start");
    const process_ = state()?.process ?? 0;
    process.kill(process_, "SIGSTOP");
    expect(ask("check")).toEqual(alone("check"));
    expect(ask("standby").out).toContain("has no time");
    expect(ask("standby", "--stop")).toMatchObject({ code: 2 });
    process.kill(process_, "SIGCONT");
  });

  test.each<[string, readonly Uint8Array[]]>([
    ["nothing", []],
    ["something else", [Buffer.from("HTTP/1.1 400 Bad Request\r\n\r\n")]],
    ["that it heard, and no more", [Uint8Array.of(6)]],
    ["half an answer", [Uint8Array.of(6), Buffer.from([20, 0, 0, 0, 9, 0, 0, 0, 123])]],
    ["an answer of another kind", [Uint8Array.of(6), Buffer.from([2, 0, 0, 0, 0, 0, 0, 0]), Buffer.from("{}")]],
    ["null", [Uint8Array.of(6), Buffer.from([4, 0, 0, 0, 0, 0, 0, 0]), Buffer.from("null")]],
    ["lengths beyond all bounds", [Uint8Array.of(6), Buffer.alloc(8, 255), Buffer.from("{}")]],
  ])("that says %s is no hindrance", async (_, said) => {
    const { ask, alone, socket, cache, folder } = standingBy();
    ask("standby", "--start");
    const path = socket();
    ask("standby", "--stop");
    await until(() => !existsSync(path));
    let asked = 0;
    const server = createServer((connection) => {
      asked += 1;
      for (const bytes of said) connection.write(bytes);
      connection
        .on("error", () => undefined)
        .resume()
        .end();
    });
    await new Promise<void>((resolve) => server.listen(path, resolve));
    // In a process that does not hold up this one, which has to reply.
    const child = spawn(process.execPath, [program, "check"], {
      cwd: folder,
      env: { PATH: process.env.PATH, HOME: folder, TZ: "UTC", FERRULE_CACHE: cache },
    });
    let out = "";
    child.stdout.on("data", (data) => {
      out += String(data);
    });
    const code = await new Promise((resolve) => child.on("close", resolve));
    await new Promise((resolve) => server.close(resolve));
    expect({ out, code }).toEqual({ out: alone("check").out, code: 1 });
    expect(asked).toBe(1);
  });

  test("outlasts askers that go away, and questions that are none", async () => {
    const { ask, alone, socket, state } = standingBy();
    ask("standby", "--start");
    const { connect } = await import("node:net");
    const send = (bytes: Uint8Array, isDone: boolean): Promise<void> =>
      new Promise((resolve) => {
        const connection = connect(socket(), () => {
          if (isDone) connection.end(bytes);
          else connection.write(bytes, () => connection.destroy());
        });
        connection.on("error", () => undefined);
        connection.resume().on("close", () => resolve());
      });
    const json = Buffer.from('{"wanted":"check","workshops":7}');
    const lengths = Buffer.alloc(8);
    lengths.writeUInt32LE(json.length, 0);
    await send(new Uint8Array(), true);
    await send(Buffer.alloc(8, 255), true);
    await send(Buffer.from([2, 0, 0, 0, 0, 0, 0, 0, 123, 125]), true);
    await send(Buffer.from([9, 0, 0, 0, 0, 0, 0, 0, 110, 117]), true);
    await send(Buffer.from([4, 0, 0, 0, 0, 0, 0, 0, ...Buffer.from("null")]), true);
    await send(Buffer.alloc(100_000, 1), false);
    expect(ask("check")).toEqual(alone("check"));
    expect(state()?.answered).toBe(1);
    // Only a fault of the program asks such a thing: what it holds then is not to be trusted, so it ends.
    const { process: first = 0 } = state() ?? {};
    await send(Buffer.concat([lengths, json]), true);
    await until(() => !isRunning(first));
    expect(ask("check", "builds")).toEqual(alone("check", "builds"));
  });
});

test("no more than some folders are watched, and none for what lies nowhere", () => {
  const workshopOf = (folder: string, ...paths: string[]): ReadWorkshop => ({
    folder,
    files: paths.map((path) => ({ path, bytes: 0 })),
    asked: new Set(paths),
    leftOut: [],
  });
  const paths = Array.from({ length: 65 }, (_, index) => join("/w", String(index), "a.ferrule"));
  expect(watchedFolders([])).toEqual([]);
  expect(watchedFolders([workshopOf("", "standard-input.ferrule")])).toEqual([]);
  expect(
    watchedFolders([workshopOf("/w", "/w/a.ferrule", "/w/p/b.ferrule", "/w/p/c.ferrule"), workshopOf("/v")]),
  ).toEqual(["/w", "/w/p"]);
  expect(watchedFolders([workshopOf("/w", ...paths.slice(1))])).toHaveLength(64);
  expect(watchedFolders([workshopOf("/w", ...paths)])).toEqual([]);
});

test("an answer arrives in the pieces that it was given in", () => {
  const answer = { pieces: ["one\n", "", "\u00e9 \u{1f6b2}\n"], exitCode: 1, leftOut: [] };
  expect(unpackAnswer(packAnswer(answer))).toEqual(answer);
});

describe("ferrule standby", () => {
  test.each([
    [["--start", "--stop"], "one of --start and --stop at a time"],
    [["builds"], "takes paths with --start and --serve only"],
    [["--stop", "builds"], "takes paths with --start and --serve only"],
    [["--seconds", "5"], "--seconds goes with --serve"],
    [["--serve", "--seconds", "0"], "--seconds takes a whole number from 1 to 86400; 0 was given"],
    // More milliseconds than a timer holds, which then ends at once.
    [["--serve", "--seconds", "3000000"], "--seconds takes a whole number from 1 to 86400"],
    [["--start", "none"], "none cannot be read"],
  ])("refuses %j", (words, said) => {
    if (process.platform === "win32" && words.includes("none")) return;
    const { cache, folder } = standingBy();
    const { code, err } = run(cache, folder, ["standby", ...words]);
    expect(err).toContain(said);
    expect(code).toBe(2);
  });
});
