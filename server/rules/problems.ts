import type { Span } from "../../grammar/tree.ts";
import type { Declaration } from "../model/declaration.ts";
import type { Finding, Repair } from "../model/finding.ts";
import { problemFinding, textFinding } from "../model/read-fields.ts";
import { didYouMean } from "../values/near.ts";
import type { ValueProblem } from "../values/problems.ts";

/** Collects what is wrong with the expressions of one declaration, each thing at its place. */
export class Problems {
  readonly declaration: Declaration;
  readonly findings: Finding[];

  constructor(declaration: Declaration, findings: Finding[]) {
    this.declaration = declaration;
    this.findings = findings;
  }

  /** The source of a stretch, cut where it would fill a message. */
  text({ start, end }: Span): string {
    const text = this.declaration.text.slice(start, end).replace(/\s+/g, " ");
    return text.length > longestExcerpt ? `${text.slice(0, longestExcerpt - 1)}…` : text;
  }

  report(
    span: Span,
    code: string,
    message: string,
    repairs: readonly Repair[] = [],
    related: Finding["related"] = [],
  ): void {
    this.findings.push(textFinding(this.declaration, span, code, message, { repairs, related }));
  }

  /** Something else was meant: the message ends with what, and each is offered. */
  reportNear(span: Span, code: string, message: string, near: readonly string[]): void {
    this.report(
      span,
      code,
      message + didYouMean(near),
      near.map((name) => this.write(span, name)),
    );
  }

  add(problem: ValueProblem): void {
    this.findings.push(problemFinding(this.declaration, problem));
  }

  /** The repair that puts a text in the place of another. */
  write(span: Span, text: string, title = `Write ${text}`): Repair {
    return {
      kind: "change-text",
      title,
      place: { declaration: this.declaration, span },
      changes: [{ span, text }],
    };
  }
}

const longestExcerpt = 80;
