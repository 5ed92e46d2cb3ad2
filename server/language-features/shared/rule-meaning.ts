import type { Span, ValueToken } from "../../../grammar/tree.ts";
import type { Declaration } from "../../model/declaration.ts";
import { resolveCode } from "../../model/standard.ts";
import type { Workshop } from "../../model/workshop.ts";
import type { Names } from "../../rules/expression-type.ts";
import type { PathMeaning } from "../../rules/paths.ts";
import { readRule } from "../../rules/read-rule.ts";
import { type Rule, ruleName } from "../../rules/rule.ts";
import { type RuleWord, ruleWordAt } from "../../rules/words.ts";
import { ruleExpectations } from "../../vocabulary/rules.ts";
import { type FieldPlace, type Meaning, meaningOfBuildPath } from "./meaning.ts";

/** What stands in a value of a rule: in an expression, in the braces of a message, among the builds it is tried on. */
export function meaningInRule(
  workshop: Workshop,
  declaration: Declaration,
  key: string,
  token: ValueToken,
  offset: number,
): Meaning | undefined {
  const [entry = ""] = key.split(".");
  if (entry === "expect") {
    const target = workshop.build(token.text);
    return { what: "reference", keyword: "build", name: token.text, target, span: token.span };
  }
  const word = ruleWordAt(readRule(declaration, workshop, ""), offset);
  if (word) return meaningOfWord(workshop, word);
  // What stands in an expression that is wrong elsewhere is still a path.
  const isExpression = entry === "when" || entry === "require" || entry === "let";
  return isExpression && token.kind === "word" ? meaningOfBuildPath(token.text, token.span, false) : undefined;
}

/** What a key inside a block of a rule stands for; nothing for keys of other blocks. */
export function meaningOfRuleKey(path: string, span: Span): Meaning | undefined {
  const dot = path.indexOf(".");
  const [block, rest] = dot < 0 ? ["", path] : [path.slice(0, dot), path.slice(dot + 1)];
  if (block === "set") return meaningOfBuildPath(rest, span, false);
  if (block !== "expect" || !Object.hasOwn(ruleExpectations, rest)) return undefined;
  return {
    what: "rule-entry",
    name: rest,
    description: ruleExpectations[rest as keyof typeof ruleExpectations],
    span,
  };
}

/** A name that `let` gives, where it is given as a key of its block. */
export function localOfKey(workshop: Workshop, declaration: Declaration, offset: number): Meaning | undefined {
  const word = ruleWordAt(readRule(declaration, workshop, ""), offset);
  return word?.what === "local" ? meaningOfWord(workshop, word) : undefined;
}

/** The code of a check, or of the house rule behind it, whose name is then what is meant. */
export function meaningOfCheck(
  workshop: Workshop,
  { text, span }: { readonly text: string; readonly span: Span },
): Meaning {
  const name = ruleName(text);
  const rule = name === undefined ? undefined : workshop.lookup(`rule ${name}`);
  if (!rule || name === undefined) return { what: "check", code: text, span };
  return { what: "check", code: text, rule, span: { start: span.end - name.length, end: span.end } };
}

function meaningOfWord(workshop: Workshop, word: RuleWord): Meaning | undefined {
  const { span } = word;
  switch (word.what) {
    case "path":
      return meaningOfBuildPath(word.meaning.path, span, false) ?? ofField(word.meaning, span);
    case "local":
      return { what: "local", local: word.local, span };
    case "function":
      return { what: "function", function: word.function, span };
    case "name":
      return meaningOfName(workshop, word.names, word.name, word.beside, span);
  }
}

function ofField({ path, field }: PathMeaning, span: Span): Meaning | undefined {
  if (!field) return undefined;
  const name = path.slice(path.lastIndexOf(".") + 1);
  return { what: "field", at: { owner: "the part", name, path, field }, span };
}

function meaningOfName(
  workshop: Workshop,
  names: Names,
  name: string,
  beside: PathMeaning | undefined,
  span: Span,
): Meaning | undefined {
  switch (names.of) {
    case "word": {
      const description = names.words[name];
      const at = placeBeside(beside, { type: "word", words: names.words });
      return description === undefined ? undefined : { what: "word", at, word: name, description, span };
    }
    case "code": {
      const code = { family: names.family, code: name };
      const at = placeBeside(beside, { type: "code", family: names.family });
      return { what: "code", at, code, resolved: resolveCode(code, workshop, []), span };
    }
    case "part":
      return { what: "reference", keyword: "part", name, target: workshop.part(name), span };
    case "slot":
      return meaningOfBuildPath(name, span, false);
    default:
      return undefined;
  }
}

/** The field that a name is compared with. */
function placeBeside(beside: PathMeaning | undefined, type: FieldPlace["field"]["type"]): FieldPlace {
  const path = beside?.path ?? "";
  const name = path.slice(path.lastIndexOf(".") + 1);
  const field = beside?.field ?? { type, description: "What it is compared with.", omitted: "unknown" };
  return { owner: "what the rule names", name: name === "" ? "this" : name, path, field };
}

/** The rule that a declaration is, read; nothing for another declaration. */
export function ruleOf(workshop: Workshop, declaration: Declaration): Rule | undefined {
  return declaration.keyword === "rule" ? readRule(declaration, workshop, "") : undefined;
}
