/** The blocks of a declaration: entries, groups and waivers, each read from its own statement. */

import { skipBlanks } from "./characters.ts";
import { waiveExample } from "./examples.ts";
import { mendExpression } from "./expression-habits.ts";
import { parseExpression } from "./expression-parser.ts";
import { markWords, mendEntry, splitEntries, valueWords, waiveWords } from "./habits.ts";
import type { Statement, StatementBlock } from "./layout.ts";
import { type CommentToken, type Token, valueToken } from "./lexer.ts";
import { expressionLimit, parenthesisLimit } from "./limits.ts";
import { joinLists } from "./list-habits.ts";
import { type EntryParts, parseStatement } from "./parser.ts";
import { limited, report } from "./problems.ts";
import { isAlternateAfterBlock, reportSettingsBeforeOr } from "./settings-before-or.ts";
import * as types from "./tokens.ts";
import type {
  BlockTree,
  DeclarationKeyword,
  EntryTree,
  ExpressionTree,
  PathTree,
  Span,
  SyntaxProblem,
  ValueToken,
  ValueTree,
  WaiveEntry,
} from "./tree.ts";

/** Keys of a rule whose value is an expression. */
const expressionKeys: ReadonlySet<string> = new Set(["when", "require", "let"]);

type ConditionParts = EntryParts & { readonly expression?: ExpressionTree };

export class BlockReader {
  private readonly text: string;
  private readonly keyword: DeclarationKeyword;
  private readonly comments: readonly CommentToken[];
  private readonly problems: SyntaxProblem[];

  /** Problems are added to the given list. */
  constructor(text: string, keyword: DeclarationKeyword, comments: readonly CommentToken[], problems: SyntaxProblem[]) {
    this.text = text;
    this.keyword = keyword;
    this.comments = comments;
    this.problems = problems;
  }

  /** `depth` is 1 for the declaration's own block. The layout has capped the nesting, so this cannot run deep. */
  readBlock(block: StatementBlock, depth: number, isExpressionBlock: boolean): BlockTree {
    const entries: EntryTree[] = [];
    let before: Statement | undefined;
    for (const given of joinLists(this.text, block.statements, this.problems)) {
      if (isAlternateAfterBlock(this.text, before, given)) {
        reportSettingsBeforeOr(this.text, before, given, this.problems);
        continue;
      }
      before = given;
      for (const statement of splitEntries(limited(given, this.problems), this.problems)) {
        const entry = this.readEntry(statement, depth, isExpressionBlock);
        if (entry !== undefined) entries.push(entry);
      }
    }
    return {
      entries,
      span: { start: block.start, end: block.end },
      insertAt: this.insertionPoint(block),
      oneLine: block.oneLine,
    };
  }

  /** After the last entry or comment of the block; just after its `{` when it has neither. */
  private insertionPoint(block: StatementBlock): number {
    const limit = block.close?.span.start ?? block.end;
    const last = block.statements.at(-1);
    let end = block.opened ? block.start + 1 : block.start;
    if (last !== undefined) end = Math.max(end, last.block?.end ?? 0, last.tokens.at(-1)?.span.end ?? 0);
    const comments = this.comments;
    let low = 0;
    let high = comments.length;
    while (low < high) {
      const middle = (low + high) >> 1;
      if (comments[middle]!.span.start < limit) low = middle + 1;
      else high = middle;
    }
    const comment = comments[low - 1];
    return comment !== undefined && comment.span.start >= end ? comment.span.end : end;
  }

