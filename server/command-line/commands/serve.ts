import type { Invocation } from "../command.ts";
import { UsageProblem } from "../problem.ts";
import { version } from "../version.ts";

/** Runs the language server until the editor goes away. */
export async function run({ has, positionals }: Invocation): Promise<number> {
  if (positionals.length > 0) throw new UsageProblem("serve takes no paths: the editor says what it has open.");
  if (!has("stdio")) throw new UsageProblem("serve speaks on standard input and output: ferrule serve --stdio");
  const { startStdio } = await import("../../node.ts");
  await startStdio(version);
  // The server ends the process when the editor says so or goes away.
  return new Promise(() => undefined);
}
