import type { Span, ValueToken } from "../../grammar/tree.ts";
import {
  type DimensionName,
  dimensions,
  fromBase,
  toBase,
  type Unit,
  unitByLooseSpelling,
  unitBySpelling,
} from "../../grammar/units.ts";
import { type Bounds, boundsProblem, inBounds } from "./bounds.ts";
import { exampleOf } from "./example.ts";
import { type UnitsOfField, unitsFor, usualUnit } from "./field-units.ts";
import { type Operand, type OperandReading, operandNumber, readInterval } from "./interval.ts";
import { didYouMean, nearestSeveral } from "./near.ts";
import {
  error,
  excerpt,
  type Fix,
  listOf,
  type ReadContext,
  type Reading,
  replacement,
  spanOf,
  unread,
  type ValueProblem,
  warning,
  withArticle,
} from "./problems.ts";
import type { Interval, QuantityType } from "./types.ts";
import { roundedText, withUnit } from "./write-number.ts";

/** Units that people write for another dimension than they measure: a spring of 450 lb, a tension of 120 kg. */
const meantUnits: Partial<Record<DimensionName, Readonly<Record<string, readonly string[]>>>> = {
  force: { kg: ["kgf"], lb: ["lbf"] },
  mass: { kgf: ["kg"], lbf: ["lb"] },
  torque: {
    "lb/in": ["lbf·in"],
    "N/m": ["N·m"],
    "N/mm": ["N·mm"],
    in: ["lbf·in"],
    ft: ["lbf·ft"],
    N: ["N·m"],
    lb: ["lbf·in", "lbf·ft"],
    J: ["N·m"],
  },
  pressure: { lb: ["psi"], lbf: ["psi"], "lb/in": ["psi"] },
  stiffness: { lb: ["lb/in"], lbf: ["lb/in"], lbf·in: ["lb/in"], N·mm: ["N/mm"], N·m: ["N/m"], N: ["N/mm"] },
  volume: { oz: ["fl-oz-us", "fl-oz-imp"], mm: [], g: ["ml"] },
  area: { mm: ["mm2"], cm: ["cm2"], in: ["in2"] },
  time: { m: ["min"] },
  speed: { km: ["km/h"], mi: ["mph"] },
  angle: { "°C": ["°"], "°F": ["°"] },
  temperature: { "°": ["°C", "°F"] },
  energy: { W: ["Wh"], N·m: ["J"] },
  power: { Wh: ["W"] },
  charge: { A: ["Ah"], mA: ["mAh"] },
  current: { Ah: ["A"], mAh: ["mA"] },
  illuminance: { lm: ["lx"] },
  "luminous-flux": { lx: ["lm"] },
};

/** A number that is read as it stands. */
const plainNumber = /^(?:0|[1-9]\d{0,8})(?:\.\d{1,6})?$/;

/** What nearly every quantity is: a plain number and a unit, each a word of its own and as it is to be written. */
function plainReading(type: QuantityType, tokens: readonly ValueToken[]): Reading<number | Interval> | undefined {
  const [number, word, ...more] = tokens;
  if (number?.kind !== "word" || word?.kind !== "word" || more.length > 0) return undefined;
  if (!plainNumber.test(number.text)) return undefined;
  const unit = unitBySpelling(word.text);
  if (unit?.symbol !== word.text || unit.dimension !== type.dimension) return undefined;
  const value = toBase(Number(number.text), unit);
  if (!inBounds(type, value)) return undefined;
  const written = withUnit(number.text, unit.symbol);
  return { value: type.role === "exact" ? value : { least: value, greatest: value }, written, problems: [] };
}

