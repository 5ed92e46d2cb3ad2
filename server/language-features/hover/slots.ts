import type { Check, Instance, Verdict } from "../../checks/define.ts";
import type { BuildReport } from "../../engine/build-report.ts";
import type { Engine } from "../../engine/engine.ts";
import { explainPath } from "../../engine/explain-path.ts";
import { omittedSlot } from "../../model/omission.ts";
import type { Slot } from "../../vocabulary/define.ts";
import { kindByName } from "../../vocabulary/index.ts";
import { bullets, caution, code, paragraphs, placeLink, plain } from "../shared/markdown.ts";
import type { ClientOptions } from "../shared/options.ts";
import { comparison, verdictLine } from "./checks.ts";
import { factList, usedAndDeclared } from "./declarations.ts";
import { factLine, numbersReading, stepLines } from "./numbers.ts";

/** Comparisons shown in full; the others are named in one line each. */
const mostComparisons = 4;
const mostLines = 8;
const mostNumbers = 5;
/** Steps of one working; a table of every gear has one for each. */
const mostSteps = 5;

/** A slot by itself: what goes there and what leaving it out means. */
export function slotHover(slot: Slot, report: BuildReport | undefined): string {
  const kinds = slot.kinds.map((kind) => kindByName(kind)?.noun ?? kind);
  const left = report ? omittedSlot(slot, report.assembly.slots) : slot.omitted;
  return paragraphs(
    `**${plain(slot.path)}** · ${kinds.length === 0 ? "a part of any kind" : plain(kinds.join(" or "))}`,
    plain(slot.description),
    left === "none"
      ? "Left out, there is none."
      : `Left out, it is open, and what needs it cannot be checked; ${code("none")} says that there is none.`,
  );
}

/**
 * A slot as a build fills it: the part and how it is installed, what fails there with the comparison and its working,
 * what else was checked, and the numbers that are worked out from it.
 */
export function filledSlotHover(engine: Engine, report: BuildReport, slot: Slot, client: ClientOptions): string {
  const installed = report.assembly.slots.get(slot.path);
  if (!installed) return slotHover(slot, report);
  const { part } = installed;
  const inherited =
    installed.place.declaration === report.assembly.declaration
      ? undefined
      : `Stated by the base, ${placeLink(engine, installed.place, client)}.`;
  const settings = [...installed.settings].flatMap(([name, statement]) =>
    statement.state === "unreadable"
      ? []
      : [
          factLine(
            engine,
            {
              path: `${slot.path}.${name}`,
              written: statement.state === "none" ? "none" : statement.written,
              subject: report.assembly.declaration.label,
              place: statement.place,
            },
            client,
          ),
        ],
  );
  const asked = askedOf(engine, report, slot.path);
  const here = failingHere(asked, slot.path);
  return paragraphs(
    part
      ? `**${plain(part.declaration.label)}** · ${code(part.declaration.name)} · ${plain(part.kind?.noun ?? "a part")} as ${code(slot.path)}`
      : installed.state === "none"
        ? `**${plain(slot.path)}**: none, as stated.`
        : installed.declaredAs === undefined
          ? `**${plain(installed.name)}** is declared by no library.`
          : `**${plain(installed.name)}** is declared as ${plain(installed.declaredAs)}, which does not go here.`,
    inherited,
    // What is wrong comes before what is.
    ...here.map(({ check, instance }) => comparison(engine, report, check, instance, client)),
    part && plain(part.declaration.tree.documentation),
    part && factList(part.facts, part.kind?.fields ?? {}),
    part && usedAndDeclared(engine, part.declaration, client),
    settings.length > 0 ? `Installed:\n\n${bullets(settings)}` : undefined,
    part?.kind?.caution === undefined ? undefined : caution(part.kind.caution),
    otherChecks(asked, here),
    numberSection(engine, report, slot.path, client),
  );
}

