/** What the parser says when a statement does not read: always what was expected there, with an example. */

import type { IParserErrorMessageProvider, IRecognitionException, IToken } from "chevrotain";
import { spanOf, type Token } from "./lexer.ts";
import { quoteText } from "./split.ts";
import { Colon, Comma, Comparison, OpenBracket, Or, Text } from "./tokens.ts";
import type { SyntaxProblem } from "./tree.ts";

/** An example of each kind of statement, by the rule that reads it. */
const examples: Readonly<Record<string, string>> = {
  header: 'build fellside-l "Fellside 29, size L" {',
  headerWithKind: 'part cassette corrie.wide-10-52 "Corrie wide" {',
  headerTail: 'build fellside-m "Fellside 29, size M" from fellside-l {',
  waive: 'waive drivetrain/chain-length at drivetrain.chain "One spare pair of links" until 2027-03-31',
  entry: "links: 116",
};

/** What a rule reads, for "expected ..."; the value of an entry and the operands of an expression. */
const expectations: Readonly<Record<string, string>> = {
  value: "a value, as in `links: 116`",
  alternate: "a value, as in `chain: corrie.link-12 or corrie.link-12-long`",
  item: "a value, as in `links: 116`",
  primary: "a name or a number with its unit, as in `cockpit.stem.spacers-below <= 30 mm`",
  operand: "a name or a number with its unit, as in `cockpit.stem.spacers-below <= 30 mm`",
  call: "`)` after the last value, as in `max(a, b)`",
  parenthesis: "`)` at the end of what `(` begins",
  comparison: "`in` after `not`, as in `category not in mountain, gravel`",
  entry: "a key, as in `links: 116`",
};

function written(token: IToken): string {
  return token.tokenType === Text ? quoteText((token as Token).text) : `\`${token.image}\``;
}

function found(token: IToken | undefined): string {
  return token === undefined || spanOf(token) === undefined ? "the statement ends here" : `found ${written(token)}`;
}

function expected(ruleName: string, actual: IToken | undefined): string {
  return `Expected ${expectations[ruleName] ?? `something like \`${examples[ruleName] ?? examples.entry!}\``}, but ${found(actual)}.`;
}

export const messages: IParserErrorMessageProvider = {
  buildMismatchTokenMessage: ({ actual, ruleName }) => expected(ruleName, actual),
  buildNoViableAltMessage: ({ actual, ruleName }) => expected(ruleName, actual[0]),
  buildEarlyExitMessage: ({ actual, ruleName }) => expected(ruleName, actual[0]),
  buildNotAllInputParsedMessage: ({ firstRedundant, ruleName }) => {
    const here = written(firstRedundant);
    if (ruleName === "entry") {
      if (firstRedundant.tokenType === Colon) {
        return "One entry has one `:`. A value with a `:` in it goes in quotes, and the next entry on a line of its own.";
      }
      if (firstRedundant.tokenType === Comma) return "Expected a value between the commas, as in `1180, 1150, 1210 N`.";
      if (firstRedundant.tokenType === Or)
        return "Expected a value before `or`, as in `corrie.link-12 or corrie.link-12-long`.";
      return `${here} cannot stand here. Expected a value such as \`116\`, \`4 to 6 N·m\` or \`corrie.link-12\`.`;
    }
    if (ruleName === "anyOf") {
      if (firstRedundant.tokenType === Comparison) {
        return `Expected \`and\` between two comparisons, as in \`a > 1 mm and a < 3 mm\`, but found ${here}.`;
      }
      return `${here} cannot stand here. Expected an operator such as \`and\`, \`or\`, \`is\`, \`<=\` or \`+\`.`;
    }
    if (firstRedundant.tokenType === OpenBracket) return `${here} cannot stand here. Expected \`{\`.`;
    return `${here} cannot stand here. Expected a line such as \`${examples[ruleName] ?? examples.header!}\`.`;
  },
};

const codes: Readonly<Record<string, string>> = {
  NotAllInputParsedException: "language/unexpected",
};

/** A parser error as a problem: at the token that does not fit, or at the last one when something is missing. */
export function reportParserError(error: IRecognitionException, tokens: readonly Token[]): SyntaxProblem {
  const last = tokens.at(-1)?.span ?? { start: 0, end: 0 };
  return {
    code: codes[error.name] ?? "language/expected",
    message: error.message,
    span: spanOf(error.token) ?? last,
    severity: "error",
  };
}
