import { type Unit as MathUnit, unit as mathUnit } from "mathjs";
import { describe, expect, it } from "vitest";
import {
  baseUnit,
  convert,
  dimensionNames,
  dimensions,
  fromBase,
  teethSpellings,
  toBase,
  type Unit,
  unitByLooseSpelling,
  unitBySpelling,
  units,
  unitsOf,
} from "../../grammar/units.ts";
import { measure, multiply } from "../../server/values/dimensions.ts";

function unit(symbol: string): Unit {
  const found = unitBySpelling(symbol);
  if (found === undefined) throw new Error(`no unit ${symbol}`);
  return found;
}

/** NIST Special Publication 811 (2008), appendix B.8, to the digits printed there; exact ones marked by it in bold. */
const nist811: [number, string, number, string, number][] = [
  [1, "in", 25.4, "mm", 0],
  [1, "ft", 0.3048, "m", 0],
  [1, "mi", 1.609344, "km", 0],
  [1, "in2", 645.16, "mm2", 0],
  [1, "lb", 0.45359237, "kg", 0],
  [1, "oz", 28.34952, "g", 5e-6],
  [1, "st", 6.350293, "kg", 5e-7],
  [1, "kgf", 9.80665, "N", 0],
  [1, "lbf", 4.448222, "N", 5e-7],
  [1, "lbf·in", 0.1129848, "N·m", 5e-8],
  [1, "lbf·ft", 1.355818, "N·m", 5e-7],
  [1, "kgf·m", 9.80665, "N·m", 0],
  [1, "psi", 6.894757, "kPa", 5e-7],
  [1, "lb/in", 175.1268, "N/m", 5e-5],
  [1, "mph", 0.44704, "m/s", 0],
  [1, "mph", 1.609344, "km/h", 0],
  [1, "fl-oz-us", 29.57353, "ml", 5e-6],
  [1, "fl-oz-imp", 28.41306, "ml", 5e-6],
  [1, "Wh", 3.6, "kJ", 0],
  [1, "Wh", 3600, "J", 0],
];

/** BIPM, The International System of Units (9th edition, 2019), tables 2, 4, 7 and 8. */
const siBrochure: [number, string, number, string, number][] = [
  [1, "h", 3600, "s", 0],
  [1, "d", 86_400, "s", 0],
  [1, "l", 1000, "ml", 0],
  [180, "°", Math.PI, "rad", 1e-15],
  [1, "bar", 100, "kPa", 0],
  [1, "MPa", 10, "bar", 0],
  [0, "°C", 273.15, "K", 0],
];

/** Fixed points of the Fahrenheit scale as NIST SP 811 B.8 defines it: t(°C) = (t(°F) - 32)/1.8. */
const fahrenheit: [number, string, number, string, number][] = [
  [32, "°F", 0, "°C", 0],
  [212, "°F", 100, "°C", 1e-12],
  [-40, "°F", -40, "°C", 1e-12],
  [-459.67, "°F", 0, "K", 1e-12],
];

describe("published factors", () => {
  it.each([...nist811, ...siBrochure, ...fahrenheit])("%d %s is %d %s", (value, from, expected, to, tolerance) => {
    const converted = convert(value, unit(from), unit(to));
    expect(converted).toBeDefined();
    // Exact in decimal; binary fractions may be off in the last place.
    expect(Math.abs((converted ?? Number.NaN) - expected)).toBeLessThanOrEqual(tolerance + Math.abs(expected) * 1e-15);
  });

  /** Pairs printed side by side in trade and industry tables; each is the other to the digits printed. */
  it.each([
    // Bolt torque tables of fastener dealers: 54 in-lb printed for 6.1012 N·m, 225 in-lb for 25.4216 N·m.
    [54, "in-lb", 6.1012, "N·m", 5e-5],
    [225, "in-lb", 25.4216, "N·m", 5e-5],
    // The straight-side limit of 5 bar is printed as 72.5 psi. Common practice, no source.
    [5, "bar", 72.5, "psi", 0.05],
    // 100 and 120 kgf of spoke tension: worked out from standard gravity.
    [120, "kgf", 1176.798, "N", 5e-4],
    // JIS B 0225: the 9/16 in pedal thread has a major diameter of 14.2875 mm.
    [9 / 16, "in", 14.2875, "mm", 1e-12],
    // A spring rate, worked out from the exact factors.
    [72, "N/mm", 411.1306, "lb/in", 5e-5],
  ] as const)("%d %s is printed as %d %s", (value, from, expected, to, tolerance) => {
    expect(Math.abs((convert(value, unit(from), unit(to)) ?? Number.NaN) - expected)).toBeLessThanOrEqual(tolerance);
  });
});

