/**
 * Every unit of measurement a value can be written in, with its exact factor by definition.
 *
 * Sources of the factors:
 * - inch, foot, mile, pound: international yard and pound agreement of 1959 (yard = 0.9144 m, pound = 0.45359237 kg);
 * - standard gravity 9.80665 m/s2: third General Conference on Weights and Measures (1901);
 * - N, Pa, W, V, litre, hour, degree, degree Celsius: BIPM, "The International System of Units", 9th edition;
 * - US fluid ounce: 231 cubic inches to the gallon, 128 to the gallon; imperial: 4.54609 litres to the gallon, 160 to it.
 */

/** Exponents of the base dimensions; an exponent that is left out is zero. */
export interface DimensionVector {
  readonly length?: number;
  readonly mass?: number;
  readonly time?: number;
  readonly angle?: number;
  readonly temperature?: number;
  readonly current?: number;
  readonly light?: number;
  readonly money?: number;
}

interface DimensionRow {
  /** For messages: "a torque is written in ...". */
  readonly title: string;
  /** Canonical spelling of the unit that numbers inside the program are in. */
  readonly base: string;
  readonly vector: DimensionVector;
  /** One base unit in the coherent units m, kg, s, degree, K, A and lm: what a product of base units has to be scaled by. */
  readonly scale: number;
}

/**
 * Dimensions with their base units. Torque and energy share a vector, as in the SI; revolutions are counted, not
 * measured as angles, so that a development times a cadence is a speed.
 */
const dimensionTable = {
  length: { title: "length", base: "mm", vector: { length: 1 }, scale: 1e-3 },
  area: { title: "area", base: "mm2", vector: { length: 2 }, scale: 1e-6 },
  volume: { title: "volume", base: "ml", vector: { length: 3 }, scale: 1e-6 },
  mass: { title: "mass", base: "g", vector: { mass: 1 }, scale: 1e-3 },
  force: { title: "force", base: "N", vector: { length: 1, mass: 1, time: -2 }, scale: 1 },
  torque: { title: "torque", base: "N·m", vector: { length: 2, mass: 1, time: -2 }, scale: 1 },
  pressure: { title: "pressure", base: "bar", vector: { length: -1, mass: 1, time: -2 }, scale: 1e5 },
  stiffness: { title: "stiffness", base: "N/mm", vector: { mass: 1, time: -2 }, scale: 1e3 },
  angle: { title: "angle", base: "°", vector: { angle: 1 }, scale: 1 },
  time: { title: "time", base: "s", vector: { time: 1 }, scale: 1 },
  speed: { title: "speed", base: "km/h", vector: { length: 1, time: -1 }, scale: 1 / 3.6 },
  cadence: { title: "cadence", base: "rpm", vector: { time: -1 }, scale: 1 / 60 },
  energy: { title: "energy", base: "Wh", vector: { length: 2, mass: 1, time: -2 }, scale: 3600 },
  power: { title: "power", base: "W", vector: { length: 2, mass: 1, time: -3 }, scale: 1 },
  voltage: { title: "voltage", base: "V", vector: { length: 2, mass: 1, time: -3, current: -1 }, scale: 1 },
  current: { title: "current", base: "A", vector: { current: 1 }, scale: 1 },
  charge: { title: "charge", base: "Ah", vector: { time: 1, current: 1 }, scale: 3600 },
  temperature: { title: "temperature", base: "°C", vector: { temperature: 1 }, scale: 1 },
  "luminous-flux": { title: "luminous flux", base: "lm", vector: { light: 1 }, scale: 1 },
  illuminance: { title: "illuminance", base: "lx", vector: { light: 1, length: -2 }, scale: 1 },
  ratio: { title: "percentage", base: "%", vector: {}, scale: 0.01 },
} as const satisfies Record<string, DimensionRow>;

export type DimensionName = keyof typeof dimensionTable;

export const dimensions: Readonly<Record<DimensionName, DimensionRow>> = dimensionTable;
export const dimensionNames = Object.keys(dimensionTable) as readonly DimensionName[];

