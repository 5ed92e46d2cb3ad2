import type { Check, Instance, Verdict } from "../../checks/define.ts";
import { checkByCode, instancesOf, needsOf } from "../../checks/table.ts";
import type { BuildReport } from "../../engine/build-report.ts";
import type { Engine } from "../../engine/engine.ts";
import { type ExplainedNumber, explainPath, type StatedFact } from "../../engine/explain-path.ts";
import type { Outcome } from "../../model/finding.ts";
import { type Maybe, missingWords, type Need } from "../../model/need.ts";
import { comparisonByCode } from "../../records/table.ts";
import { bullets, caution, code, paragraphs, plain } from "../shared/markdown.ts";
import type { ClientOptions } from "../shared/options.ts";
import { factLine, stepLines } from "./numbers.ts";

/** What is explained of a check of builds and of a comparison of records alike. */
type Explained = Pick<Check, "code" | "title" | "severity" | "explanation" | "caution" | "source">;

/** A check or a comparison by itself: what it asks, why, and the source. */
export function checkHover(
  checkCode: string,
  check: Explained | undefined = checkByCode(checkCode) ?? comparisonByCode(checkCode),
): string {
  if (!check) return `No check has the code ${code(checkCode)}.`;
  return paragraphs(
    `**${plain(check.title)}** · ${code(check.code)} · ${check.severity}`,
    plain(check.explanation),
    check.caution === undefined ? undefined : caution(check.caution),
    `Source: ${plain(check.source)}`,
  );
}

/** A mark before what came of a question. */
export const outcomeSigns: Readonly<Record<Verdict["outcome"], string>> = {
  holds: "✓",
  fails: "✗",
  unknown: "?",
  notApplicable: "–",
};

/** What came of a check, in the words of a sentence about it. */
export const outcomeWords: Readonly<Record<Outcome, string>> = {
  holds: "it holds",
  fails: "it fails",
  unknown: "it cannot be checked for want of facts",
  waived: "it is waived",
  notApplicable: "it does not apply",
};

/** An instance of a check with its outcome in one line. */
export function verdictLine(check: Check, instance: Instance, verdict: Verdict): string {
  const name = `${code(check.code)}${instance.name === "" ? "" : ` ${plain(instance.name)}`}`;
  return `${outcomeSigns[verdict.outcome]} ${name} ${plain(verdictWords(verdict))}`;
}

/** What was said of an answer, in a sentence. */
export function verdictWords(verdict: Verdict): string {
  switch (verdict.outcome) {
    case "unknown":
      return `${missingWords(verdict.missing).replace(/^n/, "N")}: ${verdict.missing.map(({ what }) => what).join(", ")}.`;
    case "notApplicable":
      return verdict.reason;
    default:
      return verdict.message;
  }
}

/**
 * The comparison behind one answer: the message, every fact it rests on with where it was stated, and the working of
 * every number that was worked out for it.
 */
export function comparison(
  engine: Engine,
  report: BuildReport,
  check: Check,
  instance: Instance,
  client: ClientOptions,
): string {
  const verdict = report.evaluation.ask(check, instance);
  const title = `${outcomeSigns[verdict.outcome]} **${plain(check.title)}** · ${code(check.code)}${instance.name === "" ? "" : ` · ${plain(instance.name)}`}`;
  const words = plain(verdictWords(verdict));
  const warning = verdict.outcome === "fails" ? (verdict.caution ?? check.caution) : undefined;
  return paragraphs(
    title,
    words,
    bullets(comparedFacts(engine, report, check, instance, client)),
    warning === undefined ? undefined : caution(warning),
  );
}

/** Steps of one working, and facts, that a comparison shows. */
const mostSteps = 8;
const mostFacts = 14;

/** The facts that people stated, each once, then every number worked out from them with its steps. */
function comparedFacts(
  engine: Engine,
  report: BuildReport,
  check: Check,
  instance: Instance,
  client: ClientOptions,
): string[] {
  const facts = new Map<string, StatedFact>();
  const numbers: ExplainedNumber[] = [];
  for (const need of Object.values(needsOf(check, instance)) as Need[]) {
    // What is fitted is named with each of its facts.
    if (need.kind === "slot" || need.kind === "every-slot") continue;
    if (need.kind === "worked") {
      const explained = explainPath(report, need.quantity);
      if (explained?.form !== "number" || explained.outcome.state !== "known") continue;
      numbers.push(explained);
      for (const fact of explained.facts) facts.set(fact.path, fact);
      continue;
    }
    const answer: Maybe = report.evaluation.reader.answer(need);
    if (answer.state === "known" && answer.written !== "") facts.set(answer.path, answer);
  }
  // What a number rests on may be a number itself, which has a working of its own below.
  for (const { path } of numbers) facts.delete(path);
  const stated = [...facts.values()].slice(0, mostFacts).map((fact) => factLine(engine, fact, client));
  return [
    ...stated,
    ...(facts.size > stated.length ? [`and ${facts.size - stated.length} more facts`] : []),
    ...byCalculation(numbers).map((several) => numberLine(several)),
  ];
}

/** Results of one calculation have one working. */
function byCalculation(numbers: readonly ExplainedNumber[]): ExplainedNumber[][] {
  const groups = new Map<unknown, ExplainedNumber[]>();
  for (const number of numbers) {
    const group = groups.get(number.calculation);
    if (group) group.push(number);
    else groups.set(number.calculation, [number]);
  }
  return [...groups.values()];
}

function numberLine(numbers: readonly ExplainedNumber[]): string {
  const shown = numbers.flatMap(({ path, outcome }) =>
    outcome.state === "known" ? [`${code(path)} = ${plain(outcome.shown || "none")}`] : [],
  );
  const [first] = numbers;
  return [shown.join(", "), ...(first ? stepLines(first, mostSteps) : []).map((step) => `  - ${step}`)].join("\n");
}

/** The instances of checks whose answer is shown at a path of a build: there, or at something under it. */
export function failingAt(report: BuildReport, path: string): { readonly check: Check; readonly instance: Instance }[] {
  const found: { check: Check; instance: Instance }[] = [];
  for (const { check, instances } of report.rows) {
    instances.forEach(({ verdict }, index) => {
      const instance = instancesOf(check)[index];
      if (!instance || verdict.outcome !== "fails") return;
      const { path: at } = verdict.at;
      const isHere = at === path || (path !== "" && at.startsWith(`${path}.`));
      if (isHere) found.push({ check, instance });
    });
  }
  return found;
}
