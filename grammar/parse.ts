/** The syntax tree of one declaration's text, whatever state it is in. Nothing here throws on any text. */

import { closest, distance } from "fastest-levenshtein";
import { skipBlanks } from "./characters.ts";
import { parseExpression } from "./expression-parser.ts";
import {
  headerWords,
  joinLists,
  markWords,
  mendEntry,
  mendExpression,
  mendHeader,
  splitEntries,
  valueWords,
  waiveWords,
} from "./habits.ts";
import { layOut, type Statement, type StatementBlock } from "./layout.ts";
import { type LexedText, lex, type Token, valueToken } from "./lexer.ts";
import { type EntryParts, type HeaderParts, parseStatement } from "./parser.ts";
import { declarationKeywordAt, findHeader, split } from "./split.ts";
import * as types from "./tokens.ts";
import {
  type BlockTree,
  type DeclarationKeyword,
  type DeclarationTree,
  declarationKeywords,
  type EntryTree,
  type ExpressionTree,
  type HeaderTree,
  type PathTree,
  type Span,
  type SyntaxProblem,
  type ValueToken,
  type ValueTree,
  type WaiveEntry,
} from "./tree.ts";

/** UTF-16 units of one declaration that are read; a longer one is reported. */
export const declarationLimit = 1_000_000;
/** Tokens of one statement that are read; a longer one is reported. */
export const statementLimit = 5_000;
/** Tokens of one expression, and parentheses inside each other: beyond these it is reported and not read. */
export const expressionLimit = 500;
const parenthesisLimit = 32;
/** Problems listed for one declaration. */
export const problemLimit = 100;

/** Keys of a rule whose value is an expression. */
const expressionKeys: ReadonlySet<string> = new Set(["when", "require", "let"]);

/**
 * The tree of a declaration. `text` is that of a chunk that has a keyword; for any other text the tree is an empty
 * one that carries the problems.
 */
export function parseDeclaration(text: string): DeclarationTree {
  const headerStart = findHeader(text);
  if (headerStart < 0) return emptyDeclaration(text);
  const before = text.slice(0, headerStart);
  if (/^[\s\ufeff]*$/.test(before) || holdsOnlyComments(before)) return new DeclarationReader(text, headerStart).read();
  // Not the text of one chunk. What stands before the declaration is reported, and blanked so that it cannot enclose it.
  const start = split(text).find((chunk) => chunk.keyword !== undefined)!.start;
  const blanked = text.slice(0, start).replace(/[^\r\n]/g, " ") + text.slice(start);
  const tree = new DeclarationReader(blanked, headerStart).read();
  return { ...tree, problems: finishProblems([...parseStray(text.slice(0, start)), ...tree.problems]) };
}

function holdsOnlyComments(text: string): boolean {
  return text.split(/[\r\n]/).every((line) => /^[\s\ufeff]*($|\/\/)/.test(line));
}

/** The problems of text that belongs to no declaration: anything but blanks and comments. */
export function parseStray(text: string): SyntaxProblem[] {
  if (text.length > declarationLimit) return [tooLong(text, "This text")];
  const lexed = lex(text);
  const layout = layOut(text, lexed.tokens);
  let problems: SyntaxProblem[] = [];
  reportOutside(layout.statements, problems);
  for (const problem of lexed.problems) {
    if (layout.statements.length === 0 || isForeignComment(problem)) problems.push(problem);
  }
  if (layout.statements.length === 0) problems = [...problems, ...layout.problems];
  return finishProblems(problems);
}

function isForeignComment({ code }: SyntaxProblem): boolean {
  return code === "language/hash-comment" || code === "language/block-comment";
}

function emptyDeclaration(text: string): DeclarationTree {
  const span = { start: 0, end: 0 };
  const keyword = declarationKeywords[0];
  return { header: { keyword, keywordSpan: span, span }, documentation: "", problems: parseStray(text), span };
}

function tooLong(text: string, what: string): SyntaxProblem {
  return {
    code: "language/too-long",
    message: `${what} has ${text.length} characters; at most ${declarationLimit} are read. Expected it split into several.`,
    span: { start: 0, end: Math.min(text.length, 1) },
    severity: "error",
  };
}

