import { spawn, spawnSync } from "node:child_process";
import { chmodSync, mkdirSync, symlinkSync, truncateSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { buildOnce, program } from "./built.ts";
import { ferrule, folderWith } from "./run.ts";
import { library, rightBuild, workshop, workshopFile, wrongBuild } from "./workshops.ts";

beforeAll(buildOnce, 120_000);

/** The names of the files in a JSON report. */
function paths(out: string): string[] {
  return (JSON.parse(out) as { files: { path: string }[] }).files.map(({ path }) => path);
}

describe("exit codes", () => {
  test("1 with an error, and the finding is on the screen", () => {
    const { code, out, err } = ferrule(folderWith(workshop), ["check", "builds/wrong.ferrule"]);
    expect(err).toBe("");
    expect(out).toContain("builds/wrong.ferrule:4:15  error  drivetrain/largest-cog\n");
    expect(out).toContain("   4 |     cassette: corrie.wide-10-52\n     |               ^^^^^^^^^^^^^^^^^\n");
    expect(out).toContain("(parts/drivetrain.ferrule:13:16)");
    expect(code).toBe(1);
  });

  test("0 without one", () => {
    const { code, out } = ferrule(folderWith(workshop), ["check", "builds/right.ferrule"]);
    expect(out).toContain("build gillside  Fellside 29  builds/right.ferrule:1:7\n");
    expect(out).toContain(" 0 fail, ");
    expect(code).toBe(0);
  });

  test("--fail-on sets from which severity up", () => {
    const folder = folderWith(workshop);
    const codeOf = (path: string, severity: string): number | null =>
      ferrule(folder, ["check", path, "--fail-on", severity]).code;
    expect(codeOf("builds/wrong.ferrule", "never")).toBe(0);
    expect(codeOf("builds/wrong.ferrule", "error")).toBe(1);
    expect(codeOf("builds/wrong.ferrule", "information")).toBe(1);
    expect(codeOf("builds/right.ferrule", "error")).toBe(0);
    // Facts are missing from it, which is worth a note and nothing more.
    expect(codeOf("builds/right.ferrule", "warning")).toBe(0);
    expect(codeOf("builds/right.ferrule", "information")).toBe(1);
    expect(codeOf("workshop.ferrule", "information")).toBe(0);
  });

  test.each([
    ["an unknown command", ["chek"], "There is no command chek. Did you mean check?"],
    ["an unknown option", ["check", "--fromat", "json"], "check has no option --fromat. Did you mean --format?"],
    ["an option before the command", ["--json", "check"], "There is no option --json before the command."],
    ["an unknown short option", ["check", "-x"], "check has no option -x."],
    [
      "a word an option does not take",
      ["check", "--format", "jsom"],
      "text, json, github, junit, sarif; jsom was given. Did you mean json?",
    ],
    ["an option without its value", ["check", "--format"], "--format needs a value: one of text"],
    ["a switch with a value", ["format", "--check=yes"], "--check of format takes no value"],
    [
      "a day that is none",
      ["check", "--today", "2026-02-30"],
      "--today takes a day such as 2027-03-31; 2026-02-30 was given.",
    ],
    [
      "a file that is not there",
      ["check", "builds/wrogn.ferrule"],
      "builds/wrogn.ferrule cannot be read: it does not exist.",
    ],
    ["a pattern that matches nothing", ["check", "nothing/*.ferrule"], "No .ferrule file matches nothing/*.ferrule."],
    ["an empty path", ["check", ""], "An empty path was given."],
    ["--as without standard input", ["check", "--as", "a.ferrule"], "--as says what standard input stands for"],
  ])("2 for %s", (_, words, said) => {
    const { code, out, err } = ferrule(folderWith(workshop), words);
    expect(err).toContain(said);
    expect(err).toMatch(/^ferrule: /);
    expect(out).toBe("");
    expect(code).toBe(2);
  });
});

describe("what is read", () => {
  test("without a path, everything under the folder", () => {
    const { out } = ferrule(folderWith(workshop), ["check", "--format", "json"]);
    expect(paths(out)).toEqual([
      "builds/right.ferrule",
      "builds/wrong.ferrule",
      "parts/drivetrain.ferrule",
      "workshop.ferrule",
    ]);
  });

  test("from a folder below, the parts of the whole workshop are known and paths start here", () => {
    const folder = folderWith(workshop);
    const { code, out } = ferrule(join(folder, "builds"), ["check", "--format", "json"]);
    expect(paths(out)).toEqual(["right.ferrule", "wrong.ferrule"]);
    expect(out).not.toContain("model/unknown-part");
    expect(out).toContain('"../parts/drivetrain.ferrule"');
    expect(code).toBe(1);
  });

  test("folders, files and patterns together, each file once", () => {
    const words = ["builds", "builds/right.ferrule", "parts/*.ferrule", "**/wrong.ferrule"];
    const { out } = ferrule(folderWith(workshop), ["check", "--format", "json", ...words]);
    expect(paths(out)).toEqual(["builds/right.ferrule", "builds/wrong.ferrule", "parts/drivetrain.ferrule"]);
  });

  test("installed packages and folders with a dot are left alone, also by a pattern", () => {
    const folder = folderWith({
      ...workshop,
      "node_modules/package/x.ferrule": wrongBuild,
      ".hidden/y.ferrule": wrongBuild,
      "builds/.ferrule": "not a file of ours",
    });
    const all = paths(ferrule(folder, ["check", "--format", "json"]).out);
    expect(all.filter((path) => /node_modules|hidden|\/\.ferrule/.test(path))).toEqual([]);
    const matched = paths(ferrule(folder, ["check", "--format", "json", "**/*.ferrule"]).out);
    expect([...matched].sort()).toEqual([...all].sort());
  });

  test("a folder with a workshop.ferrule of its own is a workshop of its own", () => {
    const folder = folderWith({
      "one/workshop.ferrule": workshopFile,
      "one/parts.ferrule": library,
      "one/build.ferrule": wrongBuild,
      "two/workshop.ferrule": workshopFile,
      "two/build.ferrule": wrongBuild,
    });
    const { out } = ferrule(folder, ["check"]);
    // Neither the workshop nor the build is declared twice, and the parts of one are unknown to two.
    expect(out).not.toContain("model/duplicate-name");
    expect(out.match(/error {2}model\/unknown-part/g)).toHaveLength(2);
    expect(out).toContain("two/build.ferrule:4:15  error  model/unknown-part");
    expect(ferrule(folder, ["check", "one"]).out).not.toContain("two/");
  });

  test("without a workshop.ferrule the git repository is the root", () => {
    const folder = folderWith({ "a/parts.ferrule": library, "b/build.ferrule": wrongBuild });
    expect(ferrule(folder, ["check", "b/build.ferrule"]).out).toContain("model/unknown-part");
    mkdirSync(join(folder, ".git"));
    const { out } = ferrule(folder, ["check", "b/build.ferrule"]);
    expect(out).not.toContain("model/unknown-part");
    expect(out).toContain("drivetrain/largest-cog");
  });

  test("a folder without any file of ours", () => {
    const { code, err } = ferrule(folderWith({ "readme.txt": "" }), ["check"]);
    expect(err).toBe("ferrule: No .ferrule file is under this folder.\n");
    expect(code).toBe(2);
  });

  test.skipIf(process.platform === "win32")("a folder that is gone while somebody is in it", () => {
    const folder = folderWith({});
    const { status, stderr } = spawnSync(
      "sh",
      ["-c", 'mkdir in && cd in && rmdir ../in && "$0" "$1" check', process.execPath, program],
      {
        cwd: folder,
        env: { PATH: process.env.PATH, FERRULE_CACHE: "off" },
        encoding: "utf8",
      },
    );
    expect(stderr).toBe("ferrule: The folder that you are in is no longer there, or cannot be read.\n");
    expect(status).toBe(2);
  });

  test("names that no shell or terminal likes", () => {
    const names = [
      "a b.ferrule",
      "-x.ferrule",
      "ä#é%20.ferrule",
      "[a].ferrule",
      "new\nline.ferrule",
      "\u001b[31mred.ferrule",
    ];
    const files = Object.fromEntries(names.map((name, index) => [name, wrongBuild.replace("fellside", `b-${index}`)]));
    const folder = folderWith({ ...files, "parts.ferrule": library });
    for (const name of names) {
      const { code, out } = ferrule(folder, ["check", "--format", "json", "--", name]);
      expect(paths(out)).toEqual([name]);
      expect(code).toBe(1);
    }
    const { out } = ferrule(folder, ["check"]);
    expect(out).toContain("␛[31mred.ferrule:4:15  error");
    expect(out).toContain("new␊line.ferrule:4:15  error");
    expect(out).not.toContain("\u001b");
  });
});

describe("what cannot be read", () => {
  test("a named file that is no Ferrule file", () => {
    const { code, err } = ferrule(folderWith({ "notes.txt": "" }), ["check", "notes.txt"]);
    expect(err).toContain("notes.txt is not a .ferrule file.");
    expect(code).toBe(2);
  });

  test("a folder with the name of a file is a folder", () => {
    const folder = folderWith({ "odd.ferrule/build.ferrule": rightBuild, "odd.ferrule/parts.ferrule": library });
    expect(paths(ferrule(folder, ["check", "--format", "json", "odd.ferrule"]).out)).toEqual([
      "odd.ferrule/build.ferrule",
      "odd.ferrule/parts.ferrule",
    ]);
  });

  test.each([
    ["bytes that are not UTF-8", new Uint8Array([0x62, 0xff, 0xfe, 0x0a]), "it is not UTF-8 text; save it as UTF-8"],
    ["a binary file", new Uint8Array([0, 1, 2, 3]), "it is not a text file"],
  ])("%s: said, and the rest is checked", (_, bytes, reason) => {
    const folder = folderWith({ ...workshop, "parts/broken.ferrule": bytes });
    const { code, out, err } = ferrule(folder, ["check", "builds/wrong.ferrule"]);
    expect(err).toBe(`ferrule: parts/broken.ferrule was not read: ${reason}.\n`);
    expect(out).toContain("drivetrain/largest-cog");
    expect(code).toBe(2);
  });

  test("a file without permission", (context) => {
    if (process.platform === "win32") context.skip("files have no such permissions on Windows");
    if (process.getuid?.() === 0) context.skip("run as root, who may read every file");
    const folder = folderWith(workshop);
    chmodSync(join(folder, "parts/drivetrain.ferrule"), 0o000);
    const { code, err } = ferrule(folder, ["check", "builds/wrong.ferrule"]);
    expect(err).toBe("ferrule: parts/drivetrain.ferrule was not read: permission is denied.\n");
    expect(code).toBe(2);
  });

  test("a file of 50 MB is a finding of its own, at once", () => {
    const folder = folderWith(workshop);
    const file = join(folder, "parts/huge.ferrule");
    writeFileSync(file, library);
    truncateSync(file, 50 * 1024 * 1024);
    const started = performance.now();
    const { code, out, err } = ferrule(folder, ["check", "parts/huge.ferrule"]);
    expect(out).toContain("parts/huge.ferrule:1:1  error  language/file-too-large");
    expect(err).toBe("");
    expect(code).toBe(1);
    expect(performance.now() - started).toBeLessThan(5000);
  });

  test("a text just over the limit is a finding too, not a crash", () => {
    const long = `// ${"x".repeat(9 * 1024 * 1024)}\n`;
    const { code, out } = ferrule(folderWith({ "long.ferrule": long }), ["check"]);
    expect(out).toContain("long.ferrule:1:1  error  language/file-too-large");
    expect(code).toBe(1);
  });

  test.skipIf(process.platform === "win32")("a link out of the workshop is not followed", () => {
    const outside = folderWith({ "secret.ferrule": library });
    const folder = folderWith({ "workshop.ferrule": workshopFile, "build.ferrule": wrongBuild });
    symlinkSync(join(outside, "secret.ferrule"), join(folder, "parts.ferrule"));
    symlinkSync(outside, join(folder, "library"));
    const { code, out, err } = ferrule(folder, ["check"]);
    expect(err).toContain(
      "ferrule: parts.ferrule was not read: it is a link that leads out of the workshop's folder.\n",
    );
    expect(err).toContain("library was not read: it is a link to a folder outside of the workshop's");
    expect(out).toContain("model/unknown-part");
    expect(out).not.toContain("52 t");
    // What is said without a file that may matter is not to be trusted.
    expect(code).toBe(2);
    const { unread } = JSON.parse(ferrule(folder, ["check", "--format", "json"]).out) as {
      unread: readonly { path: string }[];
    };
    expect(unread.map(({ path }) => path)).toEqual(["parts.ferrule"]);
    const named = ferrule(folder, ["check", "parts.ferrule"]);
    expect(named.err).toContain("parts.ferrule cannot be read: it is a link that leads out of the workshop's folder");
    expect(named.code).toBe(2);
  });

  test.skipIf(process.platform === "win32")("links inside the workshop, round in a circle, and to nothing", () => {
    const folder = folderWith(workshop);
    symlinkSync("parts/drivetrain.ferrule", join(folder, "again.ferrule"));
    symlinkSync("..", join(folder, "parts/up"));
    symlinkSync("round.ferrule", join(folder, "round.ferrule"));
    symlinkSync("gone.ferrule", join(folder, "nothing.ferrule"));
    const { code, out, err } = ferrule(folder, ["check", "--format", "json"]);
    expect(paths(out)).toHaveLength(4);
    expect(out).not.toContain("model/duplicate-name");
    expect(err).toContain("nothing.ferrule was not read: it does not exist.");
    expect(err).toContain("round.ferrule was not read: its links lead round in a circle.");
    expect(code).toBe(2);
  });
});

describe("standard input", () => {
  test("stands alone, with the standards that come with the program", () => {
    const folder = folderWith(workshop);
    const { code, out } = ferrule(folder, ["check", "-"], { input: library + wrongBuild });
    expect(out).toContain("standard-input.ferrule:18:15  error  drivetrain/largest-cog");
    expect(out).not.toContain("model/duplicate-name");
    expect(code).toBe(1);
  });

  test("takes the place of the file it stands for", () => {
    const folder = folderWith(workshop);
    const { code, out } = ferrule(folder, ["check", "-", "--as", "builds/wrong.ferrule"], {
      input: wrongBuild.replace("wide-10-52", "narrow-10-44"),
    });
    expect(out).toContain("build fellside  Fellside 29  builds/wrong.ferrule:1:7");
    expect(out).not.toContain("largest-cog");
    expect(code).toBe(0);
  });

  test("may stand for a file that is not there yet", () => {
    const input = wrongBuild.replace("fellside", "new");
    const { out } = ferrule(folderWith(workshop), ["check", "-", "--as", "builds/new.ferrule"], { input });
    expect(out).toContain("builds/new.ferrule:4:15  error  drivetrain/largest-cog");
  });

  test.each([
    ["empty", "", 0],
    ["not text", new Uint8Array([0xff, 0xfe, 0x00]), 2],
  ])("%s", (_, input, code) => {
    expect(ferrule(folderWith({}), ["check", "-"], { input }).code).toBe(code);
  });

  test("a byte order mark is no part of the text", () => {
    const { out } = ferrule(folderWith({}), ["check", "-"], { input: `\ufeff${library}${wrongBuild}` });
    expect(out).toContain("standard-input.ferrule:18:15  error");
    expect(out).not.toContain("language/");
  });
});

describe("the report", () => {
  test("--today decides which waivers count", () => {
    const waived = wrongBuild.replace(
      /}\n$/,
      '  waive drivetrain/largest-cog "Tried on the stand" until 2027-03-31\n}\n',
    );
    const folder = folderWith({ ...workshop, "builds/wrong.ferrule": waived });
    const on = (day: string) => ferrule(folder, ["check", "builds/wrong.ferrule", "--today", day]);
    expect(on("2027-03-31").code).toBe(0);
    expect(on("2027-03-31").out).toContain(" 1 waived, ");
    expect(on("2027-04-01").code).toBe(1);
    expect(on("2027-04-01").out).toContain("build/out-of-date-waiver");
  });

  test("--list names the checks with an outcome", () => {
    const folder = folderWith(workshop);
    const { out } = ferrule(folder, ["check", "builds/wrong.ferrule", "--list", "fails,unknown", "--list", "waived"]);
    expect(out).toMatch(/\n {2}Fails:\n {4}- drivetrain\/largest-cog/);
    expect(out).toMatch(/\n {2}Cannot be checked:\n {4}- /);
    expect(out).toContain("\n  Waived: nothing\n");
    expect(out).not.toContain("\n  Holds:");
  });

  test("no colour in a pipe, unless it is asked for", () => {
    const folder = folderWith(workshop);
    const coloured = (environment: NodeJS.ProcessEnv): boolean =>
      ferrule(folder, ["check"], { environment }).out.includes("\u001b[");
    expect(coloured({})).toBe(false);
    expect(coloured({ FORCE_COLOR: "1" })).toBe(true);
    expect(coloured({ FORCE_COLOR: "1", NO_COLOR: "1" })).toBe(false);
    expect(coloured({ FORCE_COLOR: "0" })).toBe(false);
  });

  test("a reader that goes away ends it in silence", async () => {
    const builds = Array.from({ length: 400 }, (_, index) => wrongBuild.replace("fellside", `b-${index}`)).join("\n");
    const folder = folderWith({ "all.ferrule": library + builds });
    const child = spawn(process.execPath, [program, "check"], {
      cwd: folder,
      env: { PATH: process.env.PATH, HOME: folder, FERRULE_CACHE: "off" },
    });
    let err = "";
    child.stderr.on("data", (data) => {
      err += data;
    });
    child.stdout.once("data", () => child.stdout.destroy());
    const code = await new Promise((resolve) => child.on("close", resolve));
    expect(err).toBe("");
    expect(code).toBe(1);
  });

  test.skipIf(process.platform !== "linux")("a full disk is no success", () => {
    const folder = folderWith(workshop);
    const { code } = ferrule(folder, ["check", "builds/right.ferrule"]);
    expect(code).toBe(0);
    const command = `"${process.execPath}" "${program}" check builds/right.ferrule > /dev/full`;
    const child = spawn("sh", ["-c", command], { cwd: folder, env: { FERRULE_CACHE: "off" } });
    return new Promise<void>((resolve) => {
      child.on("close", (ended) => {
        expect(ended).toBe(74);
        resolve();
      });
    });
  });
});
