import type { BuildReport } from "../../engine/build-report.ts";
import type { Engine } from "../../engine/engine.ts";
import { ofCombination } from "../../engine/evaluate.ts";
import type { Declaration } from "../../model/declaration.ts";
import type { Outcome } from "../../model/finding.ts";
import type { Maybe } from "../../model/need.ts";
import { Evaluation } from "../../rules/evaluate.ts";
import { describeType, type ExpressionType } from "../../rules/expression-type.ts";
import type { RuleFunction } from "../../rules/functions.ts";
import { gapsOf } from "../../rules/least-sums.ts";
import { pathMeaning } from "../../rules/paths.ts";
import { type Local, ruleCode } from "../../rules/rule.ts";
import { showRunValue } from "../../rules/show.ts";
import type { Typed } from "../../rules/typed-expression.ts";
import { bullets, code, paragraphs, placeLink, plain } from "../shared/markdown.ts";
import type { ClientOptions } from "../shared/options.ts";
import { rulesBuilds } from "../shared/rule-builds.ts";
import { outcomeSigns, outcomeWords, verdictWords } from "./checks.ts";

/** How many builds one hover shows. */
const mostBuilds = 8;

/** A house rule: what it asks, and what it comes to for the workshop's builds. */
export function ruleHover(engine: Engine, declaration: Declaration, client: ClientOptions): string {
  const rule = engine.rule(declaration);
  return paragraphs(
    `**${plain(declaration.label)}** · ${code(ruleCode(declaration.name))} · a house rule · ${rule.severity}`,
    plain(declaration.tree.documentation),
    rule.because === undefined ? undefined : plain(rule.because),
    rule.isWrong
      ? "It cannot be understood as it is written, and is asked of no build."
      : outcomes(engine, declaration, client),
    `Declared in ${placeLink(engine, { declaration, span: declaration.headerSpan }, client)}.`,
  );
}

function outcomes(engine: Engine, rule: Declaration, client: ClientOptions): string {
  const counts = new Map<Outcome, number>();
  const lines: string[] = [];
  let more = 0;
  for (const { build, row } of rulesBuilds(engine, rule)) {
    counts.set(row.outcome, (counts.get(row.outcome) ?? 0) + 1);
    if (row.outcome === "notApplicable") continue;
    const worst = row.instances.find(({ verdict }) => verdict.outcome === row.outcome) ?? row.instances[0];
    if (lines.length >= mostBuilds || !worst) {
      more++;
      continue;
    }
    const sign = row.outcome === "waived" ? "–" : outcomeSigns[worst.verdict.outcome];
    lines.push(
      `${sign} ${named(engine, build, client)}: ${plain(ofCombination(verdictWords(worst.verdict), worst.combination))}`,
    );
  }
  if (counts.size === 0) return "No build is declared.";
  const said = [...counts].map(([outcome, count]) => `${outcomeWords[outcome]} for ${count}`);
  const sum = `Of the builds here ${said.join(", ")}.`;
  return paragraphs(sum, bullets(more > 0 ? [...lines, `and ${more} more`] : lines));
}

function named(engine: Engine, build: Declaration, client: ClientOptions): string {
  return `${code(build.name)} (${placeLink(engine, { declaration: build, span: build.headerSpan }, client)})`;
}

/** What a path of a rule comes to in the builds that the rule is asked of, those in open files first. */
export function valuesInBuilds(engine: Engine, rule: Declaration, path: string, client: ClientOptions): string {
  const meaning = pathMeaning(path);
  if (!meaning) return "";
  return inBuilds(engine, rule, client, (report) => {
    const answer = report.evaluation.reader.answer(meaning.need);
    return answer.state === "known" && answer.written !== "" ? answer.written : valueOfAnswer(answer);
  });
}

function valueOfAnswer(answer: Maybe): string {
  if (answer.state === "none") return "none";
  return answer.state === "unknown" ? "not stated" : "stated";
}

/** A name given by a rule: what it stands for, and what that comes to. */
export function localHover(engine: Engine, rule: Declaration, local: Local, client: ClientOptions): string {
  const { expression, name } = local;
  const text = rule.text.slice(expression.span.start, expression.span.end);
  return paragraphs(
    `**${plain(name)}** = ${code(text)} · ${plain(describe(expression.type))}`,
    inBuilds(engine, rule, client, (report) => shown(expression, report)),
  );
}

function describe(type: ExpressionType): string {
  return type.form === "truth" ? "true or false" : describeType(type);
}

function shown(expression: Typed, report: BuildReport): string {
  const { reader } = report.evaluation;
  const evaluation = new Evaluation(
    ({ need }) => reader.answer(need),
    () => "this",
    (meaning) => gapsOf(meaning, (_, need) => reader.answer(need)),
  );
  return showRunValue(evaluation.value(expression), expression.type);
}

function inBuilds(
  engine: Engine,
  rule: Declaration,
  client: ClientOptions,
  value: (report: BuildReport) => string,
): string {
  const lines: string[] = [];
  let more = 0;
  for (const { build, report, row } of rulesBuilds(engine, rule)) {
    if (row.outcome === "notApplicable") continue;
    if (lines.length < mostBuilds) {
      const text = engine.shown(() => value(report));
      lines.push(`${named(engine, build, client)}: ${code(text)}`);
    } else more++;
  }
  if (lines.length === 0) return "";
  return paragraphs("In the builds that the rule is for:", bullets(more > 0 ? [...lines, `and ${more} more`] : lines));
}

export function functionHover({ written, description, example }: RuleFunction): string {
  return paragraphs(`**${plain(written)}**`, plain(description), `For example ${code(example)}.`);
}
