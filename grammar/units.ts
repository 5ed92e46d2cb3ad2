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
  /** The reading in this unit at the zero of the base unit (32 for °F); zero when left out. */
  readonly offset?: number;
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
const poundForceFoot = 1.3558179483314004;

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

/** The table. Within a dimension the most usual unit comes first: it is the first one offered. */
const unitTable: readonly Unit[] = [
  { symbol: "mm", dimension: "length", factor: 1, spellings: ["millimetre", "millimetres", "millimeter", "millimeters"], name: "millimetres" },
  { symbol: "cm", dimension: "length", factor: 10, spellings: ["centimetre", "centimetres", "centimeter", "centimeters"], name: "centimetres" },
  { symbol: "m", dimension: "length", factor: 1000, spellings: ["metre", "metres", "meter", "meters"], name: "metres" },
  { symbol: "km", dimension: "length", factor: 1_000_000, spellings: ["kilometre", "kilometres", "kilometer", "kilometers"], name: "kilometres" },
  { symbol: "in", dimension: "length", factor: inch, spellings: ["inch", "inches", "ins", "″", "”"], name: "inches" },
  { symbol: "ft", dimension: "length", factor: 12 * inch, spellings: ["foot", "feet"], name: "feet" },
  { symbol: "mi", dimension: "length", factor: 63_360 * inch, spellings: ["mile", "miles"], name: "miles" },

  { symbol: "mm2", dimension: "area", factor: 1, spellings: ["mm²", "mm^2", "sq-mm"], name: "square millimetres" },
  { symbol: "cm2", dimension: "area", factor: 100, spellings: ["cm²", "cm^2", "sq-cm"], name: "square centimetres" },
  { symbol: "m2", dimension: "area", factor: 1_000_000, spellings: ["m²", "m^2", "sq-m"], name: "square metres" },
  { symbol: "in2", dimension: "area", factor: 645.16, spellings: ["in²", "in^2", "sq-in"], name: "square inches" },

  { symbol: "ml", dimension: "volume", factor: 1, spellings: ["mL", "cc", "cm3", "cm³", "cm^3", "millilitre", "millilitres", "milliliter", "milliliters"], name: "millilitres" },
  { symbol: "l", dimension: "volume", factor: 1000, spellings: ["L", "litre", "litres", "liter", "liters"], name: "litres" },
  { symbol: "fl-oz-us", dimension: "volume", factor: 29.5735295625, spellings: ["us-fl-oz", "US-fl-oz", "fl-oz-US", "US fl oz", "fl oz US"], name: "US fluid ounces" },
  { symbol: "fl-oz-imp", dimension: "volume", factor: 28.4130625, spellings: ["imp-fl-oz", "UK-fl-oz", "fl-oz-UK", "fl-oz-uk", "imp fl oz", "fl oz imp"], name: "imperial fluid ounces" },

  { symbol: "g", dimension: "mass", factor: 1, spellings: ["gr", "gm", "gram", "grams", "gramme", "grammes"], name: "grams" },
  { symbol: "kg", dimension: "mass", factor: 1000, spellings: ["kgs", "Kg", "KG", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"], name: "kilograms" },
  { symbol: "lb", dimension: "mass", factor: pound, spellings: ["lbs", "pound", "pounds"], name: "pounds" },
  { symbol: "oz", dimension: "mass", factor: 28.349523125, spellings: ["ozs", "ounce", "ounces"], name: "ounces" },
  { symbol: "st", dimension: "mass", factor: 14 * pound, spellings: ["stone", "stones"], name: "stones" },

  { symbol: "N", dimension: "force", factor: 1, spellings: ["newton", "newtons"], name: "newtons" },
  { symbol: "daN", dimension: "force", factor: 10, spellings: [], name: "decanewtons" },
  { symbol: "kN", dimension: "force", factor: 1000, spellings: ["KN", "kilonewton", "kilonewtons"], name: "kilonewtons" },
  { symbol: "kgf", dimension: "force", factor: kilogramForce, spellings: ["kg-f", "kgF", "Kgf", "KGF", "kp"], name: "kilograms-force" },
  { symbol: "lbf", dimension: "force", factor: poundForce, spellings: ["lb-f", "lbF", "lbsf"], name: "pounds-force" },

  { symbol: "N·m", dimension: "torque", factor: 1, spellings: ["Nm", "NM", "newton-metre", "newton-metres", "newton-meter", "newton-meters", ...products(["N"], ["m"])], name: "newton-metres" },
  { symbol: "N·cm", dimension: "torque", factor: 0.01, spellings: ["Ncm", ...products(["N"], ["cm"])], name: "newton-centimetres" },
  { symbol: "N·mm", dimension: "torque", factor: 0.001, spellings: ["Nmm", ...products(["N"], ["mm"])], name: "newton-millimetres" },
  { symbol: "lbf·in", dimension: "torque", factor: poundForceInch, spellings: ["inlb", "inlbs", "inch-pound", "inch-pounds", ...products(pounds, inches), ...products(inches, pounds)], name: "pound-force inches" },
  { symbol: "lbf·ft", dimension: "torque", factor: poundForceFoot, spellings: ["ftlb", "ftlbs", "foot-pound", "foot-pounds", ...products(pounds, feet), ...products(feet, pounds)], name: "pound-force feet" },
  { symbol: "kgf·cm", dimension: "torque", factor: 0.0980665, spellings: ["kgcm", "kgfcm", ...products(["kg", "kgf"], ["cm"])], name: "kilogram-force centimetres" },
  { symbol: "kgf·m", dimension: "torque", factor: kilogramForce, spellings: ["kgm", "kgfm", ...products(["kg", "kgf"], ["m"])], name: "kilogram-force metres" },

  { symbol: "bar", dimension: "pressure", factor: 1, spellings: ["bars", "Bar", "BAR"], name: "bar" },
  { symbol: "psi", dimension: "pressure", factor: 0.06894757293168361, spellings: ["PSI", "Psi", "lbf/in2", "lbf/in²", "lb/in2", "lb/in²"], name: "pounds-force per square inch" },
  { symbol: "kPa", dimension: "pressure", factor: 0.01, spellings: ["KPa", "kpa", "KPA"], name: "kilopascals" },
  { symbol: "MPa", dimension: "pressure", factor: 10, spellings: ["N/mm2", "N/mm²"], name: "megapascals" },
  { symbol: "hPa", dimension: "pressure", factor: 0.001, spellings: ["mbar"], name: "hectopascals" },
  { symbol: "Pa", dimension: "pressure", factor: 0.00001, spellings: ["pascal", "pascals"], name: "pascals" },

  { symbol: "N/mm", dimension: "stiffness", factor: 1, spellings: ["kN/m"], name: "newtons per millimetre" },
  { symbol: "N/m", dimension: "stiffness", factor: 0.001, spellings: [], name: "newtons per metre" },
  { symbol: "lb/in", dimension: "stiffness", factor: poundForce / inch, spellings: ["lbs/in", "lbf/in", "lb/inch", "lbs/inch", "lbf/inch"], name: "pounds-force per inch" },
  { symbol: "kgf/mm", dimension: "stiffness", factor: kilogramForce, spellings: ["kg/mm"], name: "kilograms-force per millimetre" },

  { symbol: "°", dimension: "angle", factor: 1, spellings: ["deg", "degs", "degree", "degrees", "º"], name: "degrees" },
  { symbol: "rad", dimension: "angle", factor: 180 / Math.PI, spellings: ["radian", "radians"], name: "radians" },

  { symbol: "s", dimension: "time", factor: 1, spellings: ["sec", "secs", "second", "seconds"], name: "seconds" },
  { symbol: "min", dimension: "time", factor: 60, spellings: ["mins", "minute", "minutes"], name: "minutes" },
  { symbol: "h", dimension: "time", factor: 3600, spellings: ["hr", "hrs", "hour", "hours"], name: "hours" },
  { symbol: "d", dimension: "time", factor: 86_400, spellings: ["day", "days"], name: "days" },

  { symbol: "km/h", dimension: "speed", factor: 1, spellings: ["kph", "KPH", "kmh", "kmph", "km/hr"], name: "kilometres per hour" },
  { symbol: "mph", dimension: "speed", factor: 1.609344, spellings: ["MPH", "mi/h"], name: "miles per hour" },
  { symbol: "m/s", dimension: "speed", factor: 3.6, spellings: ["m/sec"], name: "metres per second" },

  { symbol: "rpm", dimension: "cadence", factor: 1, spellings: ["RPM", "r/min", "rev/min", "1/min"], name: "revolutions per minute" },

  { symbol: "Wh", dimension: "energy", factor: 1, spellings: ["W·h", "W.h", "watt-hours"], name: "watt-hours" },
  { symbol: "kWh", dimension: "energy", factor: 1000, spellings: ["KWh", "kW·h"], name: "kilowatt-hours" },
  { symbol: "J", dimension: "energy", factor: 1 / 3600, spellings: ["joule", "joules"], name: "joules" },
  { symbol: "kJ", dimension: "energy", factor: 1 / 3.6, spellings: ["KJ"], name: "kilojoules" },

  { symbol: "W", dimension: "power", factor: 1, spellings: ["watt", "watts"], name: "watts" },
  { symbol: "kW", dimension: "power", factor: 1000, spellings: ["KW"], name: "kilowatts" },

  { symbol: "V", dimension: "voltage", factor: 1, spellings: ["volt", "volts"], name: "volts" },
  { symbol: "mV", dimension: "voltage", factor: 0.001, spellings: [], name: "millivolts" },
  { symbol: "A", dimension: "current", factor: 1, spellings: ["amp", "amps", "ampere", "amperes"], name: "amperes" },
  { symbol: "mA", dimension: "current", factor: 0.001, spellings: [], name: "milliamperes" },
  { symbol: "Ah", dimension: "charge", factor: 1, spellings: ["A·h", "A.h", "AH"], name: "ampere-hours" },
  { symbol: "mAh", dimension: "charge", factor: 0.001, spellings: ["mAH", "mA·h"], name: "milliampere-hours" },

  { symbol: "°C", dimension: "temperature", factor: 1, spellings: ["℃", "ºC", "degC", "deg-C", "celsius", "Celsius"], name: "degrees Celsius" },
  { symbol: "°F", dimension: "temperature", factor: 5 / 9, offset: 32, spellings: ["℉", "ºF", "degF", "deg-F", "fahrenheit", "Fahrenheit"], name: "degrees Fahrenheit" },
  { symbol: "K", dimension: "temperature", factor: 1, offset: 273.15, spellings: ["kelvin", "kelvins"], name: "kelvins" },

  { symbol: "lm", dimension: "luminous-flux", factor: 1, spellings: ["lumen", "lumens"], name: "lumens" },
  { symbol: "lx", dimension: "illuminance", factor: 1, spellings: ["lux"], name: "lux" },

  { symbol: "%", dimension: "ratio", factor: 1, spellings: ["percent", "per-cent", "pc", "pct"], name: "per cent" },
];

export const units: readonly Unit[] = unitTable;

/** The words after a count of teeth. They name what is counted and are no unit: `50-34 t` is a list, not a range. */
export const teethSpellings: readonly string[] = ["t", "T", "tooth", "teeth", "th"];

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
  return (value - (unit.offset ?? 0)) * unit.factor;
}

/** A number in the dimension's base unit as a number in `unit`. */
export function fromBase(value: number, unit: Unit): number {
  return value / unit.factor + (unit.offset ?? 0);
}

/** A number in one unit as a number in another; undefined when the two measure different things. */
export function convert(value: number, from: Unit, to: Unit): number | undefined {
  if (from.dimension !== to.dimension) return undefined;
  return from === to ? value : fromBase(toBase(value, from), to);
}
