/** The words of an expression get their types here, and operators brought along from other languages are mended. */

import { makeToken, retype, type Token } from "./lexer.ts";
import { reportFix as report } from "./problems.ts";
import * as types from "./tokens.ts";
import type { Span, SyntaxProblem } from "./tree.ts";

const operatorWords = new Map([
  ["or", types.Or],
  ["and", types.And],
  ["not", types.Not],
  ["is", types.Is],
  ["in", types.In],
  ["to", types.To],
  ["+", types.Sum],
  ["-", types.Sum],
  ["−", types.Sum],
  ["*", types.Product],
  ["/", types.Product],
]);

const borrowedOperators = new Map([
  ["&&", "and"],
  ["||", "or"],
  ["!", "not"],
]);

const borrowedComparisons = new Map([
  ["==", "="],
  ["=<", "<="],
  ["=>", ">="],
  ["<>", "is not"],
]);

function isNot(span: Span): Token[] {
  return [makeToken(types.Is, "is", span.start, span.end), makeToken(types.Not, "not", span.end, span.end)];
}

const numberWord = /^[-+−]?\d[\d.,/]*$/;

/** Gives the words of an expression their types, from the token at `start` on. */
export function mendExpression(tokens: readonly Token[], start: number, problems: SyntaxProblem[]): Token[] {
  const mended = tokens.slice(0, start);
  for (let index = start; index < tokens.length; index++) {
    const token = tokens[index]!;
    const next = tokens[index + 1];
    const before = mended.length > start ? mended[mended.length - 1] : undefined;
    const meant = token.tokenType === types.Comparison ? borrowedComparisons.get(token.text) : undefined;
    if (meant !== undefined) {
      const { span } = token;
      report(
        problems,
        "operator-spelling",
        span,
        `A comparison is written \`${meant}\`, not \`${token.text}\`.`,
        `Write \`${meant}\``,
        {
          span,
          text: meant,
        },
      );
      if (meant === "is not") mended.push(...isNot(span));
      else mended.push(makeToken(types.Comparison, meant, span.start, span.end));
      continue;
    }
    if (token.tokenType !== types.Word) {
      mended.push(token);
      continue;
    }
    if (token.text === "!" && next?.tokenType === types.Comparison && next.span.start === token.span.end) {
      const span = { start: token.span.start, end: next.span.end };
      report(problems, "operator-spelling", span, "Inequality is written `is not`.", "Write `is not`", {
        span,
        text: "is not",
      });
      mended.push(...isNot(span));
      index++;
      continue;
    }
    const borrowed = borrowedOperators.get(token.text);
    if (borrowed !== undefined) {
      report(
        problems,
        "operator-spelling",
        token.span,
        `\`${token.text}\` is written \`${borrowed}\`, as in \`not a and b\`.`,
        `Write \`${borrowed}\``,
        { span: token.span, text: borrowed },
      );
      mended.push(makeToken(operatorWords.get(borrowed)!, borrowed, token.span.start, token.span.end));
      continue;
    }
    const operator = operatorWords.get(token.text);
    const isInches =
      token.text === "in" && before?.tokenType === types.Word && numberWord.test(before.text) && !startsOperand(next);
    if (operator !== undefined && !isInches) {
      const plain = token.text === "−" ? makeToken(operator, "-", token.span.start, token.span.end) : token;
      mended.push(retype(plain, operator));
    } else if (next?.tokenType === types.OpenParenthesis) {
      mended.push(retype(token, types.Callee));
    } else {
      checkArithmeticBlanks(token, before, problems);
      mended.push(token);
    }
  }
  return mended;
}

/** Behind `51 in` stands what 51 is in; behind 29 inches an operator, a comma, or nothing. */
function startsOperand(token: Token | undefined): boolean {
  if (token?.tokenType === types.OpenParenthesis || token?.tokenType === types.Text) return true;
  return token?.tokenType === types.Word && !operatorWords.has(token.text) && !/^(?:±|\+\/-)/.test(token.text);
}

/** `a*b`, `a+b` and `a -5`: a sign of arithmetic is a word of its own, since names hold dashes and slashes. */
function checkArithmeticBlanks(token: Token, before: Token | undefined, problems: SyntaxProblem[]): void {
  const { start, end } = token.span;
  const isSigned = /^[-+−]\d/.test(token.text) && before?.tokenType === types.Word && before.text !== "±";
  const inner = /^[^*+±]*[^*+±/](?<sign>[*+])[^*+±/-]/.exec(token.text);
  if (!isSigned && (inner === null || end - start !== token.text.length)) return;
  const sign = isSigned ? token.text[0]! : inner!.groups!.sign!;
  const spaced = isSigned ? `${sign} ${token.text.slice(1)}` : token.text.replaceAll(sign, ` ${sign} `);
  report(
    problems,
    "arithmetic-blanks",
    token.span,
    `Expected a blank on both sides of \`${sign}\`: \`${spaced}\`.`,
    "Put blanks round the operator",
    { span: token.span, text: spaced },
  );
}
