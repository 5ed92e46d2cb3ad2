import type { ExpressionTree } from "../../grammar/tree.ts";
import { sameVector } from "../values/dimensions.ts";
import { usualUnit } from "../values/field-units.ts";
import { type Agreement, itemType } from "./agreement.ts";
import { describeType, type ExpressionType, type NumberOf, numberType, plainNumber } from "./expression-type.ts";
import type { RuleFunction } from "./functions.ts";
import type { Problems } from "./problems.ts";
import type { Typed } from "./typed-expression.ts";

/** The type of a call; nothing where its arguments do not suit it, which is then said. */
export function checkArguments(
  row: RuleFunction,
  tree: Extract<ExpressionTree, { form: "call" }>,
  given: readonly Typed[],
  agreement: Agreement,
  problems: Problems,
): ExpressionType | undefined {
  if (given.length < row.fewest || given.length > row.most) {
    problems.report(
      tree.name.span,
      "expression/arguments",
      `${row.name} is written ${row.written}: ${row.description}`,
    );
    return undefined;
  }
  if (given.some(({ type }) => type.form === "wrong")) return undefined;
  switch (row.name) {
    case "min":
    case "max":
    case "sum":
      return ofNumbers(row, given, agreement);
    case "count":
      return plainNumber;
    case "round":
      return rounded(given, agreement, problems);
    case "abs": {
      const [of] = given;
      const type = of && agreement.number(of);
      return type && numberType(type.vector, type.shown, type.currency);
    }
  }
}

/** Numbers and lists of numbers that all measure the same thing. */
function ofNumbers(row: RuleFunction, given: readonly Typed[], agreement: Agreement): NumberOf | undefined {
  let first: { readonly typed: Typed; readonly type: NumberOf } | undefined;
  for (const typed of given) {
    const type = itemType(typed.type);
    if (type.form !== "number") {
      agreement.report(
        typed.span,
        `${row.name} takes numbers and lists of numbers; this is ${describeType(typed.type)}.`,
      );
      return undefined;
    }
    // The ends of what is allowed are numbers; their sum is of no use.
    if (type.role === "allowed" && row.name === "sum" && !agreement.number(typed)) return undefined;
    if (!first) first = { typed, type };
    else if (!agreement.measures("taken together", typed.span, first.typed, first.type, typed, type)) return undefined;
  }
  return first && numberType(first.type.vector, first.type.shown, first.type.currency);
}

function rounded([of, step]: readonly Typed[], agreement: Agreement, problems: Problems): NumberOf | undefined {
  const type = of && agreement.number(of);
  if (!of || !type) return undefined;
  if (!step) {
    if (sameVector(type.vector, {})) return numberType({}, type.shown);
    const example = `round(${problems.text(of.span)}, ${exampleStep(type)})`;
    problems.report(
      of.span,
      "expression/arguments",
      `${problems.text(of.span)} is ${describeType(type)}: say to what it is rounded, as in ${example}.`,
    );
    return undefined;
  }
  return agreement.numbers("rounded so", step.span, of, step)
    ? numberType(type.vector, type.shown, type.currency)
    : undefined;
}

function exampleStep({ vector, shown, currency }: NumberOf): string {
  if (sameVector(vector, { money: 1 })) return `${currency ?? "GBP"} 1`;
  const { dimension, unit } = shown;
  if (dimension === undefined) return "STEP";
  return `1 ${usualUnit({ dimension, ...(unit === undefined ? {} : { unit }) }).symbol}`;
}