/** Reads a quantity: a number for the role `exact`, else an interval, both in the base unit. */
export function readQuantity(
  type: QuantityType,
  tokens: readonly ValueToken[],
  context: ReadContext,
): Reading<number | Interval> {
  const plain = plainReading(type, tokens);
  if (plain) return plain;
  const reading = readInterval(tokens, {
    field: context.field,
    span: context.span,
    role: type.role,
    get example() {
      return exampleOf(type);
    },
    compose: withUnit,
    operand: (operand, inherited, spreadOf) => readOperand(type, operand, inherited, spreadOf, context.field),
  });
  if (reading.value === undefined) return unread(reading.written, reading.problems);
  const { interval, isRange, first } = reading.value;
  const written = reading.written ?? "";
  const span = spanOf(tokens, context.span);
  const usual = usualUnit(type);
  const two = isRange ? undefined : twoValues(type, first, span, context.field);
  if (two !== undefined) return unread(written, [...reading.problems, two]);
  const slip = boundsProblem(
    type,
    interval,
    span,
    context.field,
    (value) => withUnit(roundedText(fromBase(value, usual)), usual.symbol),
    isRange || first.unit === usual.symbol ? "" : `${written}, which is `,
    () =>
      isRange ? [] : [...nothingMeant(type, interval.least, span), ...unitSlips(type, first, interval.least, span)],
  );
  if (slip !== undefined) return unread(written, [...reading.problems, slip]);
  return { value: type.role === "exact" ? interval.least : interval, written, problems: reading.problems };
}

/** A nought where there can be none: it is `none` that says so. */
function nothingMeant(type: QuantityType, value: number, span: Span): readonly Fix[] {
  return value === 0 && (type.lowest ?? 0) > 0 ? [replacement(span, "none")] : [];
}

/** Units in which fractions are usual: `11/128 in`, `3/4 oz`. */
const unitsOfFractions = new Set(["in", "ft", "mi", "lb", "oz", "st", "fl-oz-us", "fl-oz-imp"]);

/**
 * `68/73 mm` is the one or the other, and would be read as a fraction. A fraction of an inch has a power of two below
 * and cannot be reduced; of any other unit only a half and its like are written so.
 */
function twoValues(
  type: QuantityType,
  { text, unit }: OperandReading,
  span: Span,
  field: string,
): ValueProblem | undefined {
  const [, top = "", bottom = ""] = /^(\d+)\/(\d+)$/.exec(text) ?? [];
  const found = unitBySpelling(unit);
  if (top === "" || found === undefined) return undefined;
  const [upper, lower] = [Number(top), Number(bottom)];
  const isOfInches = upper % 2 === 1 && upper < lower && Number.isInteger(Math.log2(lower));
  if (upper <= 1 || (unitsOfFractions.has(found.symbol) && isOfInches)) return undefined;
  const ends = [upper, lower].sort((a, b) => a - b);
  const plausible = ends.filter((end) => inBounds(type, toBase(end, found)));
  const range = withUnit(ends.join(" to "), found.symbol);
  const written = withUnit(text, found.symbol);
  if (type.role === "exact") {
    const fixes = plausible.map((end) => replacement(span, withUnit(String(end), found.symbol)));
    return error("two-values", `${field} is one number, and ${written} names two: write the one it is.`, span, fixes);
  }
  const fixes = plausible.length === 2 && ends[0] !== ends[1] ? [replacement(span, range)] : [];
  return error(
    "two-values",
    `${written} names two values, and reads as a fraction; a range is written ${range}.`,
    span,
    fixes,
  );
}

/** Reads one number with its unit into the base unit. */
export function readOperand(
  type: UnitsOfField & Bounds,
  operand: Operand,
  inherited: Operand | undefined,
  spreadOf: OperandReading | undefined,
  field: string,
): OperandReading {
  const { value, text, problems } = operandNumber(operand);
  const unitWord = operand.unit ?? inherited?.unit;
  if (unitWord === undefined) {
    if (value !== undefined) problems.push(missingUnit(type, operand, inherited, text, value, field));
    return { text, unit: "", problems };
  }
  const found = unitBySpelling(unitWord.text) ?? unitByLooseSpelling(unitWord.text);
  if (found?.dimension === "ratio" && type.dimension !== "ratio" && spreadOf?.value !== undefined) {
    // `27 mm ± 2 %`: a share of the number before.
    if (value === undefined) return { text, unit: "%", problems };
    return { value: (Math.abs(spreadOf.value) * value) / 100, text, unit: "%", problems };
  }
  if (found === undefined || found.dimension !== type.dimension) {
    // A unit taken over from the other number is that number's problem.
    if (operand.unit === undefined) return { text, unit: unitWord.text, problems };
    problems.push(
      found === undefined
        ? unknownUnit(type, unitWord.text, unitWord.span, field)
        : wrongDimension(type, found, unitWord.span, operand, text, field),
    );
    return { text, unit: found?.symbol ?? unitWord.text, problems };
  }
  if (operand.unit !== undefined && unitBySpelling(unitWord.text) === undefined) {
    problems.push(
      warning("unit-capitals", `${unitWord.text} is read as ${found.symbol} (${found.name}).`, unitWord.span, [
        replacement(unitWord.span, found.symbol),
      ]),
    );
  }
  if (operand.unitFirst) {
    const right = withUnit(text, found.symbol);
    problems.push(
      warning("unit-first", `The unit stands after the number: ${right}.`, operand.span, [
        replacement(operand.span, right),
      ]),
    );
  }
  if (value === undefined) return { text, unit: found.symbol, problems };
  // A spread is a difference: 2 °F either way is no temperature.
  const base = spreadOf === undefined ? toBase(value, found) : value * found.factor;
  return { value: base, text, unit: found.symbol, problems };
}

