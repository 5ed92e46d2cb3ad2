import { checksReading } from "../../checks/table.ts";
import type { BuildReport } from "../../engine/build-report.ts";
import type { Engine } from "../../engine/engine.ts";
import { explainPath } from "../../engine/explain-path.ts";
import { omittedSlot } from "../../model/omission.ts";
import type { Slot } from "../../vocabulary/define.ts";
import { kindByName } from "../../vocabulary/index.ts";
import { bullets, caution, code, paragraphs, placeLink, plain } from "../shared/markdown.ts";
import type { ClientOptions } from "../shared/options.ts";
import { comparison, verdictLine } from "./checks.ts";
import { factList } from "./declarations.ts";
import { factLine, numbersReading, workingLines } from "./numbers.ts";

/** Comparisons shown in full; the others are named in one line each. */
const mostComparisons = 4;
const mostLines = 12;
const mostNumbers = 6;

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
  return paragraphs(
    part
      ? `**${plain(part.declaration.label)}** · ${code(part.declaration.name)} · ${plain(part.kind?.noun ?? "a part")} as ${code(slot.path)}`
      : installed.state === "none"
        ? `**${plain(slot.path)}**: none, as stated.`
        : `**${plain(installed.name)}** is declared by no library.`,
    inherited,
    part && factList(part.facts, part.kind?.fields ?? {}),
    settings.length > 0 ? `Installed:\n\n${bullets(settings)}` : undefined,
    part?.kind?.caution === undefined ? undefined : caution(part.kind.caution),
    checkSections(engine, report, slot.path, client),
    numberSection(engine, report, slot.path, client),
  );
}

/** Everything that reads a slot, the failing first and with its comparison. */
function checkSections(engine: Engine, report: BuildReport, path: string, client: ClientOptions): string {
  const asked = checksReading(path).map(({ check, instance }) => ({
    check,
    instance,
    verdict: report.evaluation.ask(check, instance),
  }));
  const of = (outcome: string) => asked.filter(({ verdict }) => verdict.outcome === outcome);
  const fails = of("fails");
  const shown = fails
    .slice(0, mostComparisons)
    .map(({ check, instance }) => comparison(engine, report, check, instance, client));
  const rest = [...fails.slice(mostComparisons), ...of("unknown"), ...of("holds")];
  const lines = rest.slice(0, mostLines).map(({ check, instance, verdict }) => verdictLine(check, instance, verdict));
  const more = rest.length - lines.length;
  const counts = `${of("holds").length} hold, ${fails.length} fail, ${of("unknown").length} cannot be checked, ${of("notApplicable").length} do not apply`;
  return paragraphs(
    ...shown,
    asked.length === 0 ? undefined : `**Checks that read this slot**: ${counts}`,
    bullets(more > 0 ? [...lines, `and ${more} more`] : lines),
  );
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
    const lines = workingLines(engine, explained, client).map((line) => `  - ${line}`);
    workings.push([`${code(number)} = ${plain(shown)}: ${plain(explained.description)}`, ...lines].join("\n"));
  }
  if (workings.length + named.length === 0) return "";
  return paragraphs("**Worked out from it**", bullets([...workings, ...(named.length > 0 ? [named.join(", ")] : [])]));
}