export interface Unit {
  /** The canonical spelling, as the formatter writes it. */
  readonly symbol: string;
  readonly dimension: DimensionName;
  /** One of this unit in the dimension's base unit. */
  readonly factor: number;
  /** The reading in this unit at the zero of the base unit: 32 for °F, else mostly zero. */
  readonly offset: number;
  /** Other spellings that are accepted and rewritten, case-sensitive. */
  readonly spellings: readonly string[];
  /** In words, for speech and for help. */
  readonly name: string;
}

const inch = 25.4;
const pound = 453.59237;
const kilogramForce = 9.80665;
const poundForce = 4.4482216152605;
/** 0.45359237 × 9.80665 × 0.0254, exact in decimal. */
const poundForceInch = 0.1129848290276167;

/** `N·m` written in the ways people write a product: glued, with a dot, a dash, a cross or a blank. */
function products(first: readonly string[], second: readonly string[]): string[] {
  const spellings: string[] = [];
  for (const a of first) {
    for (const b of second) {
      for (const sign of ["·", "⋅", "•", "∙", ".", "-", "*", "×", " "]) spellings.push(`${a}${sign}${b}`);
    }
  }
  return spellings;
}

const pounds = ["lb", "lbs", "lbf"];
const inches = ["in", "ins", "inch", "inches"];
const feet = ["ft", "foot", "feet"];

function unit(
  symbol: string,
  dimension: DimensionName,
  factor: number,
  name: string,
  spellings: readonly string[],
  offset = 0,
): Unit {
  return { symbol, dimension, factor, offset, name, spellings };
}

