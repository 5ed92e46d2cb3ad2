import { describe, expect, it } from "vitest";
import { implausible } from "../../server/calculations/shared/plausible.ts";
import { say, sayTeeth } from "../../server/calculations/shared/say.ts";
import { showNumber, showResult } from "../../server/calculations/show.ts";
import { length, quantity, quantityRange, text } from "../../server/vocabulary/fields.ts";

describe("a result", () => {
  const millimetres = { unit: "mm", digits: 1, description: "A length." };

  it.each([
    [10, 1, "10"],
    [100, 0, "100"],
    [10.5, 2, "10.5"],
    [10.25, 1, "10.3"],
    [1200, 2, "1200"],
    [-0.004, 2, "0"],
    [-0.006, 2, "-0.01"],
    [0.0995, 3, "0.1"],
  ])("of %d to %i decimals is shown as %s", (value, digits, shown) => {
    expect(showNumber(value, digits)).toBe(shown);
  });

  it("has its unit after it, also after a list, and none where there is none", () => {
    expect(showResult(millimetres, 12.345)).toBe("12.3 mm");
    expect(showResult(millimetres, [1, 2.25])).toBe("1, 2.3 mm");
    expect(showResult({ unit: "", digits: 3, description: "" }, 1.23456)).toBe("1.235");
    expect(showResult(undefined, 1.23456)).toBe("1.23");
    expect(showResult({ unit: "", digits: 0, description: "" }, ["32×11", "32×12"])).toBe("32×11, 32×12");
  });

  it("is none for an empty list", () => {
    expect(showResult(millimetres, [])).toBe("none");
  });
});

describe("a number in a working", () => {
  it.each([
    [say(12.3456), "12.346"],
    [say(12.3456, "mm"), "12.346 mm"],
    [say(12.3456, "°", 1), "12.3°"],
    [say(12.3456, "%", 0), "12 %"],
    [sayTeeth([50, 34]), "50-34 t"],
  ])("%s", (said, expected) => {
    expect(said).toBe(expected);
  });
});

describe("an input that no part has", () => {
  const crank = length("Length of a crank.");

  it("is asked about where parts state bounds under the same name", () => {
    expect(implausible("crank-length", crank, 17.5)).toMatch(
      /crank-length of 17.5 mm is not one that a part has .*unit/,
    );
    expect(implausible("crank-length", crank, 1700)).toMatch(/at most/);
    expect(implausible("crank-length", crank, 170)).toBeUndefined();
  });

  it("is told between which bounds parts have it, where there are any", () => {
    expect(implausible("crank-length", crank, 9)).toMatch(/\(at least \d+ mm and at most \d+ mm\)/);
  });

  it("is asked about at either end of a range", () => {
    const chainstay = quantityRange("length", "adjustable", "Chainstay.");
    expect(implausible("chainstay", chainstay, { least: 410, greatest: 425 })).toBeUndefined();
    expect(implausible("chainstay", chainstay, { least: 41, greatest: 425 })).toMatch(/41 mm/);
    expect(implausible("chainstay", chainstay, { least: 410, greatest: 4250 })).toMatch(/4250 mm/);
  });

  it("is not asked about where nothing bears that name, or what bears it is measured otherwise", () => {
    expect(implausible("no-such-fact", crank, 1)).toBeUndefined();
    expect(implausible("crank-length", text("Words."), 1)).toBeUndefined();
    expect(implausible("crank-length", quantity("mass", "A mass."), 1)).toBeUndefined();
    expect(implausible("crank-length", crank, Number.NaN)).toBeUndefined();
  });

  it("may be what a rider states under that name", () => {
    expect(implausible("mass", quantity("mass", "A mass."), 78_000)).toBeUndefined();
  });
});
