import type { Check, Instance, Verdict } from "../../checks/define.ts";
import { checkByCode, instancesOf, needsOf } from "../../checks/table.ts";
import type { BuildReport } from "../../engine/build-report.ts";
import type { Engine } from "../../engine/engine.ts";
import { explainPath } from "../../engine/explain-path.ts";
import type { Maybe, Need } from "../../model/need.ts";
import { bullets, caution, code, paragraphs, plain } from "../shared/markdown.ts";
import type { ClientOptions } from "../shared/options.ts";
import { factLine, workingLines } from "./numbers.ts";

/** A check by itself: what it asks, why, and the source. */
export function checkHover(checkCode: string): string {
  const check = checkByCode(checkCode);
  if (!check) return `No check has the code ${code(checkCode)}.`;
  return paragraphs(
    `**${plain(check.title)}** · ${code(check.code)} · ${check.severity}`,
    plain(check.explanation),
    check.caution === undefined ? undefined : caution(check.caution),
    `Source: ${plain(check.source)}`,
  );
}

const signs: Readonly<Record<Verdict["outcome"], string>> = {
  holds: "✓",
  fails: "✗",
  unknown: "?",
  notApplicable: "–",
};

/** An instance of a check with its outcome in one line. */
export function verdictLine(check: Check, instance: Instance, verdict: Verdict): string {
  const name = `${code(check.code)}${instance.name === "" ? "" : ` ${plain(instance.name)}`}`;
  return `${signs[verdict.outcome]} ${name} ${plain(verdictWords(verdict))}`;
}

function verdictWords(verdict: Verdict): string {
  switch (verdict.outcome) {
    case "unknown":
      return `Not stated: ${verdict.missing.map(({ what }) => what).join(", ")}.`;
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
  const title = `${signs[verdict.outcome]} **${plain(check.title)}** · ${code(check.code)}${instance.name === "" ? "" : ` · ${plain(instance.name)}`}`;
  const words = plain(verdictWords(verdict));
  const warning = verdict.outcome === "fails" ? (verdict.caution ?? check.caution) : undefined;
  return paragraphs(
    title,
    words,
    bullets(comparedFacts(engine, report, check, instance, client)),
    warning === undefined ? undefined : caution(warning),
  );
}

function comparedFacts(
  engine: Engine,
  report: BuildReport,
  check: Check,
  instance: Instance,
  client: ClientOptions,
): string[] {
  const lines: string[] = [];
  const seen = new Set<string>();
  for (const need of Object.values(needsOf(check, instance)) as Need[]) {
    // What is fitted is named with each of its facts.
    if (need.kind === "slot" || need.kind === "every-slot") continue;
    const answer: Maybe = report.evaluation.reader.answer(need);
    if (answer.state !== "known" || answer.written === "" || seen.has(answer.path)) continue;
    seen.add(answer.path);
    lines.push(factLine(engine, answer, client));
    const explained = need.kind === "worked" ? explainPath(report, need.quantity) : undefined;
    if (explained?.form === "number") {
      lines.push(...workingLines(engine, explained, client).map((line) => `  - ${line}`));
    }
  }
  return joinNested(lines);
}

/** Lines of a second level belong to the one before them. */
function joinNested(lines: readonly string[]): string[] {
  const joined: string[] = [];
  for (const line of lines) {
    const last = joined.length - 1;
    if (line.startsWith("  - ") && last >= 0) joined[last] = `${joined[last]}\n${line}`;
    else joined.push(line);
  }
  return joined;
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
