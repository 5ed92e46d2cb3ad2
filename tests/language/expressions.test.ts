import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { parseDeclaration } from "../../grammar/parse.ts";
import type { ExpressionTree } from "../../grammar/tree.ts";
import { describeExpression, describeProblems } from "./support.ts";

function rule(expression: string, key = "require"): string {
  return `rule a {\n  ${key}: ${expression}\n}\n`;
}

function expressionOf(text: string): ExpressionTree | undefined {
  const entry = parseDeclaration(text).block?.entries[0];
  return entry?.form === "field" ? entry.expression : undefined;
}

function described(expression: string): string | undefined {
  const tree = expressionOf(rule(expression));
  return tree === undefined ? undefined : describeExpression(tree);
}

describe("an expression", () => {
  it.each([
    ["cockpit.stem.spacers-below <= 30 mm", "(cockpit.stem.spacers-below <= 30_mm)"],
    ["a < b", "(a < b)"],
    ["a<b", "(a < b)"],
    ["a ≤ b", "(a <= b)"],
    ["a = b", "(a = b)"],
    ["a is mountain", "(a is mountain)"],
    ["a is not mountain", "(a is not mountain)"],
    ["a in 3 mm to 5 mm", "(a in (3_mm to 5_mm))"],
    ["a not in 3 to 5 mm", "(a not in (3 to 5_mm))"],
    ["a in mountain, gravel", "(a in mountain_,_gravel)"],
    ["a in (mountain, gravel) and b is c", "((a in mountain_,_gravel) and (b is c))"],
    ["a is 29 in", "(a is 29_in)"],
    ["a < 29 in and b in c", "((a < 29_in) and (b in c))"],
    ["51 in b.c", "(51 in b.c)"],
    ["51 in (b, c) and d", "((51 in b_,_c) and d)"],
    ["29 in ± 1 in < b", "(29_in_±_1_in < b)"],
    ["a in 28 in to 29 in, 31 in", "(a in 28_in_to_29_in_,_31_in)"],
    ['a is "Fellside 29"', '(a is "Fellside 29")'],
    // Precedence, loosest first: or, and, not, comparison, to, + and -, * and /.
    ["a or b and c", "(a or (b and c))"],
    ["a and b or c", "((a and b) or c)"],
    ["not a and b", "((not a) and b)"],
    ["not not a", "(not (not a))"],
    ["not a < b", "(not (a < b))"],
    ["a + b < c * d", "((a + b) < (c * d))"],
    ["a + b * c", "(a + (b * c))"],
    ["a - b - c", "((a - b) - c)"],
    ["a / b * c", "((a / b) * c)"],
    ["a in b + 1 to c - 1", "(a in ((b + 1) to (c - 1)))"],
    ["(a or b) and c", "((a or b) and c)"],
    ["(a + b) * c", "((a + b) * c)"],
    // Signs of arithmetic are words of their own; anything else is part of a name or a number.
    ["a-b < -5 mm", "(a-b < -5_mm)"],
    ["a − b < c", "((a - b) < c)"],
    ["front/rear is b", "(front/rear is b)"],
    ["mass is 27.2 ± 0.05 mm", "(mass is 27.2_±_0.05_mm)"],
    ["max(a, b + 1 mm) > round(c)", "(max(a, (b + 1_mm)) > round(c))"],
    ["count() is 0", "(count() is 0)"],
    ["min(a, max(b, c)) < 3", "(min(a, max(b, c)) < 3)"],
    ["max((a), (b))", "max(a, b)"],
    // Inside a call a comma separates arguments, unless parentheses make a list of choices.
    ["count(a in b, c)", "count((a in b), c)"],
    ["count((a in b, c), d)", "count((a in b_,_c), d)"],
    ["total = a + b", "(total = (a + b))"],
  ])("%s", (expression, tree) => {
    expect(described(expression)).toBe(tree);
    expect(describeProblems(rule(expression))).toEqual([]);
  });

  it.each([
    ["a <", 'language/expected at "<"'],
    ["a and", 'language/expected at "and"'],
    ["< 3", 'language/expected at "<"'],
    ["(a < 3", 'language/expected at "3"'],
    ["max(a, b", 'language/expected at "b"'],
    ["a < 3)", 'language/unexpected at ")"'],
    ["a < b < c", 'language/unexpected at "<"'],
    ["a, b", 'language/unexpected at ","'],
    ["a not b", 'language/expected at "b"'],
    ["", 'language/missing-value at ":"'],
  ])("is refused where it goes wrong: %s", (expression, problem) => {
    expect(describeProblems(rule(expression))).toEqual([problem]);
  });

  it("stands under when, require and let of a rule, and nowhere else", () => {
    expect(expressionOf(rule("a is b", "when"))).toBeDefined();
    expect(expressionOf(rule("total = a + b", "let"))).toBeDefined();
    expect(expressionOf(rule("warning", "severity"))).toBeUndefined();
    expect(expressionOf("build a {\n  require: b\n}\n")).toBeUndefined();
    const inLet = parseDeclaration("rule a {\n  let {\n    total: a + b\n  }\n}\n").block?.entries[0];
    expect(inLet?.form === "group" && inLet.block.entries[0]).toMatchObject({ form: "field", expression: {} });
  });

  it("keeps its tokens as one value beside the tree", () => {
    const entry = parseDeclaration(rule("a or b")).block!.entries[0]!;
    expect(entry.form === "field" && entry.value.alternates.map((each) => each.length)).toEqual([3]);
  });

  it("has places that enclose what they stand for", () => {
    const text = rule("(a + b) * max(c, d) < 30 mm");
    const place = ({ start, end }: { start: number; end: number }): string => text.slice(start, end);
    const tree = expressionOf(text)!;
    expect(place(tree.span)).toBe("(a + b) * max(c, d) < 30 mm");
    expect(tree.form === "operation" && [tree.left, tree.right].map(({ span }) => place(span))).toEqual([
      "(a + b) * max(c, d)",
      "30 mm",
    ]);
    expect(tree.form === "operation" && place(tree.operatorSpan)).toBe("<");
  });

  it("is refused, not read, when it is too long or too deep", () => {
    expect(describeProblems(rule(`a${" + a".repeat(400)}`)).map((each) => each.split(" ")[0])).toEqual([
      "language/expression-limit",
    ]);
    expect(describeProblems(rule(`${"(".repeat(40)}a${")".repeat(40)}`)).map((each) => each.split(" ")[0])).toEqual([
      "language/expression-limit",
    ]);
  });
});

