import type { Engine } from "../../engine/engine.ts";
import type { Declaration } from "../../model/declaration.ts";
import type { BuiltTo } from "../../records/built-to.ts";
import { comparedWith, type RecordRow, workingOf } from "../../records/judge.ts";
import type { RecordReport } from "../../records/report.ts";
import { measurementAt } from "../../vocabulary/index.ts";
import { bullets, caution, code, paragraphs, placeLink, plain } from "../shared/markdown.ts";
import type { ClientOptions } from "../shared/options.ts";
import { outcomeSigns, verdictWords } from "./checks.ts";
import { factLine } from "./numbers.ts";

/** Steps of one working that are shown. */
const mostSteps = 12;

/** What was measured at a path of a record beside what was expected, with the working of every comparison. */
export function measuredHover(engine: Engine, declaration: Declaration, path: string, client: ClientOptions): string {
  const report = engine.record(declaration);
  if (!report) return "";
  const rows = report.rows.filter(({ measured, beside }) => measured.path === path || beside?.path === path);
  return paragraphs(...rows.map((row) => rowHover(engine, report, row, client)), measurementHover(path));
}

function rowHover(engine: Engine, { bike, builtTo }: RecordReport, row: RecordRow, client: ClientOptions): string {
  const { comparison, measured, expected, verdict, outcome } = row;
  const isOpen = outcome !== verdict.outcome;
  const warning = verdict.outcome === "fails" ? (verdict.caution ?? comparison.caution) : undefined;
  const steps = bike ? workingOf(row, bike) : [];
  const rest = steps.length - mostSteps;
  return paragraphs(
    `${outcomeSigns[outcome]} **${plain(comparison.title)}** · ${code(comparison.code)}`,
    isOpen ? `By the recipe of today, not the one it was built to (${code(builtTo?.written ?? "")}):` : undefined,
    plain(verdictWords(verdict)),
    bullets([
      `Measured: ${plain(measured.written)}`,
      ...(expected === undefined ? [] : [`Expected: ${plain(expected)}`]),
      ...(bike ? comparedWith(row, bike.reader).map((fact) => factLine(engine, fact, client)) : []),
      ...steps.slice(0, mostSteps).map(plain),
      ...(rest > 0 ? [`and ${rest} more ${rest === 1 ? "step" : "steps"}`] : []),
    ]),
    warning === undefined || warning === "" ? undefined : caution(warning),
    `Source: ${plain(comparison.source)}`,
  );
}

/** What a measurement is compared with, and how far it may lie from that. */
function measurementHover(path: string): string {
  const row = measurementAt(path);
  if (!row) return "";
  return paragraphs(
    `Compared with ${plain(row.comparedWith)}.`,
    bullets(
      Object.values(row.tolerances).map(({ of, source, ...limits }) => {
        const said = Object.entries(limits).map(([name, value]) => limitText(name, value));
        return plain(`${said.join(" or ")} ${of} (${source})`);
      }),
    ),
  );
}

function limitText(name: string, value: number): string {
  switch (name) {
    case "share":
      return `${Math.round(value * 1000) / 10} % either way`;
    case "most":
      return `at most ${value}`;
    case "least":
      return `at least ${value}`;
    default:
      return `${value} either way`;
  }
}

/** A record as whoever points to its serial wants to see it. */
export function recordHover(engine: Engine, declaration: Declaration, client: ClientOptions): string {
  const report = engine.record(declaration);
  const { holds = 0, fails = 0, unknown = 0, notApplicable = 0 } = report?.counts ?? {};
  return paragraphs(
    `**${plain(declaration.name)}** · a record${declaration.of === undefined ? "" : ` of ${code(declaration.of)}`}`,
    plain(declaration.tree.documentation),
    report &&
      `Of what was measured ${fails} comparisons fail, ${unknown} cannot be made, ${holds} hold and ${notApplicable} do not apply.`,
    report?.builtTo && builtToText(report.builtTo),
    `Declared in ${placeLink(engine, { declaration, span: declaration.headerSpan }, client)}.`,
  );
}

/** Which specification a record states, beside the one that the build has today. */
export function specHover(engine: Engine, declaration: Declaration): string {
  const builtTo = engine.record(declaration)?.builtTo;
  return builtTo ? builtToText(builtTo) : "";
}

function builtToText({ state, written, today }: BuiltTo): string {
  switch (state) {
    case "current":
      return `Built to ${code(today)}, the specification as the build stands.`;
    case "moved-on":
      return `Built to ${code(written ?? "")}; the build is ${code(today)} today.`;
    case "not-stated":
      return `Compared with the build as it stands, whose specification is ${code(today)}.`;
    case "unreadable":
      return `${code(written ?? "")} is no digest; the build's specification is ${code(today)} today.`;
  }
}