/** In the order of the text, and no more of them than a person can use. */
function finishProblems(problems: SyntaxProblem[]): SyntaxProblem[] {
  problems.sort((left, right) => left.span.start - right.span.start);
  if (problems.length <= problemLimit) return problems;
  const rest = problems.length - problemLimit;
  const next = problems[problemLimit]!;
  return [
    ...problems.slice(0, problemLimit),
    {
      code: "language/more-problems",
      message: `${rest} further problems in this declaration are not listed. Mend the first ones and look again.`,
      span: next.span,
      severity: "error",
    },
  ];
}

type ConditionParts = EntryParts & { readonly expression?: ExpressionTree };

class DeclarationReader {
  private readonly text: string;
  private readonly headerStart: number;
  private readonly lexed: LexedText;
  private readonly problems: SyntaxProblem[] = [];
  private keyword: DeclarationKeyword = "part";
  private readonly isCut: boolean;
  private readonly fullText: string;

  constructor(text: string, headerStart: number) {
    this.fullText = text;
    this.isCut = text.length > declarationLimit;
    this.text = this.isCut ? text.slice(0, declarationLimit) : text;
    this.headerStart = headerStart;
    this.lexed = lex(this.text);
  }

  read(): DeclarationTree {
    const keyword = declarationKeywordAt(this.text, this.headerStart);
    if (keyword === undefined) return emptyDeclaration("");
    this.keyword = keyword;
    const layout = layOut(this.text, this.lexed.tokens);
    const position = layout.statements.findIndex((statement) => startOf(statement) >= this.headerStart);
    const statement = layout.statements[Math.max(0, position)]!;
    const header = this.readHeader(statement);
    const block = statement.block === undefined ? undefined : this.readBlock(statement.block, 1, false);
    reportOutside(
      layout.statements.filter((other) => other !== statement),
      this.problems,
    );
    const lastToken = this.lexed.tokens.findLast((token) => token.tokenType !== types.LineEnd)!;
    const tree = {
      header,
      documentation: this.documentation(),
      ...(block === undefined ? {} : { block }),
      span: { start: this.headerStart, end: lastToken.span.end },
    };
    if (this.isCut) return { ...tree, problems: [tooLong(this.fullText, "This declaration")] };
    return { ...tree, problems: finishProblems([...this.problems, ...this.lexed.problems, ...layout.problems]) };
  }

  private documentation(): string {
    const lines: string[] = [];
    for (const comment of this.lexed.comments) {
      if (comment.span.start >= this.headerStart) break;
      if (/^\/\/\/(?!\/)/.test(comment.text)) lines.push(comment.text.slice(3).replace(/^ /, ""));
    }
    return lines.join("\n");
  }

  private report(code: string, span: Span, message: string, fix?: SyntaxProblem["fix"]): void {
    this.problems.push({
      code: `language/${code}`,
      message,
      span,
      severity: "error",
      ...(fix === undefined ? {} : { fix }),
    });
  }

  private limited(statement: Statement): Statement {
    if (statement.tokens.length <= statementLimit) return statement;
    this.report(
      "long-statement",
      statement.tokens[statementLimit]!.span,
      `A statement has at most ${statementLimit} words; the rest of this line is not read.`,
    );
    return { ...statement, tokens: statement.tokens.slice(0, statementLimit) };
  }

  // Headers

  private readHeader(given: Statement): HeaderTree {
    const statement = this.limited(given);
    const tokens = markWords(mendHeader(statement.tokens, this.problems), headerWords);
    const hasKind = this.keyword === "part" || this.keyword === "standard";
    const parts = parseStatement(hasKind ? "headerWithKind" : "header", tokens, this.problems);
    const first = valueToken(tokens[0]!);
    const span = { start: first.span.start, end: tokens.at(-1)!.span.end };
    const names = this.nameParts(parts ?? { keyword: first, texts: [] });
    this.checkHeader(names, parts ?? { keyword: first, texts: [] }, given.block !== undefined, span);
    return { keyword: this.keyword, keywordSpan: first.span, ...names, span };
  }

  private nameParts(parts: HeaderParts): Pick<HeaderTree, "kind" | "name" | "title" | "from" | "of"> {
    const texts = [...parts.texts];
    const nameMayBeText = this.keyword === "record" || this.keyword === "standard";
    const name = parts.name ?? (nameMayBeText ? texts.shift() : undefined);
    const title = texts.shift();
    for (const text of texts) {
      this.report("second-title", text.span, "A declaration has one title in quotes. Expected `{` here.", {
        title: "Remove this text",
        changes: [{ span: text.span, text: "" }],
      });
    }
    return {
      ...(parts.kind === undefined ? {} : { kind: parts.kind }),
      ...(name === undefined ? {} : { name }),
      ...(title === undefined ? {} : { title }),
      ...(parts.from === undefined ? {} : { from: parts.from }),
      ...(parts.of === undefined ? {} : { of: parts.of }),
    };
  }

