import type { CheckAnswer, CheckSettings } from "../check-answer.ts";
import { exitCodeOf, readInputs, sayLeftOut, settingsOf } from "../check-inputs.ts";
import { CheckMemory } from "../check-memory.ts";
import type { Invocation, Program } from "../command.ts";
import { exitCodes } from "../exit-codes.ts";
import type { ReadWorkshop } from "../read-workshops.ts";
import { askForCheck, type NoReply } from "../standby/ask.ts";
import { socketPath } from "../standby/place.ts";
import { sayOnce, startStandby, wantsStandby } from "../standby/start.ts";
import { programDigest } from "../version.ts";

/**
 * Checks what was asked for and writes the report.
 *
 * Nothing of the language is needed to find and read the files. When the very same files were checked before, with
 * the same settings, the answer is remembered; when a standby holds them as they were, it works out what changed. In
 * both cases the rest of the program is not even loaded.
 */
export async function run(invocation: Invocation, program: () => Promise<Program>): Promise<number> {
  if (invocation.has("watch")) return (await program()).watch(invocation);
  const { terminal } = invocation;
  const { workshops, leftOut } = readInputs(invocation);
  const settings = settingsOf(invocation);
  sayLeftOut(leftOut, terminal.warn);
  const isUnread = leftOut.some(({ serious }) => serious);
  if (workshops.length === 0 && isUnread) return exitCodes.usage;
  const isForgetful = invocation.has("no-cache");
  const memory = isForgetful || isUnread ? undefined : CheckMemory.open(settings, workshops);
  const remembered = memory?.recall();
  const socket = remembered || isForgetful ? undefined : socketPath();
  const reply = remembered ?? (await replyOf(socket, settings, workshops, memory !== undefined));
  const answer = typeof reply === "string" ? await (await program()).answerCheck(workshops, settings) : reply;
  sayLeftOut(answer.leftOut, terminal.warn);
  for (const piece of answer.pieces) terminal.write(piece);
  // A standby keeps what it answered itself, when nobody waits for it any more.
  if (typeof reply === "string") memory?.remember(answer);
  if (socket !== undefined && reply === "nobody") await leaveStandby(socket, invocation);
  return exitCodeOf([...leftOut, ...answer.leftOut], answer.exitCode);
}

async function replyOf(
  socket: string | undefined,
  settings: CheckSettings,
  workshops: readonly ReadWorkshop[],
  isKept: boolean,
): Promise<CheckAnswer | NoReply> {
  if (socket === undefined) return "nobody";
  return askForCheck(socket, { wanted: "check", settings, workshops, ...(isKept ? { keptFor: programDigest } : {}) });
}

async function leaveStandby(socket: string, { terminal, positionals, folder }: Invocation): Promise<void> {
  if (!wantsStandby(process.env, () => terminal.isAttended)) return;
  const paths = positionals.filter((word) => word !== "-");
  const isStarted = await startStandby(socket, positionals.length === 0 ? ["."] : paths, folder);
  if (isStarted) sayOnce(socket, terminal.warn);
}
