import type { Span } from "../../grammar/tree.ts";
import type { Names } from "./expression-type.ts";
import type { RuleFunction } from "./functions.ts";
import type { PathMeaning } from "./paths.ts";
import type { Local, Rule } from "./rule.ts";
import { partsOf, type Typed } from "./typed-expression.ts";

/** What a word of a rule's expressions stands for. */
export type RuleWord = { readonly span: Span } & (
  | { readonly what: "path"; readonly meaning: PathMeaning }
  | { readonly what: "local"; readonly local: Local }
  | { readonly what: "function"; readonly function: RuleFunction }
  /** A name written in the rule; `beside` is what it is compared with, where that is a path. */
  | { readonly what: "name"; readonly name: string; readonly names: Names; readonly beside?: PathMeaning }
);

/** Every word of a rule that stands for something, in no particular order. Expressions that are wrong have none. */
export function ruleWords(rule: Rule): readonly RuleWord[] {
  const words: RuleWord[] = [];
  const conditions = [...(rule.when ? [rule.when] : []), ...rule.requirements];
  for (const condition of conditions) collect(condition, rule, undefined, words);
  for (const local of rule.locals.values()) {
    words.push({ what: "local", local, span: local.span });
    collect(local.expression, rule, undefined, words);
  }
  for (const piece of rule.message ?? []) if ("value" in piece) collect(piece.value, rule, undefined, words);
  return words;
}

/** The word at an offset of the rule's text, or that ends there. */
export function ruleWordAt(rule: Rule, offset: number): RuleWord | undefined {
  const holding = ruleWords(rule).filter(({ span }) => offset >= span.start && offset <= span.end);
  return holding.find(({ span }) => offset < span.end) ?? holding[0];
}

function collect(expression: Typed, rule: Rule, beside: PathMeaning | undefined, into: RuleWord[]): void {
  const { span } = expression;
  switch (expression.form) {
    case "path":
      into.push({ what: "path", meaning: expression.meaning, span });
      return;
    case "local": {
      const local = rule.locals.get(expression.name);
      // What the name stands for is a word of its own where it is given.
      if (local) into.push({ what: "local", local, span });
      return;
    }
    case "constant":
      if (expression.value.form === "name" && expression.type.form === "name") {
        const { names } = expression.type;
        into.push({ what: "name", name: expression.value.name, names, span, ...(beside ? { beside } : {}) });
      }
      return;
    case "call": {
      const { name } = expression.function;
      into.push({
        what: "function",
        function: expression.function,
        span: { start: span.start, end: span.start + name.length },
      });
      break;
    }
    default:
      break;
  }
  const parts = partsOf(expression);
  const isCompared = expression.form === "comparison" || expression.form === "membership";
  for (const part of parts) {
    const other = isCompared ? parts.find((one) => one !== part && one.form === "path") : undefined;
    collect(part, rule, other?.form === "path" ? other.meaning : undefined, into);
  }
}