  private checkHeader(
    names: Pick<HeaderTree, "kind" | "name" | "title" | "from" | "of">,
    parts: HeaderParts,
    hasBlock: boolean,
    span: Span,
  ): void {
    const { keyword } = this;
    const example = headerExamples[keyword];
    const at = parts.keyword.span;
    if (this.problems.some((problem) => problem.code === "language/expected")) return;
    if ((keyword === "part" || keyword === "standard") && names.kind === undefined) {
      const what = keyword === "part" ? "the kind of part" : "the family of the standard";
      this.report("missing-kind", at, `Expected ${what} after \`${keyword}\`, as in \`${example}\`.`);
    } else if (names.name === undefined) {
      const after = names.kind ?? parts.keyword;
      const what = keyword === "record" ? "the serial number in quotes" : keyword === "standard" ? "a code" : "a name";
      this.report(
        "missing-name",
        after.span,
        `Expected ${what} after \`${after.text}\`, as in \`${example}\`.`,
        nameFromTitle(keyword, after.span.end, names.title),
      );
    }
    if (parts.fromWord !== undefined && parts.from === undefined) {
      this.report(
        "missing-base",
        parts.fromWord.span,
        `Expected a name after \`from\`, as in \`${baseExample(keyword)}\`.`,
      );
    }
    if (keyword === "record" && parts.of === undefined) {
      const where = parts.ofWord ?? names.name ?? parts.keyword;
      this.report("missing-build", where.span, `Expected \`of\` and the name of a build, as in \`${example}\`.`);
    } else if (keyword !== "record" && parts.ofWord !== undefined) {
      this.report("unexpected", parts.ofWord.span, `\`of\` belongs to a record. Expected \`${example}\`.`);
    }
    if (keyword !== "part" && keyword !== "build" && parts.fromWord !== undefined) {
      this.report("unexpected", parts.fromWord.span, `Only a part or a build has a base. Expected \`${example}\`.`);
    }
    if (!hasBlock && !(parts.from !== undefined && (keyword === "part" || keyword === "build"))) {
      this.report(
        "missing-block",
        span,
        `Expected \`{\` at the end of this line, and \`}\` after the entries, as in \`${example}\`.`,
        {
          title: "Add an empty block",
          changes: [{ span: { start: span.end, end: span.end }, text: " {\n}" }],
        },
      );
    }
  }

  // Blocks and entries