/** The table. Within a dimension the most usual unit comes first: it is the first one offered. */
const unitTable: readonly Unit[] = [
  unit("mm", "length", 1, "millimetres", ["millimetre", "millimetres", "millimeter", "millimeters"]),
  unit("cm", "length", 10, "centimetres", ["centimetre", "centimetres", "centimeter", "centimeters"]),
  unit("m", "length", 1000, "metres", ["metre", "metres", "meter", "meters"]),
  unit("km", "length", 1_000_000, "kilometres", ["kilometre", "kilometres", "kilometer", "kilometers"]),
  unit("in", "length", inch, "inches", ["inch", "inches", "ins", "″", "”"]),
  unit("ft", "length", 12 * inch, "feet", ["foot", "feet"]),
  unit("mi", "length", 63_360 * inch, "miles", ["mile", "miles"]),

  unit("mm2", "area", 1, "square millimetres", ["mm²", "mm^2", "sq-mm"]),
  unit("cm2", "area", 100, "square centimetres", ["cm²", "cm^2", "sq-cm"]),
  unit("m2", "area", 1_000_000, "square metres", ["m²", "m^2", "sq-m"]),
  unit("in2", "area", 645.16, "square inches", ["in²", "in^2", "sq-in"]),

  unit("ml", "volume", 1, "millilitres", [
    "mL",
    "cc",
    "cm3",
    "cm³",
    "cm^3",
    "millilitre",
    "millilitres",
    "milliliter",
    "milliliters",
  ]),
  unit("l", "volume", 1000, "litres", ["L", "litre", "litres", "liter", "liters"]),
  unit("fl-oz-us", "volume", 29.5735295625, "US fluid ounces", [
    "us-fl-oz",
    "US-fl-oz",
    "fl-oz-US",
    "US fl oz",
    "fl oz US",
  ]),
  unit("fl-oz-imp", "volume", 28.4130625, "imperial fluid ounces", [
    "imp-fl-oz",
    "UK-fl-oz",
    "fl-oz-UK",
    "fl-oz-uk",
    "imp fl oz",
    "fl oz imp",
  ]),

  unit("g", "mass", 1, "grams", ["gr", "gm", "gram", "grams", "gramme", "grammes"]),
  unit("kg", "mass", 1000, "kilograms", [
    "kgs",
    "Kg",
    "KG",
    "kilo",
    "kilos",
    "kilogram",
    "kilograms",
    "kilogramme",
    "kilogrammes",
  ]),
  unit("lb", "mass", pound, "pounds", ["lbs", "pound", "pounds"]),
  unit("oz", "mass", 28.349523125, "ounces", ["ozs", "ounce", "ounces"]),
  unit("st", "mass", 14 * pound, "stones", ["stone", "stones"]),

  unit("N", "force", 1, "newtons", ["newton", "newtons"]),
  unit("daN", "force", 10, "decanewtons", []),
  unit("kN", "force", 1000, "kilonewtons", ["KN", "kilonewton", "kilonewtons"]),
  unit("kgf", "force", kilogramForce, "kilograms-force", ["kg-f", "kgF", "Kgf", "KGF", "kp"]),
  unit("lbf", "force", poundForce, "pounds-force", ["lb-f", "lbF", "lbsf"]),

  unit("N·m", "torque", 1, "newton-metres", [
    "Nm",
    "NM",
    "newton-metre",
    "newton-metres",
    "newton-meter",
    "newton-meters",
    ...products(["N"], ["m"]),
  ]),
  unit("N·cm", "torque", 0.01, "newton-centimetres", ["Ncm", ...products(["N"], ["cm"])]),
  unit("N·mm", "torque", 0.001, "newton-millimetres", ["Nmm", ...products(["N"], ["mm"])]),
  unit("lbf·in", "torque", poundForceInch, "pound-force inches", [
    "inlb",
    "inlbs",
    "inch-pound",
    "inch-pounds",
    ...products(pounds, inches),
    ...products(inches, pounds),
  ]),
  unit("lbf·ft", "torque", 12 * poundForceInch, "pound-force feet", [
    "ftlb",
    "ftlbs",
    "foot-pound",
    "foot-pounds",
    ...products(pounds, feet),
    ...products(feet, pounds),
  ]),
  unit("kgf·cm", "torque", 0.0980665, "kilogram-force centimetres", [
    "kgcm",
    "kgfcm",
    ...products(["kg", "kgf"], ["cm"]),
  ]),
  unit("kgf·m", "torque", kilogramForce, "kilogram-force metres", ["kgm", "kgfm", ...products(["kg", "kgf"], ["m"])]),

  unit("bar", "pressure", 1, "bar", ["bars", "Bar", "BAR"]),
  unit("psi", "pressure", (10 * poundForce) / 645.16, "pounds-force per square inch", [
    "PSI",
    "Psi",
    "lbf/in2",
    "lbf/in²",
    "lb/in2",
    "lb/in²",
  ]),
  unit("kPa", "pressure", 0.01, "kilopascals", ["KPa", "kpa", "KPA"]),
  unit("MPa", "pressure", 10, "megapascals", ["N/mm2", "N/mm²"]),
  unit("hPa", "pressure", 0.001, "hectopascals", ["mbar"]),
  unit("Pa", "pressure", 0.00001, "pascals", ["pascal", "pascals"]),

  unit("N/mm", "stiffness", 1, "newtons per millimetre", ["kN/m"]),
  unit("N/m", "stiffness", 0.001, "newtons per metre", []),
  unit("lb/in", "stiffness", poundForce / inch, "pounds-force per inch", [
    "lbs/in",
    "lbf/in",
    "lb/inch",
    "lbs/inch",
    "lbf/inch",
  ]),
  unit("kgf/mm", "stiffness", kilogramForce, "kilograms-force per millimetre", ["kg/mm"]),

  unit("°", "angle", 1, "degrees", ["deg", "degs", "degree", "degrees", "º"]),
  unit("rad", "angle", 180 / Math.PI, "radians", ["radian", "radians"]),

  unit("s", "time", 1, "seconds", ["sec", "secs", "second", "seconds"]),
  unit("min", "time", 60, "minutes", ["mins", "minute", "minutes"]),
  unit("h", "time", 3600, "hours", ["hr", "hrs", "hour", "hours"]),
  unit("d", "time", 86_400, "days", ["day", "days"]),

  unit("km/h", "speed", 1, "kilometres per hour", ["kph", "KPH", "kmh", "kmph", "km/hr"]),
  unit("mph", "speed", 1.609344, "miles per hour", ["MPH", "mi/h"]),
  unit("m/s", "speed", 3.6, "metres per second", ["m/sec"]),

  unit("rpm", "cadence", 1, "revolutions per minute", ["RPM", "r/min", "rev/min"]),

  unit("Wh", "energy", 1, "watt-hours", ["W·h", "W.h", "watt-hours"]),
  unit("kWh", "energy", 1000, "kilowatt-hours", ["KWh", "kW·h"]),
  unit("J", "energy", 1 / 3600, "joules", ["joule", "joules"]),
  unit("kJ", "energy", 1 / 3.6, "kilojoules", ["KJ"]),

  unit("W", "power", 1, "watts", ["watt", "watts"]),
  unit("kW", "power", 1000, "kilowatts", ["KW"]),

  unit("V", "voltage", 1, "volts", ["volt", "volts"]),
  unit("mV", "voltage", 0.001, "millivolts", []),

  unit("A", "current", 1, "amperes", ["amp", "amps", "ampere", "amperes"]),
  unit("mA", "current", 0.001, "milliamperes", []),

  unit("Ah", "charge", 1, "ampere-hours", ["A·h", "A.h", "AH"]),
  unit("mAh", "charge", 0.001, "milliampere-hours", ["mAH", "mA·h"]),

  unit("°C", "temperature", 1, "degrees Celsius", ["℃", "ºC", "degC", "deg-C", "celsius", "Celsius"]),
  unit("°F", "temperature", 5 / 9, "degrees Fahrenheit", ["℉", "ºF", "degF", "deg-F", "fahrenheit", "Fahrenheit"], 32),
  unit("K", "temperature", 1, "kelvins", ["kelvin", "kelvins"], 273.15),

  unit("lm", "luminous-flux", 1, "lumens", ["lumen", "lumens"]),

  unit("lx", "illuminance", 1, "lux", ["lux"]),

  unit("%", "ratio", 1, "per cent", ["percent", "per-cent", "pc", "pct"]),
];

