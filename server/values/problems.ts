import type { Span, SyntaxProblem, TextChange, ValueToken } from "../../grammar/tree.ts";
import type { AnyValue } from "./types.ts";

/** One way of mending a problem. */
export interface Fix {
  readonly title: string;
  readonly changes: readonly TextChange[];
}

/** What is wrong with a value. `fix` is the likeliest repair, `otherFixes` the rest in falling order of likelihood. */
export interface ValueProblem extends SyntaxProblem {
  readonly otherFixes?: readonly Fix[];
  /** The interface code that was meant, as far as can be guessed: whoever knows the declared ones offers those near it. */
  readonly meantCode?: { readonly family: string; readonly code: string };
}

/** What a value is read with, beside its type and its tokens. */
export interface ReadContext {
  /** The field's name, for messages. */
  readonly field: string;
  /** Where the value stands, or would stand when there are no tokens. */
  readonly span: Span;
  /** The workshop's own currency, offered where a sum has none. */
  readonly currency?: string;
  /** What to write where nothing was written, such as `the code of an axle`; an example of the type when left out. */
  readonly expected?: string;
}

/**
 * What came of reading a value. Without `value` and without `isNone` the value could not be made out and is unknown;
 * `problems` then holds at least one error.
 */
export interface ReadResult {
  readonly value?: AnyValue;
  /** The field is stated to be absent: the single word `none`. */
  readonly isNone?: true;
  /** What was written, in canonical spelling and in the units of the author. */
  readonly written: string;
  readonly problems: readonly ValueProblem[];
}

/** A value of one type, or the problems that stand in its way. */
export interface Reading<Value> {
  readonly value?: Value;
  readonly written?: string;
  readonly problems: readonly ValueProblem[];
}

/** Longer ones only come of pasted rubbish. */
const longestMessage = 500;

function problem(
  severity: "error" | "warning",
  code: string,
  message: string,
  span: Span,
  fixes: readonly Fix[],
): ValueProblem {
  const [fix, ...otherFixes] = fixes;
  return {
    code: `value/${code}`,
    message: message.length > longestMessage ? `${message.slice(0, longestMessage - 1)}…` : message,
    span,
    severity,
    ...(fix === undefined ? {} : { fix }),
    ...(otherFixes.length === 0 ? {} : { otherFixes }),
  };
}

/** An error; the fixes come likeliest first. */
export function error(code: string, message: string, span: Span, fixes: readonly Fix[] = []): ValueProblem {
  return problem("error", code, message, span, fixes);
}

/** Something that is understood and should be written in another way. */
export function warning(code: string, message: string, span: Span, fixes: readonly Fix[] = []): ValueProblem {
  return problem("warning", code, message, span, fixes);
}

/** The fix that puts `text` in the place of `span`. */
export function replacement(span: Span, text: string, title = `Write ${excerpt(text)}`): Fix {
  return { title, changes: [{ span, text }] };
}

/** From the first token to the last; the place of the value when there are none. */
export function spanOf(tokens: readonly ValueToken[], otherwise: Span): Span {
  const first = tokens[0];
  const last = tokens[tokens.length - 1];
  return first === undefined || last === undefined ? otherwise : { start: first.span.start, end: last.span.end };
}

/** Text as it is written in a file: in quotes, with `"` and `\` escaped and line ends made blanks. */
export function quote(text: string): string {
  return `"${onOneLine(text).replace(/[\\"]/g, "\\$&")}"`;
}

/** A text with blanks in place of its line ends, which no text of a file has. */
export function onOneLine(text: string): string {
  return text.replace(/[\r\n\u2028\u2029]+/g, " ");
}

/** The tokens as one line in canonical spacing, for messages and for display where no better form is known. */
export function plainText(tokens: readonly ValueToken[]): string {
  let line = "";
  for (const token of tokens) {
    const text = token.kind === "text" ? quote(token.text) : token.text;
    line += line === "" || token.kind === "comma" ? text : ` ${text}`;
  }
  return line;
}

/** What was written, cut where it would fill the message. */
export function excerpt(written: string | readonly ValueToken[]): string {
  const text = typeof written === "string" ? written : plainText(written.slice(0, 30));
  return text.length > 60 ? `${text.slice(0, 59)}…` : text;
}

/** A reading that gave no value. */
export function unread(written: string | undefined, problems: readonly ValueProblem[]): Reading<never> {
  return { ...(written === undefined ? {} : { written }), problems };
}

/** `a`, `a or b`, `a, b or c`. */
export function listOf(items: readonly string[], joint: "or" | "and" = "or"): string {
  if (items.length < 2) return items[0] ?? "";
  return `${items.slice(0, -1).join(", ")} ${joint} ${items[items.length - 1]}`;
}

/** `a length`, `an energy`. */
export function withArticle(noun: string): string {
  return /^[aeiou]/.test(noun) ? `an ${noun}` : `a ${noun}`;
}
