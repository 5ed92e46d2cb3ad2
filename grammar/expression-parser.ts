/**
 * The expressions of a rule: total, without loops, so that a rule always ends.
 *
 * Loosest first: or, and, not, one comparison, to, + and -, * and /, then a call, a parenthesis or an operand. Kept
 * apart from the parser of statements because most files hold no rule, and making a parser is most of a cold start.
 */

import { EmbeddedActionsParser, type IToken } from "chevrotain";
import { type Token, valueToken } from "./lexer.ts";
import { messages, reportParserError } from "./messages.ts";
import * as types from "./tokens.ts";
import type { ExpressionTree, Span, SyntaxProblem, ValueToken } from "./tree.ts";

function joinSpans(first: Span, last: Span): Span {
  return { start: first.start, end: last.end };
}

function operation(operator: string, token: IToken, left: ExpressionTree, right: ExpressionTree): ExpressionTree {
  return {
    form: "operation",
    operator: operator as (ExpressionTree & { form: "operation" })["operator"],
    operatorSpan: valueToken(token).span,
    left,
    right,
    span: joinSpans(left.span, right.span),
  };
}

class ExpressionParser extends EmbeddedActionsParser {
  constructor() {
    super(types.parsedTypes, {
      maxLookahead: 1,
      recoveryEnabled: false,
      skipValidations: true,
      errorMessageProvider: messages,
    });
    this.performSelfAnalysis();
  }

  /** A or B */
  readonly anyOf = this.RULE("anyOf", (): ExpressionTree => {
    let left = this.SUBRULE(this.allOf);
    this.MANY(() => {
      const operator = this.CONSUME(types.Or);
      const right = this.SUBRULE2(this.allOf);
      this.ACTION(() => {
        left = operation("or", operator, left, right);
      });
    });
    return left;
  });

  /** A and B */
  private readonly allOf = this.RULE("allOf", (): ExpressionTree => {
    let left = this.SUBRULE(this.negation);
    this.MANY(() => {
      const operator = this.CONSUME(types.And);
      const right = this.SUBRULE2(this.negation);
      this.ACTION(() => {
        left = operation("and", operator, left, right);
      });
    });
    return left;
  });

  /** not A */
  private readonly negation = this.RULE("negation", (): ExpressionTree => {
    const words: IToken[] = [];
    this.MANY(() => {
      words.push(this.CONSUME(types.Not));
    });
    let tree = this.SUBRULE(this.comparison);
    this.ACTION(() => {
      for (const word of words.reverse()) {
        tree = { form: "not", operand: tree, span: joinSpans(valueToken(word).span, tree.span) };
      }
    });
    return tree;
  });

  /** A < B, A is B, A is not B, A in B, A not in B: at most one to an expression, so that none can be misread. */
  private readonly comparison = this.RULE("comparison", (): ExpressionTree => {
    let left = this.SUBRULE(this.range);
    this.OPTION(() => {
      let first: IToken | undefined;
      let last: IToken | undefined;
      this.OR([
        {
          ALT: () => {
            first = this.CONSUME(types.Comparison);
          },
        },
        {
          ALT: () => {
            first = this.CONSUME(types.Is);
            this.OPTION2(() => {
              last = this.CONSUME(types.Not);
            });
          },
        },
        {
          ALT: () => {
            first = this.CONSUME(types.In);
          },
        },
        {
          ALT: () => {
            first = this.CONSUME2(types.Not);
            last = this.CONSUME2(types.In);
          },
        },
      ]);
      const right = this.SUBRULE(this.choices);
      this.ACTION(() => {
        const operator = last === undefined ? first!.image : `${first!.image} ${last.image}`;
        const operatorSpan = joinSpans(valueToken(first!).span, valueToken(last ?? first!).span);
        const tree = operation(operator, first!, left, right);
        left = { ...tree, operatorSpan } as ExpressionTree;
      });
    });
    return left;
  });

  /** A { , B }: what stands on the right of a comparison; several make one operand that holds the commas. */
  private readonly choices = this.RULE("choices", (): ExpressionTree => {
    let tree = this.SUBRULE(this.range);
    this.MANY({
      GATE: () => this.argumentDepth === 0,
      DEF: () => {
        const comma = this.CONSUME(types.Comma);
        const next = this.SUBRULE2(this.range);
        this.ACTION(() => {
          tree = joinChoices(tree, comma, next);
        });
      },
    });
    return tree;
  });

  /** How many calls enclose the current place: there a comma separates arguments, not choices. */
  private argumentDepth = 0;

  /** A to B */
  private readonly range = this.RULE("range", (): ExpressionTree => {
    let left = this.SUBRULE(this.sum);
    this.OPTION(() => {
      const operator = this.CONSUME(types.To);
      const right = this.SUBRULE2(this.sum);
      this.ACTION(() => {
        left = operation("to", operator, left, right);
      });
    });
    return left;
  });

