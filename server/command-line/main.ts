import { nearest } from "../values/near.ts";
import { readArguments } from "./arguments.ts";
import { commands } from "./commands.ts";
import { exitCodes } from "./exit-codes.ts";
import { loadProgram } from "./load-program.ts";
import { isUsageProblem, UsageProblem } from "./problem.ts";
import { processTerminal as terminal } from "./terminal.ts";
import { version } from "./version.ts";
import { outputFailed } from "./write.ts";

async function main(words: readonly string[]): Promise<number> {
  const [first, ...rest] = words;
  if (first === undefined || first === "--help" || first === "-h" || first === "help") return help(first, rest);
  if (first === "--version" || first === "-V" || first === "version") {
    terminal.write(`ferrule ${version}\n`);
    return exitCodes.clean;
  }
  const command = commands.find(({ name }) => name === first);
  if (!command) throw unknownCommand(first);
  const given = readArguments(command, rest);
  if (given.has("help")) return help("help", [command.name]);
  return command.run({ ...given, terminal, folder: currentFolder() }, () => loadProgram(command.name));
}

function currentFolder(): string {
  try {
    return process.cwd();
  } catch {
    throw new UsageProblem("The folder that you are in is no longer there, or cannot be read.");
  }
}

async function help(first: string | undefined, [name]: readonly string[]): Promise<number> {
  const command = name === undefined || first !== "help" ? undefined : commands.find((one) => one.name === name);
  if (name !== undefined && first === "help" && !command) throw unknownCommand(name);
  const text = await (await loadProgram("help")).help(command, terminal.width);
  if (first === undefined) terminal.warn(text);
  else terminal.write(text);
  return first === undefined ? exitCodes.usage : exitCodes.clean;
}

function unknownCommand(written: string): UsageProblem {
  const names = commands.map(({ name }) => name);
  const isOption = written.startsWith("-");
  const near = isOption ? undefined : nearest(written, names);
  return new UsageProblem(
    `There is no ${isOption ? `option ${written} before the command` : `command ${written}`}.${near === undefined ? "" : ` Did you mean ${near}?`}`,
    [`The commands are ${names.join(", ")}. ferrule --help says what each does.`],
  );
}

/** Nothing gets past this: whatever goes wrong ends in one clear line and an exit code. */
function failed(error: unknown): number {
  if (isUsageProblem(error)) {
    terminal.warn(`ferrule: ${[error.message, ...error.details].join("\n  ")}\n`);
    return error.exitCode;
  }
  const said = error instanceof Error ? error.message : String(error);
  terminal.warn(`ferrule: a fault of the program, not of your files: ${said.split("\n", 1)[0]}\n`);
  if (process.env.FERRULE_DEBUG && error instanceof Error) terminal.warn(`${error.stack}\n`);
  return exitCodes.internal;
}

process.on("uncaughtException", (error) => {
  process.exit(failed(error));
});

main(process.argv.slice(2))
  .catch(failed)
  // Everything is written by now, and to end at once is sooner than to let Node tidy up.
  .then((code) => process.exit(outputFailed() && code === exitCodes.clean ? exitCodes.output : code));
