import { describe, expect, it } from "vitest";
import {
  showInterval,
  showMoney,
  showMoneyInterval,
  showPair,
  showQuantity,
  showSeveral,
  showShare,
  showTeeth,
  showValue,
} from "../../server/values/show.ts";

const infinity = Number.POSITIVE_INFINITY;

describe("quantities for people", () => {
  it.each([
    [20, "length", {}, "20 mm"],
    [27.2, "length", {}, "27.2 mm"],
    [0.1 + 0.2, "length", {}, "0.3 mm"],
    // Worked out: Wikipedia "Spoke", 292.1776.
    [292.1776, "length", {}, "292.2 mm"],
    [292.1776, "length", { digits: 3 }, "292.178 mm"],
    [2105, "length", {}, "2105 mm"],
    [-0.0001, "length", {}, "0 mm"],
    [-5, "length", {}, "-5 mm"],
    [40, "torque", {}, "40 N·m"],
    [372, "mass", {}, "372 g"],
    [12_460, "mass", {}, "12.46 kg"],
    [12_460, "mass", { unit: "g" }, "12460 g"],
    [73.5, "angle", {}, "73.5°"],
    [25.5, "ratio", {}, "25.5 %"],
    [1.6, "pressure", {}, "1.6 bar"],
    // 5 bar is printed as 72.5 or 73 psi; whole psi are shown. Common practice, no source.
    [5, "pressure", { displayUnits: "inch" }, "73 psi"],
    [5, "pressure", { displayUnits: "both" }, "5 bar (73 psi)"],
    [5, "pressure", { displayUnits: "metric" }, "5 bar"],
    [40, "torque", { displayUnits: "both" }, "40 N·m (354 lbf·in)"],
    [28.575, "length", { displayUnits: "inch" }, "1.125 in"],
    [28.575, "length", { displayUnits: "both", digits: 1 }, "28.6 mm (1.125 in)"],
    [12, "voltage", { displayUnits: "both" }, "12 V"],
    [20, "temperature", { displayUnits: "inch" }, "68 °F"],
    [20, "length", { unit: "not a unit" }, "20 mm"],
    [20, "length", { unit: "kg" }, "20 mm"],
  ] as const)("%d %s %o: %s", (value, dimension, options, shown) => {
    expect(showQuantity(value, dimension, options)).toBe(shown);
  });

  it.each([
    [{ least: 4, greatest: 6 }, "torque", "4 to 6 N·m"],
    [{ least: 20, greatest: infinity }, "length", "at least 20 mm"],
    [{ least: -infinity, greatest: 5 }, "torque", "up to 5 N·m"],
    [{ least: 5, greatest: 5 }, "torque", "5 N·m"],
    [{ least: -infinity, greatest: infinity }, "torque", "any"],
    [{ least: 27.15, greatest: 27.25 }, "length", "27.15 to 27.25 mm"],
    [{ least: 27.2, greatest: 27.201 }, "length", "27.2 to 27.201 mm"],
    [{ least: 900, greatest: 1200 }, "mass", "0.9 to 1.2 kg"],
  ] as const)("%o %s: %s", (interval, dimension, shown) => {
    expect(showInterval(interval, dimension)).toBe(shown);
  });

  it("shows an interval in both units", () => {
    expect(showInterval({ least: 4, greatest: 6 }, "torque", { displayUnits: "both" })).toBe(
      "4 to 6 N·m (35 to 53 lbf·in)",
    );
  });
});

describe("two numbers that are compared", () => {
  it.each([
    [31.6, 31.8, ["31.6 mm", "31.8 mm"]],
    [292.14, 292.16, ["292.1 mm", "292.2 mm"]],
    [292.11, 292.12, ["292.11 mm", "292.12 mm"]],
    [27.2, 27.2004, ["27.2 mm", "27.2004 mm"]],
    [30, 30 * (1 + 1e-12), ["30 mm", "30 mm"]],
  ] as const)("%d and %d", (first, second, shown) => {
    expect(showPair(first, second, "length")).toEqual(shown);
  });

  it("uses one unit for both, and tells grams apart that kilograms would hide", () => {
    expect(showPair(900, 12_500, "mass")).toEqual(["0.9 kg", "12.5 kg"]);
    expect(showPair(12_500, 12_501, "mass")).toEqual(["12.5 kg", "12.501 kg"]);
  });

  it("tells apart every two of several that differ", () => {
    const shown = showSeveral([1.001, 1.002, 1.001], "pressure");
    expect(shown).toEqual(["1.001 bar", "1.002 bar", "1.001 bar"]);
  });
});

describe("other values for people", () => {
  it("money has the decimals of its currency, and never the noise of adding", () => {
    expect(showMoney({ currency: "GBP", amount: 184 })).toBe("GBP 184.00");
    expect(showMoney({ currency: "GBP", amount: 0.1 + 0.2 })).toBe("GBP 0.30");
    expect(showMoney({ currency: "JPY", amount: 184 })).toBe("JPY 184");
    expect(showMoneyInterval({ currency: "GBP", least: -infinity, greatest: 3200 })).toBe("up to GBP 3200.00");
    expect(showMoneyInterval({ currency: "GBP", least: 1, greatest: 2 })).toBe("GBP 1.00 to 2.00");
  });

  it("teeth, shares, and values by their field", () => {
    expect(showTeeth([10, 12, 14])).toBe("10-12-14");
    expect(showShare(0.255)).toBe("25.5 %");
    expect(showValue({ type: "teeth" }, [10, 12])).toBe("10-12 t");
    expect(showValue({ type: "yes-no" }, true)).toBe("yes");
    expect(
      showValue({ type: "codes", family: "axle" }, [
        { family: "axle", code: "12x142" },
        { family: "axle", code: "12x148" },
      ]),
    ).toBe("12x142, 12x148");
    expect(showValue({ type: "quantities", dimension: "force" }, [1180, 1150])).toBe("1180 N, 1150 N");
    expect(showValue({ type: "number", role: "exact" }, 2 / 3)).toBe("0.667");
    expect(showValue({ type: "quantity", dimension: "mass", role: "exact", unit: "kg" }, 900)).toBe("0.9 kg");
  });
});
