import type { ExpressionTree, Span, ValueToken } from "../../grammar/tree.ts";
import { splitAtCommas } from "../values/lists.ts";
import { nearestSeveral } from "../values/near.ts";
import type { ValueProblem } from "../values/problems.ts";
import { assemblyNames } from "../vocabulary/index.ts";
import { Agreement, itemType } from "./agreement.ts";
import { checkArguments } from "./arguments.ts";
import { productType, sumType } from "./arithmetic-type.ts";
import { type ExpressionType, truthType, wrongType } from "./expression-type.ts";
import { functionByName, ruleFunctions } from "./functions.ts";
import { looksLikeNumber, readLiteral } from "./literals.ts";
import { type NameContext, readName } from "./names.ts";
import { everyPath, pathMeaning } from "./paths.ts";
import type { Problems } from "./problems.ts";
import { truth } from "./truth.ts";
import type { ArithmeticSign, ComparisonSign, Typed } from "./typed-expression.ts";

type Operation = Extract<ExpressionTree, { form: "operation" }>;
type Operand = Extract<ExpressionTree, { form: "operand" }>;

/** What expressions of a rule are read in. */
export interface InferenceContext extends NameContext {
  /** The day on which rules are judged, `2026-11-25`. */
  readonly today: string;
  /** Names that `let` gave so far. */
  readonly locals: ReadonlyMap<string, Typed>;
  /** Names that `let` gives anywhere in the rule. */
  readonly given: ReadonlySet<string>;
}

/**
 * Gives every part of an expression its type. What does not go together is a finding at the operator or the name,
 * before any build is looked at; what it stands in is then `wrong` and has no finding of its own.
 */
export class Inference {
  readonly #context: InferenceContext;
  readonly #problems: Problems;
  readonly #agreement: Agreement;

  constructor(context: InferenceContext) {
    this.#context = context;
    this.#problems = context.problems;
    this.#agreement = new Agreement(context.problems);
  }

  /** An expression that has to be true or false. */
  condition(tree: ExpressionTree): Typed {
    const found = this.infer(tree);
    return this.#agreement.truth(found) ? found : wrong(tree.span);
  }

  /** @param beside what it is compared with, by which a bare word is understood. */
  infer(tree: ExpressionTree, beside?: Typed): Typed {
    switch (tree.form) {
      case "operand":
        return this.#operand(tree, beside);
      case "not": {
        const operand = this.condition(tree.operand);
        return { form: "not", operand, type: truthType, span: tree.span };
      }
      case "call":
        return this.#call(tree);
      case "operation":
        return this.#operation(tree);
    }
  }

