import {
  chmodSync,
  linkSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  statSync,
  symlinkSync,
  utimesSync,
  writeFileSync,
} from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { FileNotReplaced, replaceFile, stateOf } from "../../server/workshop-files/write.ts";
import { buildOnce } from "./built.ts";
import { ferrule, folderWith } from "./run.ts";

beforeAll(buildOnce, 120_000);

const untidy = 'part   cassette a.b   "A" {\nspeeds:12\n   cogs :  11-13-15 t\n}\n';
const tidy = 'part cassette a.b "A" {\n  speeds: 12\n  cogs: 11-13-15 t\n}\n';
const broken = "part cassette a.b {\n  speeds 12 : :\n}\n";

describe("format", () => {
  test("writes files in canonical form, and leaves those alone that are", () => {
    const folder = folderWith({ "untidy.ferrule": untidy, "below/tidy.ferrule": tidy });
    utimesSync(join(folder, "below/tidy.ferrule"), new Date(1000), new Date(1000));
    const { code, out, err } = ferrule(folder, ["format"]);
    expect(out).toBe("untidy.ferrule\n1 file in canonical form, 1 brought into it.\n");
    expect(err).toBe("");
    expect(code).toBe(0);
    expect(readFileSync(join(folder, "untidy.ferrule"), "utf8")).toBe(tidy);
    expect(statSync(join(folder, "below/tidy.ferrule")).mtimeMs).toBe(1000);
    expect(readdirSync(folder).sort()).toEqual(["below", "untidy.ferrule"]);
    expect(ferrule(folder, ["format"]).out).toBe("2 files in canonical form.\n");
  });

  test("--check changes nothing and names the files", () => {
    const folder = folderWith({ "untidy.ferrule": untidy, "tidy.ferrule": tidy });
    const { code, out } = ferrule(folder, ["format", "--check"]);
    expect(out).toBe("untidy.ferrule is not in canonical form\n1 file in canonical form, 1 not.\n");
    expect(code).toBe(1);
    expect(readFileSync(join(folder, "untidy.ferrule"), "utf8")).toBe(untidy);
    expect(ferrule(folder, ["format", "--check", "tidy.ferrule"]).code).toBe(0);
  });

  test("a file with errors is left as it is, byte for byte, and the others are written", () => {
    const folder = folderWith({ "broken.ferrule": `${untidy}\n${broken}`, "untidy.ferrule": untidy });
    const { code, out, err } = ferrule(folder, ["format"]);
    expect(err).toMatch(/^broken\.ferrule:7:\d+ {2}error {2}language\//);
    expect(out).toContain("1 with errors, left alone");
    expect(code).toBe(1);
    expect(readFileSync(join(folder, "broken.ferrule"), "utf8")).toBe(`${untidy}\n${broken}`);
    expect(readFileSync(join(folder, "untidy.ferrule"), "utf8")).toBe(tidy);
  });

  test("standard input comes out in canonical form, or as it went in", () => {
    const folder = folderWith({});
    expect(ferrule(folder, ["format", "-"], { input: untidy })).toEqual({ code: 0, out: tidy, err: "" });
    const refused = ferrule(folder, ["format", "-"], { input: broken });
    expect(refused.out).toBe(broken);
    expect(refused.err).toContain("standard input:2:");
    expect(refused.code).toBe(1);
    expect(ferrule(folder, ["format", "--check", "-"], { input: untidy })).toEqual({ code: 1, out: "", err: "" });
    expect(ferrule(folder, ["format", "-", "x.ferrule"], { input: "" }).code).toBe(2);
  });

  test("bytes that are no text are never written back", () => {
    const bytes = Buffer.concat([Buffer.from(untidy), Buffer.from([0xff, 0x0a])]);
    const folder = folderWith({ "a.ferrule": bytes });
    const { code, err } = ferrule(folder, ["format"]);
    expect(err).toContain("a.ferrule was not read: it is not UTF-8 text");
    expect(code).toBe(2);
    expect(readFileSync(join(folder, "a.ferrule")).equals(bytes)).toBe(true);
  });

  test("carriage returns stay, a byte order mark goes", () => {
    const returns = untidy.replaceAll("\n", "\r\n");
    const folder = folderWith({ "returns.ferrule": returns, "mark.ferrule": `\ufeff${tidy}` });
    ferrule(folder, ["format"]);
    expect(readFileSync(join(folder, "returns.ferrule"), "utf8")).toBe(tidy.replaceAll("\n", "\r\n"));
    expect(readFileSync(join(folder, "mark.ferrule"), "utf8")).toBe(tidy);
  });

  test.skipIf(process.platform === "win32")("permissions are kept, and a read-only file is left alone", () => {
    const folder = folderWith({ "script.ferrule": untidy, "locked.ferrule": untidy });
    chmodSync(join(folder, "script.ferrule"), 0o754);
    chmodSync(join(folder, "locked.ferrule"), 0o444);
    const { code, err } = ferrule(folder, ["format"]);
    expect(statSync(join(folder, "script.ferrule")).mode & 0o777).toBe(0o754);
    expect(readFileSync(join(folder, "script.ferrule"), "utf8")).toBe(tidy);
    expect(err).toBe("ferrule: locked.ferrule was left as it is: it is read-only.\n");
    expect(readFileSync(join(folder, "locked.ferrule"), "utf8")).toBe(untidy);
    expect(code).toBe(2);
  });

  test.skipIf(process.platform === "win32")("never through a link out of the workshop", () => {
    const outside = folderWith({ "theirs.ferrule": untidy });
    const folder = folderWith({ "ours.ferrule": tidy });
    symlinkSync(join(outside, "theirs.ferrule"), join(folder, "link.ferrule"));
    symlinkSync(outside, join(folder, "folder"));
    expect(ferrule(folder, ["format"]).err).toContain("link.ferrule was not read: it is a link that leads out");
    expect(ferrule(folder, ["format", "link.ferrule"]).code).toBe(2);
    expect(readFileSync(join(outside, "theirs.ferrule"), "utf8")).toBe(untidy);
  });

  test.skipIf(process.platform === "win32")("a link inside the workshop stays a link", () => {
    const folder = folderWith({ "real.ferrule": untidy });
    symlinkSync("real.ferrule", join(folder, "link.ferrule"));
    expect(ferrule(folder, ["format"]).code).toBe(0);
    expect(readFileSync(join(folder, "real.ferrule"), "utf8")).toBe(tidy);
    expect(
      readdirSync(folder, { withFileTypes: true })
        .find(({ name }) => name === "link.ferrule")
        ?.isSymbolicLink(),
    ).toBe(true);
  });
});

describe("replacing a file", () => {
  test("is refused when somebody wrote to it in the meantime", () => {
    const file = join(folderWith({ "a.ferrule": "one" }), "a.ferrule");
    const before = stateOf(file);
    writeFileSync(file, "theirs");
    expect(() => replaceFile(file, "ours", before)).toThrow(FileNotReplaced);
    expect(readFileSync(file, "utf8")).toBe("theirs");
    expect(readdirSync(join(file, ".."))).toEqual(["a.ferrule"]);
  });

  test("that cannot be done leaves the file and nothing beside it", () => {
    const folder = folderWith({ "a.ferrule": "one" });
    const file = join(folder, "a.ferrule");
    const before = stateOf(file);
    // A folder stands where the file was: a rename onto it fails after everything else has been done.
    const elsewhere = join(folder, "other");
    mkdirSync(elsewhere);
    expect(() => replaceFile(elsewhere, "ours", before)).toThrow();
    expect(readdirSync(folder).sort()).toEqual(["a.ferrule", "other"]);
    expect(readFileSync(file, "utf8")).toBe("one");
  });

  test("is seen whole or not at all: a reader who had the old file open still has all of it", () => {
    const folder = folderWith({ "a.ferrule": "the old text" });
    const file = join(folder, "a.ferrule");
    linkSync(file, join(folder, "held"));
    replaceFile(file, "new", stateOf(file));
    expect(readFileSync(file, "utf8")).toBe("new");
    expect(readFileSync(join(folder, "held"), "utf8")).toBe("the old text");
  });
});
