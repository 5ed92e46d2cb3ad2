import type { Outcome, Severity } from "../../model/finding.ts";
import { type CollectedWorkshop, collect, hasAtLeast } from "../../reports/collect.ts";
import { coloured, plain } from "../../reports/paint.ts";
import { printable } from "../../reports/printable.ts";
import { textReport } from "../../reports/text.ts";
import type { Invocation } from "../commands.ts";
import { dayOf } from "../day.ts";
import { exitCodes } from "../exit-codes.ts";
import { type GivenText, type LoadedWorkshop, load } from "../load.ts";
import { UsageProblem } from "../problem.ts";
import { readStandardInput } from "../standard-input.ts";
import { findTargets, placeOf, Roots } from "../targets.ts";
import { version } from "../version.ts";

/** Checks what was asked for and writes the report. */
export async function run(invocation: Invocation): Promise<number> {
  const { terminal, positionals, folder } = invocation;
  const today = dayOf(invocation.value("today"));
  const { targets, given } = inputs(invocation);
  const workshops = load(targets, given, today, folder);
  const unread = sayLeftOut(workshops, terminal.warn);
  if (workshops.every(({ uris }) => uris.length === 0)) {
    throw new UsageProblem(`No .ferrule file is under ${positionals.join(", ") || "this folder"}.`);
  }
  const collected = workshops.map(collect);
  terminal.write(await written(collected, invocation, today));
  if (unread) return exitCodes.usage;
  const failOn = (invocation.value("fail-on") ?? "error") as Severity | "never";
  const found = failOn !== "never" && collected.some(({ files }) => hasAtLeast(files, failOn));
  return found ? exitCodes.findings : exitCodes.clean;
}

function inputs({ positionals, value, has, folder }: Invocation) {
  const roots = new Roots();
  const isGiven = positionals.includes("-");
  if (has("as") && !isGiven) throw new UsageProblem("--as says what standard input stands for; give - as well.");
  const words = positionals.filter((word) => word !== "-");
  const targets = findTargets(words.length === 0 && !isGiven ? ["."] : words, folder, roots);
  if (!isGiven) return { targets, given: undefined };
  const as = value("as");
  const target = as === undefined ? undefined : placeOf(as, folder, roots);
  const given: GivenText = { text: readStandardInput(), ...(target ? { target } : {}) };
  return { targets, given };
}

/** @returns true when something was left out that results may depend on. */
function sayLeftOut(workshops: readonly LoadedWorkshop[], warn: (text: string) => void): boolean {
  const leftOut = workshops.flatMap((workshop) => workshop.leftOut);
  for (const { path, reason } of leftOut) warn(`ferrule: ${printable(path)} was not read: ${reason}.\n`);
  return leftOut.some(({ serious }) => serious);
}

async function written(
  workshops: readonly CollectedWorkshop[],
  invocation: Invocation,
  today: string,
): Promise<string> {
  const { terminal } = invocation;
  switch (invocation.value("format")) {
    case "json": {
      const { jsonReport } = await import("../../reports/json.ts");
      return `${JSON.stringify(jsonReport(workshops, today), undefined, 2)}\n`;
    }
    case "github":
      return (await import("../../reports/github.ts")).githubReport(workshops);
    case "junit":
      return (await import("../../reports/junit.ts")).junitReport(workshops);
    case "sarif": {
      const { sarifReport } = await import("../../reports/sarif.ts");
      return `${JSON.stringify(sarifReport(workshops, version), undefined, 2)}\n`;
    }
    default:
      return textReport(workshops, {
        width: terminal.width,
        paint: terminal.colour ? coloured : plain,
        list: invocation
          .values("list")
          .map((word) => outcomes[word])
          .filter((outcome) => outcome !== undefined),
      });
  }
}

const outcomes: Readonly<Record<string, Outcome>> = {
  holds: "holds",
  fails: "fails",
  unknown: "unknown",
  waived: "waived",
  "not-applicable": "notApplicable",
};
