import { exitCodeOf, readInputs, sayLeftOut, settingsOf } from "../check-inputs.ts";
import { CheckMemory } from "../check-memory.ts";
import type { Invocation } from "../commands.ts";
import { exitCodes } from "../exit-codes.ts";
import type { Program } from "../program.ts";

/**
 * Checks what was asked for and writes the report.
 *
 * Nothing of the language is needed to find and read the files. When the very same files were checked before, with
 * the same settings, the answer is remembered and the rest of the program is not even loaded.
 */
export async function run(invocation: Invocation, program: () => Promise<Program>): Promise<number> {
  if (invocation.has("watch")) return (await program()).watch(invocation);
  const { terminal } = invocation;
  const { workshops, leftOut } = readInputs(invocation);
  const settings = settingsOf(invocation);
  sayLeftOut(leftOut, terminal.warn);
  const isUnread = leftOut.some(({ serious }) => serious);
  if (workshops.length === 0 && isUnread) return exitCodes.usage;
  const memory = invocation.has("no-cache") ? undefined : CheckMemory.open(settings, workshops);
  const remembered = memory?.recall();
  const answer = remembered ?? (await (await program()).answerCheck(workshops, settings));
  sayLeftOut(answer.leftOut, terminal.warn);
  for (const piece of answer.pieces) terminal.write(piece);
  const isComplete = !isUnread && !answer.leftOut.some(({ serious }) => serious);
  if (isComplete && !remembered) memory?.remember(answer);
  return exitCodeOf([...leftOut, ...answer.leftOut], answer.exitCode);
}
