import type { Span } from "../../grammar/tree.ts";
import { sameVector } from "../values/dimensions.ts";
import { usualUnit } from "../values/field-units.ts";
import { describeType, type ExpressionType, type Names, type NumberOf, sameMeasure } from "./expression-type.ts";
import type { Problems } from "./problems.ts";
import type { Typed } from "./typed-expression.ts";

/** Says where two sides of an operator do not go together, with what each is and where it comes from. */
export class Agreement {
  readonly #problems: Problems;

  constructor(problems: Problems) {
    this.#problems = problems;
  }

  /** Whether both sides are numbers that measure the same thing, in one currency. */
  numbers(verb: string, operator: Span, left: Typed, right: Typed): boolean {
    const [one, other] = [this.number(left), this.number(right)];
    return one !== undefined && other !== undefined && this.measures(verb, operator, left, one, right, other);
  }

  measures(verb: string, operator: Span, left: Typed, one: NumberOf, right: Typed, other: NumberOf): boolean {
    if (!sameMeasure(one, other)) {
      if (this.#lacksUnit(left, one, other) || this.#lacksUnit(right, other, one)) return false;
      this.#disagree(operator, left, right, `${verb}: they measure different things`, "expression/dimension");
      return false;
    }
    if (one.currency !== undefined && other.currency !== undefined && one.currency !== other.currency) {
      this.#disagree(operator, left, right, `${verb}: no rate of exchange is kept`, "expression/currency");
      return false;
    }
    return true;
  }

  /** Whether two sides can be the same at all. */
  same(operator: Span, left: Typed, right: Typed): boolean {
    const [one, other] = [left.type, right.type];
    if (one.form === "wrong" || other.form === "wrong") return false;
    if (!this.notListed(left) || !this.notListed(right)) return false;
    if (one.form === "number" && other.form === "number") return this.numbers("compared", operator, left, right);
    if (one.form === "truth" && other.form === "truth") return true;
    if (one.form === "name" && other.form === "name" && canBeSame(one.names, other.names)) return true;
    this.#disagree(operator, left, right, "compared: they are never the same", "expression/type");
    return false;
  }

  /** The type of a single number; a list and a range of what is allowed are none. */
  number(of: Typed): NumberOf | undefined {
    const { type, span } = of;
    if (type.form === "wrong" || !this.notListed(of)) return undefined;
    if (type.form !== "number") {
      this.report(span, `A number is expected here; ${this.#name(span)} is ${describeType(type)}.`);
      return undefined;
    }
    if (type.role === "allowed") {
      this.#problems.report(
        span,
        "expression/range",
        `${this.#name(span)} is a range of what is allowed: ask whether something is in it, or compare its ends, min(${this.#name(span)}) or max(${this.#name(span)}).`,
      );
      return undefined;
    }
    return type;
  }

  /** Whether something is one value; a list is asked about with `in` and functions. */
  notListed({ type, span }: Typed): boolean {
    if (type.form !== "numbers" && type.form !== "names") return true;
    const name = this.#name(span);
    const instead =
      type.form === "numbers" ? `min(${name}), max(${name}), sum(${name}) or count(${name})` : `count(${name})`;
    this.#problems.report(
      span,
      "expression/list",
      `${name} is a list: compare ${instead}, or ask whether something is in it.`,
    );
    return false;
  }

  /** Whether something is true or false. */
  truth({ type, span }: Typed): boolean {
    if (type.form === "truth") return true;
    if (type.form === "wrong") return false;
    this.report(span, `A condition is expected here, such as a <= b; ${this.#name(span)} is ${describeType(type)}.`);
    return false;
  }

  report(span: Span, message: string): void {
    this.#problems.report(span, "expression/type", message);
  }

  #name(span: Span): string {
    return this.#problems.text(span);
  }

  /** A number written without a unit beside one with a dimension: the unit was forgotten. */
  #lacksUnit(of: Typed, own: NumberOf, other: NumberOf): boolean {
    const isBare = of.form === "constant" && sameVector(own.vector, {}) && Object.keys(own.shown).length === 0;
    if (!isBare) return false;
    const { dimension, unit } = other.shown;
    const written = this.#name(of.span);
    const isMoney = sameVector(other.vector, { money: 1 });
    const symbol =
      dimension === undefined ? undefined : usualUnit({ dimension, ...(unit === undefined ? {} : { unit }) }).symbol;
    const meant = isMoney
      ? `${other.currency ?? "GBP"} ${written}`
      : symbol === undefined
        ? undefined
        : `${written} ${symbol}`;
    this.#problems.report(
      of.span,
      "expression/dimension",
      `${written} has no unit, and is compared with ${describeType(other)}${meant === undefined ? "" : `: write ${meant}`}.`,
      meant === undefined ? [] : [this.#problems.write(of.span, meant)],
    );
    return true;
  }

  #disagree(operator: Span, left: Typed, right: Typed, why: string, code: string): void {
    const sides = [left, right].map(({ span, type }) => ({
      span,
      what: `${this.#name(span)} is ${describeType(type)}`,
    }));
    const { declaration } = this.#problems;
    this.#problems.report(
      operator,
      code,
      `${sides.map(({ what }) => what).join(", and ")}. The two cannot be ${why}.`,
      [],
      sides.map(({ span, what }) => ({ message: what, place: { declaration, span } })),
    );
  }
}

function canBeSame(one: Names, other: Names): boolean {
  if (one.of === "code" && other.of === "code") return one.family === other.family;
  if (one.of === "word" && other.of === "word") {
    return Object.keys(one.words).some((word) => Object.hasOwn(other.words, word));
  }
  if (one.of === "part" && other.of === "part") {
    return one.kinds.length === 0 || other.kinds.length === 0 || one.kinds.some((kind) => other.kinds.includes(kind));
  }
  return one.of === other.of;
}

/** The type of one item of a list, for what is compared with it. */
export function itemType(type: ExpressionType): ExpressionType {
  if (type.form === "names") return { form: "name", names: type.names };
  if (type.form === "numbers") return { ...type, form: "number", role: "exact" };
  return type;
}
