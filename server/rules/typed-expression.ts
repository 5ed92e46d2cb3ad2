import type { Span } from "../../grammar/tree.ts";
import type { ExpressionType } from "./expression-type.ts";
import type { RuleFunction } from "./functions.ts";
import type { PathMeaning } from "./paths.ts";
import type { RunValue } from "./run-value.ts";

export type ComparisonSign = "is" | "is not" | "<" | "<=" | ">" | ">=";
export type ArithmeticSign = "+" | "-" | "*" | "/";

/** An expression whose every part is known to go together. */
export type Typed = { readonly type: ExpressionType; readonly span: Span } & (
  | { readonly form: "path"; readonly meaning: PathMeaning }
  /** A value that is written in the rule. */
  | { readonly form: "constant"; readonly value: RunValue; readonly written: string }
  /** A name that `let` gave to another expression. */
  | { readonly form: "local"; readonly name: string; readonly of: Typed }
  /** From one number to another, both ends included. */
  | { readonly form: "range"; readonly least: Typed; readonly greatest: Typed }
  | { readonly form: "arithmetic"; readonly sign: ArithmeticSign; readonly left: Typed; readonly right: Typed }
  | { readonly form: "comparison"; readonly sign: ComparisonSign; readonly left: Typed; readonly right: Typed }
  /** Whether something is one of several choices, in one of several ranges, or an item of a list. */
  | {
      readonly form: "membership";
      readonly isIn: boolean;
      readonly left: Typed;
      readonly choices: readonly Typed[];
    }
  /** Whether something is `none`. */
  | { readonly form: "absence"; readonly isNone: boolean; readonly operand: Typed }
  | { readonly form: "both"; readonly left: Typed; readonly right: Typed }
  | { readonly form: "either"; readonly left: Typed; readonly right: Typed }
  | { readonly form: "not"; readonly operand: Typed }
  | { readonly form: "call"; readonly function: RuleFunction; readonly arguments: readonly Typed[] }
  /** Has a finding; a rule that holds one is asked of no build. */
  | { readonly form: "wrong" }
);

/** The expressions right under one. */
export function partsOf(expression: Typed): readonly Typed[] {
  switch (expression.form) {
    case "local":
      return [expression.of];
    case "range":
      return [expression.least, expression.greatest];
    case "arithmetic":
    case "comparison":
    case "both":
    case "either":
      return [expression.left, expression.right];
    case "membership":
      return [expression.left, ...expression.choices];
    case "absence":
    case "not":
      return [expression.operand];
    case "call":
      return expression.arguments;
    case "path":
    case "constant":
    case "wrong":
      return [];
  }
}

/** Every path that an expression names, in the order in which they stand; each once. */
export function pathsOf(expression: Typed, into: Map<string, PathMeaning> = new Map()): Map<string, PathMeaning> {
  if (expression.form === "path") into.set(expression.meaning.path, expression.meaning);
  for (const part of partsOf(expression)) pathsOf(part, into);
  return into;
}

export function isWrong(expression: Typed): boolean {
  return expression.form === "wrong" || partsOf(expression).some(isWrong);
}
