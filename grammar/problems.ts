/** Making problems, for the readers of statements. */

import type { Statement } from "./layout.ts";
import { statementLimit } from "./limits.ts";
import type { Span, SyntaxProblem, TextChange } from "./tree.ts";

/** Adds an error; the code is given without its `language/`. */
export function report(
  problems: SyntaxProblem[],
  code: string,
  span: Span,
  message: string,
  fix?: SyntaxProblem["fix"],
): void {
  problems.push({
    code: `language/${code}`,
    message,
    span,
    severity: "error",
    ...(fix === undefined ? {} : { fix }),
  });
}

/** Adds an error with the changes that mend it. */
export function reportFix(
  problems: SyntaxProblem[],
  code: string,
  span: Span,
  message: string,
  title: string,
  ...changes: TextChange[]
): void {
  report(problems, code, span, message, { title, changes });
}

/** The statement, cut where it has more tokens than are read. */
export function limited(statement: Statement, problems: SyntaxProblem[]): Statement {
  if (statement.tokens.length <= statementLimit) return statement;
  report(
    problems,
    "long-statement",
    statement.tokens[statementLimit]!.span,
    `A statement has at most ${statementLimit} words; the rest of this line is not read.`,
  );
  return { ...statement, tokens: statement.tokens.slice(0, statementLimit) };
}