interface Asked {
  readonly check: Check;
  readonly instance: Instance;
  readonly verdict: Verdict;
}

/** Everything that reads a slot, with its answer. */
function askedOf(engine: Engine, report: BuildReport, path: string): readonly Asked[] {
  return engine.checks.reading(path).map(({ check, instance }) => ({
    check,
    instance,
    verdict: report.evaluation.ask(check, instance),
  }));
}

function ofOutcome(asked: readonly Asked[], outcome: Verdict["outcome"]): readonly Asked[] {
  return asked.filter(({ verdict }) => verdict.outcome === outcome);
}

/** What fails at the slot itself, as against what only reads it too. */
function failingHere(asked: readonly Asked[], path: string): readonly Asked[] {
  return asked
    .filter(
      ({ verdict }) =>
        verdict.outcome === "fails" && (verdict.at.path === path || verdict.at.path.startsWith(`${path}.`)),
    )
    .slice(0, mostComparisons);
}

/** What else reads a slot: failures not shown yet, what is open as one question, what holds in a line each. */
function otherChecks(asked: readonly Asked[], shown: readonly Asked[]): string {
  if (asked.length === 0) return "";
  const fails = ofOutcome(asked, "fails");
  const unknown = ofOutcome(asked, "unknown");
  const holds = ofOutcome(asked, "holds");
  const rest = [...fails.filter((one) => !shown.includes(one)), ...holds];
  const lines = rest.slice(0, mostLines).map(({ check, instance, verdict }) => verdictLine(check, instance, verdict));
  const more = rest.length - lines.length;
  return paragraphs(
    `**Checks that read this slot**: ${holds.length} hold, ${fails.length} fail, ${unknown.length} cannot be checked, ${ofOutcome(asked, "notApplicable").length} do not apply`,
    bullets(more > 0 ? [...lines, `and ${more} more`] : lines),
    openQuestions(unknown.map(({ verdict }) => verdict)),
  );
}

/** What nobody stated, once each, whatever waits for it. */
function openQuestions(verdicts: readonly Verdict[]): string {
  const missing = new Set(
    verdicts.flatMap((verdict) => (verdict.outcome === "unknown" ? verdict.missing.map(({ what }) => what) : [])),
  );
  if (missing.size === 0) return "";
  const shown = [...missing].slice(0, mostLines);
  const rest = missing.size - shown.length;
  return `? Not stated, so that it cannot be checked: ${plain(shown.join(", "))}${rest > 0 ? ` and ${rest} more` : ""}.`;
}

/** The numbers that are worked out from a slot, each with its working; a table of every gear only by name. */
function numberSection(engine: Engine, report: BuildReport, path: string, client: ClientOptions): string {
  const workings: string[] = [];
  const named: string[] = [];
  const seen = new Set<unknown>();
  for (const number of numbersReading(path)) {
    const explained = explainPath(report, number);
    if (explained?.form !== "number" || explained.outcome.state !== "known") continue;
    const { value, shown } = explained.outcome;
    // Several results of one calculation share their working.
    if (Array.isArray(value) || seen.has(explained.calculation) || workings.length >= mostNumbers) {
      named.push(Array.isArray(value) ? code(number) : `${code(number)} = ${plain(shown)}`);
      continue;
    }
    seen.add(explained.calculation);
    // What this slot states is in view above; the other inputs are not.
    const others = explained.facts.filter((fact) => !fact.path.startsWith(`${path}.`));
    const lines = [...others.map((fact) => factLine(engine, fact, client)), ...stepLines(explained, mostSteps)];
    workings.push(
      [
        `${code(number)} = ${plain(shown)}: ${plain(explained.description)}`,
        ...lines.map((line) => `  - ${line}`),
      ].join("\n"),
    );
  }
  if (workings.length + named.length === 0) return "";
  return paragraphs("**Worked out from it**", bullets([...workings, ...(named.length > 0 ? [named.join(", ")] : [])]));
}
