import { checkByCode, checks } from "../../checks/table.ts";
import { explainablePaths, explainPath } from "../../engine/explain-path.ts";
import type { Declaration } from "../../model/declaration.ts";
import { findingCodes } from "../../reports/codes/index.ts";
import { checkExplanationText, explainCheck } from "../../reports/explain-check.ts";
import { explainedPathJson } from "../../reports/explain-json.ts";
import { explainedPathText } from "../../reports/explain-path-text.ts";
import { coloured, plain } from "../../reports/paint.ts";
import { paragraph, printable } from "../../reports/printable.ts";
import { nearest, nearestSeveral } from "../../values/near.ts";
import type { DisplayUnits } from "../../values/show.ts";
import { type Address, readAddress, splits } from "../address.ts";
import type { Invocation } from "../commands.ts";
import { dayOf, localDay } from "../day.ts";
import { exitCodes } from "../exit-codes.ts";
import { type LoadedWorkshop, load } from "../load.ts";
import { UsageProblem } from "../problem.ts";
import { readWorkshops } from "../read-workshops.ts";
import { findTargets, Roots } from "../targets.ts";

/** Explains a code, or something of a build. */
export function run(invocation: Invocation): number {
  const [subject, ...more] = invocation.positionals;
  if (subject === undefined || more.length > 0) {
    throw new UsageProblem("explain takes one CODE, or one FILE#BUILD/PATH.", [
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
  if (check) {
    const explained = explainCheck(check);
    return isJson ? json(explained) : checkExplanationText(explained, terminal.width, paint);
  }
  const explanation = findingCodes.get(code);
  if (explanation !== undefined) {
    if (isJson) return json({ code, explanation });
    return `${[paint.strong(code), ...paragraph(explanation, terminal.width, "")].join("\n")}\n`;
  }
  const codes = [...checks.map((known) => known.code), ...findingCodes.keys()];
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
  const { terminal, folder } = invocation;
  const file = address.file === "" ? "." : address.file;
  const targets = findTargets([file], folder, new Roots());
  const given = invocation.value("today");
  const today = given === undefined ? localDay() : dayOf(given);
  const units = invocation.value("units") as DisplayUnits | undefined;
  const read = readWorkshops(targets, undefined, folder);
  const workshops = read.map((workshop) => load(workshop, today, folder, units));
  for (const { path, reason } of [...read, ...workshops].flatMap(({ leftOut }) => leftOut)) {
    terminal.warn(`ferrule: ${printable(path)} was not read: ${reason}.\n`);
  }
  const { workshop, build, path } = findBuild(workshops, address);
  const report = workshop.engine.report(build);
  if (!report) throw new UsageProblem(`${printable(build.name)} is not a build.`);
  const explained = workshop.engine.shown(() => explainPath(report, path));
  if (!explained) {
    const near = nearestSeveral(path, explainablePaths(report));
    throw new UsageProblem(
      `${printable(build.name)} has nothing at ${printable(path)}.`,
      near.length > 0
        ? [`Did you mean ${near.join(", ")}?`]
        : [`ferrule explain ${printable(file)}#${printable(build.name)} lists everything it has.`],
    );
  }
  return invocation.value("format") === "json"
    ? json(explainedPathJson(explained, workshop))
    : explainedPathText(explained, { workshop, width: terminal.width, paint: terminal.colour ? coloured : plain });
}

interface FoundBuild {
  readonly workshop: LoadedWorkshop;
  readonly build: Declaration;
  readonly path: string;
}

function findBuild(workshops: readonly LoadedWorkshop[], address: Address): FoundBuild {
  const names: string[] = [];
  for (const workshop of workshops) {
    const builds = workshop.uris.flatMap((uri) =>
      (workshop.engine.file(uri)?.declarations ?? []).filter(({ keyword }) => keyword === "build"),
    );
    for (const { name, path } of splits(address.rest)) {
      const build = builds.find((one) => one.name === name);
      if (build) return { workshop, build, path };
    }
    names.push(...builds.map(({ name }) => name));
  }
  const wanted = address.rest.split("/", 1)[0] ?? "";
  const near = nearest(wanted, names);
  const where = address.file === "" ? "this workshop" : printable(address.file);
  throw new UsageProblem(
    `${where} has no build ${printable(wanted)}.${near === undefined ? "" : ` Did you mean ${near}?`}`,
    names.length === 0 ? ["It has no build at all."] : [`Its builds: ${names.join(", ")}`],
  );
}
