import { readFileSync } from "node:fs";
import Ajv2020 from "ajv/dist/2020.js";
import { beforeAll, describe, expect, test } from "vitest";
import { buildOnce } from "./built.ts";
import { ferrule, folderWith } from "./run.ts";
import { workshop } from "./workshops.ts";

beforeAll(buildOnce, 120_000);

const schema = (name: string): object =>
  JSON.parse(readFileSync(new URL(`../../server/reports/${name}.schema.json`, import.meta.url), "utf8")) as object;
/** The same with masses, so that there is something to aim at. */
const weighed = {
  ...workshop,
  "parts/drivetrain.ferrule": workshop["parts/drivetrain.ferrule"]
    .replace("45-52 t", "45-52 t\n  mass: 372 g")
    .replace("38-44 t", "38-44 t\n  mass: 338 g")
    .replace("largest-cog: 46 t", "largest-cog: 46 t\n  mass: 300 g"),
};

const run = (...words: string[]) => ferrule(folderWith(workshop), words);
const wrong = "builds/wrong.ferrule#fellside";

describe("suggest", () => {
  test("lists the parts for a slot, those that fit first", () => {
    const { out, code } = run("suggest", wrong, "cassette");
    expect(code).toBe(0);
    expect(out.indexOf("corrie.narrow-10-44")).toBeGreaterThan(out.indexOf("Fits: 1 part"));
    expect(out.indexOf("Does not fit: 1 part")).toBeGreaterThan(out.indexOf("corrie.narrow-10-44"));
    expect(out.replace(/\s+/g, " ")).toContain("error drivetrain/largest-cog");
  });

  test("finds the change that meets a target, as a variant that checks without an error", () => {
    const { out, code } = ferrule(folderWith(weighed), ["suggest", wrong, "--target", "mass <= 640 g"]);
    expect(code).toBe(0);
    expect(out).toContain("1. 1 part exchanged");
    const variant = out.slice(out.indexOf("build fellside-changed"));
    expect(out).toContain("mass: 638 g");
    expect(out).toContain("No fewer changes do it.");
    const other = folderWith({ ...weighed, "builds/variant.ferrule": variant });
    const checked = ferrule(other, ["check", "builds/variant.ferrule"]);
    expect([checked.code, checked.out]).toEqual([0, expect.stringContaining("0 errors")]);
  });

  test.each([
    ["a part that fits", ["cassette"], 0],
    ["none that fits", ["rear-derailleur"], 1],
    ["none of the kind", ["fork"], 1],
    ["a change that meets the target", ["--target", "mass <= 640 g"], 0],
    ["a target that is met as it stands", ["--target", "mass <= 5 kg"], 0],
    ["none that does", ["--target", "mass <= 100 g"], 1],
  ])("its exit code says whether there is %s", (_, words, code) => {
    const folder = folderWith(weighed);
    expect(ferrule(folder, ["suggest", wrong, ...words]).code).toBe(code);
    expect(ferrule(folder, ["suggest", wrong, ...words, "--format", "json"]).code).toBe(code);
  });

  test("JSON is as its schema says, for slots and for targets", () => {
    const isSuggestion = new Ajv2020({ strict: false, allErrors: true }).compile(schema("suggestions"));
    for (const words of [
      ["cassette"],
      ["--target", "drivetrain.capacity-needed <= 40 t"],
      ["--target", "mass <= 640 g"],
      ["--target", "mass <= 100 g"],
    ]) {
      const { out } = ferrule(folderWith(weighed), ["suggest", wrong, ...words, "--format", "json"]);
      expect(isSuggestion(JSON.parse(out)), JSON.stringify(isSuggestion.errors)).toBe(true);
    }
  });

  test.each([
    [["suggest"], "a build, and either a slot or targets"],
    [["suggest", wrong], "a build, and either a slot or targets"],
    [["suggest", wrong, "cassete"], "Did you mean drivetrain.cassette"],
    [["suggest", "builds/wrong.ferrule#felside", "cassette"], "Did you mean fellside?"],
    [["suggest", wrong, "cassette", "--target", "mass <= 3 kg"], "either a slot or targets"],
    [["suggest", wrong, "cassette", "--seconds", "3"], "--seconds goes with --target"],
    [["suggest", wrong, "--target", "mas <= 3 kg"], "Did you mean mass?"],
    [["suggest", wrong, "--target", "mass <= 3 kg", "--seconds", "soon"], "--seconds takes a number"],
    [["suggest", wrong, "cassette", "--limit", "0"], "--limit takes a whole number"],
    [["suggest", "builds/wrong.ferrule", "cassette"], "names no build"],
  ])("%j is refused", (words, reason) => {
    const { code, err } = run(...words);
    expect(err).toContain(reason);
    expect(code).toBe(2);
  });
});

