import { type DimensionName, fromBase, toBase, type Unit, unitBySpelling } from "../../grammar/units.ts";
import { otherwiseWritten } from "./as-written.ts";
import { equal, isSingle } from "./compare.ts";
import { displayUnits } from "./display.ts";
import { usualUnit } from "./field-units.ts";
import type { AnyValue, Code, FieldType, Interval, Money, MoneyInterval, Teeth } from "./types.ts";
import { amountText, isCode, isInterval, isMoney } from "./write.ts";
import { decimalText, withUnit } from "./write-number.ts";

/** In which units quantities are shown: the field's metric one, the customary one, or the metric one with the other after it. */
export type DisplayUnits = "metric" | "inch" | "both";

export interface ShowOptions {
  /** The unit to show in; a mass of a kilogram and more is shown in kilograms when this is left out. */
  readonly unit?: string;
  /** Most decimals; by the unit when left out. */
  readonly digits?: number;
  /** Those of the reader when left out; `metric` where the text goes into a file. */
  readonly displayUnits?: DisplayUnits;
}

/** Most decimals that mean something at a bench, by unit. */
const decimalsByUnit: Readonly<Record<string, number>> = {
  mm: 2,
  cm: 2,
  m: 3,
  km: 3,
  in: 3,
  ft: 2,
  g: 0,
  kg: 2,
  lb: 2,
  oz: 1,
  N: 0,
  kgf: 0,
  lbf: 0,
  N·m: 1,
  lbf·in: 0,
  lbf·ft: 1,
  bar: 2,
  psi: 0,
  "°": 2,
  rpm: 0,
  "%": 1,
  Wh: 0,
  W: 0,
  "°C": 0,
  "°F": 0,
};
const otherDecimals = 2;
/** Digits that a shown number has at most when its decimals are not asked for; whole digits are never cut. */
const significantDigits = 4;
/** No two different numbers need more decimals than this to be told apart. */
const mostDecimals = 12;

/** The customary unit of a dimension where metric ones are not wanted. */
const customaryUnits: Partial<Record<DimensionName, string>> = {
  length: "in",
  area: "in2",
  mass: "lb",
  force: "lbf",
  torque: "lbf·in",
  pressure: "psi",
  stiffness: "lb/in",
  speed: "mph",
  temperature: "°F",
};

/** A quantity in the base unit, for people: rounded to what its unit is good for, zeros at the end left off. */
export function showQuantity(value: number, dimension: DimensionName, options: ShowOptions = {}): string {
  return inUnits(dimension, value, options, (unit) => one(value, unit, options.digits));
}

/** An interval in the base unit: `4 to 6 N·m`, `at least 20 mm`, `up to 5 N·m`, or one number where it is one. */
export function showInterval(interval: Interval, dimension: DimensionName, options: ShowOptions = {}): string {
  const ends = [interval.least, interval.greatest].filter(Number.isFinite);
  if (ends.length === 0) return "any";
  return inUnits(dimension, interval, options, (unit) => oneInterval(interval, unit, options.digits));
}

/**
 * Two quantities that are compared, shown alike and with as many decimals as it takes to tell them apart; equal ones
 * (within the slack of compare.ts) are shown the same.
 */
export function showPair(
  first: number,
  second: number,
  dimension: DimensionName,
  options: ShowOptions = {},
): readonly [string, string] {
  const [a = "", b = ""] = showSeveral([first, second], dimension, options);
  return [a, b];
}

/** Several quantities shown in one unit, with as many decimals as it takes to tell the different ones apart. */
export function showSeveral(values: readonly number[], dimension: DimensionName, options: ShowOptions = {}): string[] {
  const unit = shownUnit(dimension, values, options);
  const usual =
    decimalsAsked(options.digits) ?? Math.max(0, ...values.map((value) => decimalsFor(fromBase(value, unit), unit)));
  let digits = usual;
  const sorted = [...values].sort((a, b) => a - b);
  // Equal ones are shown as the least of them, or rounding could part them.
  const shownAs = new Map<number, number>();
  let least: number | undefined;
  for (const value of sorted) {
    if (least === undefined || !equal(least, value)) least = value;
    shownAs.set(value, least);
  }
  const different = [...new Set(shownAs.values())];
  const areAlike = () =>
    different.some(
      (value, index) => index > 0 && one(value, unit, digits) === one(different[index - 1] ?? 0, unit, digits),
    );
  while (digits < mostDecimals && areAlike()) digits += 1;
  return values.map((value) =>
    showQuantity(shownAs.get(value) ?? value, dimension, { ...options, unit: unit.symbol, digits }),
  );
}

