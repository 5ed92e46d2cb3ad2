import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
// @ts-expect-error A script without types; its exports are used as they are.
import { mark, packed } from "../../.scripts/pack-program.mjs";
import { commands } from "../../server/command-line/commands.ts";
import { buildOnce, program } from "./built.ts";
import { ferrule, folderWith } from "./run.ts";

beforeAll(buildOnce, 120_000);

const run = (...words: string[]) => ferrule(folderWith({}), words);

describe("help", () => {
  test("names every command", () => {
    const { code, out } = run("--help");
    for (const { name } of commands) expect(out).toMatch(new RegExp(`^ {2}${name} +\\S`, "m"));
    expect(code).toBe(0);
    for (const words of [["-h"], ["help"]]) expect(run(...words)).toEqual({ code: 0, out, err: "" });
  });

  test("without a command it is an error, said where errors are said", () => {
    const { code, out, err } = run();
    expect(out).toBe("");
    expect(err).toContain("Usage: ferrule COMMAND");
    expect(code).toBe(2);
  });

  test.each(commands.map((command) => [command.name, command] as const))(
    "%s --help names every option",
    (name, command) => {
      const { code, out } = run(name, "--help");
      expect(out).toContain(`Usage: ferrule ${name}`);
      for (const option of command.options) expect(out).toContain(`  --${option.name}`);
      expect(code).toBe(0);
      expect(run("help", name).out).toBe(out);
      for (const line of out.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
    },
  );

  test("of a command that there is not", () => {
    const { code, err } = run("help", "formatt");
    expect(err).toContain("There is no command formatt. Did you mean format?");
    expect(code).toBe(2);
  });

  test("--version is that of the package", () => {
    const { version } = JSON.parse(readFileSync(new URL("../../package.json", import.meta.url), "utf8")) as {
      version: string;
    };
    expect(run("--version")).toEqual({ code: 0, out: `ferrule ${version}\n`, err: "" });
  });

  test("a fault of the program ends in one line and a code of its own", () => {
    const shipped = readFileSync(program, "utf8");
    expect(shipped).toContain(mark);
    const faulty = `${shipped.slice(0, shipped.indexOf(mark))}${packed('throw new Error("the wheel fell off");')}`;
    const folder = folderWith({ "faulty.js": faulty, "a.ferrule": "" });
    const { status, stdout, stderr } = spawnSync(process.execPath, [join(folder, "faulty.js"), "check"], {
      cwd: folder,
      env: { FERRULE_CACHE: "off" },
      encoding: "utf8",
    });
    expect(stderr).toBe("ferrule: a fault of the program, not of your files: the wheel fell off\n");
    expect(stdout).toBe("");
    expect(status).toBe(70);
  });

  test("serve says what it takes", () => {
    expect(run("serve").err).toContain("ferrule serve --stdio");
    expect(run("serve").code).toBe(2);
    expect(run("serve", "--stdio", "x").code).toBe(2);
  });
});