/** The same units in mathjs, which has a table of its own. */
const inMathjs: Record<string, string> = {
  mm2: "mm^2",
  cm2: "cm^2",
  m2: "m^2",
  in2: "in^2",
  "fl-oz-us": "fluidounce",
  g: "g",
  st: "stone",
  daN: "daN",
  N·m: "N m",
  N·cm: "N cm",
  N·mm: "N mm",
  lbf·in: "lbf in",
  lbf·ft: "lbf ft",
  kgf·cm: "kgf cm",
  kgf·m: "kgf m",
  "°": "deg",
  "°C": "degC",
  "°F": "degF",
  d: "day",
  h: "hour",
  min: "minute",
  "km/h": "km/hour",
  mph: "mi/hour",
  "lb/in": "lbf/in",
  l: "litre",
  lb: "lbm",
  Ah: "A hour",
  mAh: "mA hour",
  Wh: "W hour",
  kWh: "kW hour",
  rad: "rad",
  kgf: "kgf",
  "kgf/mm": "kgf/mm",
};
/** What mathjs does not have: see their published factors above, or they are the dimension's only unit. */
const notInMathjs = new Set(["fl-oz-imp", "rpm", "lm", "lx", "%"]);

function oracle(value: number, from: Unit, to: Unit): number {
  const name = (one: Unit) => inMathjs[one.symbol] ?? one.symbol;
  const asked: MathUnit = mathUnit(value, name(from));
  return asked.toNumber(name(to));
}

describe("mathjs as an independent table", () => {
  const shared = units.filter((one) => !notInMathjs.has(one.symbol));

  it("covers nearly all units", () => {
    expect(shared.length).toBeGreaterThan(60);
  });

  it.each(shared.map((one) => [one.symbol, one] as const))("%s agrees both ways", (_symbol, one) => {
    const base = baseUnit(one.dimension);
    // mathjs holds the psi as 6894.75729276459 Pa, off in the eleventh digit.
    const agreement = one.symbol === "psi" ? 1e-10 : 1e-12;
    for (const value of [1, 12.5, 400]) {
      const inBase = oracle(value, one, base);
      expect(Math.abs(toBase(value, one) - inBase)).toBeLessThanOrEqual(Math.abs(inBase) * agreement + 1e-12);
      const expected = oracle(value, base, one);
      expect(Math.abs(fromBase(value, one) - expected)).toBeLessThanOrEqual(Math.abs(expected) * agreement + 1e-12);
    }
  });

  it("agrees on the dimension and the scale of every product of two dimensions", () => {
    const named = dimensionNames.filter(
      (name) => !["luminous-flux", "illuminance", "ratio", "cadence", "temperature", "angle"].includes(name),
    );
    let compared = 0;
    for (const a of named) {
      for (const b of named) {
        const product = multiply(measure(3, a), measure(5, b));
        if (!("measure" in product)) throw new Error(product.wrong);
        const base = (name: (typeof named)[number]) => inMathjs[dimensions[name].base] ?? dimensions[name].base;
        const expected = mathUnit(3, base(a)).multiply(mathUnit(5, base(b))) as unknown as MathUnit;
        // kg, m, s, A: what a measure is held in.
        const { mass = 0, length = 0, time = 0, current = 0 } = product.measure.vector;
        const coherent = `kg^${mass} m^${length} s^${time} A^${current}`;
        const number = expected.toNumeric(coherent) as number;
        expect(product.measure.value / number).toBeCloseTo(1, 9);
        compared += 1;
      }
    }
    expect(compared).toBe(named.length ** 2);
  });
});

describe("the table itself", () => {
  it("has no spelling for two units", () => {
    const seen = new Map<string, string>();
    for (const one of units) {
      for (const spelling of new Set([one.symbol, ...one.spellings])) {
        expect(seen.get(spelling), spelling).toBeUndefined();
        seen.set(spelling, one.symbol);
      }
    }
  });

  it.each(dimensionNames)("%s has a base unit of factor one, among its units", (name) => {
    const base = baseUnit(name);
    expect(base.dimension).toBe(name);
    expect(base.factor).toBe(1);
    expect(base.offset).toBe(0);
    expect(unitsOf(name)).toContain(base);
  });

  it("spells units in words that the lexer keeps whole", () => {
    for (const one of units) {
      for (const spelling of [one.symbol, ...one.spellings]) {
        expect(spelling).not.toMatch(/[{}()[\];:<>="]|\/\//);
        expect(one.symbol).not.toContain(" ");
      }
    }
  });

  it("tells capitals apart where they matter", () => {
    expect(unitBySpelling("mV")?.symbol).toBe("mV");
    expect(unitBySpelling("MV")).toBeUndefined();
    expect(unitBySpelling("M")).toBeUndefined();
    expect(unitByLooseSpelling("M")).toBeUndefined();
    expect(unitByLooseSpelling("Mm")?.symbol).toBe("mm");
    expect(unitBySpelling("KG")?.symbol).toBe("kg");
    expect(unitBySpelling("K")?.dimension).toBe("temperature");
  });

  it("takes no tooth count for a unit, so that 50-34 t stays a list", () => {
    for (const spelling of teethSpellings) expect(unitBySpelling(spelling)).toBeUndefined();
  });

  it("refuses to convert between dimensions", () => {
    expect(convert(1, unit("kg"), unit("N"))).toBeUndefined();
  });
});
