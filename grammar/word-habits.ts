/**
 * Typing habits inside a single word, text or comment: each is reported with its own code, message and fix.
 * Habits that take a whole statement to see are in habits.ts.
 */

import type { TokenType } from "chevrotain";
import {
  codePointName,
  isBlank,
  isDirectionCharacter,
  isInvisibleCharacter,
  isLineEnd,
  lineEndAt,
  skipBlanks,
} from "./characters.ts";
import { quoteText } from "./split.ts";
import { isInsideWord, SingleText, sizeBefore, Text } from "./tokens.ts";
import type { SyntaxProblem } from "./tree.ts";

/** Reports marks that are not the plain `"`, and marks that are missing; returns the content between them. */
export function textMarks(
  problems: SyntaxProblem[],
  text: string,
  tokenType: TokenType,
  start: number,
  end: number,
): string {
  const span = { start, end };
  if (tokenType === SingleText) {
    const content = text.slice(start + 1, end - 1);
    problems.push({
      code: "language/single-quotes",
      message: `Text goes in double quotes: ${quoteText(content)}.`,
      span,
      severity: "error",
      fix: { title: "Use double quotes", changes: [{ span, text: quoteText(content) }] },
    });
    return content;
  }
  const isClosed = end - start > 1 && (tokenType === Text ? closesText(text, start, end) : isMark(text, end - 1));
  const content = text.slice(start + 1, isClosed ? end - 1 : end);
  if (tokenType !== Text) {
    const plain = quoteText(content);
    problems.push({
      code: isClosed ? "language/curly-quotes" : "language/unclosed-text",
      message: isClosed
        ? `Text goes in plain double quotes: ${plain}.`
        : `This text is not closed. Expected a \`"\` at its end, on the same line: ${plain}.`,
      span,
      severity: "error",
      fix: { title: isClosed ? "Use plain quotes" : "Close the text", changes: [{ span, text: plain }] },
    });
    return content;
  }
  if (!isClosed) {
    const escapes = trailingBackslashes(content) % 2 === 1;
    problems.push({
      code: "language/unclosed-text",
      message: 'This text is not closed. Expected a `"` at its end, on the same line, as in "Corrie wide 10-52".',
      span,
      severity: "error",
      fix: {
        title: 'Close the text with `"`',
        changes: [{ span: { start: end, end }, text: escapes ? '\\"' : '"' }],
      },
    });
  } else if (isInsideWord(text, start)) {
    problems.push({
      code: "language/missing-blank",
      message: 'Expected a blank before the `"`, as in `name "Title"`.',
      span: { start, end: start + 1 },
      severity: "error",
      fix: { title: "Put a blank before the text", changes: [{ span: { start, end: start }, text: " " }] },
    });
  }
  return content;
}

