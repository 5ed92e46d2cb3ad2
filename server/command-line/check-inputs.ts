import { printable } from "../reports/printable.ts";
import type { DisplayUnits } from "../values/show.ts";
import type { LeftOut } from "../workshop-files/list.ts";
import type { CheckSettings } from "./check-answer.ts";
import type { Invocation } from "./command.ts";
import { dayOf, localDay } from "./day.ts";
import { exitCodes } from "./exit-codes.ts";
import { UsageProblem } from "./problem.ts";
import { type Given, type ReadWorkshop, readWorkshops } from "./read-workshops.ts";
import { readShard, takeShard } from "./shard.ts";
import { readStandardInput } from "./standard-input.ts";
import { findTargets, placeOf, Roots, type Target } from "./targets.ts";

/** How `check` was asked to answer. */
export function settingsOf({ value, values, terminal, folder }: Invocation): CheckSettings {
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

/** What `check` was asked to look at. */
export interface CheckInputs {
  /** Workshops of which something is to be reported. */
  readonly workshops: readonly ReadWorkshop[];
  /** What was not read, and why; paths as shown. */
  readonly leftOut: readonly LeftOut[];
}

/**
 * Finds and reads what the words of a command line mean.
 * @returns no workshops when what there is could not be read, which `leftOut` says.
 * @throws UsageProblem for words that name nothing.
 */
export function readInputs(invocation: Invocation): CheckInputs {
  const { positionals, value, folder } = invocation;
  const { targets, given } = inputs(invocation);
  const read = readWorkshops(targets, given, folder);
  const leftOut = read.flatMap((workshop) => workshop.leftOut);
  if (read.every(({ asked }) => asked.size === 0)) {
    const where = positionals.map(printable).join(", ") || "this folder";
    if (leftOut.some(({ serious }) => serious)) return { workshops: [], leftOut };
    throw new UsageProblem(`No .ferrule file is under ${where}.`);
  }
  const shard = value("shard");
  return { workshops: shard === undefined ? read : takeShard(read, readShard(shard)), leftOut };
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

export function sayLeftOut(leftOut: readonly LeftOut[], warn: (text: string) => void): void {
  for (const { path, reason } of leftOut) warn(`ferrule: ${printable(path)} was not read: ${reason}.\n`);
}

/** The exit code of an answer, which does not count as one when something that matters could not be read. */
export function exitCodeOf(leftOut: readonly LeftOut[], exitCode: number): number {
  return leftOut.some(({ serious }) => serious) ? exitCodes.usage : exitCode;
}