/** A sum with the decimals of its currency. */
export function showMoney(money: Money): string {
  return `${money.currency} ${amountText(roundedAmount(money.amount), money.currency)}`;
}

export function showMoneyInterval(interval: MoneyInterval): string {
  const show = (amount: number) => showMoney({ currency: interval.currency, amount });
  const { least, greatest } = interval;
  if (!Number.isFinite(least)) return Number.isFinite(greatest) ? `up to ${show(greatest)}` : "any";
  if (!Number.isFinite(greatest)) return `at least ${show(least)}`;
  return isSingle(interval)
    ? show(least)
    : `${show(least)} to ${amountText(roundedAmount(greatest), interval.currency)}`;
}

/** `10-12-14`, in the order given. */
export function showTeeth(teeth: Teeth): string {
  return teeth.join("-");
}

/**
 * Numbers that are worked out in a unit of their own, such as results of a calculation, in the units of the reader.
 * @param shown the numbers with their unit as the calculation would have them.
 */
export function showWorkedOut(values: readonly number[], unitSpelling: string, shown: string): string {
  const units = displayUnits();
  const unit = units === "metric" ? undefined : unitBySpelling(unitSpelling);
  const customary = unit && customaryUnit(unit.dimension);
  if (!unit || !customary || customary === unit) return shown;
  const other = withUnit(
    values.map((value) => number(toBase(value, unit), customary, undefined)).join(", "),
    customary.symbol,
  );
  return units === "inch" ? other : `${shown} (${other})`;
}

/** A plain number, such as a ratio. */
export function showNumber(value: number, digits?: number): string {
  return decimalText(value, digits ?? Math.min(3, Math.max(0, significantDigits - wholeDigits(value))));
}

/** A share of one as a percentage: `showShare(0.255)` is `25.5 %`. */
export function showShare(share: number, digits = 1): string {
  return withUnit(decimalText(share * 100, digits), "%");
}

/** Any value of a field, for people. */
export function showValue(type: FieldType, value: AnyValue, options: ShowOptions = {}): string {
  const ofField = type.type === "quantity" && type.unit !== undefined ? { unit: type.unit, ...options } : options;
  if (typeof value === "boolean") return value ? "yes" : "no";
  if (typeof value === "string") return value;
  if (typeof value === "number") {
    if (type.type === "quantity") return showQuantity(value, type.dimension, ofField);
    if (type.type === "count" && type.unit !== undefined) return `${value} ${type.unit}`;
    return showNumber(value, options.digits);
  }
  if (isMoney(value)) return showMoney(value);
  if (isCode(value)) return value.code;
  if (isInterval(value)) {
    if ("currency" in value) return showMoneyInterval(value);
    if (type.type === "quantity") return showInterval(value, type.dimension, ofField);
    return intervalText(value, (number) => showNumber(number, options.digits), "");
  }
  if (type.type === "teeth") return `${showTeeth(value as Teeth)} t`;
  if (type.type === "quantities") return showSeveral(value as readonly number[], type.dimension, ofField).join(", ");
  return (value as readonly (string | number | Code)[])
    .map((item) => (typeof item === "object" ? item.code : String(item)))
    .join(", ");
}

function inUnits(
  dimension: DimensionName,
  value: number | Interval,
  options: ShowOptions,
  show: (unit: Unit) => string,
): string {
  const values = typeof value === "object" ? [value.least, value.greatest].filter(Number.isFinite) : [value];
  const unit = shownUnit(dimension, values, options);
  const text = show(unit);
  if ((options.displayUnits ?? displayUnits()) !== "both") {
    const written = options.displayUnits === undefined ? otherwiseWritten(value, unit) : undefined;
    return written === undefined ? text : `${written} (${text})`;
  }
  const other = customaryUnit(dimension);
  if (other === undefined || other === unit) return text;
  // Decimals were asked for in the first unit; the second has its own.
  return `${text} (${options.digits === undefined ? show(other) : showAlike(values, unit, other, options.digits)})`;
}

