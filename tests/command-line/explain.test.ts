import { beforeAll, describe, expect, test } from "vitest";
import { checks } from "../../server/checks/table.ts";
import { buildOnce } from "./built.ts";
import { ferrule, folderWith } from "./run.ts";
import { library, workshop, wrongBuild } from "./workshops.ts";

beforeAll(buildOnce, 120_000);

const ring = `part chainring corrie.ring-32 "Corrie ring 32" {
  teeth: 32 t
}

part crankset corrie.crank "Corrie crank" {
  rings: none
}
`;
const whole = {
  ...workshop,
  "parts/rings.ferrule": ring,
  "builds/wrong.ferrule": wrongBuild.replace(
    "drivetrain {",
    "drivetrain {\n    crankset: corrie.crank\n    chainring: corrie.ring-32",
  ),
};

describe("explain CODE", () => {
  test("says what a check means, needs, and comes from, with both examples", () => {
    const { code, out } = ferrule(folderWith({}), ["explain", "drivetrain/largest-cog"]);
    const check = checks.find((one) => one.code === "drivetrain/largest-cog");
    expect(out).toContain(`drivetrain/largest-cog  error\n${check?.title}\n`);
    expect(out.replace(/\s+/g, " ")).toContain(check?.explanation.replace(/\s+/g, " "));
    expect(out).toContain("  - drivetrain.rear-derailleur.largest-cog: ");
    expect(out).toContain("Source: common practice");
    expect(out).toContain("It holds in this build:\n");
    expect(out).toContain("It fails in this one:\n");
    expect(code).toBe(0);
  });

  test("says the caution of a check that guards somebody", () => {
    const careful = checks.find(({ caution }) => caution !== undefined);
    const { out } = ferrule(folderWith({}), ["explain", careful?.code ?? ""]);
    expect(out.replace(/\s+/g, " ")).toContain(`Caution: ${careful?.caution?.replace(/\s+/g, " ")}`);
  });

  test("explains a check by its name alone where no other area has it", () => {
    const { code, out } = ferrule(folderWith({}), ["explain", "cage-capacity"]);
    expect(code).toBe(0);
    expect(out).toContain("drivetrain/cage-capacity");
  });

  test("explains codes that no check stands behind", () => {
    const { code, out } = ferrule(folderWith({}), ["explain", "value/missing-unit"]);
    expect(out).toContain("No unit is ever assumed.");
    expect(code).toBe(0);
  });

  test("as JSON", () => {
    const { out } = ferrule(folderWith({}), ["explain", "drivetrain/largest-cog", "--format", "json"]);
    expect(JSON.parse(out)).toMatchObject({
      code: "drivetrain/largest-cog",
      severity: "error",
      needs: expect.arrayContaining([
        { path: "drivetrain.rear-derailleur.largest-cog", description: expect.any(String), optional: false },
      ]),
    });
  });

  test.each([
    [["explain"], "explain takes one CODE, one FILE#BUILD/PATH or one FILE#SERIAL/PATH."],
    [["explain", "a/b", "c/d"], "explain takes one CODE"],
    [["explain", "drivetrain/largest-cogg"], "Did you mean drivetrain/largest-cog"],
    [["explain", "value/mising-unit"], "Did you mean value/missing-unit"],
    [["explain", "actuation"], "Did you mean brake/actuation, drivetrain/actuation?"],
    [["explain", "cage-capcity"], "Did you mean drivetrain/cage-capacity?"],
    [["explain", "zzz"], "lists the codes of all checks"],
  ])("%j is not understood", (words, said) => {
    const { code, err } = ferrule(folderWith({}), words);
    expect(err).toContain(said);
    expect(code).toBe(2);
  });
});

