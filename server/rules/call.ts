import type { RuleFunction } from "./functions.ts";
import { combine, together } from "./intervals.ts";
import { type NumberValue, openValue, type RunValue, single } from "./run-value.ts";
import type { Reason } from "./truth.ts";
import type { Typed } from "./typed-expression.ts";

/** An argument and what it comes to. */
export interface Argument {
  readonly expression: Typed;
  readonly value: RunValue;
}

/** What a function comes to; `what` is the call as a person would write it. */
export function call({ name }: RuleFunction, given: readonly Argument[], what: string): RunValue {
  switch (name) {
    case "min":
      return extreme(given, what, Math.min);
    case "max":
      return extreme(given, what, Math.max);
    case "sum":
      return sum(given, what);
    case "count":
      return count(given);
    case "round":
      return round(given, what);
    case "abs":
      return abs(given, what);
  }
}

/** What is known of several numbers, and what is not. */
interface Members {
  readonly numbers: readonly NumberValue[];
  /** The stretch in which an argument lies that nobody stated, if there is one at all. */
  readonly unknown: readonly NumberValue[];
  /** Why there is no answer at all. */
  readonly open: readonly Reason[];
}

function members(given: readonly Argument[], what: string): Members {
  const numbers: NumberValue[] = [];
  const unknown: NumberValue[] = [];
  const open: Reason[] = [];
  for (const { expression, value } of given) {
    switch (value.form) {
      case "number":
        numbers.push(value);
        break;
      case "numbers":
        for (const item of value.items) numbers.push(single(item, value.currency));
        break;
      case "range":
        numbers.push(value.least, value.greatest);
        break;
      case "open":
        if (isBounded(expression, value.reasons)) unknown.push(boundsOf(expression, value.reasons));
        else open.push(...value.reasons);
        break;
      default:
        break;
    }
  }
  const currencies = new Set(numbers.flatMap(({ currency }) => currency ?? []));
  if (currencies.size > 1) {
    const list = [...currencies].join(" and ");
    open.push({ why: "undefined", path: what, what: `${what}, which is of ${list}: no rate of exchange is kept` });
  }
  return { numbers, unknown, open };
}

/** One number that nobody stated lies within the bounds of its field. Sums of money have none, nor have lists. */
function isBounded({ type, form }: Typed, reasons: readonly Reason[]): boolean {
  const isNumber = type.form === "number" && type.role !== "allowed" && type.vector.money === undefined;
  return isNumber && form === "path" && reasons.every(({ why }) => why === "missing");
}

function boundsOf({ type }: Typed, reasons: readonly Reason[]): NumberValue {
  const { lowest = Number.NEGATIVE_INFINITY, highest = Number.POSITIVE_INFINITY } = type.form === "number" ? type : {};
  return { form: "number", least: lowest, greatest: highest, reasons };
}

function extreme(given: readonly Argument[], what: string, of: (one: number, other: number) => number): RunValue {
  const { numbers, unknown, open } = members(given, what);
  if (open.length > 0) return openValue(...open);
  const [first, ...rest] = numbers;
  if (!first) {
    if (unknown.length > 0) return openValue(...unknown.flatMap(({ reasons }) => reasons));
    const absent = given.find(({ value }) => value.form === "none")?.value;
    if (absent?.form === "none") return openValue({ why: "absent", path: absent.path });
    return openValue({ why: "undefined", path: what, what: `${what}, which is of an empty list` });
  }
  let found = first;
  for (const next of rest) found = outermost(found, next, of);
  for (const next of unknown) {
    // There may turn out to be none of it: what is known then stands.
    const farther = outermost(found, next, of);
    found = {
      ...farther,
      least: Math.min(found.least, farther.least),
      greatest: Math.max(found.greatest, farther.greatest),
      reasons: [...found.reasons, ...next.reasons],
    };
  }
  return settled(found);
}

function outermost(one: NumberValue, other: NumberValue, of: (a: number, b: number) => number): NumberValue {
  const least = of(one.least, other.least);
  const greatest = of(one.greatest, other.greatest);
  const currency = one.currency ?? other.currency;
  const reasons = least === greatest ? [] : twice(one.reasons, other.reasons);
  return { form: "number", least, greatest, reasons, ...(currency === undefined ? {} : { currency }) };
}