/** Values in another unit, with decimals enough for the same fineness as `digits` decimals of the first one. */
function showAlike(values: readonly number[], unit: Unit, other: Unit, digits: number): string {
  const finer = Math.ceil(Math.log10(Math.max(other.factor / unit.factor, 1e-12)));
  const places = Math.min(mostDecimals, Math.max(0, digits + finer));
  return values.length === 1
    ? one(values[0] ?? 0, other, places)
    : oneInterval({ least: values[0] ?? 0, greatest: values[1] ?? 0 }, other, places);
}

function customaryUnit(dimension: DimensionName): Unit | undefined {
  const symbol = customaryUnits[dimension];
  return symbol === undefined ? undefined : unitBySpelling(symbol);
}

function shownUnit(dimension: DimensionName, values: readonly number[], options: ShowOptions): Unit {
  const customary = (options.displayUnits ?? displayUnits()) === "inch" ? customaryUnit(dimension) : undefined;
  if (customary !== undefined) return customary;
  if (dimension === "mass" && options.unit === undefined && values.some((value) => Math.abs(value) >= 1000)) {
    return unitBySpelling("kg") ?? usualUnit({ dimension });
  }
  return usualUnit({ dimension, ...(options.unit === undefined ? {} : { unit: options.unit }) });
}

function wholeDigits(value: number): number {
  const size = Math.abs(value);
  return size < 1 || !Number.isFinite(size) ? 1 : Math.floor(Math.log10(size)) + 1;
}

function decimalsFor(value: number, unit: Unit): number {
  // A chain is worn at 0.75 %; a sag is not set to a tenth of that.
  const most =
    unit.symbol === "%" && Math.abs(value) < 2 ? otherDecimals : (decimalsByUnit[unit.symbol] ?? otherDecimals);
  return Math.max(0, Math.min(most, significantDigits - wholeDigits(value)));
}

/** Decimals that can be counted up from: whole, and from none to the most. */
function decimalsAsked(digits: number | undefined): number | undefined {
  return digits === undefined || Number.isNaN(digits)
    ? undefined
    : Math.min(Math.max(Math.trunc(digits), 0), mostDecimals);
}

function number(value: number, unit: Unit, digits: number | undefined): string {
  const inUnit = fromBase(value, unit);
  return decimalText(inUnit, digits ?? decimalsFor(inUnit, unit));
}

function one(value: number, unit: Unit, digits: number | undefined): string {
  return withUnit(number(value, unit, digits), unit.symbol);
}

function oneInterval(interval: Interval, unit: Unit, digits: number | undefined): string {
  // The finer of the two ends decides, and the two never look the same when they are not.
  const ends = [interval.least, interval.greatest].filter(Number.isFinite);
  let places = decimalsAsked(digits) ?? Math.max(0, ...ends.map((end) => decimalsFor(fromBase(end, unit), unit)));
  if (ends.length === 2 && !isSingle(interval)) {
    while (places < mostDecimals && number(interval.least, unit, places) === number(interval.greatest, unit, places)) {
      places += 1;
    }
  }
  return intervalText(interval, (end) => number(end, unit, places), unit.symbol);
}

function intervalText(interval: Interval, show: (value: number) => string, unit: string): string {
  const { least, greatest } = interval;
  if (least === greatest) return withUnit(show(least), unit);
  if (!Number.isFinite(least)) return Number.isFinite(greatest) ? `up to ${withUnit(show(greatest), unit)}` : "any";
  if (!Number.isFinite(greatest)) return `at least ${withUnit(show(least), unit)}`;
  const [from, to] = [show(least), show(greatest)];
  return withUnit(from === to ? from : `${from} to ${to}`, unit);
}

/** Sums carry the noise of adding binary fractions; a millionth of a unit of money is none. */
function roundedAmount(amount: number): number {
  return Math.abs(amount) < 1e9 ? Number(amount.toFixed(6)) : amount;
}
