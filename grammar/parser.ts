/**
 * One statement's tokens to a piece of the tree.
 *
 * Every statement is parsed on its own, so a mistake never reaches past its line. One parser serves the whole
 * process, made when the first statement needs it.
 */

import { EmbeddedActionsParser } from "chevrotain";
import type { Token } from "./lexer.ts";
import { valueToken } from "./lexer.ts";
import { messages, reportParserError } from "./messages.ts";
import * as types from "./tokens.ts";
import type { Span, SyntaxProblem, ValueToken, ValueTree } from "./tree.ts";

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
}

let parser: StatementParser | undefined;

type RuleName = "header" | "headerWithKind" | "waive" | "entry";
interface Results {
  header: HeaderParts;
  headerWithKind: HeaderParts;
  waive: WaiveParts;
  entry: EntryParts;
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
