import { describe, expect, it } from "vitest";
import type { AnyValue, FieldType } from "../../server/values/types.ts";
import { applied, codesOf, fixesOf, mended, read } from "./tokens.ts";

const material: FieldType = {
  type: "word",
  words: { carbon: "", aluminium: "", steel: "", "straight-side": "", none: "" },
};
const materials: FieldType = { type: "words", words: { carbon: "", aluminium: "", steel: "", "straight-side": "" } };
const teeth: FieldType = { type: "teeth" };
const count: FieldType = { type: "count", lowest: 1, highest: 200 };
const ringSize: FieldType = { type: "count", unit: "t" };
const ratio: FieldType = { type: "number", role: "exact", lowest: 0, highest: 5 };
const ratioRange: FieldType = { type: "number", role: "allowed" };
const axle: FieldType = { type: "code", family: "axle" };
const axles: FieldType = { type: "codes", family: "axle" };
const text: FieldType = { type: "text" };
const yesNo: FieldType = { type: "yes-no" };
const colour: FieldType = { type: "colour" };
const part: FieldType = { type: "part", kinds: ["stem"] };
const slot: FieldType = { type: "slot" };
const tensions: FieldType = { type: "quantities", dimension: "force" };
const code = (name: string) => ({ family: "axle", code: name });

describe("what is read without a word", () => {
  it.each([
    [teeth, "10-12-14-16 t", [10, 12, 14, 16], "10-12-14-16 t"],
    [teeth, "10–12–14 T", [10, 12, 14], "10-12-14 t"],
    [teeth, "50/34 t", [50, 34], "50-34 t"],
    [teeth, "50-34t", [50, 34], "50-34 t"],
    [teeth, "32", [32], "32 t"],
    [teeth, "32 teeth", [32], "32 t"],
    // Order and repeats are for the checks to speak of.
    [teeth, "12-11-11 t", [12, 11, 11], "12-11-11 t"],
    [count, "116", 116, "116"],
    [ringSize, "32 t", 32, "32 t"],
    [ringSize, "32T", 32, "32 t"],
    [ringSize, "32", 32, "32 t"],
    [ratio, "1.5", 1.5, "1.5"],
    [ratio, "1/2", 0.5, "1/2"],
    [ratioRange, "1.5 to 2", { least: 1.5, greatest: 2 }, "1.5 to 2"],
    [axle, "12x148", code("12x148"), "12x148"],
    [axle, "12×148", code("12x148"), "12x148"],
    [axle, "ZS44/28.6", code("ZS44/28.6"), "ZS44/28.6"],
    [axle, '"two words"', code("two words"), '"two words"'],
    [axle, '"12x148"', code("12x148"), "12x148"],
    [axles, "12x142, 12x148", [code("12x142"), code("12x148")], "12x142, 12x148"],
    [material, "carbon", "carbon", "carbon"],
    [materials, "carbon, steel", ["carbon", "steel"], "carbon, steel"],
    [text, '"say \\"when\\" \\\\"', 'say "when" \\', '"say \\"when\\" \\\\"'],
    [text, '""', "", '""'],
    [yesNo, "yes", true, "yes"],
    [yesNo, "no", false, "no"],
    [colour, "#2F5D50", "#2f5d50", "#2f5d50"],
    [colour, "#abc", "#abc", "#abc"],
    [colour, "DarkGreen", "darkgreen", "darkgreen"],
    [part, "moor.stub-35", "moor.stub-35", "moor.stub-35"],
    [slot, "rear-brake.lever", "rear-brake.lever", "rear-brake.lever"],
    [tensions, "1180, 1150, 1210 N", [1180, 1150, 1210], "1180, 1150, 1210 N"],
    [tensions, "1180N", [1180], "1180 N"],
    [tensions, "100, 120 kgf", [980.665, 1176.798], "100, 120 kgf"],
  ] as [FieldType, string, AnyValue, string][])("%o %s", (type, written, value, canonical) => {
    const result = read(type, written);
    expect(result.problems).toEqual([]);
    expect(result.value).toEqual(value);
    expect(result.written).toBe(canonical);
  });

  it.each([
    material,
    materials,
    teeth,
    count,
    ratio,
    axle,
    axles,
    text,
    yesNo,
    colour,
    part,
    slot,
    tensions,
    { type: "date" },
    { type: "money", role: "exact" },
    { type: "quantity", dimension: "mass", role: "exact" },
  ] as FieldType[])("none states absence for %o", (type) => {
    expect(read(type, "none")).toEqual({ isNone: true, written: "none", problems: [] });
  });

  it("takes the text none in quotes for a text", () => {
    expect(read(text, '"none"').value).toBe("none");
  });
});

