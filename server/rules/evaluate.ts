import type { Maybe, Missing } from "../model/need.ts";
import { equal, greaterThan, lessThan } from "../values/compare.ts";
import { type Argument, call, numberOf } from "./call.ts";
import { combine, together } from "./intervals.ts";
import type { PathMeaning } from "./paths.ts";
import { answered, type NumberValue, openValue, type RunValue, single } from "./run-value.ts";
import { both, either, not, open, type Reason, same, type Truth, truth } from "./truth.ts";
import type { ComparisonSign, Typed } from "./typed-expression.ts";

/** What a build answers for a path. */
export type Answers = (meaning: PathMeaning) => Maybe;

/** What a sum leaves out, so that it comes to that much or more. */
export type Gaps = (meaning: PathMeaning) => readonly Missing[];

/**
 * Works an expression out on one build. Total: whatever the build says or leaves out, the answer is a value or says
 * why there is none.
 * @param text the expression as it is written, for what is said of a number that there is not.
 */
export class Evaluation {
  readonly #answers: Answers;
  readonly #text: (expression: Typed) => string;
  readonly #gaps: Gaps;

  constructor(answers: Answers, text: (expression: Typed) => string, gaps: Gaps) {
    this.#answers = answers;
    this.#text = text;
    this.#gaps = gaps;
  }

