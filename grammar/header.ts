/** The first line of a declaration: its names, and what is missing among them. */

import { baseExample, headerExamples } from "./examples.ts";
import { headerWords, markWords, mendHeader } from "./habits.ts";
import type { Statement } from "./layout.ts";
import { valueToken } from "./lexer.ts";
import { type HeaderParts, parseStatement } from "./parser.ts";
import { limited, report } from "./problems.ts";
import type { DeclarationKeyword, HeaderTree, Span, SyntaxProblem, ValueToken } from "./tree.ts";

/** The header of a declaration with the given keyword, the first token of the statement. */
export function readHeader(keyword: DeclarationKeyword, statement: Statement, problems: SyntaxProblem[]): HeaderTree {
  return new HeaderReader(keyword, statement, problems).read();
}

class HeaderReader {
  private readonly keyword: DeclarationKeyword;
  private readonly statement: Statement;
  private readonly problems: SyntaxProblem[];

  constructor(keyword: DeclarationKeyword, statement: Statement, problems: SyntaxProblem[]) {
    this.keyword = keyword;
    this.statement = statement;
    this.problems = problems;
  }

  read(): HeaderTree {
    const statement = limited(this.statement, this.problems);
    const tokens = markWords(mendHeader(statement.tokens, this.problems), headerWords);
    const hasKind = this.keyword === "part" || this.keyword === "standard";
    const parts = parseStatement(hasKind ? "headerWithKind" : "header", tokens, this.problems);
    const first = valueToken(tokens[0]!);
    const span = { start: first.span.start, end: tokens.at(-1)!.span.end };
    const names = this.nameParts(parts ?? { keyword: first, texts: [] });
    this.checkHeader(names, parts ?? { keyword: first, texts: [] }, statement.block !== undefined, span);
    return { keyword: this.keyword, keywordSpan: first.span, ...names, span };
  }

  private nameParts(parts: HeaderParts): Pick<HeaderTree, "kind" | "name" | "title" | "from" | "of"> {
    const texts = [...parts.texts];
    const nameMayBeText = this.keyword === "record" || this.keyword === "standard";
    const name = parts.name ?? (nameMayBeText ? texts.shift() : undefined);
    const title = texts.shift();
    for (const text of texts) {
      report(this.problems, "second-title", text.span, "A declaration has one title in quotes. Expected `{` here.", {
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
      report(this.problems, "missing-kind", at, `Expected ${what} after \`${keyword}\`, as in \`${example}\`.`);
    } else if (names.name === undefined) {
      const after = names.kind ?? parts.keyword;
      const what = keyword === "record" ? "the serial number in quotes" : keyword === "standard" ? "a code" : "a name";
      report(
        this.problems,
        "missing-name",
        after.span,
        `Expected ${what} after \`${after.text}\`, as in \`${example}\`.`,
        nameFromTitle(keyword, after.span.end, names.title),
      );
    }
    if (parts.fromWord !== undefined && parts.from === undefined) {
      report(
        this.problems,
        "missing-base",
        parts.fromWord.span,
        `Expected a name after \`from\`, as in \`${baseExample(keyword)}\`.`,
      );
    }
    if (keyword === "record" && parts.of === undefined) {
      const where = parts.ofWord ?? names.name ?? parts.keyword;
      report(
        this.problems,
        "missing-build",
        where.span,
        `Expected \`of\` and the name of a build, as in \`${example}\`.`,
      );
    } else if (keyword !== "record" && parts.ofWord !== undefined) {
      report(this.problems, "unexpected", parts.ofWord.span, `\`of\` belongs to a record. Expected \`${example}\`.`);
    }
    if (keyword !== "part" && keyword !== "build" && parts.fromWord !== undefined) {
      report(
        this.problems,
        "unexpected",
        parts.fromWord.span,
        `Only a part or a build has a base. Expected \`${example}\`.`,
      );
    }
    if (!hasBlock && !(parts.from !== undefined && (keyword === "part" || keyword === "build"))) {
      report(
        this.problems,
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