/** Reasons of numbers that are not free of each other give no answer rather than one that claims too much. */
function twice(one: readonly Reason[], other: readonly Reason[]): readonly Reason[] {
  const reasons = together(one, other);
  if (typeof reasons !== "string") return reasons;
  return [{ why: "undefined", path: reasons, what: `what ${reasons} comes to, which stands twice and is a range` }];
}

/** A stretch of one number has no reasons. */
function settled(value: NumberValue): NumberValue {
  return value.least === value.greatest ? { ...value, reasons: [] } : value;
}

function sum(given: readonly Argument[], what: string): RunValue {
  const { numbers, unknown, open } = members(given, what);
  if (open.length > 0) return openValue(...open);
  let total: RunValue = single(0);
  const added = [
    ...numbers,
    // It may turn out that there is none of it, which adds nothing.
    ...unknown.map((one) => ({ ...one, least: Math.min(0, one.least), greatest: Math.max(0, one.greatest) })),
  ];
  for (const next of added) {
    if (total.form !== "number") return total;
    total = combine("+", total, next, what);
  }
  return total;
}

/** Items of lists, slots that have a part, values that there are, and conditions that are met. */
function count(given: readonly Argument[]): RunValue {
  let least = 0;
  let open = 0;
  const reasons: Reason[] = [];
  for (const { value } of given) {
    if (value.form === "numbers" || value.form === "names") least += value.items.length;
    else if (value.form === "number" || value.form === "name" || value.form === "range") least++;
    else if (value.form === "truth") {
      if (value.truth.state === "true") least++;
      else if (value.truth.state === "open") {
        open++;
        reasons.push(...value.truth.reasons);
      }
    } else if (value.form === "open") {
      open++;
      reasons.push(...value.reasons);
    }
  }
  const absent = reasons.filter(({ why }) => why === "absent");
  // A condition that does not arise is not met.
  if (open > 0 && absent.length === reasons.length) return single(least);
  return { form: "number", least, greatest: least + open, reasons: spreadsUndefined(reasons) };
}

/** Steps and counts do not take every value between their ends, so that nothing is claimed of one that is set. */
function spreadsUndefined(reasons: readonly Reason[]): readonly Reason[] {
  return reasons.map((reason) =>
    reason.why === "spread"
      ? { why: "undefined", path: reason.path, what: `a single number for ${reason.path}, which is a range` }
      : reason,
  );
}

function round(given: readonly Argument[], what: string): RunValue {
  const [of, step] = given.map(({ value }) => numberOf(value));
  if (!of || of.form === "open") return of ?? openValue();
  const by = step ?? single(1);
  if (by.form === "open") return by;
  if (by.least !== by.greatest) return openValue(...spreadsUndefined(by.reasons));
  if (by.least === 0) {
    return openValue({ why: "undefined", path: what, what: `${what}, whose step is zero` });
  }
  const size = Math.abs(by.least);
  const [least, greatest] = [nearestMultiple(of.least, size), nearestMultiple(of.greatest, size)];
  return settled({ ...of, least, greatest, reasons: spreadsUndefined(of.reasons) });
}

/** Converting units must not turn a half into a little less. */
const slack = 1e-9;

function nearestMultiple(value: number, step: number): number {
  if (!Number.isFinite(value)) return value;
  const steps = Math.floor(Math.abs(value) / step + 0.5 + slack);
  return steps === 0 ? 0 : Math.sign(value) * steps * step;
}

function abs(given: readonly Argument[], _what: string): RunValue {
  const [of] = given.map(({ value }) => numberOf(value));
  if (!of || of.form === "open") return of ?? openValue();
  const [near, far] = [Math.abs(of.least), Math.abs(of.greatest)];
  const least = of.least <= 0 && of.greatest >= 0 ? 0 : Math.min(near, far);
  return settled({ ...of, least, greatest: Math.max(near, far) });
}

/** A value as a number; what there is none of does not arise. */
export function numberOf(value: RunValue): NumberValue | Extract<RunValue, { form: "open" }> {
  switch (value.form) {
    case "number":
    case "open":
      return value;
    case "none":
      return { form: "open", reasons: [{ why: "absent", path: value.path }] };
    default:
      return { form: "open", reasons: [{ why: "undefined", path: "", what: "a number" }] };
  }
}