describe("explain FILE#BUILD/PATH", () => {
  test("a house rule: what it came to, why it is there, and where it is declared", () => {
    const rule =
      'rule light "A light cassette" {\n  require: drivetrain.cassette.speeds <= 7\n  because: "Climbers ask for it."\n}\n';
    const at = folderWith({ ...whole, "rules.ferrule": rule });
    const { code, out } = ferrule(at, ["explain", "builds/wrong.ferrule#fellside/rule/light"]);
    expect(out).toMatch(/^rule\/light {2}A light cassette\nFails\n/);
    expect(out.replace(/\s+/g, " ")).toContain("and has to be at most 7. Climbers ask for it.");
    expect(out).toContain("A house rule, declared at rules.ferrule:1:6.");
    expect(code).toBe(0);
    const alone = ferrule(at, ["explain", "rule/light"]);
    expect(alone.code).toBe(2);
    expect(alone.err.replace(/\s+/g, " ")).toContain("ferrule explain FILE#BUILD/rule/light");
  });

  const folder = () => folderWith(whole);

  test("a number: its value, every fact it comes from and where it was stated, and the working", () => {
    const { code, out } = ferrule(folder(), ["explain", "builds/wrong.ferrule#fellside/drivetrain.capacity-needed"]);
    expect(out).toContain("drivetrain.capacity-needed: 42 t\n");
    expect(out).toContain("drivetrain.chainring.teeth: 32 t (Corrie ring 32, parts/rings.ferrule:2:10)\n");
    expect(out).toMatch(
      /drivetrain\.cassette\.cogs: 10-12-\S+ t \(Corrie wide 10-52,\s+parts\/drivetrain\.ferrule:3:9\)/,
    );
    expect(out).toContain("  Cogs: 52 t − 10 t = 42 t\n");
    expect(code).toBe(0);
  });

  test("a number that cannot be worked out names what is missing", () => {
    const { out } = ferrule(folder(), ["explain", "builds/wrong.ferrule#fellside/drivetrain.chain-angles"]);
    expect(out).toContain("It cannot be worked out until these are stated:\n  - ");
  });

  test.each<[string, string, string]>([
    ["a fact", "drivetrain.cassette.speeds", "Stated by Corrie wide 10-52 at parts/drivetrain.ferrule:2:11."],
    ["a fact nobody stated", "drivetrain.cassette.freehub", "drivetrain.cassette.freehub: not stated\n"],
    ["a field of the build", "category", "category: mountain\n"],
    ["a slot", "drivetrain.cassette", "Corrie wide 10-52 is declared as cassette at parts/drivetrain.ferrule:1:15."],
    ["an empty slot", "drivetrain.chain", "drivetrain.chain: not stated\n"],
    ["a check", "drivetrain/largest-cog", "  Fails: Largest cog 52 t"],
    ["an assembly", "drivetrain", "  drivetrain.cassette: corrie.wide-10-52 (builds/wrong.ferrule:6:15)\n"],
  ])("%s", (_, path, said) => {
    const { code, out } = ferrule(folder(), ["explain", `builds/wrong.ferrule#fellside/${path}`]);
    expect(out).toContain(said);
    expect(code).toBe(0);
  });

  test("without a path, everything; without a file, the workshop here", () => {
    const { code, out } = ferrule(folder(), ["explain", "#fellside"]);
    expect(out).toContain("  category: mountain (Fellside 29, builds/wrong.ferrule:2:13)\n");
    expect(out).toContain("  drivetrain.capacity-needed: 42 t\n");
    expect(code).toBe(0);
  });

  test("as JSON, with places", () => {
    const words = ["explain", "#fellside/drivetrain.capacity-needed", "--format", "json"];
    expect(JSON.parse(ferrule(folder(), words).out)).toMatchObject({
      calculation: "capacity-needed",
      state: "known",
      value: 42,
      unit: "t",
      facts: expect.arrayContaining([
        expect.objectContaining({
          path: "drivetrain.chainring.teeth",
          file: "parts/rings.ferrule",
          range: { start: { line: 1, character: 9 }, end: { line: 1, character: 13 } },
        }),
      ]),
    });
  });

  test.each([
    [
      "a build that is not there",
      "builds/wrong.ferrule#felside",
      "builds/wrong.ferrule has no build felside. Did you mean fellside?",
    ],
    ["a file without builds", "parts/rings.ferrule#x", "It has no build at all."],
    ["a path that is not there", "#fellside/drivetrain.capacity-neded", "Did you mean drivetrain.capacity-needed"],
    ["nonsense", "#fellside/zzz.zzz.zzz", "ferrule explain .#fellside lists everything it has."],
    [
      "a file that is not there",
      "builds/none.ferrule#fellside",
      "builds/none.ferrule cannot be read: it does not exist.",
    ],
  ])("%s", (_, address, said) => {
    const { code, err, out } = ferrule(folder(), ["explain", address]);
    expect(err).toContain(said);
    expect(out).toBe("");
    expect(code).toBe(2);
  });

  test("a part inherits facts, and the base is where they were stated", () => {
    const derived = 'part cassette corrie.special "Corrie special" from corrie.wide-10-52 {\n  mass: 400 g\n}\n';
    const folder = folderWith({
      "all.ferrule": library + derived + wrongBuild.replace("corrie.wide-10-52", "corrie.special"),
    });
    const { out } = ferrule(folder, ["explain", "#fellside/drivetrain.cassette.cogs"]);
    expect(out).toContain("all.ferrule:3:9.");
    expect(ferrule(folder, ["explain", "#fellside/drivetrain.cassette"]).out).toContain(
      "It derives from corrie.wide-10-52.",
    );
  });
});
