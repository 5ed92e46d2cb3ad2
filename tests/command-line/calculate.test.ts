import { beforeAll, describe, expect, test } from "vitest";
import { calculations } from "../../server/calculations/table.ts";
import { buildOnce } from "./built.ts";
import { ferrule, folderWith } from "./run.ts";

beforeAll(buildOnce, 120_000);

const calculate = (...words: string[]) => ferrule(folderWith({}), ["calculate", ...words]);

interface Listed {
  readonly calculations: readonly {
    readonly name: string;
    readonly description: string;
    readonly inputs: readonly { readonly name: string; readonly unit: string; readonly description: string }[];
    readonly results: readonly { readonly name: string; readonly unit: string }[];
  }[];
}

describe("calculate without a name", () => {
  test("lists every calculation with every input, unit and description", () => {
    const { code, out } = calculate("--format", "json");
    const { calculations: listed } = JSON.parse(out) as Listed;
    expect(listed.map(({ name }) => name)).toEqual(calculations.map(({ name }) => name));
    for (const one of listed) {
      expect(one.description).not.toBe("");
      for (const input of one.inputs) expect(input.description, `${one.name} ${input.name}`).not.toBe("");
    }
    const needed = listed.find(({ name }) => name === "capacity-needed");
    expect(needed?.inputs.map(({ name, unit }) => [name, unit])).toEqual([
      ["rings", "t"],
      ["cogs", "t"],
    ]);
    expect(code).toBe(0);
  });

  test("as text", () => {
    const { code, out } = calculate();
    for (const { name } of calculations) expect(out).toContain(`${name}\n`);
    expect(out).toContain("    rings (in t): ");
    expect(code).toBe(0);
  });
});

describe("calculate NAME", () => {
  test("gives the results with their units, and the working", () => {
    const { code, out } = calculate("capacity-needed", "rings=44-32-24", "cogs=12-34", "--format", "json");
    // From the trade's glossaries: 44/32/24 with 12-34 needs 42.
    expect(JSON.parse(out)).toMatchObject({
      calculation: "capacity-needed",
      results: { "capacity-needed": { value: 42, unit: "t" }, "cog-difference": { value: 22, unit: "t" } },
      working: expect.arrayContaining(["Capacity needed: 20 t + 22 t = 42 t"]),
    });
    expect(code).toBe(0);
  });

  test.each([
    [["trail", "head-angle=72deg", "wheel-radius=340", "fork-offset=44mm"], "write wheel-radius=340mm (Radius"],
    [["trail", "head-angle=72", "wheel-radius=340mm", "fork-offset=44mm"], "write head-angle=72° (Angle"],
    // Beyond all bounds of the input, its own example stands.
    [["trail", "head-angle=72deg", "wheel-radius=34kg", "fork-offset=44mm"], "write wheel-radius=336mm (Radius"],
    [
      ["pressure-warming", "pressure=5bar", "temperature=20C", "other-temperature=40degC"],
      "write temperature=20°C (Temp",
    ],
    [
      ["pressure-warming", "pressure=5bar", "temperature=20degC", "other-temperature=68f"],
      "write other-temperature=68°F",
    ],
  ])("%j asks for the number that was given, as it would be read", (words, said) => {
    const { code, err } = calculate(...words);
    expect(err.replace(/\s+/g, " ")).toContain(said);
    expect(code).toBe(2);
  });

  test("shows what a length is written like by one that is something", () => {
    const { err } = calculate("trail", "head-angle=72deg", "wheel-radius=M5", "fork-offset=44mm");
    expect(err).toMatch(/wheel-radius is written like [1-9]\d* mm; M5 is not/);
  });

  test("as text", () => {
    const { out } = calculate("capacity-needed", "rings=44-32-24 t", "cogs=12-34t");
    expect(out).toContain("\n  Capacity needed: 20 t + 22 t = 42 t\n");
    expect(out).toContain("\ncapacity-needed: 42 t\n");
  });

  test("any unit of the right dimension will do, glued or not, in one word or in two", () => {
    const spellings = [["chainstay=431.8 mm"], ["chainstay=17in"], ["chainstay=17", "in"], ["chainstay=43.18cm"]];
    const rest = ["rings=32", "cogs=18", "chainline=52mm", "cog-line=45mm", "--format", "json"];
    const angles = spellings.map((chainstay) => {
      const { out, err } = calculate("chain-angle", ...chainstay, ...rest);
      expect(err).toBe("");
      return (JSON.parse(out) as { results: Record<string, { value: number }> }).results["greatest-chain-angle"]?.value;
    });
    // arctangent of 7 ÷ 431.8, worked out by hand.
    for (const angle of angles) expect(angle).toBeCloseTo((Math.atan(7 / 431.8) * 180) / Math.PI, 9);
  });

  test("what cannot be from these inputs is said, with exit code 1", () => {
    const { code, out } = calculate("rotor-adapter", "rotor=140mm", "native-rotor=180mm");
    expect(out).toContain("cannot take a smaller one of 140 mm");
    expect(code).toBe(1);
  });

  test("an input that others make necessary, or that can be no such number, is said with exit code 2", () => {
    const chain = ["cogs=18", "chainline=43mm", "cog-line=45mm", "chainstay=420mm"];
    const needed = calculate("chain-angle", "rings=50-34", ...chain);
    expect(needed.out).toContain("ring-spacing");
    expect(needed.code).toBe(2);
    expect(calculate("chain-angle", "rings=34", ...chain).code).toBe(0);
    const none = calculate("rotor-adapter", "rotor=0mm", "native-rotor=180mm", "--format", "json");
    expect(JSON.parse(none.out)).toMatchObject({ impossible: "rotor must be more than zero." });
    expect(Object.keys(JSON.parse(none.out))).toEqual(["calculation", "inputs", "results", "working", "impossible"]);
    expect(none.code).toBe(2);
  });

  test.each([
    ["an unknown name", ["capacity-neded"], ["There is no calculation capacity-neded. Did you mean capacity-needed?"]],
    ["no inputs", ["capacity-needed"], ["rings is missing: write rings=", "cogs is missing: write cogs="]],
    [
      "an unknown input",
      ["capacity-needed", "rings=32", "cogs=10-52", "cog=1"],
      ["it has no input cog. Did you mean cogs?"],
    ],
    [
      "a value of another dimension",
      ["chain-angle", "rings=32", "cogs=18", "chainline=52 g", "cog-line=45mm", "chainstay=430mm"],
      ["chainline", "mm"],
    ],
    [
      "a quantity without its unit",
      ["chain-angle", "rings=32", "cogs=18", "chainline=52", "cog-line=45mm", "chainstay=430mm"],
      ["chainline", "needs a unit"],
    ],
    ["a word for a number", ["capacity-needed", "rings=large", "cogs=10-52"], ["rings", "Expected: write rings="]],
    ["an empty value", ["capacity-needed", "rings=", "cogs=10-52"], ["rings"]],
    ["a value given twice", ["capacity-needed", "rings=32", "rings=34", "cogs=10-52"], ["rings is given twice."]],
    ["a word that is no input", ["capacity-needed", "32", "10-52"], ["32 is no input: write NAME=VALUE"]],
    ["a value that would break out", ["capacity-needed", "rings=32 }\npart x y {", "cogs=1"], ["is not a value"]],
    ["a value with a quote", ["capacity-needed", 'rings="32', "cogs=10-52"], ["rings"]],
  ])("%s: named, with what was expected", (_, words, said) => {
    const { code, out, err } = calculate(...words);
    for (const part of said) expect(err).toContain(part);
    expect(out).toBe("");
    expect(code).toBe(2);
  });
});