  value(expression: Typed): RunValue {
    switch (expression.form) {
      case "path":
        return orMore(answered(expression.meaning, this.#answers(expression.meaning)), this.#gaps(expression.meaning));
      case "constant":
        return expression.value;
      case "local":
        return this.value(expression.of);
      case "range": {
        const [least, greatest] = [numberOf(this.value(expression.least)), numberOf(this.value(expression.greatest))];
        if (least.form === "open" || greatest.form === "open") return openValue(...reasonsOf(least, greatest));
        return { form: "range", least, greatest };
      }
      case "arithmetic": {
        const [left, right] = [numberOf(this.value(expression.left)), numberOf(this.value(expression.right))];
        if (left.form === "open" || right.form === "open") return openValue(...reasonsOf(left, right));
        return combine(expression.sign, left, right, this.#text(expression));
      }
      case "call":
        return call(expression.function, expression.arguments.map(this.#argument), this.#text(expression));
      default:
        return { form: "truth", truth: this.truth(expression) };
    }
  }

  truth(expression: Typed): Truth {
    switch (expression.form) {
      case "both":
        return both(this.truth(expression.left), this.truth(expression.right));
      case "either":
        return either(this.truth(expression.left), this.truth(expression.right));
      case "not":
        return not(this.truth(expression.operand));
      case "local":
        return this.truth(expression.of);
      case "absence": {
        const value = this.value(expression.operand);
        if (value.form === "open" && value.reasons.every(({ why }) => why === "absent"))
          return truth(expression.isNone);
        if (value.form === "open") return open(...value.reasons);
        return truth((value.form === "none") === expression.isNone);
      }
      case "comparison":
        return this.#comparison(expression.sign, expression.left, expression.right);
      case "membership": {
        const value = this.value(expression.left);
        let found = truth(false);
        for (const choice of expression.choices) found = either(found, isIn(value, this.value(choice)));
        return expression.isIn ? found : not(found);
      }
      case "path":
      case "constant":
        return asTruth(this.value(expression));
      default:
        return open();
    }
  }

  readonly #argument = (expression: Typed): Argument => ({ expression, value: this.value(expression) });

  #comparison(sign: ComparisonSign, left: Typed, right: Typed): Truth {
    if (sign === "is" || sign === "is not") {
      const found = isSame(this.value(left), this.value(right));
      return sign === "is" ? found : not(found);
    }
    return compare(sign, this.value(left), this.value(right));
  }
}

function orMore(value: RunValue, gaps: readonly Missing[]): RunValue {
  if (value.form !== "number" || gaps.length === 0) return value;
  const reasons = gaps.map((missing) => ({ why: "missing", missing }) as const);
  return { ...value, greatest: Number.POSITIVE_INFINITY, reasons: [...value.reasons, ...reasons] };
}

function reasonsOf(...values: readonly { readonly reasons: readonly Reason[] }[]): readonly Reason[] {
  return values.flatMap(({ reasons }) => reasons);
}

function asTruth(value: RunValue): Truth {
  if (value.form === "truth") return value.truth;
  if (value.form === "open") return open(...value.reasons);
  return open(value.form === "none" ? { why: "absent", path: value.path } : neither);
}

/** For values whose types were found to go together: never said of a rule without findings. */
const neither: Reason = { why: "undefined", path: "", what: "an answer" };

/** Days are written so that the order of their letters is the order of the days. */
function compare(sign: "<" | "<=" | ">" | ">=", left: RunValue, right: RunValue): Truth {
  if (left.form === "name" && right.form === "name") {
    const order = left.name < right.name ? -1 : left.name > right.name ? 1 : 0;
    return truth(
      sign.startsWith("<") ? order < 0 || (sign === "<=" && order === 0) : order > 0 || (sign === ">=" && order === 0),
    );
  }
  const [one, other] = [namedOrNumber(left), namedOrNumber(right)];
  if (one.form !== "number" || other.form !== "number") return open(...openReasons(one), ...openReasons(other));
  const trouble = incomparable(one, other);
  if (trouble) return open(trouble);
  const [a, b] = sign.startsWith("<") ? [one, other] : [other, one];
  // `a` comes before `b` for certain, or for certain does not.
  const before = sign.length === 2 ? !greaterThan(a.greatest, b.least) : lessThan(a.greatest, b.least);
  if (before) return truth(true);
  const never = sign.length === 2 ? greaterThan(a.least, b.greatest) : !lessThan(a.least, b.greatest);
  return never ? truth(false) : undecided(one, other);
}

function namedOrNumber(value: RunValue): RunValue {
  return value.form === "name" ? value : numberOf(value);
}

function openReasons(value: RunValue): readonly Reason[] {
  if (value.form === "open") return value.reasons;
  return value.form === "number" ? value.reasons : [];
}

function incomparable(one: NumberValue, other: NumberValue): Reason | undefined {
  if (one.currency === other.currency || one.currency === undefined || other.currency === undefined) return undefined;
  const what = `a comparison of ${one.currency} with ${other.currency}: no rate of exchange is kept`;
  return { why: "undefined", path: "", what };
}

/** Neither for certain: it depends on where in their stretches the numbers lie. */
function undecided(one: NumberValue, other: NumberValue): Truth {
  const reasons = together(one.reasons, other.reasons);
  if (typeof reasons !== "string") return open(...reasons);
  return open({
    why: "undefined",
    path: reasons,
    what: `one answer for ${reasons}, which stands twice and is a range`,
  });
}

/** `none` is the same as none alone; what belongs to something that there is not does not arise. */
function isSame(left: RunValue, right: RunValue): Truth {
  for (const value of [left, right]) {
    if (value.form === "none" && !value.isOwn) return open({ why: "absent", path: value.path });
  }
  const reasons = [left, right].flatMap((value) => (value.form === "open" ? value.reasons : []));
  if (reasons.length > 0) return open(...reasons);
  if (left.form === "none" || right.form === "none") return truth(left.form === right.form);
  if (left.form === "truth" && right.form === "truth") return same(left.truth, right.truth);
  if (left.form === "name" && right.form === "name") return truth(left.name === right.name);
  if (left.form === "number" && right.form === "number") return sameNumber(left, right);
  return open(neither);
}

function sameNumber(one: NumberValue, other: NumberValue): Truth {
  const trouble = incomparable(one, other);
  if (trouble) return open(trouble);
  if (lessThan(one.greatest, other.least) || lessThan(other.greatest, one.least)) return truth(false);
  const isOne = one.reasons.length === 0 && other.reasons.length === 0;
  return isOne ? truth(equal(one.least, other.least)) : undecided(one, other);
}

/** Whether a value is one choice, inside a range, or an item of a list. */
function isIn(value: RunValue, choice: RunValue): Truth {
  if (choice.form === "range") return isInside(numberOf(value), choice.least, choice.greatest);
  if (choice.form === "numbers" || choice.form === "names") {
    if (value.form === "none" && value.isOwn) return truth(false);
    let found = truth(false);
    for (const item of choice.items) found = either(found, isSame(value, itemOf(item, choice)));
    return found;
  }
  // A number that may lie anywhere in a stretch, named as a choice, is that stretch.
  if (choice.form === "number" && choice.reasons.some(({ why }) => why === "spread")) {
    return isInside(numberOf(value), single(choice.least, choice.currency), single(choice.greatest, choice.currency));
  }
  return isSame(value, choice);
}

/** One question for both ends: something that can be set has to be inside with one value. */
function isInside(
  value: NumberValue | Extract<RunValue, { form: "open" }>,
  least: NumberValue,
  greatest: NumberValue,
): Truth {
  if (value.form === "open") return open(...value.reasons);
  const trouble = incomparable(value, least) ?? incomparable(value, greatest);
  if (trouble) return open(trouble);
  if (lessThan(value.greatest, least.least) || greaterThan(value.least, greatest.greatest)) return truth(false);
  if (!lessThan(value.least, least.greatest) && !greaterThan(value.greatest, greatest.least)) return truth(true);
  return undecided(value, { ...greatest, reasons: [...least.reasons, ...greatest.reasons] });
}

function itemOf(item: number | string, list: RunValue): RunValue {
  if (typeof item === "string") return { form: "name", name: item };
  return single(item, list.form === "numbers" ? list.currency : undefined);
}