/** `N·m, N·cm or lbf·in`: the units to name in a message, the field's own first. */
function unitNames(type: UnitsOfField): string {
  return listOf(
    unitsFor(type)
      .slice(0, 5)
      .map((unit) => unit.symbol),
  );
}

function missingUnit(
  type: UnitsOfField & Bounds,
  operand: Operand,
  other: Operand | undefined,
  text: string,
  value: number,
  field: string,
): ValueProblem {
  // One unit after the last number serves both.
  const end = Math.max(operand.span.end, other?.span.end ?? 0);
  const plausible = unitsFor(type).filter((unit) => inBounds(type, toBase(value, unit)));
  const fixes = plausible.slice(0, 4).map((unit) => {
    const title = `Add the unit ${unit.symbol} (${unit.name})`;
    return replacement({ start: end, end }, withUnit("", unit.symbol), title);
  });
  return error(
    "missing-unit",
    `${field} is ${withArticle(dimensions[type.dimension].title)} and needs a unit after ${excerpt(text)}: ${unitNames(type)}.`,
    operand.span,
    fixes,
  );
}

function unknownUnit(type: UnitsOfField, text: string, span: Span, field: string): ValueProblem {
  const ofField = unitsFor(type);
  const spellings = ofField.flatMap((unit) => [unit.symbol, ...unit.spellings]);
  const near: string[] = [];
  for (const spelling of nearestSeveral(text, spellings, 6)) {
    const symbol = unitBySpelling(spelling)?.symbol;
    if (symbol !== undefined && !near.includes(symbol)) near.push(symbol);
  }
  // C is the coulomb, and F the farad: nobody means these, but neither is read as what it is not.
  const degrees = type.dimension === "temperature" ? { c: "°C", f: "°F" }[text.toLowerCase()] : undefined;
  if (degrees !== undefined && !near.includes(degrees)) near.unshift(degrees);
  // A bare fluid ounce is one of two.
  if (near.length === 0 && type.dimension === "volume" && /^fl/i.test(text)) near.push("fl-oz-us", "fl-oz-imp");
  return error(
    "unknown-unit",
    `${excerpt(text)} is not a unit; ${field} is ${withArticle(dimensions[type.dimension].title)}, written in ${unitNames(type)}.${didYouMean(near)}`,
    span,
    near.map((symbol) => replacement(span, symbol)),
  );
}

function wrongDimension(
  type: UnitsOfField,
  found: Unit,
  span: Span,
  operand: Operand,
  text: string,
  field: string,
): ValueProblem {
  const wanted = dimensions[type.dimension].title;
  const fixes: Fix[] = (meantUnits[type.dimension]?.[found.symbol] ?? []).map((symbol) =>
    replacement(operand.span, withUnit(text, symbol)),
  );
  return error(
    "wrong-dimension",
    `${withUnit(excerpt(text), found.symbol)} is ${withArticle(dimensions[found.dimension].title)}, but ${field} is ${withArticle(wanted)}, written in ${unitNames(type)}.`,
    span,
    fixes,
  );
}

/** The same digits in other units of the dimension, where that would be plausible. */
function unitSlips(type: QuantityType, written: OperandReading, value: number, span: Span): Fix[] {
  const unit = unitBySpelling(written.unit);
  if (unit === undefined) return [];
  const number = fromBase(value, unit);
  return unitsFor(type)
    .filter((other) => other !== unit && inBounds(type, toBase(number, other)))
    .slice(0, 3)
    .map((other) => replacement(span, withUnit(written.text, other.symbol)));
}