  /** `depth` is 1 for the declaration's own block. The layout has capped the nesting, so this cannot run deep. */
  private readBlock(block: StatementBlock, depth: number, isExpressionBlock: boolean): BlockTree {
    const entries: EntryTree[] = [];
    for (const given of joinLists(this.text, block.statements, this.problems)) {
      for (const statement of splitEntries(this.limited(given), this.problems)) {
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
    const comments = this.lexed.comments;
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
      this.report(
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
      this.report(
        "incomplete-entry",
        parts.key.span,
        `Expected \`:\` and a value, or \`{\`, after \`${parts.key.text}\`, as in \`links: 116\` or \`rear-wheel {\`.`,
      );
    } else {
      this.report("missing-value", parts.colon.span, `Expected a value after \`:\`, as in \`links: 116\`.`);
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
      this.report(
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
      this.report(
        "unexpected",
        { start: statement.block.start, end: statement.block.start + 1 },
        `A waiver has no block. Expected one line such as \`${waiveExample}\`.`,
      );
    }
    if (parts === undefined) return { form: "waive", span: { start: word.span.start, end } };
    if (parts.code === undefined) {
      this.report(
        "missing-code",
        word.span,
        `Expected the code of a check after \`waive\`, as in \`${waiveExample}\`.`,
      );
    }
    if (parts.atWord !== undefined && parts.at === undefined) {
      this.report("missing-path", parts.atWord.span, `Expected a path after \`at\`, as in \`${waiveExample}\`.`);
    }
    if (parts.untilWord !== undefined && parts.until === undefined) {
      this.report("missing-date", parts.untilWord.span, "Expected a date after `until`, as in `until 2027-03-31`.");
    }
    if (parts.reason === undefined && isRead) {
      this.report("missing-reason", word.span, `A waiver needs its reason in quotes, as in \`${waiveExample}\`.`);
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

const waiveExample = 'waive drivetrain/chain-length at drivetrain.chain "One spare pair of links" until 2027-03-31';

const headerExamples: Readonly<Record<DeclarationKeyword, string>> = {
  workshop: 'workshop north-yard "North Yard Cycles" {',
  part: 'part cassette corrie.wide-10-52 "Corrie wide 10-52" {',
  build: 'build fellside-l "Fellside 29 hardtail, size L" {',
  standard: 'standard axle 12x148 "12 mm by 148 mm" {',
  rule: 'rule tall-stack "No more than 30 mm of spacers under a stem" {',
  record: 'record "FL-0031" of fellside-l {',
};

function baseExample(keyword: DeclarationKeyword): string {
  return keyword === "part"
    ? "part cassette corrie.wide-11-50 from corrie.wide-10-52 {"
    : "build fellside-m from fellside-l {";
}

/** A name made from a title that stands where the name should be. */
function nameFromTitle(
  keyword: DeclarationKeyword,
  at: number,
  title: ValueToken | undefined,
): SyntaxProblem["fix"] | undefined {
  if (title === undefined || keyword === "record" || keyword === "standard") return undefined;
  const name = title.text
    .toLowerCase()
    .replace(/[^\p{Letter}\p{Number}]+/gu, "-")
    .replace(/^-+|-+$/g, "");
  if (name === "") return undefined;
  return { title: `Name it ${name}`, changes: [{ span: { start: at, end: at }, text: ` ${name}` }] };
}

function oneAlternate(value: ValueTree): ValueTree {
  return { ...value, alternates: [value.tokens] };
}

function startOf(statement: Statement): number {
  return statement.tokens[0]?.span.start ?? statement.block!.start;
}

/** `waive` begins a waiver unless it is used as a key. */
function isWaive(tokens: readonly Token[]): boolean {
  if (tokens[0]!.tokenType !== types.Word || tokens[0]!.text !== "waive") return false;
  const next = tokens[1]?.tokenType;
  return next !== types.Colon && next !== types.Comparison;
}

/** One problem for each run of statements outside any declaration, and for each that looks like a mistyped one. */
function reportOutside(statements: readonly Statement[], problems: SyntaxProblem[]): void {
  let inRun = false;
  for (const statement of statements) {
    const first = statement.tokens[0];
    const start = startOf(statement);
    const end = statement.tokens.at(-1)?.span.end ?? start + 1;
    const near = first === undefined ? undefined : nearKeyword(first, statement);
    if (near !== undefined) {
      const { span } = first!;
      problems.push({
        code: "language/unknown-declaration",
        message: `\`${first!.text}\` begins no declaration. Did you mean \`${near}\`, as in \`${headerExamples[near]}\`?`,
        span,
        severity: "error",
        fix: { title: `Write ${near}`, changes: [{ span, text: near }] },
      });
      inRun = false;
    } else if (first !== undefined && isKeyword(first.text) && statement.tokens.length === 1) {
      const keyword = first.text as DeclarationKeyword;
      problems.push({
        code: "language/incomplete-declaration",
        message: `Expected more after \`${keyword}\`, as in \`${headerExamples[keyword]}\`.`,
        span: first.span,
        severity: "error",
      });
      inRun = false;
    } else if (!inRun) {
      problems.push({
        code: "language/outside-declaration",
        message: `This stands outside any declaration. Expected ${listOfKeywords} first on a line, as in \`${headerExamples.build}\`.`,
        span: { start, end },
        severity: "error",
      });
      inRun = true;
    }
  }
}

const listOfKeywords = `${declarationKeywords
  .slice(0, -1)
  .map((keyword) => `\`${keyword}\``)
  .join(", ")} or \`${declarationKeywords.at(-1)}\``;

function isKeyword(word: string): boolean {
  return (declarationKeywords as readonly string[]).includes(word);
}

/** The keyword that was meant, when the first word is nearly one and what follows looks like a header. */
function nearKeyword(first: Token, statement: Statement): DeclarationKeyword | undefined {
  if (first.tokenType !== types.Word || statement.tokens.length < 2 || first.text.length > 20) return undefined;
  const next = statement.tokens[1]!.tokenType;
  if (next !== types.Word && next !== types.Text) return undefined;
  const word = first.text.toLowerCase();
  const near = closest(word, declarationKeywords as readonly string[] as string[]) as DeclarationKeyword;
  if (first.text === near) return undefined;
  return distance(word, near) <= 2 && word[0] !== undefined ? near : undefined;
}