describe("what a person is likely to write on a command line", () => {
  test("a list with commas and no blanks is a list, where the input takes one", () => {
    const { code, out } = ferrule(folderWith({}), ["calculate", "capacity-needed", "rings=50,34", "cogs=11,34"]);
    expect(code).toBe(0);
    expect(out).toContain("capacity-needed: 39 t");
  });

  test("a decimal comma is none", () => {
    const { code, err } = ferrule(folderWith({}), [
      "calculate",
      "rotor-adapter",
      "rotor=180,5 mm",
      "native-rotor=160 mm",
    ]);
    expect(code).toBe(2);
    expect(err).toContain("180.5");
  });

  test("a length that no part has is worked with, and said", () => {
    const words = ["calculate", "chain-length", "rings=32", "cogs=10-52"];
    const far = ferrule(folderWith({}), [...words, "chainstay=432 m"]);
    expect(far.code).toBe(0);
    expect(far.err).toContain("is the unit right?");
    expect(ferrule(folderWith({}), [...words, "chainstay=432 mm"]).err).toBe("");
  });
});

describe("the examples that are shown for inputs", () => {
  test("can be worked with, for every calculation, as they stand", () => {
    const folder = folderWith({});
    const { calculations } = JSON.parse(ferrule(folder, ["calculate", "--format", "json"]).out) as {
      calculations: { name: string; inputs: { name: string; example: string; optional: boolean }[] }[];
    };
    // A process each would take a minute; the readers and sums are the same for all, so one in eight is enough here.
    for (const { name, inputs } of calculations.filter((_, index) => index % 8 === 0)) {
      const words = inputs.filter(({ optional }) => !optional).map(({ name: input, example }) => `${input}=${example}`);
      const { code, err } = ferrule(folder, ["calculate", name, ...words]);
      // A few need one of two inputs that can each be left out, and say so.
      expect({ name, err, isUsage: code === 2 }).toEqual({ name, err: "", isUsage: false });
    }
  });

  test("a number is found by its path in a build, and by its own name", () => {
    const words = ["rings=50-34", "cogs=11-34"];
    const folder = folderWith({});
    const { out } = ferrule(folder, ["calculate", "capacity-needed", ...words]);
    expect(ferrule(folder, ["calculate", "drivetrain.capacity-needed", ...words]).out).toBe(out);
    expect(ferrule(folder, ["calculate", "cog-difference", ...words]).out).toBe(out);
  });
});