describe("random expressions", () => {
  /** Trees as text with every operation in parentheses, and the same with only the parentheses that are needed. */
  const operand = fc.constantFrom("a", "b.c", "3 mm", '"x"', "29 in");
  const levels = ["or", "and", "<", "to", "+", "*"] as const;
  const tree: fc.Memo<{ full: string; short: string; level: number }> = fc.memo((depth) => {
    const leaf = operand.map((text) => ({ full: text.replace(" ", "_"), short: text, level: levels.length }));
    if (depth <= 1) return leaf;
    const pair = fc.tuple(fc.nat(levels.length - 1), tree(depth - 1), tree(depth - 1)).map(([level, left, right]) => {
      const isOnce = level === 2 || level === 3;
      const wrap = (side: typeof left, isRight: boolean): string =>
        side.level < level || (side.level === level && (isRight || isOnce)) ? `(${side.short})` : side.short;
      return {
        full: `(${left.full} ${levels[level]} ${right.full})`,
        short: `${wrap(left, false)} ${levels[level]} ${wrap(right, true)}`,
        level,
      };
    });
    return fc.oneof(leaf, pair);
  });

  it("bind as the parentheses say that would be needed otherwise", () => {
    fc.assert(
      fc.property(tree(5), ({ full, short }) => {
        expect(described(short)).toBe(full);
      }),
    );
  });
});
