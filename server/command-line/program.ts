/**
 * Everything behind the command line that is costly to load. The entry point finds and reads files without it.
 */
import type { CheckAnswer, CheckSettings } from "./check-answer.ts";
import type { CommandRow, Invocation } from "./command.ts";
import type { ReadWorkshop } from "./read-workshops.ts";

/** A part of the program is loaded when it is first called. */
export async function answerCheck(read: readonly ReadWorkshop[], settings: CheckSettings): Promise<CheckAnswer> {
  return (await import("./check-answer.ts")).answerCheck(read, settings);
}

export async function watch(invocation: Invocation): Promise<number> {
  return (await import("./watch.ts")).watchCheck(invocation);
}

export async function explain(invocation: Invocation): Promise<number> {
  return (await import("./commands/explain.ts")).run(invocation);
}

export async function calculate(invocation: Invocation): Promise<number> {
  return (await import("./commands/calculate.ts")).run(invocation);
}

export async function suggest(invocation: Invocation): Promise<number> {
  return (await import("./commands/suggest.ts")).run(invocation);
}

export async function parts(invocation: Invocation): Promise<number> {
  return (await import("./commands/parts.ts")).run(invocation);
}

export async function importParts(invocation: Invocation): Promise<number> {
  return (await import("./commands/import.ts")).run(invocation);
}

export async function exportParts(invocation: Invocation): Promise<number> {
  return (await import("./commands/export.ts")).run(invocation);
}

export async function format(invocation: Invocation): Promise<number> {
  return (await import("./commands/format.ts")).run(invocation);
}

export async function standby(invocation: Invocation, socket: string | undefined): Promise<number> {
  return (await import("./commands/standby.ts")).run(invocation, socket);
}

export async function serve(invocation: Invocation): Promise<number> {
  return (await import("./commands/serve.ts")).run(invocation);
}

export async function help(command: CommandRow | undefined, width: number): Promise<string> {
  const { commandHelp, generalHelp } = await import("./help.ts");
  return command === undefined ? generalHelp(width) : commandHelp(command, width);
}
