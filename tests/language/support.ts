/** Helpers of the language tests: marked source, applied fixes, and trees in a form that reads well when they differ. */

import { parseDeclaration, parseStray } from "../../grammar/parse.ts";
import { split } from "../../grammar/split.ts";
import type { BlockTree, EntryTree, ExpressionTree, Span, SyntaxProblem, TextChange } from "../../grammar/tree.ts";

/** Source with its `«` and `»` taken out, and the places they enclosed. */
export function marked(source: string): { text: string; spans: Span[] } {
  let text = "";
  const spans: Span[] = [];
  const open: number[] = [];
  for (const character of source) {
    if (character === "«") open.push(text.length);
    else if (character === "»") spans.push({ start: open.pop()!, end: text.length });
    else text += character;
  }
  spans.sort((left, right) => left.start - right.start);
  return { text, spans };
}

export function apply(text: string, changes: readonly TextChange[]): string {
  let result = text;
  for (const change of changes.toSorted((left, right) => right.span.start - left.span.start)) {
    result = result.slice(0, change.span.start) + change.text + result.slice(change.span.end);
  }
  return result;
}

/** The text with the fix of every problem applied, first to last, each to the text that the one before left. */
export function mend(text: string): string {
  let mended = text;
  for (let round = 0; round < 30; round++) {
    const problem = problemsOf(mended).find((each) => each.fix !== undefined);
    if (problem === undefined) return mended;
    mended = apply(mended, problem.fix!.changes);
  }
  return mended;
}

/** The problems of a whole file, with offsets in the file. */
export function problemsOf(text: string): SyntaxProblem[] {
  return split(text).flatMap((chunk) => {
    const own = text.slice(chunk.start, chunk.end);
    const problems = chunk.keyword === undefined ? parseStray(own) : parseDeclaration(own).problems;
    const shift = ({ start, end }: Span): Span => ({ start: start + chunk.start, end: end + chunk.start });
    return problems.map(({ fix, ...problem }) => ({
      ...problem,
      span: shift(problem.span),
      ...(fix === undefined
        ? {}
        : { fix: { ...fix, changes: fix.changes.map((change) => ({ ...change, span: shift(change.span) })) } }),
    }));
  });
}

/** `code` and the marked-up place of every problem, as `language/x at "..."`. */
export function describeProblems(text: string): string[] {
  return problemsOf(text).map(({ code, span }) => `${code} at ${JSON.stringify(text.slice(span.start, span.end))}`);
}

/** An expression with every operation in parentheses and operands' tokens joined by `_`. */
export function describeExpression(tree: ExpressionTree): string {
  switch (tree.form) {
    case "operand":
      return tree.tokens.map((token) => (token.kind === "text" ? JSON.stringify(token.text) : token.text)).join("_");
    case "not":
      return `(not ${describeExpression(tree.operand)})`;
    case "call":
      return `${tree.name.text}(${tree.arguments.map(describeExpression).join(", ")})`;
    case "operation":
      return `(${describeExpression(tree.left)} ${tree.operator} ${describeExpression(tree.right)})`;
  }
}

function describeEntry(entry: EntryTree): string {
  if (entry.form === "waive") {
    const parts = [
      entry.code?.text,
      entry.at && `at ${entry.at.text}`,
      entry.reason && JSON.stringify(entry.reason.text),
    ];
    return ["waive", ...parts, entry.until && `until ${entry.until.text}`]
      .filter((part) => part !== undefined)
      .join(" ");
  }
  if (entry.form === "group") return `${entry.path.text}`;
  const alternates = entry.value.alternates.map((tokens) =>
    tokens.map((token) => (token.kind === "text" ? JSON.stringify(token.text) : token.text)).join(" "),
  );
  return `${entry.path.text}: ${alternates.join(" | ")}`;
}

/** One line per entry, indented by depth: what the tree says, without positions. */
export function describeBlock(block: BlockTree | undefined, depth = 0): string[] {
  return (block?.entries ?? []).flatMap((entry) => [
    `${"  ".repeat(depth)}${describeEntry(entry)}`,
    ...(entry.form === "waive" ? [] : describeBlock(entry.block, depth + 1)),
  ]);
}

/** Every entry as its own description and the lines its enclosing entries start on: `3 > 7: links: 116`. */
export function entriesByLine(text: string, block: BlockTree | undefined, above: readonly number[] = []): string[] {
  return (block?.entries ?? []).flatMap((entry) => {
    const line = text.slice(0, entry.span.start).split("\n").length;
    const inner = entry.form === "waive" ? undefined : entry.block;
    return [
      `${[...above, line].join(" > ")}: ${describeEntry(entry)}`,
      ...entriesByLine(text, inner, [...above, line]),
    ];
  });
}
