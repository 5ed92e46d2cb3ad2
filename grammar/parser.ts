/**
 * One statement's tokens to a piece of the tree.
 *
 * Every statement is parsed on its own, so a mistake never reaches past its line. One parser serves the whole
 * process, made when the first statement needs it.
 */

import { EmbeddedActionsParser, type IToken } from "chevrotain";
import type { Token } from "./lexer.ts";
import { valueToken } from "./lexer.ts";
import { messages, reportParserError } from "./messages.ts";
import * as types from "./tokens.ts";
import type { ExpressionTree, Span, SyntaxProblem, ValueToken, ValueTree } from "./tree.ts";

/** The parts of a header in the order read; what is missing is for the caller to report. */
export interface HeaderParts {
  readonly keyword: ValueToken;
  kind?: ValueToken;
  name?: ValueToken;
  readonly texts: ValueToken[];
  /** The words `from` and `of` themselves, so that a missing name after them can be pointed at. */
  fromWord?: ValueToken;
  from?: ValueToken;
  ofWord?: ValueToken;
  of?: ValueToken;
}

export interface EntryParts {
  readonly key: ValueToken;
  readonly colon?: ValueToken;
  readonly value?: ValueTree;
  readonly expression?: ExpressionTree;
}

export interface WaiveParts {
  readonly word: ValueToken;
  code?: ValueToken;
  atWord?: ValueToken;
  at?: ValueToken;
  reason?: ValueToken;
  untilWord?: ValueToken;
  until?: ValueToken;
}

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

class StatementParser extends EmbeddedActionsParser {
  constructor() {
    super(types.parsedTypes, {
      maxLookahead: 1,
      recoveryEnabled: false,
      skipValidations: true,
      errorMessageProvider: messages,
    });
    this.performSelfAnalysis();
  }

  /** KEYWORD [NAME] { "TITLE" | from BASE | of BUILD } */
  readonly header = this.RULE("header", (): HeaderParts => {
    const parts: HeaderParts = { keyword: valueToken(this.CONSUME(types.Word)), texts: [] };
    this.SUBRULE(this.headerTail, { ARGS: [parts] });
    return parts;
  });

  /** KEYWORD [KIND] [NAME] { ... }: a part or a standard. */
  readonly headerWithKind = this.RULE("headerWithKind", (): HeaderParts => {
    const parts: HeaderParts = { keyword: valueToken(this.CONSUME(types.Word)), texts: [] };
    this.OPTION(() => {
      parts.kind = valueToken(this.CONSUME2(types.Word));
    });
    this.SUBRULE(this.headerTail, { ARGS: [parts] });
    return parts;
  });

  private readonly headerTail = this.RULE("headerTail", (given?: HeaderParts): void => {
    // While chevrotain records the rule there are no arguments; a stand-in keeps the actions harmless.
    const parts: HeaderParts = given ?? { keyword: { kind: "word", text: "", span: { start: 0, end: 0 } }, texts: [] };
    this.OPTION(() => {
      parts.name = valueToken(this.CONSUME(types.Word));
    });
    this.MANY(() => {
      this.OR([
        { ALT: () => parts.texts.push(valueToken(this.CONSUME(types.Text))) },
        {
          ALT: () => {
            parts.fromWord = valueToken(this.CONSUME(types.From));
            this.OPTION2(() => {
              parts.from = valueToken(this.CONSUME2(types.Word));
            });
          },
        },
        {
          ALT: () => {
            parts.ofWord = valueToken(this.CONSUME(types.Of));
            this.OPTION3(() => {
              parts.of = valueToken(this.CONSUME3(types.Word));
            });
          },
        },
      ]);
    });
  });

  /** waive CODE { at PATH | "REASON" | until DATE } */
  readonly waive = this.RULE("waive", (): WaiveParts => {
    const parts: WaiveParts = { word: valueToken(this.CONSUME(types.Word)) };
    this.OPTION(() => {
      parts.code = valueToken(this.CONSUME2(types.Word));
    });
    this.MANY(() => {
      this.OR([
        {
          ALT: () => {
            parts.atWord = valueToken(this.CONSUME(types.At));
            this.OPTION2(() => {
              parts.at = valueToken(this.CONSUME3(types.Word));
            });
          },
        },
        {
          ALT: () => {
            const text = valueToken(this.CONSUME(types.Text));
            parts.reason ??= text;
          },
        },
        {
          ALT: () => {
            parts.untilWord = valueToken(this.CONSUME(types.Until));
            this.OPTION3(() => {
              parts.until = valueToken(this.CONSUME4(types.Word));
            });
          },
        },
      ]);
    });
    return parts;
  });

