import { format } from "../../../grammar/format.ts";
import type { SyntaxProblem } from "../../../grammar/tree.ts";
import { LineIndex } from "../../engine/positions.ts";
import { canonicalValues } from "../../model/canonical-values.ts";
import { largestFile } from "../../model/workshop.ts";
import { printable } from "../../reports/printable.ts";
import { counted } from "../../reports/words.ts";
import { reasonOf } from "../../workshop-files/list.ts";
import { decodeSource, readBytes, type SourceText } from "../../workshop-files/read.ts";
import { FileNotReplaced, replaceFile, stateOf } from "../../workshop-files/write.ts";
import type { Invocation } from "../command.ts";
import { exitCodes } from "../exit-codes.ts";
import { filesUnder } from "../files.ts";
import { UsageProblem } from "../problem.ts";
import { readStandardInput } from "../standard-input.ts";
import { findTargets, Roots, shownPath } from "../targets.ts";

/** What came of one file. */
type Outcome = "canonical" | "changed" | "refused" | "unreadable";

/** Writes files in canonical form, or says which are not. */
export function run(invocation: Invocation): number {
  const { positionals, terminal, folder } = invocation;
  if (positionals.includes("-")) {
    if (positionals.length > 1) throw new UsageProblem("format reads either - or paths, not both.");
    return formatStandardInput(invocation);
  }
  const targets = findTargets(positionals.length === 0 ? ["."] : positionals, folder, new Roots());
  const { files, leftOut } = filesUnder(targets);
  for (const { path, reason } of leftOut) {
    terminal.warn(`ferrule: ${printable(shownPath(path, folder))} was not read: ${reason}.\n`);
  }
  if (files.length === 0)
    throw new UsageProblem(`No .ferrule file is under ${positionals.join(", ") || "this folder"}.`);
  const counts: Record<Outcome, number> = { canonical: 0, changed: 0, refused: 0, unreadable: 0 };
  for (const path of files) counts[formatFile(path, invocation)]++;
  return conclude(
    counts,
    leftOut.some(({ serious }) => serious),
    invocation,
  );
}

function conclude(
  counts: Readonly<Record<Outcome, number>>,
  isIncomplete: boolean,
  { terminal, has }: Invocation,
): number {
  const parts = [
    `${counted(counts.canonical, "file")} in canonical form`,
    ...(counts.changed > 0 ? [`${counts.changed} ${has("check") ? "not" : "brought into it"}`] : []),
    ...(counts.refused > 0 ? [`${counts.refused} with errors, left alone`] : []),
    ...(counts.unreadable > 0 ? [`${counts.unreadable} not read or not written`] : []),
  ];
  terminal.write(`${parts.join(", ")}.\n`);
  if (counts.unreadable > 0 || isIncomplete) return exitCodes.usage;
  return counts.refused > 0 || (has("check") && counts.changed > 0) ? exitCodes.findings : exitCodes.clean;
}

function formatFile(path: string, { terminal, has, folder }: Invocation): Outcome {
  const shown = printable(shownPath(path, folder));
  try {
    const before = stateOf(path);
    const source = readText(path);
    if (source.state === "unreadable") {
      terminal.warn(`ferrule: ${shown} was not read: ${source.reason}.\n`);
      return "unreadable";
    }
    const { text, refused } = format(source.text, canonicalValues);
    if (refused) {
      sayRefused(shown, source.text, refused, terminal.warn);
      return "refused";
    }
    // The mark is no part of the text, and canonical form has none.
    if (text === source.text && !source.hasByteOrderMark) return "canonical";
    if (!has("check")) replaceFile(path, text, before);
    terminal.write(`${shown}${has("check") ? " is not in canonical form" : ""}\n`);
    return "changed";
  } catch (error) {
    const reason = error instanceof FileNotReplaced ? error.message : reasonOf(error);
    terminal.warn(`ferrule: ${shown} was left as it is: ${reason}.\n`);
    return "unreadable";
  }
}

function readText(path: string): SourceText {
  const read = readBytes(path);
  if (read.state === "unreadable") return read;
  if (read.state === "too-large")
    return { state: "unreadable", reason: `it has ${read.bytes} bytes, more than are read` };
  const source = decodeSource(read.bytes);
  const isTooLong = source.state === "text" && source.text.length > largestFile;
  return isTooLong ? { state: "unreadable", reason: `it has more than ${largestFile} characters` } : source;
}

function sayRefused(
  shown: string,
  text: string,
  problems: readonly SyntaxProblem[],
  warn: (text: string) => void,
): void {
  const lines = new LineIndex(text);
  for (const problem of problems) {
    const { line, character } = lines.position(problem.span.start);
    warn(`${shown}:${line + 1}:${character + 1}  error  ${problem.code}\n  ${printable(problem.message)}\n`);
  }
}

/** A text through a pipe: canonical form comes out, or what went in, so that nothing is lost on the way. */
function formatStandardInput({ terminal, has }: Invocation): number {
  const source = decodeSource(readStandardInput());
  if (source.state === "unreadable") throw new UsageProblem(`Standard input cannot be read: ${source.reason}.`);
  const given = source.text;
  const { text, refused } = format(given, canonicalValues);
  if (!has("check")) terminal.write(refused ? given : text);
  if (refused) {
    sayRefused("standard input", given, refused, terminal.warn);
    return exitCodes.findings;
  }
  return has("check") && text !== given ? exitCodes.findings : exitCodes.clean;
}