  private readEntry(statement: Statement, depth: number, isExpressionBlock: boolean): EntryTree | undefined {
    const { tokens, block } = statement;
    if (statement.isCut === true && tokens.length < 2) return undefined;
    if (tokens.length === 0) {
      report(
        this.problems,
        "missing-key",
        { start: block!.start, end: block!.start + 1 },
        "Expected a key before `{`, as in `rear-wheel {`.",
      );
      return undefined;
    }
    if (isWaive(tokens)) return this.readWaive(statement);
    const mended = mendEntry(this.text, statement, this.problems);
    const isExpression =
      isExpressionBlock ||
      (this.keyword === "rule" && depth === 1 && expressionKeys.has(mended[0]!.text.split(".")[0]!));
    if (block !== undefined && mended.length === 1 && mended[0]!.tokenType === types.Word) {
      const path = this.readPath(valueToken(mended[0]!));
      const tree = this.readBlock(block, depth + 1, isExpression);
      return { form: "group", path, block: tree, span: { start: path.span.start, end: block.end } };
    }
    const parts: ConditionParts | undefined = isExpression ? this.parseCondition(mended) : this.parseField(mended);
    if (parts === undefined) return undefined;
    const path = this.readPath(parts.key);
    const value = parts.value ?? this.emptyValue(parts.colon?.span.end ?? path.span.end);
    const tree = block === undefined ? undefined : this.readBlock(block, depth + 1, false);
    const end = block?.end ?? Math.max(value.span.end, statement.tokens.at(-1)!.span.end);
    return {
      form: "field",
      path,
      value,
      ...(tree === undefined ? {} : { block: tree }),
      ...(parts.expression === undefined ? {} : { expression: parts.expression }),
      span: { start: path.span.start, end },
    };
  }

  private parseField(mended: readonly Token[]): EntryParts | undefined {
    const tokens = markWords(mended, valueWords);
    const before = this.problems.length;
    const parts = parseStatement("entry", tokens, this.problems);
    if (parts === undefined) return this.partsOf(tokens);
    if (parts.value === undefined && this.problems.length === before) this.reportMissingValue(parts);
    return parts;
  }

  private parseCondition(mended: readonly Token[]): ConditionParts | undefined {
    const start = mended.findIndex((token) => token.tokenType === types.Colon) + 1;
    const tokens = start === 0 ? [...mended] : mendExpression(mended, start, this.problems);
    const before = this.problems.length;
    const long = this.expressionProblem(tokens);
    if (long !== undefined) {
      this.problems.push(long);
      return this.partsOf(tokens);
    }
    const parts = this.partsOf(tokens);
    if (parts?.value === undefined || parts.value.tokens.length === 0) {
      if (parts === undefined) parseStatement("entry", tokens, this.problems);
      else if (this.problems.length === before) this.reportMissingValue(parts);
      return parts;
    }
    const expression = parseExpression(tokens.slice(start), this.problems);
    return { ...parts, value: oneAlternate(parts.value), ...(expression === undefined ? {} : { expression }) };
  }

  private expressionProblem(tokens: readonly Token[]): SyntaxProblem | undefined {
    let open = 0;
    let deepest = 0;
    for (const token of tokens) {
      if (token.tokenType === types.OpenParenthesis) deepest = Math.max(deepest, ++open);
      else if (token.tokenType === types.CloseParenthesis) open--;
    }
    const isLong = tokens.length > expressionLimit;
    if (!isLong && deepest <= parenthesisLimit) return undefined;
    return {
      code: "language/expression-limit",
      message: isLong
        ? `An expression has at most ${expressionLimit} words. Expected several \`require\` entries instead of one this long.`
        : `Parentheses are read ${parenthesisLimit} deep. Expected a simpler expression.`,
      span: { start: tokens[0]!.span.start, end: tokens.at(-1)!.span.end },
      severity: "error",
    };
  }

  private reportMissingValue(parts: EntryParts): void {
    if (parts.colon === undefined) {
      report(
        this.problems,
        "incomplete-entry",
        parts.key.span,
        `Expected \`:\` and a value, or \`{\`, after \`${parts.key.text}\`, as in \`links: 116\` or \`rear-wheel {\`.`,
      );
    } else {
      report(this.problems, "missing-value", parts.colon.span, `Expected a value after \`:\`, as in \`links: 116\`.`);
    }
  }

