/** Lists over several lines: one `- item` to a line, or brackets. */

import type { Statement } from "./layout.ts";
import { makeToken, type Token } from "./lexer.ts";
import { reportFix as report } from "./problems.ts";
import * as types from "./tokens.ts";
import type { SyntaxProblem } from "./tree.ts";

/**
 * `- item` lines under a key, and `[` lists over several lines, become the value of that key.
 * Returns the statements that remain.
 */
export function joinLists(text: string, statements: readonly Statement[], problems: SyntaxProblem[]): Statement[] {
  const kept: Statement[] = [];
  for (let index = 0; index < statements.length; index++) {
    const statement = statements[index]!;
    const head = statement.tokens;
    let joined: Token[] | undefined;
    let last = index;
    if (statement.block === undefined && head.length > 1) {
      if (head.at(-1)!.tokenType === types.Colon) {
        while (isDashItem(statements[last + 1])) last++;
        if (last > index) joined = joinDashes(text, statements.slice(index, last + 1), problems);
      } else if (openBrackets(head) > 0) {
        let open = openBrackets(head);
        let end = index;
        while (open > 0 && end + 1 < statements.length && isListLine(statements[end + 1]!)) {
          end++;
          open += openBrackets(statements[end]!.tokens);
        }
        if (open <= 0 && end > index) {
          last = end;
          joined = statements.slice(index, last + 1).flatMap((item) => item.tokens);
        }
      }
    }
    kept.push(joined === undefined ? statement : { tokens: joined });
    index = last;
  }
  return kept;
}

function isDashItem(statement: Statement | undefined): boolean {
  const head = statement?.tokens;
  return head !== undefined && statement!.block === undefined && head.length > 1 && isDash(head[0]!);
}

/** `-` or `*` as a word of its own. */
export function isDash(token: Token): boolean {
  return token.tokenType === types.Word && (token.text === "-" || token.text === "*");
}

function isListLine(statement: Statement): boolean {
  return statement.block === undefined && !statement.tokens.some((token) => token.tokenType === types.Colon);
}

function openBrackets(tokens: readonly Token[]): number {
  let open = 0;
  for (const token of tokens) {
    if (token.tokenType === types.OpenBracket) open++;
    else if (token.tokenType === types.CloseBracket) open--;
  }
  return open;
}

function joinDashes(text: string, statements: readonly Statement[], problems: SyntaxProblem[]): Token[] {
  const [head, ...items] = statements.map((statement) => statement.tokens) as [Token[], ...Token[][]];
  const tokens = [...head];
  items.forEach((item, index) => {
    const start = item[0]!.span.start;
    if (index > 0) tokens.push(makeToken(types.Comma, ",", start, start));
    tokens.push(...item.slice(1));
  });
  const value = tokens.slice(head.length);
  const span = { start: head.at(-1)!.span.end, end: value.at(-1)!.span.end };
  report(
    problems,
    "dash-list",
    { start: items[0]![0]!.span.start, end: span.end },
    `The items of a list stand on one line with commas between them: \`${writtenAs(text, tokens).replace(" :", ":")}\`.`,
    "Write the list on one line",
    { span, text: ` ${writtenAs(text, value)}` },
  );
  return tokens;
}

/** The tokens as they would be written on one line. */
export function writtenAs(text: string, tokens: readonly Token[]): string {
  let line = "";
  for (const token of tokens) {
    if (line !== "" && token.tokenType !== types.Comma) line += " ";
    line += token.span.end > token.span.start ? text.slice(token.span.start, token.span.end) : token.text;
  }
  return line;
}
