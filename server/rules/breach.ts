import { sameVector } from "../values/dimensions.ts";
import { listOf } from "../values/problems.ts";
import { numberOf } from "./call.ts";
import type { Evaluation } from "./evaluate.ts";
import { showCompared, showRunValue } from "./show.ts";
import { type ComparisonSign, pathsOf, type Typed } from "./typed-expression.ts";

/** A comparison that is not as a rule wants it. */
export interface Breach {
  readonly expression: Typed;
  /** Whether the rule wants it true; false under a `not`. */
  readonly isWanted: boolean;
}

/**
 * The comparisons by which an expression is not what it is wanted to be: the ones a person has to change. Those of
 * which one would do are together.
 */
export function breaches(expression: Typed, evaluation: Evaluation, isWanted = true): readonly (readonly Breach[])[] {
  if (evaluation.truth(expression).state === (isWanted ? "true" : "false")) return [];
  switch (expression.form) {
    case "not":
      return breaches(expression.operand, evaluation, !isWanted);
    case "local":
      return breaches(expression.of, evaluation, isWanted);
    case "both":
    case "either": {
      const areAllWanted = (expression.form === "both") === isWanted;
      const sides = [expression.left, expression.right];
      // What is open is no breach beside what is one for certain.
      const certain = sides.filter((side) => evaluation.truth(side).state === (isWanted ? "false" : "true"));
      const found = (areAllWanted && certain.length > 0 ? certain : sides).map((side) =>
        breaches(side, evaluation, isWanted),
      );
      return areAllWanted ? found.flat() : [found.flat(2)];
    }
    default:
      return [[{ expression, isWanted }]];
  }
}

/** The comparisons that an expression holds by, for a report that lists what was compared. */
export function comparisons(expression: Typed, evaluation: Evaluation, isWanted = true): readonly Breach[] {
  if (evaluation.truth(expression).state !== (isWanted ? "true" : "false")) return [];
  switch (expression.form) {
    case "not":
      return comparisons(expression.operand, evaluation, !isWanted);
    case "local":
      return comparisons(expression.of, evaluation, isWanted);
    case "both":
    case "either":
      return [expression.left, expression.right].flatMap((side) => comparisons(side, evaluation, isWanted));
    default:
      return [{ expression, isWanted }];
  }
}

const wantedWords: Readonly<Record<ComparisonSign, string>> = {
  is: "",
  "is not": "anything but",
  "<": "less than",
  "<=": "at most",
  ">": "more than",
  ">=": "at least",
};
const opposites: Readonly<Record<ComparisonSign, ComparisonSign>> = {
  is: "is not",
  "is not": "is",
  "<": ">=",
  "<=": ">",
  ">": "<=",
  ">=": "<",
};
const mirrored: Readonly<Record<ComparisonSign, ComparisonSign>> = {
  is: "is",
  "is not": "is not",
  "<": ">",
  "<=": ">=",
  ">": "<",
  ">=": "<=",
};

function isOrder(sign: ComparisonSign): boolean {
  return sign !== "is" && sign !== "is not";
}

/** Puts comparisons into words, with the values of one build. */
export class Wording {
  readonly #evaluation: Evaluation;
  readonly #text: (expression: Typed) => string;

  constructor(evaluation: Evaluation, text: (expression: Typed) => string) {
    this.#evaluation = evaluation;
    this.#text = text;
  }

  /** "cockpit.stem.spacers-below is 45 mm and has to be at most 30 mm". */
  breach(of: Breach): string {
    const { subject, wanted } = this.#sides(of.expression, of.isWanted);
    if (of.expression.form === "absence") return `${subject}, and ${wanted}`;
    const isWritten = of.expression.form === "membership" && of.expression.left.form === "constant";
    return `${subject}${isWritten ? "" : " and"} has to be ${wanted}`;
  }

  /** "cockpit.stem.spacers-below is 20 mm, at most 30 mm". */
  comparison({ expression, isWanted }: Breach): string {
    const { subject, wanted } = this.#sides(expression, isWanted);
    const isBound =
      expression.form === "comparison"
        ? isOrder(expression.sign)
        : expression.form === "membership" && expression.left.form === "constant";
    return isBound ? `${subject}, ${wanted}` : `${subject}, as it has to be`;
  }

  /** A value as it is put into a message. */
  value(expression: Typed): string {
    return showRunValue(this.#evaluation.value(expression), expression.type);
  }

  #sides(expression: Typed, isWanted: boolean): { readonly subject: string; readonly wanted: string } {
    switch (expression.form) {
      case "comparison":
        return this.#compared(expression, isWanted);
      case "membership": {
        const isIn = expression.isIn === isWanted;
        const choices = expression.choices.map((choice) => this.#choice(choice));
        const negated = choices.length > 1 ? `none of ${choices.join(", ")}` : `not ${choices.join("")}`;
        const { left } = expression;
        const subject = left.form === "constant" ? left.written : this.#is(left);
        return { subject, wanted: isIn ? listOf(choices) : negated };
      }
      case "absence": {
        const isNone = expression.isNone === isWanted;
        return {
          subject: this.#is(expression.operand),
          wanted: isNone ? "there has to be none" : "there has to be one",
        };
      }
      default:
        return { subject: this.#is(expression), wanted: isWanted ? "yes" : "no" };
    }
  }

  #compared(
    { sign, left, right }: Extract<Typed, { form: "comparison" }>,
    isWanted: boolean,
  ): { readonly subject: string; readonly wanted: string } {
    const isTurned = pathsOf(left).size === 0 && pathsOf(right).size > 0;
    const [one, other] = isTurned ? [right, left] : [left, right];
    const turned = isTurned ? mirrored[sign] : sign;
    const wantedSign = isWanted ? turned : opposites[turned];
    const [shown, bound] = this.#pair(one, other);
    const words = wantedWords[wantedSign];
    const from = pathsOf(other).size > 0 ? ` (${this.#text(other)})` : "";
    return {
      subject: `${this.#text(one)} is ${shown}`,
      wanted: `${words === "" ? "" : `${words} `}${bound}${from}`,
    };
  }

  #pair(one: Typed, other: Typed): readonly [string, string] {
    const [first, second] = [this.#evaluation.value(one), this.#evaluation.value(other)];
    const isSame =
      one.type.form === "number" && other.type.form === "number" && sameVector(one.type.vector, other.type.vector);
    const [a, b] = [numberOf(first), numberOf(second)];
    const type = pathsOf(one).size > 0 ? one.type : other.type;
    if (isSame && a.form === "number" && b.form === "number") return showCompared(a, b, type);
    return [showRunValue(first, one.type), showRunValue(second, other.type)];
  }

  #is(expression: Typed): string {
    return `${this.#text(expression)} is ${this.value(expression)}`;
  }

  #choice(choice: Typed): string {
    if (choice.form === "constant") return choice.written;
    if (choice.type.form === "names" || choice.type.form === "numbers") {
      return `one of ${this.value(choice)} (${this.#text(choice)})`;
    }
    const from = pathsOf(choice).size > 0 ? ` (${this.#text(choice)})` : "";
    return `${choice.form === "range" ? this.#range(choice) : this.value(choice)}${from}`;
  }

  #range(choice: Typed): string {
    return showRunValue(this.#evaluation.value(choice), choice.type);
  }
}