  /** What can be said of an entry whose parse failed: its key, and every token after the colon as its value. */
  private partsOf(tokens: readonly Token[]): EntryParts | undefined {
    const key = tokens[0]!;
    if (key.tokenType !== types.Word) return undefined;
    const colon = tokens[1]?.tokenType === types.Colon ? tokens[1] : undefined;
    if (colon === undefined) return { key: valueToken(key) };
    const rest = tokens.slice(2);
    const values: ValueToken[] = [];
    const alternates: ValueToken[][] = [[]];
    for (const token of rest) {
      if (token.tokenType === types.Colon) continue;
      const value = valueToken(token);
      values.push(value);
      if (token.tokenType === types.Or) alternates.push([]);
      else alternates.at(-1)!.push(value);
    }
    const named = alternates.filter((alternate) => alternate.length > 0);
    const value =
      values.length === 0
        ? this.emptyValue(colon.span.end)
        : {
            alternates: named.length === 0 ? [[]] : named,
            tokens: values,
            span: { start: values[0]!.span.start, end: values.at(-1)!.span.end },
          };
    return { key: valueToken(key), colon: valueToken(colon), value };
  }

  /** A value that is still missing reaches over the blanks after its colon: the cursor stands there to type it. */
  private emptyValue(start: number): ValueTree {
    return { alternates: [[]], tokens: [], span: { start, end: skipBlanks(this.text, start) } };
  }

  private readPath(token: ValueToken): PathTree {
    const segments: { text: string; span: Span }[] = [];
    let start = token.span.start;
    for (const text of token.text.split(".")) {
      const end = Math.min(start + text.length, token.span.end);
      segments.push({ text, span: { start: Math.min(start, end), end } });
      start = end + 1;
    }
    if (segments.some((segment) => segment.text === "")) {
      report(
        this.problems,
        "empty-path-segment",
        token.span,
        "Expected a name on both sides of each `.`, as in `cockpit.stem.spacers-below`.",
      );
    }
    return { segments, text: token.text, span: token.span };
  }

  private readWaive(statement: Statement): WaiveEntry {
    const tokens = markWords(statement.tokens, waiveWords);
    const before = this.problems.length;
    const parts = parseStatement("waive", tokens, this.problems);
    const isRead = this.problems.length === before;
    const word = valueToken(tokens[0]!);
    const end = statement.block?.end ?? tokens.at(-1)!.span.end;
    if (statement.block !== undefined) {
      report(
        this.problems,
        "unexpected",
        { start: statement.block.start, end: statement.block.start + 1 },
        `A waiver has no block. Expected one line such as \`${waiveExample}\`.`,
      );
    }
    if (parts === undefined) return { form: "waive", span: { start: word.span.start, end } };
    if (parts.code === undefined) {
      report(
        this.problems,
        "missing-code",
        word.span,
        `Expected the code of a check after \`waive\`, as in \`${waiveExample}\`.`,
      );
    }
    if (parts.atWord !== undefined && parts.at === undefined) {
      report(
        this.problems,
        "missing-path",
        parts.atWord.span,
        `Expected a path after \`at\`, as in \`${waiveExample}\`.`,
      );
    }
    if (parts.untilWord !== undefined && parts.until === undefined) {
      report(
        this.problems,
        "missing-date",
        parts.untilWord.span,
        "Expected a date after `until`, as in `until 2027-03-31`.",
      );
    }
    if (parts.reason === undefined && isRead) {
      report(
        this.problems,
        "missing-reason",
        word.span,
        `A waiver needs its reason in quotes, as in \`${waiveExample}\`.`,
      );
    }
    return {
      form: "waive",
      ...(parts.code === undefined ? {} : { code: parts.code }),
      ...(parts.at === undefined ? {} : { at: this.readPath(parts.at) }),
      ...(parts.reason === undefined ? {} : { reason: parts.reason }),
      ...(parts.until === undefined ? {} : { until: parts.until }),
      span: { start: word.span.start, end },
    };
  }
}

function oneAlternate(value: ValueTree): ValueTree {
  return { ...value, alternates: [value.tokens] };
}

/** `waive` begins a waiver unless it is used as a key. */
function isWaive(tokens: readonly Token[]): boolean {
  if (tokens[0]!.tokenType !== types.Word || tokens[0]!.text !== "waive") return false;
  const next = tokens[1]?.tokenType;
  return next !== types.Colon && next !== types.Comparison;
}