/** Habits: understood or not, with the text that the first fix leaves, which reads clean. */
describe("what is mended", () => {
  it.each([
    [teeth, "10, 12, 14 t", "teeth-list", "10-12-14 t"],
    [teeth, "10,12,14 t", "teeth-list", "10-12-14 t"],
    [teeth, "10 12 14", "teeth-list", "10-12-14 t"],
    [teeth, '"10-12 t"', "quoted-number", "10-12 t"],
    [count, "12-speed", "unit-not-allowed", "12"],
    [count, "116 links", "unit-not-allowed", "116"],
    [count, "12.0", "not-whole", "12"],
    [ratio, "50 %", "unit-not-allowed", "0.5"],
    [ratio, "1,5", "decimal-comma", "1.5"],
    [axle, "12 x 148", "several-words", "12x148"],
    [axle, "12x142, 12x148", "one-only", "12x142"],
    [axles, "12x142 12x148", "several-words", "12x142, 12x148"],
    [axles, "12x142 or 12x148", "alternates", "12x142, 12x148"],
    [material, "carbn", "unknown-word", "carbon"],
    [material, "Carbon", "word-form", "carbon"],
    [material, '"carbon"', "quoted-word", "carbon"],
    [material, "straight side", "word-form", "straight-side"],
    [material, "Straight_Side", "word-form", "straight-side"],
    [materials, "carbon steel", "word-list", "carbon, steel"],
    [materials, "carbon, carbon", "word-list", "carbon"],
    [materials, "carbon or steel", "alternates", "carbon, steel"],
    [materials, "carbon,, steel", "empty-item", "carbon, steel"],
    [yesNo, "true", "yes-or-no", "yes"],
    [yesNo, "false", "yes-or-no", "no"],
    [yesNo, "Yes", "word-form", "yes"],
    [yesNo, '"no"', "quoted-word", "no"],
    [text, "as you like, sir", "unquoted-text", '"as you like, sir"'],
    [text, "1 or 2", "unquoted-text", '"1 or 2"'],
    [colour, "2f5d50", "not-a-colour", "#2f5d50"],
    [colour, "dark slate grey", "colour-form", "darkslategrey"],
    [colour, "redd", "not-a-colour", "red"],
    [colour, '"#2f5d50"', "quoted-word", "#2f5d50"],
    [part, '"moor.stub-35"', "quoted-word", "moor.stub-35"],
    [slot, '"rear-brake.lever"', "quoted-word", "rear-brake.lever"],
    [tensions, "1180,1150 N", "glued-list", "1180, 1150 N"],
    [tensions, "1180, 1150", "missing-unit", "1180, 1150 N"],
    [part, "None", "none", "none"],
    [count, "n/a", "none", "none"],
    [count, "—", "none", "none"],
  ] as [FieldType, string, string, string][])("%o %s: %s", (type, written, problem, meant) => {
    expect(codesOf(read(type, written))).toEqual([problem]);
    const [, after] = mended(type, written);
    expect(after).toBe(meant);
    const again = read(type, meant);
    expect(again.problems).toEqual([]);
    expect(again.isNone ?? again.value).toBeDefined();
  });

  it("joins parts with or, which the language parts again", () => {
    const [fix] = fixesOf(read(part, "moor.a, moor.b").problems[0]);
    if (fix === undefined) throw new Error("no fix");
    expect(applied("moor.a, moor.b", fix)).toBe("moor.a or moor.b");
  });

  it("keeps a text without quotes as its value, so that nothing else goes missing", () => {
    expect(read(text, "as you like").value).toBe("as you like");
  });
});

describe("what is refused", () => {
  it.each([
    [teeth, "10 to 52 t", "not-teeth"],
    [teeth, "11-13.5 t", "not-teeth"],
    [teeth, "0 t", "not-teeth"],
    [teeth, "201 t", "not-teeth"],
    [teeth, "11--13 t", "not-teeth"],
    [teeth, "-11 t", "not-teeth"],
    [teeth, "11- t", "not-teeth"],
    [teeth, "eleven", "not-teeth"],
    [count, "12.5", "not-whole"],
    [{ type: "count" }, "-3", "not-whole"],
    [count, "201", "out-of-bounds"],
    [count, "10 to 12", "range-not-allowed"],
    [ratio, "9", "out-of-bounds"],
    [axle, "a, b", "one-only"],
    [axle, '""', "missing"],
    [axle, "two words", "several-words"],
    [material, "carbon, steel", "one-only"],
    [material, "wood", "unknown-word"],
    [part, "two words", "not-a-name"],
    [part, '"two words"', "not-a-name"],
    [slot, "a.b, c.d", "one-only"],
    [tensions, "1180, many N", "not-a-number"],
    [tensions, "1180, 1150-1210 N", "range-not-allowed"],
    [tensions, "1180, 11 mm", "wrong-dimension"],
    [colour, "RAL 7016", "not-a-colour"],
    [count, "tbc", "unknown"],
  ] as [FieldType, string, string][])("%o %s: %s", (type, written, problem) => {
    const result = read(type, written);
    expect(codesOf(result)).toContain(problem);
    expect(result.value).toBeUndefined();
    expect(result.isNone).toBeUndefined();
  });

  it.each([material, teeth, count, text, part, tensions])("nothing at all: %o", (type) => {
    const result = read(type, "");
    expect(codesOf(result)).toEqual(["missing"]);
  });

  it("lists the words of a set in its message", () => {
    expect(read(material, "wood").problems[0]?.message).toContain("carbon, aluminium, steel, straight-side");
  });
});

describe("a code in several words", () => {
  it("says which code was meant, for whoever knows those that are declared, and puts nothing into quotes", () => {
    const [problem] = read(axle, "six bolt 44").problems;
    expect(problem?.meantCode).toEqual({ family: "axle", code: "six-bolt-44" });
    expect(problem?.fix).toBeUndefined();
    expect(problem?.message).toBe(
      "it takes one code, and six bolt 44 is several words: the words of a code are joined by dashes.",
    );
  });

  it("is first of all a list that lacks its commas, where the field takes one", () => {
    const [problem] = read(axles, "band 22.2").problems;
    expect(problem?.message).toMatch(/^it is a list: codes have commas between them, as in band, 22\.2;/);
    expect(problem?.fix?.changes[0]?.text).toBe("band, 22.2");
    expect(problem?.otherFixes).toBeUndefined();
  });
});

describe("teeth with a comma between the digits", () => {
  it.each(["50,34 t", "11,13,15 t"])("%s is read as no decimal, and asked about", (typed) => {
    const result = read(teeth, typed);
    expect(result.value).toBeUndefined();
    expect(result.problems.map(({ severity }) => severity)).toEqual(["error"]);
  });
});
