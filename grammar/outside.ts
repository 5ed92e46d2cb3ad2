/** What stands outside any declaration, and what was probably meant by it. */

import { closest, distance } from "fastest-levenshtein";
import { headerExamples } from "./examples.ts";
import { type Statement, startOf } from "./layout.ts";
import type { Token } from "./lexer.ts";
import * as types from "./tokens.ts";
import { type DeclarationKeyword, declarationKeywords, type SyntaxProblem } from "./tree.ts";

/** One problem for each run of statements outside any declaration, and for each that looks like a mistyped one. */
export function reportOutside(statements: readonly Statement[], problems: SyntaxProblem[]): void {
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
