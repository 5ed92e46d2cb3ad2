import { describe, expect, it } from "vitest";
import { atLeast, atMost, equal, greaterThan, inside, lessThan, overlap, within } from "../../server/values/compare.ts";
import {
  type Arithmetic,
  add,
  comparisonError,
  describe as describeMeasure,
  dimensionsOf,
  divide,
  inDimension,
  inUnit,
  type Measure,
  measure,
  moneyMeasure,
  multiply,
  plainMeasure,
  subtract,
} from "../../server/values/dimensions.ts";
import { didYouMean, nearest, nearestSeveral } from "../../server/values/near.ts";

function done(result: Arithmetic): Measure {
  if ("wrong" in result) throw new Error(result.wrong);
  return result.measure;
}

function wrong(result: Arithmetic): string {
  return "wrong" in result ? result.wrong : "nothing is wrong";
}

describe("arithmetic with dimensions", () => {
  it("force times length is a torque", () => {
    const product = done(multiply(measure(200, "force"), measure(150, "length")));
    expect(dimensionsOf(product.vector)).toEqual(["torque", "energy"]);
    expect(inDimension(product, "torque")).toBeCloseTo(30, 12);
  });

  it("development times cadence is a speed", () => {
    // 2 m at 75 rpm is 9 km/h: tabulated in the trade; common practice.
    const speed = done(multiply(measure(2000, "length"), measure(75, "cadence")));
    expect(inDimension(speed, "speed")).toBeCloseTo(9, 12);
    expect(inUnit(speed, "m/s")).toBeCloseTo(2.5, 12);
  });

  it("load over pressure is an area: 500 N at 5 bar is 1000 mm2", () => {
    expect(inDimension(done(divide(measure(500, "force"), measure(5, "pressure"))), "area")).toBeCloseTo(1000, 9);
  });

  it("force over deflection is a stiffness: 1404 N over 19.5 mm is 72 N/mm", () => {
    expect(inDimension(done(divide(measure(1404, "force"), measure(19.5, "length"))), "stiffness")).toBeCloseTo(72, 9);
  });

  it("torque times cadence is a power only up to two pi, so it is no cheat", () => {
    const product = done(multiply(measure(40, "torque"), measure(60, "cadence")));
    expect(inDimension(product, "power")).toBeCloseTo(40, 12);
  });

  it("energy over voltage is a charge: 504 Wh at 36 V is 14 Ah", () => {
    expect(inDimension(done(divide(measure(504, "energy"), measure(36, "voltage"))), "charge")).toBeCloseTo(14, 12);
  });

  it("a percentage of a length is a length", () => {
    expect(inDimension(done(multiply(measure(30, "ratio"), measure(55, "length"))), "length")).toBeCloseTo(16.5, 12);
  });

  it("adds like to like and says what is unlike", () => {
    expect(inDimension(done(add(measure(1, "length"), measure(2, "length"))), "length")).toBeCloseTo(3, 12);
    expect(inDimension(done(subtract(measure(1, "length"), measure(2, "length"))), "length")).toBeCloseTo(-1, 12);
    expect(wrong(add(measure(1, "length"), measure(2, "mass")))).toBe(
      "A length cannot be added to a mass: they measure different things.",
    );
    expect(wrong(subtract(measure(1, "force"), plainMeasure(2)))).toBe(
      "A plain number cannot be subtracted from a force: they measure different things.",
    );
    expect(comparisonError(measure(1, "angle"), measure(2, "ratio"))).toContain("An angle cannot be compared with");
    expect(comparisonError(measure(1, "torque"), measure(2, "energy"))).toBeUndefined();
  });

  it("never mixes currencies", () => {
    const pounds = moneyMeasure({ currency: "GBP", amount: 3 });
    const euros = moneyMeasure({ currency: "EUR", amount: 3 });
    expect(wrong(add(pounds, euros))).toContain("no exchange rate");
    expect(comparisonError(pounds, euros)).toContain("no exchange rate");
    expect(wrong(divide(pounds, euros))).toContain("no exchange rate");
    expect(done(divide(pounds, pounds))).toEqual(plainMeasure(1));
    expect(done(multiply(pounds, plainMeasure(2)))).toEqual(moneyMeasure({ currency: "GBP", amount: 6 }));
    expect(describeMeasure(done(divide(pounds, measure(1000, "mass"))))).toBe("a quantity in GBP/kg");
  });

  it("says why there is no result", () => {
    expect(wrong(divide(measure(1, "length"), plainMeasure(0)))).toBe("The divisor is zero.");
    expect(wrong(multiply(measure(1e300, "length"), measure(1e300, "length")))).toContain("gives no number");
    expect(wrong(multiply(measure(20, "temperature"), measure(1, "length")))).toContain("no zero to count from");
  });

  it("names what has no name of its own by its units", () => {
    expect(describeMeasure(done(multiply(measure(1, "mass"), measure(1, "speed"))))).toBe("a quantity in kg·m/s");
    expect(describeMeasure(done(divide(plainMeasure(1), measure(1, "length"))))).toBe("a quantity in 1/m");
  });
});