export const units: readonly Unit[] = unitTable;

/** The words after a count of teeth. They name what is counted and are no unit: `50-34 t` is a list, not a range. */
export const teethSpellings: readonly string[] = ["t", "T", "tooth", "teeth"];

const bySpelling = new Map<string, Unit>();
const byLowerCase = new Map<string, Unit | "several">();
const byDimension = new Map<DimensionName, Unit[]>();
for (const unit of unitTable) {
  for (const spelling of [unit.symbol, ...unit.spellings]) {
    bySpelling.set(spelling, unit);
    const lower = spelling.toLowerCase();
    const other = byLowerCase.get(lower);
    byLowerCase.set(lower, other === undefined || other === unit ? unit : "several");
  }
  const list = byDimension.get(unit.dimension);
  if (list === undefined) byDimension.set(unit.dimension, [unit]);
  else list.push(unit);
}

/** The unit with this spelling, capitals and small letters as written; `Unit.symbol` is the spelling to write. */
export function unitBySpelling(spelling: string): Unit | undefined {
  return bySpelling.get(spelling);
}

/**
 * The unit that this would be if capitals were disregarded, for a finding that offers the right spelling.
 * A single letter never matches, nor does a spelling that means two units (`t` and `T` are not metres or teslas).
 */
export function unitByLooseSpelling(spelling: string): Unit | undefined {
  if (spelling.length < 2) return undefined;
  const found = byLowerCase.get(spelling.toLowerCase());
  return found === "several" ? undefined : found;
}

/** The units of a dimension, the most usual first. */
export function unitsOf(dimension: DimensionName): readonly Unit[] {
  return byDimension.get(dimension) ?? [];
}

/** The unit in which the program holds every number of this dimension. */
export function baseUnit(dimension: DimensionName): Unit {
  const unit = bySpelling.get(dimensions[dimension].base);
  if (unit === undefined) throw new Error(`the unit table has no base unit for ${dimension}`);
  return unit;
}

/** A number in `unit` as a number in the dimension's base unit. */
export function toBase(value: number, unit: Unit): number {
  return (value - unit.offset) * unit.factor;
}

/** A number in the dimension's base unit as a number in `unit`. */
export function fromBase(value: number, unit: Unit): number {
  return value / unit.factor + unit.offset;
}

/** A number in one unit as a number in another; undefined when the two measure different things. */
export function convert(value: number, from: Unit, to: Unit): number | undefined {
  if (from.dimension !== to.dimension) return undefined;
  return from === to ? value : fromBase(toBase(value, from), to);
}