  /** A + B - C */
  private readonly sum = this.RULE("sum", (): ExpressionTree => {
    let left = this.SUBRULE(this.product);
    this.MANY(() => {
      const operator = this.CONSUME(types.Sum);
      const right = this.SUBRULE2(this.product);
      this.ACTION(() => {
        left = operation(operator.image, operator, left, right);
      });
    });
    return left;
  });

  /** A * B / C */
  private readonly product = this.RULE("product", (): ExpressionTree => {
    let left = this.SUBRULE(this.primary);
    this.MANY(() => {
      const operator = this.CONSUME(types.Product);
      const right = this.SUBRULE2(this.primary);
      this.ACTION(() => {
        left = operation(operator.image, operator, left, right);
      });
    });
    return left;
  });

  /** ( A ), f(A, B), or an operand such as `12.5 kg` or `cockpit.stem` */
  private readonly primary = this.RULE(
    "primary",
    (): ExpressionTree =>
      this.OR([
        { ALT: () => this.SUBRULE(this.parenthesis) },
        { ALT: () => this.SUBRULE(this.call) },
        { ALT: () => this.SUBRULE(this.operand) },
      ]),
  );

  private readonly parenthesis = this.RULE("parenthesis", (): ExpressionTree => {
    const open = this.CONSUME(types.OpenParenthesis);
    const outer = this.argumentDepth;
    this.ACTION(() => {
      this.argumentDepth = 0;
    });
    let tree = this.SUBRULE(this.anyOf);
    this.MANY(() => {
      const comma = this.CONSUME(types.Comma);
      const next = this.SUBRULE2(this.anyOf);
      this.ACTION(() => {
        tree = joinChoices(tree, comma, next);
      });
    });
    const close = this.CONSUME(types.CloseParenthesis);
    this.ACTION(() => {
      this.argumentDepth = outer;
      tree = { ...tree, span: joinSpans(valueToken(open).span, valueToken(close).span) };
    });
    return tree;
  });

  private readonly call = this.RULE("call", (): ExpressionTree => {
    const name = valueToken(this.CONSUME(types.Callee));
    const list: ExpressionTree[] = [];
    this.ACTION(() => {
      this.argumentDepth++;
    });
    this.CONSUME(types.OpenParenthesis);
    this.MANY_SEP({
      SEP: types.Comma,
      DEF: () => list.push(this.SUBRULE(this.anyOf)),
    });
    const close = this.CONSUME(types.CloseParenthesis);
    this.ACTION(() => {
      this.argumentDepth--;
    });
    return { form: "call", name, arguments: list, span: joinSpans(name.span, valueToken(close).span) };
  });

  private readonly operand = this.RULE("operand", (): ExpressionTree => {
    const tokens: ValueToken[] = [];
    this.AT_LEAST_ONE(() => {
      const token = this.OR([{ ALT: () => this.CONSUME(types.Word) }, { ALT: () => this.CONSUME(types.Text) }]);
      tokens.push(valueToken(token));
    });
    return { form: "operand", tokens, span: joinSpans(tokens[0]!.span, tokens.at(-1)!.span) };
  });

  override reset(): void {
    super.reset();
    this.argumentDepth = 0;
  }
}

/** `mountain, gravel` as one operand that holds the commas; `4 to 6, 8` keeps its `to` as a word. */
function joinChoices(left: ExpressionTree, comma: IToken, right: ExpressionTree): ExpressionTree {
  return {
    form: "operand",
    tokens: [...plainTokens(left), valueToken(comma), ...plainTokens(right)],
    span: joinSpans(left.span, right.span),
  };
}

/** The tokens an expression was made of, parentheses left out. */
function plainTokens(tree: ExpressionTree): ValueToken[] {
  const tokens: ValueToken[] = [];
  const waiting: (ExpressionTree | ValueToken)[] = [tree];
  while (waiting.length > 0) {
    const next = waiting.pop()!;
    if ("kind" in next) tokens.push(next);
    else if (next.form === "operand") tokens.push(...next.tokens);
    else if (next.form === "operation") {
      waiting.push(next.right, { kind: "word", text: next.operator, span: next.operatorSpan }, next.left);
    } else if (next.form === "not") {
      waiting.push(next.operand, {
        kind: "word",
        text: "not",
        span: { start: next.span.start, end: next.span.start + 3 },
      });
    } else waiting.push(...next.arguments.toReversed(), next.name);
  }
  return tokens;
}

let parser: ExpressionParser | undefined;

/**
 * The tree of an expression, from tokens that mendExpression has given their types; undefined when it could not be
 * finished. Its problems are added to the list. The caller bounds the number of tokens and the depth of parentheses.
 */
export function parseExpression(tokens: readonly Token[], problems: SyntaxProblem[]): ExpressionTree | undefined {
  parser ??= new ExpressionParser();
  parser.input = tokens as Token[];
  const tree = parser.anyOf() as ExpressionTree | undefined;
  for (const error of parser.errors) problems.push(reportParserError(error, tokens));
  return tree;
}