  /** KEY [: VALUE] */
  readonly entry = this.RULE("entry", (): EntryParts => {
    const key = valueToken(this.CONSUME(types.Word));
    let colon: ValueToken | undefined;
    let value: ValueTree | undefined;
    this.OPTION(() => {
      colon = valueToken(this.CONSUME(types.Colon));
      this.OPTION2(() => {
        value = this.SUBRULE(this.value);
      });
    });
    return { key, ...(colon === undefined ? {} : { colon }), ...(value === undefined ? {} : { value }) };
  });

  /** ALTERNATE { or ALTERNATE } */
  private readonly value = this.RULE("value", (): ValueTree => {
    const tokens: ValueToken[] = [];
    const alternates: ValueToken[][] = [this.SUBRULE(this.alternate)];
    this.ACTION(() => tokens.push(...alternates[0]!));
    this.MANY(() => {
      const or = valueToken(this.CONSUME(types.Or));
      const alternate = this.SUBRULE2(this.alternate);
      this.ACTION(() => {
        alternates.push(alternate);
        tokens.push(or, ...alternate);
      });
    });
    return this.ACTION(() => ({ alternates, tokens, span: joinSpans(tokens[0]!.span, tokens.at(-1)!.span) }));
  });

  /** ITEM { , ITEM } where an item is one or more words, texts or comparisons. */
  private readonly alternate = this.RULE("alternate", (): ValueToken[] => {
    const tokens: ValueToken[] = [];
    this.SUBRULE(this.item, { ARGS: [tokens] });
    this.MANY(() => {
      tokens.push(valueToken(this.CONSUME(types.Comma)));
      this.SUBRULE2(this.item, { ARGS: [tokens] });
    });
    return tokens;
  });

  private readonly item = this.RULE("item", (given?: ValueToken[]): void => {
    const tokens = given ?? [];
    this.AT_LEAST_ONE(() => {
      const token = this.OR([
        { ALT: () => this.CONSUME(types.Word) },
        { ALT: () => this.CONSUME(types.Text) },
        { ALT: () => this.CONSUME(types.Comparison) },
        { ALT: () => this.CONSUME(types.OpenParenthesis) },
        { ALT: () => this.CONSUME(types.CloseParenthesis) },
      ]);
      tokens.push(valueToken(token));
    });
  });

  /** KEY : EXPRESSION, in a rule */
  readonly condition = this.RULE("condition", (): EntryParts => {
    const key = valueToken(this.CONSUME(types.Word));
    let colon: ValueToken | undefined;
    let expression: ExpressionTree | undefined;
    this.OPTION(() => {
      colon = valueToken(this.CONSUME(types.Colon));
      this.OPTION2(() => {
        expression = this.SUBRULE(this.anyOf);
      });
    });
    return { key, ...(colon === undefined ? {} : { colon }), ...(expression === undefined ? {} : { expression }) };
  });

  /** A or B */
  private readonly anyOf = this.RULE("anyOf", (): ExpressionTree => {
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

let parser: StatementParser | undefined;

type RuleName = "header" | "headerWithKind" | "waive" | "entry" | "condition";
interface Results {
  header: HeaderParts;
  headerWithKind: HeaderParts;
  waive: WaiveParts;
  entry: EntryParts;
  condition: EntryParts;
}

/** The parts of one statement, or undefined when a rule could not be finished; its problems are added to the list. */
export function parseStatement<Name extends RuleName>(
  rule: Name,
  tokens: readonly Token[],
  problems: SyntaxProblem[],
): Results[Name] | undefined {
  parser ??= new StatementParser();
  parser.input = tokens as Token[];
  const parts = parser[rule]() as Results[Name] | undefined;
  for (const error of parser.errors) problems.push(reportParserError(error, tokens));
  return parts;
}
