import { checkByCode, checks } from "../../checks/table.ts";
import { explainablePaths, explainPath } from "../../engine/explain-path.ts";
import type { Declaration } from "../../model/declaration.ts";
import { comparisonByCode, comparisons } from "../../records/table.ts";
import { findingCodes } from "../../reports/codes/index.ts";
import type { ReportedWorkshop } from "../../reports/collect.ts";
import { checkExplanationText, explainCheck } from "../../reports/explain-check.ts";
import { explainComparison } from "../../reports/explain-comparison.ts";
import { explainedPathJson } from "../../reports/explain-json.ts";
import { explainedPathText } from "../../reports/explain-path-text.ts";
import {
  explainableMeasurements,
  explainedRecordJson,
  explainedRecordText,
  explainRecord,
} from "../../reports/explain-record.ts";
import { coloured, plain } from "../../reports/paint.ts";
import { paragraph, printable } from "../../reports/printable.ts";
import { ruleName } from "../../rules/rule.ts";
import { nearestSeveral } from "../../values/near.ts";
import { type Address, readAddress } from "../address.ts";
import type { Invocation } from "../command.ts";
import { exitCodes } from "../exit-codes.ts";
import { type FoundDeclaration, fileOf, findBuildOrRecord } from "../find-build.ts";
import { UsageProblem } from "../problem.ts";

/** Explains a code, or something of a build. */
export function run(invocation: Invocation): number {
  const [subject, ...more] = invocation.positionals;
  if (subject === undefined || more.length > 0) {
    throw new UsageProblem("explain takes one CODE, one FILE#BUILD/PATH or one FILE#SERIAL/PATH.", [
      `The codes of checks: ${checks.map(({ code }) => code).join(", ")}`,
    ]);
  }
  const address = readAddress(subject);
  invocation.terminal.write(address ? explainedAddress(address, invocation) : explainedCode(subject, invocation));
  return exitCodes.clean;
}

function explainedCode(code: string, { terminal, value }: Invocation): string {
  const isJson = value("format") === "json";
  const paint = terminal.colour ? coloured : plain;
  // A name without its area is enough where one check alone has it.
  const named = checks.filter((known) => known.code.endsWith(`/${code}`));
  const check = checkByCode(code) ?? (named.length === 1 ? named[0] : undefined);
  const comparison = comparisonByCode(code);
  const explained = check ? explainCheck(check) : comparison && explainComparison(comparison);
  if (explained) {
    return isJson ? json(explained) : checkExplanationText(explained, terminal.width, paint);
  }
  const explanation = findingCodes.get(code);
  if (explanation !== undefined) {
    if (isJson) return json({ code, explanation });
    return `${[paint.strong(code), ...paragraph(explanation, terminal.width, "")].join("\n")}\n`;
  }
  if (ruleName(code) !== undefined) {
    throw new UsageProblem(`${printable(code)} is the code of a house rule, which a workshop of its own declares.`, [
      `Name a build that it is asked of: ferrule explain FILE#BUILD/${printable(code)}`,
    ]);
  }
  const codes = [...[...checks, ...comparisons].map((known) => known.code), ...findingCodes.keys()];
  const short = nearestSeveral(
    code,
    codes.map((known) => known.slice(known.indexOf("/") + 1)),
  );
  const near = [
    ...named.map((known) => known.code),
    ...nearestSeveral(code, codes),
    ...(code.includes("/") ? [] : codes.filter((known) => short.includes(known.slice(known.indexOf("/") + 1)))),
  ];
  throw new UsageProblem(
    `There is no code ${printable(code)}.`,
    near.length > 0
      ? [`Did you mean ${[...new Set(near)].join(", ")}?`]
      : ["ferrule explain, with nothing after it, lists the codes of all checks."],
  );
}

function json(value: unknown): string {
  return `${JSON.stringify(value, undefined, 2)}\n`;
}

function explainedAddress(address: Address, invocation: Invocation): string {
  const found = findBuildOrRecord(address, invocation);
  return found.workshop.engine.shown(() =>
    found.declaration.keyword === "record"
      ? explainedMeasurement(found, address, invocation)
      : explainedBuild(found, address, invocation),
  );
}

function explainedBuild(
  { workshop, declaration, path }: FoundDeclaration,
  address: Address,
  invocation: Invocation,
): string {
  const report = workshop.engine.report(declaration);
  const explained = report && explainPath(report, path);
  if (!explained) throw nothingAt(declaration, path, address, report ? explainablePaths(report) : []);
  return invocation.value("format") === "json"
    ? json(explainedPathJson(explained, workshop))
    : explainedPathText(explained, page(workshop, invocation));
}

function explainedMeasurement(
  { workshop, declaration, path }: FoundDeclaration,
  address: Address,
  invocation: Invocation,
): string {
  const report = workshop.engine.record(declaration);
  const explained = report && explainRecord(report, path);
  if (!explained) throw nothingAt(declaration, path, address, report ? explainableMeasurements(report) : []);
  return invocation.value("format") === "json"
    ? json(explainedRecordJson(explained, workshop))
    : explainedRecordText(explained, page(workshop, invocation));
}

function page(workshop: ReportedWorkshop, { terminal }: Invocation) {
  return { workshop, width: terminal.width, paint: terminal.colour ? coloured : plain };
}

function nothingAt({ name }: Declaration, path: string, address: Address, known: readonly string[]): UsageProblem {
  const near = nearestSeveral(path, known);
  return new UsageProblem(
    `${printable(name)} has nothing at ${printable(path)}.`,
    near.length > 0
      ? [`Did you mean ${near.join(", ")}?`]
      : [`ferrule explain ${printable(fileOf(address))}#${printable(name)} lists everything it has.`],
  );
}