function isMark(text: string, offset: number): boolean {
  return /["\u201c-\u201f\u2033]/.test(text[offset]!);
}

function closesText(text: string, start: number, end: number): boolean {
  return text[end - 1] === '"' && trailingBackslashes(text.slice(start + 1, end - 1)) % 2 === 0;
}

function trailingBackslashes(content: string): number {
  let count = 0;
  while (count < content.length && content[content.length - 1 - count] === "\\") count++;
  return count;
}

/** Reports a quote straight after a word; true when it follows a size and therefore stands for inches. */
export function sizeMark(problems: SyntaxProblem[], text: string, start: number): boolean {
  const span = { start, end: start + 1 };
  if (sizeBefore(text, start)) {
    const next = text.charCodeAt(start + 1);
    const separated = Number.isNaN(next) || isBlank(next) || isLineEnd(next) || "{};,)".includes(text[start + 1]!);
    problems.push({
      code: "language/inch-mark",
      message: "Inches are written with the unit `in`, as in `29 in`; a quote begins a text.",
      span,
      severity: "error",
      fix: { title: "Write ` in`", changes: [{ span, text: separated ? " in" : " in " }] },
    });
    return true;
  }
  problems.push({
    code: "language/stray-quote",
    message: 'A text opens with `"` after a blank and closes with `"` on the same line, as in "Corrie wide 10-52".',
    span,
    severity: "error",
    fix: { title: "Remove the quote", changes: [{ span, text: "" }] },
  });
  return false;
}

/** Reports characters a person cannot see inside a word, and returns the word without them. */
export function cleanCharacters(problems: SyntaxProblem[], text: string, start: number, end: number): string {
  let word = "";
  for (let offset = start; offset < end; offset++) {
    const code = text.charCodeAt(offset);
    const turns = isDirectionCharacter(code);
    if (!turns && !isInvisibleCharacter(code)) {
      word += text[offset];
      continue;
    }
    const span = { start: offset, end: offset + 1 };
    problems.push({
      code: turns ? "language/direction-character" : "language/invisible-character",
      message: turns
        ? `The character ${codePointName(code)} changes the direction of the text, so that it does not read as it is stored. Remove it.`
        : `The character ${codePointName(code)} cannot be seen, and makes this a different word. Remove it.`,
      span,
      severity: "error",
      fix: { title: `Remove ${codePointName(code)}`, changes: [{ span, text: "" }] },
    });
  }
  return word;
}

/**
 * Warns of characters inside a text or a comment that reorder what is read, or controls that no one can see.
 * Joiners and soft hyphens are ordinary writing in some languages and stay.
 */
export function warnInComment(problems: SyntaxProblem[], text: string, start: number, end: number): void {
  for (let offset = start; offset < end; offset++) {
    const code = text.charCodeAt(offset);
    const turns = isDirectionCharacter(code);
    const isWriting = code === 0x200c || code === 0x200d || code === 0xad;
    if (!turns && (isWriting || !isInvisibleCharacter(code))) continue;
    const span = { start: offset, end: offset + 1 };
    problems.push({
      code: turns ? "language/direction-character" : "language/invisible-character",
      message: turns
        ? `The character ${codePointName(code)} changes the direction of the text, so that it may not read as it is stored.`
        : `The character ${codePointName(code)} cannot be seen here.`,
      span,
      severity: "warning",
      fix: { title: `Remove ${codePointName(code)}`, changes: [{ span, text: "" }] },
    });
  }
}

/** `# cut to length` and `/* cut to length *\/`. */
export function foreignComment(problems: SyntaxProblem[], text: string, start: number, end: number): void {
  const isHash = text[start] === "#";
  const span = { start, end };
  const content = text.slice(start, end).replace(/^(?:#+|\/\*+) ?|\s*\*\/$/g, "");
  const endsLine = skipBlanks(text, end) === lineEndAt(text, end);
  problems.push({
    code: isHash ? "language/hash-comment" : "language/block-comment",
    message: isHash
      ? "A comment starts with `//`, not with `#`, as in `// cut to length`."
      : "A comment starts with `//` and ends with its line, as in `// cut to length`.",
    span,
    severity: "error",
    // What follows on the line would become part of the comment.
    ...(endsLine ? { fix: { title: "Start the comment with `//`", changes: [{ span, text: `// ${content}` }] } } : {}),
  });
}

/** `source: //example` and `source://example`: what follows the colon is a comment, which is seldom meant. */
export function addressInComment(problems: SyntaxProblem[], start: number, end: number): void {
  problems.push({
    code: "language/unquoted-address",
    message:
      '`//` starts a comment. An address goes in quotes, as in "https://example.org"; a comment goes after a blank.',
    span: { start, end },
    severity: "error",
    fix: {
      title: "Put the address in quotes",
      changes: [
        { span: { start, end: start }, text: ' "' },
        { span: { start: end, end }, text: '"' },
      ],
    },
  });
}

const groupedNumber = /^[^\d]*\d{1,3}(,\d{3})+(\.\d+)?\D*$/;
const decimalNumber = /^[^\d,]*\d+,\d+[^\d,]*$/;
/** Two whole numbers, as of spoke tensions: no measurement has so many digits before and behind its point. */
const gluedPair = /^\D*\d{3,},\d{4,}\D*$/;
const dottedGroups = /^[^\d]*\d{1,3}(\.\d{3})+,\d+\D*$/;

/** Reports the commas inside a word and returns the words that are meant: one number, or the items of a list. */
export function commasInWord(problems: SyntaxProblem[], word: string, start: number, end: number): string[] {
  const span = { start, end };
  if (groupedNumber.test(word)) {
    const meant = word.replaceAll(",", "");
    const digits = word.match(/,/g)!.length;
    const decimal =
      digits === 1 && !word.includes(".") ? `; if the comma is a decimal one, ${word.replace(",", ".")}` : "";
    problems.push({
      code: "language/thousands-comma",
      message: `A number has no comma in it: write ${meant}${decimal}.`,
      span,
      severity: "error",
      fix: { title: `Write ${meant}`, changes: [{ span, text: meant }] },
    });
    return [meant];
  }
  if ((decimalNumber.test(word) && !gluedPair.test(word)) || dottedGroups.test(word)) {
    const meant = (dottedGroups.test(word) ? word.replaceAll(".", "") : word).replace(",", ".");
    const isPair = /^\D*(\d{2,}),\d{2,}\D*$/.test(word);
    const list = isPair ? ` The items of a list have a blank after each comma: ${word.replace(",", ", ")}.` : "";
    problems.push({
      code: "language/decimal-comma",
      message: `Decimals are written with a point: ${meant}.${list}`,
      span,
      severity: "error",
      fix: { title: `Write ${meant}`, changes: [{ span, text: meant }] },
    });
    return [meant];
  }
  const words = word.split(",");
  problems.push({
    code: "language/missing-blank",
    message: `The items of a list have a blank after each comma: ${words.join(", ")}.`,
    span,
    severity: "error",
    fix: { title: "Put a blank after each comma", changes: [{ span, text: words.join(", ") }] },
  });
  return words;
}