describe("parts", () => {
  test("list adds up builds, variants and fleets", () => {
    const variant = "build fell-two from fellside {\n  drivetrain.cassette: corrie.narrow-10-44\n}\n";
    const folder = folderWith({ ...workshop, "builds/two.ferrule": variant });
    const names = (...words: string[]) =>
      (JSON.parse(ferrule(folder, ["parts", "list", ...words, "--format", "json"]).out) as { builds: string[] }).builds;
    expect(names(wrong)).toEqual(["fellside"]);
    expect(names(wrong, "--variants")).toEqual(["fellside", "fell-two"]);
    expect(names().sort()).toEqual(["fell-two", "fellside", "gillside"]);
    expect(names("builds/two.ferrule")).toEqual(["fell-two"]);
    const isList = new Ajv2020({ strict: false, allErrors: true }).compile(schema("parts-list"));
    const list = JSON.parse(ferrule(folder, ["parts", "list", "--format", "json"]).out);
    expect(isList(list), JSON.stringify(isList.errors)).toBe(true);
    const text = ferrule(folder, ["parts", "list"]).out;
    expect(text).toContain("3 builds");
    expect(text).toMatch(/^3 {2}corrie\.mid-12/m);
    expect(ferrule(folder, ["parts", "list", "--format", "csv"]).out.split("\r\n")[0]).toContain("quantity,part,kind");
  });

  test("unused, never-fit and duplicates answer for the files asked for", () => {
    const spare = 'part chain beck.spare "Spare" { speeds: 12 }\npart chain beck.Spare "Spare" { speeds: 12 }\n';
    const folder = folderWith({ ...workshop, "parts/spare.ferrule": spare });
    const unused = ferrule(folder, ["parts", "unused"]);
    expect(unused.out).toContain("parts/spare.ferrule:1");
    expect(unused.out).toContain("2 parts that no build names.");
    expect(ferrule(folder, ["parts", "unused", "parts/drivetrain.ferrule"]).out).toContain("Every part is named");
    expect(ferrule(folder, ["parts", "duplicates"]).out).toContain("Names that differ in capitals");
    const never = ferrule(folder, ["parts", "never-fit", "--format", "json"]);
    expect(JSON.parse(never.out)).toMatchObject({
      schemaVersion: 1,
      question: "never-fit",
      workshops: [{ builds: 2, asked: 2 }],
    });
  });

  test.each([
    [["parts"], "parts takes one of list"],
    [["parts", "lst"], "Did you mean list?"],
    [["parts", "unused", "--format", "csv"], "text or json"],
    [["parts", "list", wrong, "builds"], "not both at once"],
    [["parts", "unused", "--variants"], "--variants goes with parts list"],
    [["parts", "never-fit", wrong], "takes files and folders"],
    [["parts", "list", "parts"], "No build is in parts"],
  ])("%j is refused", (words, reason) => {
    const { code, err } = run(...words);
    expect(err).toContain(reason);
    expect(code).toBe(2);
  });
});