  #operation(tree: Operation): Typed {
    const { operator, span } = tree;
    switch (operator) {
      case "and":
      case "or": {
        const form = operator === "and" ? "both" : "either";
        return { form, left: this.condition(tree.left), right: this.condition(tree.right), type: truthType, span };
      }
      case "=":
      case "is":
        return this.#sameness(tree, "is");
      case "is not":
        return this.#sameness(tree, operator);
      case "in":
      case "not in":
        return this.#membership(tree);
      case "<":
      case "<=":
      case ">":
      case ">=":
        return this.#order(tree, operator);
      case "to": {
        const range = this.#range(tree, undefined);
        if (range.form !== "wrong") {
          this.#agreement.report(span, `A range stands after in, as in a in ${this.#problems.text(span)}.`);
        }
        return wrong(span);
      }
      default:
        return this.#arithmetic(tree, operator);
    }
  }

  #arithmetic(tree: Operation, sign: ArithmeticSign): Typed {
    const { span, operatorSpan } = tree;
    const [left, right] = [this.infer(tree.left), this.infer(tree.right)];
    const [one, other] = [this.#agreement.number(left), this.#agreement.number(right)];
    if (!one || !other) return wrong(span);
    if (sign === "+" || sign === "-") {
      const verb = sign === "+" ? "added up" : "subtracted";
      if (!this.#agreement.measures(verb, operatorSpan, left, one, right, other)) return wrong(span);
      return { form: "arithmetic", sign, left, right, type: sumType(one, other), span };
    }
    return { form: "arithmetic", sign, left, right, type: productType(sign, one, other), span };
  }

  #order(tree: Operation, sign: ComparisonSign): Typed {
    const { span, operatorSpan } = tree;
    for (const side of [tree.left, tree.right]) {
      if (!this.#isNamed(side) || this.#isOrdered(side)) continue;
      this.#agreement.number(this.infer(side));
      return wrong(span);
    }
    const [left, right] = this.#sides(tree);
    if (left.form === "wrong" || right.form === "wrong") return wrong(span);
    if (isDay(left) && isDay(right)) return { form: "comparison", sign, left, right, type: truthType, span };
    if (isStretch(right)) {
      this.#agreement.report(right.span, `One number is expected after ${sign}, not a range.`);
      return wrong(span);
    }
    if (!this.#agreement.numbers("compared", operatorSpan, left, right)) return wrong(span);
    return { form: "comparison", sign, left, right, type: truthType, span };
  }

  /** Whether something named can come before something else: numbers can, and days. Nothing is said of others here. */
  #isOrdered(tree: ExpressionTree): boolean {
    const word = tree.form === "operand" ? tree.tokens[0]?.text : undefined;
    if (word === undefined) return true;
    const type = this.#context.locals.get(word)?.type ?? pathMeaning(word)?.type;
    return type?.form !== "name" || type.names.of === "day";
  }

  #sameness(tree: Operation, sign: "is" | "is not"): Typed {
    const { span, operatorSpan } = tree;
    if (hasCommas(tree.right)) {
      const word = sign === "is" ? "in" : "not in";
      this.#problems.report(operatorSpan, "expression/list", `Several choices stand after ${word}.`, [
        this.#problems.write(operatorSpan, word),
      ]);
      return wrong(span);
    }
    const [left, right] = this.#sides(tree);
    for (const [side, other] of [
      [right, left],
      [left, right],
    ] as const) {
      if (side.type.form === "none" && other.type.form !== "wrong") {
        return { form: "absence", isNone: sign === "is", operand: other, type: truthType, span };
      }
    }
    if (isStretch(right)) return this.#inStretch(tree, sign === "is", left, right);
    if (!this.#agreement.same(operatorSpan, left, right)) return wrong(span);
    return { form: "comparison", sign, left, right, type: truthType, span };
  }

  /** `x is 27.2 ± 0.05 mm` asks whether it is inside. */
  #inStretch({ span, operatorSpan }: Operation, isIn: boolean, left: Typed, right: Typed): Typed {
    return this.#agrees(operatorSpan, left, right)
      ? { form: "membership", isIn, left, choices: [right], type: truthType, span }
      : wrong(span);
  }

  #membership(tree: Operation): Typed {
    const { left: leftTree, right: rightTree, operator, operatorSpan, span } = tree;
    const isIn = operator === "in";
    // `mountain in frame.categories`: what is on the left is understood by the list.
    const isRange = rightTree.form === "operation" && rightTree.operator === "to";
    if (this.#isLiteral(leftTree) && this.#isNamed(rightTree) && !isRange) {
      const list = this.infer(rightTree);
      const left = this.infer(leftTree, { ...list, type: itemType(list.type) });
      return this.#agrees(operatorSpan, left, list)
        ? { form: "membership", isIn, left, choices: [list], type: truthType, span }
        : wrong(span);
    }
    const left = this.infer(leftTree);
    if (left.type.form === "wrong") return wrong(span);
    if (!this.#agreement.notListed(left)) return wrong(span);
    const choices = this.#choices(rightTree, left);
    const isWhole = choices.map((choice) => this.#agrees(operatorSpan, left, choice)).every(Boolean);
    return isWhole ? { form: "membership", isIn, left, choices, type: truthType, span } : wrong(span);
  }

  /** Whether a choice, or the items of a list, can be what stands on the left. */
  #agrees(operator: Span, left: Typed, choice: Typed): boolean {
    const { type } = choice;
    if (type.form === "none") return true;
    const asOne = { ...choice, type: itemType(type) } as Typed;
    const single = asOne.type;
    if (single.form === "number" && left.type.form === "number") {
      const own = this.#agreement.number(left);
      return own !== undefined && this.#agreement.measures("compared", operator, left, own, asOne, single);
    }
    return this.#agreement.same(operator, left, asOne);
  }

  #choices(tree: ExpressionTree, left: Typed): readonly Typed[] {
    if (tree.form === "operation" && tree.operator === "to") return [this.#range(tree, left)];
    if (!hasCommas(tree)) return [this.infer(tree, left)];
    return splitAtCommas((tree as Operand).tokens).items.map((tokens) => this.#choice(tokens, left));
  }

  /** One of several choices: a value, a name, or a range of either. */
  #choice(tokens: readonly ValueToken[], left: Typed): Typed {
    const first = tokens[0];
    const last = tokens.at(-1);
    const span = first && last ? { start: first.span.start, end: last.span.end } : { start: 0, end: 0 };
    const to = tokens.findIndex(({ kind, text }) => kind === "word" && text === "to");
    if (to <= 0) return this.#operand({ form: "operand", tokens, span }, left);
    const side = (part: readonly ValueToken[]): Operand => ({
      form: "operand",
      tokens: part,
      span: part[0] ? { start: part[0].span.start, end: part.at(-1)!.span.end } : span,
    });
    return this.#rangeOf(side(tokens.slice(0, to)), side(tokens.slice(to + 1)), tokens[to]!, span);
  }

  #range(tree: Operation, _left: Typed | undefined): Typed {
    const to: ValueToken = { kind: "word", text: "to", span: tree.operatorSpan };
    return this.#rangeOf(tree.left, tree.right, to, tree.span);
  }

  #rangeOf(from: ExpressionTree, until: ExpressionTree, to: ValueToken, span: Span): Typed {
    // Written numbers share a unit: 3 to 5 mm.
    if (isWrittenNumber(from) && isWrittenNumber(until))
      return this.#number([...from.tokens, to, ...until.tokens], span);
    const [least, greatest] = [this.infer(from), this.infer(until)];
    const one = this.#agreement.number(least);
    const other = this.#agreement.number(greatest);
    if (!one || !other || !this.#agreement.measures("compared", to.span, least, one, greatest, other))
      return wrong(span);
    return { form: "range", least, greatest, type: { ...one, role: "allowed" }, span };
  }

  /** Both sides, the one that says what it is first, since the other is understood by it. */
  #sides({ left, right }: Operation): readonly [Typed, Typed] {
    if (this.#isLiteral(left) && this.#isNamed(right)) {
      const known = this.infer(right);
      return [this.infer(left, known), known];
    }
    const known = this.infer(left);
    return [known, this.infer(right, known)];
  }

  /** Something written in the rule itself: a number, a word, a text. */
  #isLiteral(tree: ExpressionTree): tree is Operand {
    return tree.form === "operand" && !this.#isNamed(tree);
  }

  /** Something that says by itself what it is. */
  #isNamed(tree: ExpressionTree): boolean {
    if (tree.form !== "operand") return true;
    const [token] = tree.tokens;
    if (tree.tokens.length !== 1 || token?.kind !== "word") return false;
    return this.#context.locals.has(token.text) || pathMeaning(token.text) !== undefined;
  }

  #operand({ tokens, span }: Operand, beside: Typed | undefined): Typed {
    const [token] = tokens;
    if (!token) return wrong(span);
    if (tokens.some(({ kind }) => kind === "comma")) {
      this.#problems.report(span, "expression/list", "Several choices stand after in, as in a in b, c.");
      return wrong(span);
    }
    if (beside?.type.form === "wrong" && !this.#isNamed({ form: "operand", tokens, span })) return wrong(span);
    if (tokens.length > 1) return this.#several(tokens, span);
    if (token.kind === "word" && token.text === "none") {
      return {
        form: "constant",
        value: { form: "none", path: "none", isOwn: true },
        written: "none",
        type: { form: "none" },
        span,
      };
    }
    const expected = beside?.type.form === "name" ? beside.type.names : undefined;
    if (expected) {
      const isWord = expected.of === "word" && Object.hasOwn(expected.words, token.text);
      const isSlot = expected.of === "slot" && token.kind === "word" && pathMeaning(token.text)?.what === "slot";
      if (!isWord && !isSlot) {
        const named = this.#named(token);
        if (named) return named;
      }
      const value = readName(expected, token, this.#problems.text(beside!.span), this.#context);
      if (!value) return wrong(span);
      return { form: "constant", value, written: this.#problems.text(span), type: beside!.type, span };
    }
    const named = this.#named(token);
    if (named) return named;
    if (token.kind === "text") {
      const type: ExpressionType = { form: "name", names: { of: "text" } };
      return {
        form: "constant",
        value: { form: "name", name: token.text },
        written: this.#problems.text(span),
        type,
        span,
      };
    }
    if (token.text === "yes" || token.text === "no") {
      const value = { form: "truth", truth: truth(token.text === "yes") } as const;
      return { form: "constant", value, written: token.text, type: truthType, span };
    }
    if (/^\d{4}-\d{2}-\d{2}$/.test(token.text)) {
      const type: ExpressionType = { form: "name", names: { of: "day" } };
      const value = readName({ of: "day" }, token, "This", this.#context);
      return value ? { form: "constant", value, written: token.text, type, span } : wrong(span);
    }
    if (looksLikeNumber(tokens)) return this.#number(tokens, span);
    this.#unknownPath(token, beside);
    return wrong(span);
  }

  /** A name given by let, a path, or the day of today. */
  #named({ kind, text, span }: ValueToken): Typed | undefined {
    if (kind !== "word") return undefined;
    const local = this.#context.locals.get(text);
    if (local) return { form: "local", name: text, of: local, type: local.type, span };
    const meaning = pathMeaning(text);
    if (meaning) return { form: "path", meaning, type: meaning.type, span };
    if (text !== "today") return undefined;
    const type: ExpressionType = { form: "name", names: { of: "day" } };
    return {
      form: "constant",
      value: { form: "name", name: this.#context.today },
      written: this.#context.today,
      type,
      span,
    };
  }

  #several(tokens: readonly ValueToken[], span: Span): Typed {
    if (looksLikeNumber(tokens)) return this.#number(tokens, span);
    this.#problems.report(
      span,
      "expression/unknown-path",
      `${this.#problems.text(span)} is several words side by side; a path such as cockpit.stem, a number with its unit, or one name is expected here.`,
    );
    return wrong(span);
  }

  #number(tokens: readonly ValueToken[], span: Span): Typed {
    const problems: ValueProblem[] = [];
    const literal = readLiteral(tokens, span, problems);
    for (const problem of problems) this.#problems.add(problem);
    if (!literal || problems.some(({ severity }) => severity === "error")) return wrong(span);
    const { value, type, written } = literal;
    return {
      form: "constant",
      value,
      written,
      type: value.form === "range" ? { ...type, role: "allowed" } : type,
      span,
    };
  }

  #unknownPath({ text, span }: ValueToken, beside: Typed | undefined): void {
    if (assemblyNames.includes(text)) {
      this.#problems.report(
        span,
        "expression/unknown-path",
        `${text} is a group of slots; name one of them, as in ${exampleIn(text)}.`,
      );
      return;
    }
    if (this.#context.given.has(text)) {
      this.#problems.report(
        span,
        "expression/unknown-path",
        `${text} stands for nothing here yet: an entry can use only the names that let gave above it, and none can be given by itself.`,
      );
      return;
    }
    // A list has no names of its own to be compared with.
    if (beside && !this.#agreement.notListed(beside)) return;
    this.#problems.reportNear(
      span,
      "expression/unknown-path",
      `No build has anything called ${this.#problems.text(span)}.`,
      nearestSeveral(text, [...this.#context.locals.keys(), ...everyPath()]),
    );
  }

  #call(tree: Extract<ExpressionTree, { form: "call" }>): Typed {
    const row = functionByName(tree.name.text);
    if (!row) {
      this.#problems.reportNear(
        tree.name.span,
        "expression/unknown-function",
        `There is no function ${tree.name.text}; there are ${ruleFunctions.map(({ name }) => name).join(", ")}.`,
        nearestSeveral(
          tree.name.text,
          ruleFunctions.map(({ name }) => name),
        ),
      );
    }
    const given = tree.arguments.map((argument) => this.infer(argument));
    const type = row && checkArguments(row, tree, given, this.#agreement, this.#problems);
    if (!row || !type || type.form === "wrong") return wrong(tree.span);
    return { form: "call", function: row, arguments: given, type, span: tree.span };
  }
}

function wrong(span: Span): Typed {
  return { form: "wrong", type: wrongType, span };
}

function hasCommas(tree: ExpressionTree): boolean {
  return tree.form === "operand" && tree.tokens.some(({ kind }) => kind === "comma");
}

function isWrittenNumber(tree: ExpressionTree): tree is Operand {
  return tree.form === "operand" && looksLikeNumber(tree.tokens);
}

function isDay({ type }: Typed): boolean {
  return type.form === "name" && type.names.of === "day";
}

/** A number written with its tolerance. */
function isStretch(of: Typed): boolean {
  return of.form === "constant" && of.value.form === "range";
}

function exampleIn(assembly: string): string {
  return everyPath().find((path) => path.startsWith(`${assembly}.`)) ?? assembly;
}
