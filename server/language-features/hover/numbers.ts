import { calculationOfQuantity, quantities } from "../../calculations/table.ts";
import type { BuildReport } from "../../engine/build-report.ts";
import type { Engine } from "../../engine/engine.ts";
import { type ExplainedNumber, explainPath, type StatedFact } from "../../engine/explain-path.ts";
import { missingWords, type Need, slotRead } from "../../model/need.ts";
import { bullets, code, paragraphs, placeLink, plain } from "../shared/markdown.ts";
import type { ClientOptions } from "../shared/options.ts";

/** Steps of one working that are shown; long tables have a step for every gear. */
const mostSteps = 12;
/** Characters of a shown result; a list of every gear is longer. */
const longestResult = 120;

/** A number of a build: what it is, its value, the facts it comes from with where they stand, and every step. */
export function numberHover(engine: Engine, report: BuildReport, path: string, client: ClientOptions): string {
  const explained = explainPath(report, path);
  return explained?.form === "number" ? numberText(engine, explained, client) : "";
}

export function numberText(engine: Engine, explained: ExplainedNumber, client: ClientOptions): string {
  const { outcome, calculation, description } = explained;
  const value =
    outcome.state === "known"
      ? `= ${plain(cut(outcome.shown))}`
      : outcome.state === "unknown"
        ? `cannot be worked out: ${missingWords(outcome.missing)}: ${plain(outcome.missing.map(({ what }) => what).join(", "))}`
        : `does not arise: ${plain(outcome.reason)}`;
  return paragraphs(
    `**${plain(explained.path)}** ${value}`,
    plain(description),
    bullets(workingLines(engine, explained, client)),
    `Formula: ${plain(calculation.formula)}. Source: ${plain(calculation.source)}.`,
  );
}

/** Where each input was stated, then the working step by step. */
function workingLines(engine: Engine, explained: ExplainedNumber, client: ClientOptions): string[] {
  return [...explained.facts.map((fact) => factLine(engine, fact, client)), ...stepLines(explained, mostSteps)];
}

/** The working alone, for where the inputs are listed already. */
export function stepLines(explained: ExplainedNumber, most: number): string[] {
  const steps = explained.steps.slice(0, most).map(plain);
  const rest = explained.steps.length - steps.length;
  return rest > 0
    ? [
        ...steps,
        `and ${rest === 1 ? "1 more step" : `${rest} more steps`}: ${code(`ferrule explain FILE#BUILD/${explained.path}`)}`,
      ]
    : steps;
}

/** `drivetrain.cassette.cogs`: 10-12-14 t (Corrie wide 10-52, drivetrain.ferrule:4) */
export function factLine(engine: Engine, fact: Omit<StatedFact, "description">, client: ClientOptions): string {
  // A number worked out before stands nowhere; its own working says where it comes from.
  const isWorkedOut = calculationOfQuantity(fact.path) !== undefined;
  const where = isWorkedOut ? "worked out" : `${plain(fact.subject)}, ${placeLink(engine, fact.place, client)}`;
  return `${code(fact.path)}: ${plain(cut(fact.written))} (${where})`;
}

function cut(text: string): string {
  return text.length > longestResult ? `${text.slice(0, longestResult - 1)}…` : text;
}

/** Paths of the numbers that are worked out from what stands in a slot, without the detour over other numbers. */
export function numbersReading(slot: string): readonly string[] {
  return quantities
    .filter(({ inBuild }) =>
      Object.values(inBuild.needs as Readonly<Record<string, Need>>).some((need) => slotRead(need) === slot),
    )
    .map(({ path }) => path);
}
