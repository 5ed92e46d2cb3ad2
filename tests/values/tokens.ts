import type { ValueToken } from "../../grammar/tree.ts";
import type { Fix, ReadContext, ReadResult, ValueProblem } from "../../server/values/problems.ts";
import { readValue } from "../../server/values/read.ts";
import type { FieldType } from "../../server/values/types.ts";

/**
 * The tokens of a value, by the rules that the language states: a word is a run without blanks and without
 * `{ } ( ) [ ] ; : < > = "`, a comma between two digits stays inside it, a text opens with a quote and ends with the next one or
 * with the line.
 * Written apart from the lexer so that a slip in one shows in a test that uses both.
 */
export function tokensOf(text: string): ValueToken[] {
  const tokens: ValueToken[] = [];
  const pattern =
    /"((?:[^"\\]|\\.|\\$)*)(?:"|$)|(<=|>=|=<|=>|<|>|=)|([{}()[\]])|((?:[^\s{}()[\];:<>=",]|(?<=\d),(?=\d))+)|(,)/gu;
  for (const match of text.matchAll(pattern)) {
    const span = { start: match.index, end: match.index + match[0].length };
    if (match[1] !== undefined) tokens.push({ kind: "text", text: match[1].replace(/\\(["\\])/g, "$1"), span });
    else if (match[2] !== undefined) tokens.push({ kind: "comparison", text: match[2], span });
    else if (match[3] !== undefined) tokens.push({ kind: "bracket", text: match[3], span });
    else if (match[4] !== undefined) tokens.push({ kind: "word", text: match[4], span });
    else tokens.push({ kind: "comma", text: ",", span });
  }
  return tokens;
}

/** Reads a value from its text, as the field `it` of a workshop that counts in pounds. */
export function read(type: FieldType, text: string, context: Partial<ReadContext> = {}): ReadResult {
  return readValue(type, tokensOf(text), {
    field: "it",
    span: { start: 0, end: text.length },
    currency: "GBP",
    ...context,
  });
}

export function codesOf(result: ReadResult): string[] {
  return result.problems.map((problem) => problem.code.replace(/^value\//, ""));
}

export function fixesOf(problem: ValueProblem | undefined): Fix[] {
  if (problem?.fix === undefined) return [];
  return [problem.fix, ...(problem.otherFixes ?? [])];
}

export function applied(text: string, fix: Fix): string {
  let result = text;
  for (const change of [...fix.changes].sort((a, b) => b.span.start - a.span.start)) {
    result = result.slice(0, change.span.start) + change.text + result.slice(change.span.end);
  }
  return result;
}

/** Applies the first fix of the first problem that has one until none is left; gives every text on the way. */
export function mended(type: FieldType, text: string): string[] {
  const texts = [text];
  for (let turn = 0; turn < 8; turn += 1) {
    const current = texts[texts.length - 1] ?? "";
    const fix = read(type, current).problems.find((problem) => problem.fix !== undefined)?.fix;
    if (fix === undefined) break;
    texts.push(applied(current, fix));
  }
  return texts;
}
