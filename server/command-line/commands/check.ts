import { printable } from "../../reports/printable.ts";
import type { DisplayUnits } from "../../values/show.ts";
import type { LeftOut } from "../../workshop-files/list.ts";
import type { CheckSettings } from "../check-answer.ts";
import { CheckMemory } from "../check-memory.ts";
import type { Invocation } from "../commands.ts";
import { dayOf, localDay } from "../day.ts";
import { exitCodes } from "../exit-codes.ts";
import { UsageProblem } from "../problem.ts";
import type { Program } from "../program.ts";
import { type Given, readWorkshops } from "../read-workshops.ts";
import { readStandardInput } from "../standard-input.ts";
import { findTargets, placeOf, Roots, type Target } from "../targets.ts";

/**
 * Checks what was asked for and writes the report.
 *
 * Nothing of the language is needed to find and read the files. When the very same files were checked before, with
 * the same settings, the answer is remembered and the rest of the program is not even loaded.
 */
export async function run(invocation: Invocation, program: () => Promise<Program>): Promise<number> {
  const { terminal, positionals } = invocation;
  const { targets, given } = inputs(invocation);
  const settings = settingsOf(invocation);
  const workshops = readWorkshops(targets, given, settings.folder);
  const leftOut = workshops.flatMap((workshop) => workshop.leftOut);
  sayLeftOut(leftOut, terminal.warn);
  if (workshops.every(({ asked }) => asked.size === 0)) {
    const where = positionals.map(printable).join(", ") || "this folder";
    if (leftOut.some(({ serious }) => serious)) return exitCodes.usage;
    throw new UsageProblem(`No .ferrule file is under ${where}.`);
  }
  const memory = invocation.has("no-cache") ? undefined : CheckMemory.open(settings, workshops);
  const remembered = memory?.recall();
  const answer = remembered ?? (await (await program()).answerCheck(workshops, settings));
  sayLeftOut(answer.leftOut, terminal.warn);
  for (const piece of answer.pieces) terminal.write(piece);
  const isComplete = ![...leftOut, ...answer.leftOut].some(({ serious }) => serious);
  if (!isComplete) return exitCodes.usage;
  if (!remembered) memory?.remember(answer);
  return answer.exitCode;
}

function settingsOf({ value, values, terminal, folder }: Invocation): CheckSettings {
  const format = value("format") ?? "text";
  const isText = format === "text";
  const given = value("today");
  const units = value("units") as DisplayUnits | undefined;
  return {
    format,
    failOn: value("fail-on") ?? "error",
    list: values("list"),
    today: given === undefined ? localDay() : dayOf(given),
    // Only text depends on who looks at it.
    width: isText ? terminal.width : 0,
    colour: isText && terminal.colour,
    folder,
    ...(units === undefined ? {} : { units }),
  };
}

function inputs({ positionals, value, has, folder }: Invocation): {
  readonly targets: readonly Target[];
  readonly given: Given | undefined;
} {
  const roots = new Roots();
  const isGiven = positionals.includes("-");
  if (has("as") && !isGiven) throw new UsageProblem("--as says what standard input stands for; give - as well.");
  const words = positionals.filter((word) => word !== "-");
  const targets = findTargets(words.length === 0 && !isGiven ? ["."] : words, folder, roots);
  if (!isGiven) return { targets, given: undefined };
  const as = value("as");
  const target = as === undefined ? undefined : placeOf(as, folder, roots);
  return { targets, given: { bytes: readStandardInput(), ...(target ? { target } : {}) } };
}

function sayLeftOut(leftOut: readonly LeftOut[], warn: (text: string) => void): void {
  for (const { path, reason } of leftOut) warn(`ferrule: ${printable(path)} was not read: ${reason}.\n`);
}