describe("comparison with slack", () => {
  it("does not tell numbers apart that differ by a billionth of the greater", () => {
    expect(0.1 + 0.2).not.toBe(0.3);
    expect(equal(0.1 + 0.2, 0.3)).toBe(true);
    expect(atMost(0.1 + 0.2, 0.3)).toBe(true);
    expect(atLeast(0.3, 0.1 + 0.2)).toBe(true);
    expect(greaterThan(0.1 + 0.2, 0.3)).toBe(false);
    expect(equal(1000, 1000 + 0.9e-6)).toBe(true);
    expect(equal(1000, 1000 + 1.1e-6)).toBe(false);
    expect(lessThan(1000, 1000 + 1.1e-6)).toBe(true);
    expect(equal(0.1 + 0.2 - 0.3, 0)).toBe(true);
  });

  it("knows infinite ends", () => {
    const infinity = Number.POSITIVE_INFINITY;
    expect(equal(infinity, infinity)).toBe(true);
    expect(equal(1e300, infinity)).toBe(false);
    expect(atMost(5, infinity)).toBe(true);
    expect(inside(5, { least: -infinity, greatest: infinity })).toBe(true);
    expect(Number.isNaN(Number.NaN) && equal(Number.NaN, Number.NaN)).toBe(false);
  });

  it("asks for membership with both ends included", () => {
    const window = { least: 4, greatest: 6 };
    expect([3.999, 4, 5, 6, 6.001].map((value) => inside(value, window))).toEqual([false, true, true, true, false]);
    expect(within({ least: 4, greatest: 5 }, window)).toBe(true);
    expect(within({ least: 4, greatest: 7 }, window)).toBe(false);
  });

  it("finds what windows have in common, or that they have nothing", () => {
    expect(
      overlap([
        { least: 4, greatest: 6 },
        { least: 5, greatest: 8 },
      ]),
    ).toEqual({ least: 5, greatest: 6 });
    expect(
      overlap([
        { least: 4, greatest: 6 },
        { least: 6, greatest: 8 },
      ]),
    ).toEqual({ least: 6, greatest: 6 });
    expect(
      overlap([
        { least: 4, greatest: 5 },
        { least: 6, greatest: 8 },
      ]),
    ).toBeUndefined();
    expect(
      overlap([
        { least: 0.1, greatest: 0.3 },
        { least: 0.1 + 0.2, greatest: 1 },
      ]),
    ).toBeDefined();
  });
});

describe("near names", () => {
  const words = ["rear-derailleur", "front-derailleur", "chain", "chainring", "cassette"];
  it.each([
    ["casette", "cassette"],
    ["Chain", "chain"],
    ["rear-deraileur", "rear-derailleur"],
    ["chainr", "chain"],
    ["front", "front-derailleur"],
    ["pedal", undefined],
    ["", undefined],
    ["x".repeat(10_000), undefined],
  ])("%s", (word, meant) => {
    expect(nearest(word, words)).toBe(meant);
  });

  it("gives the nearest first and no more than asked for", () => {
    expect(nearestSeveral("chan", ["chains", "chain", "chin", "crank"], 2)).toEqual(["chain", "chin"]);
    expect(didYouMean(["a", "b", "c"])).toBe(" Did you mean a, b or c?");
    expect(didYouMean([])).toBe("");
  });
});
