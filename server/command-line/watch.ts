import { answerCheck } from "./check-answer.ts";
import { type CheckInputs, exitCodeOf, readInputs, sayLeftOut, settingsOf } from "./check-inputs.ts";
import type { Invocation } from "./command.ts";
import { exitCodes } from "./exit-codes.ts";
import type { KeptEngines } from "./load.ts";
import { isUsageProblem, UsageProblem } from "./problem.ts";
import type { ReadWorkshop } from "./read-workshops.ts";
import { Watches } from "./watches.ts";

/**
 * `check --watch`: checks, and again whenever a file of the workshops changes, until it is stopped. Only what changed
 * is taken in again.
 * @returns the exit code of the last answer, so that stopping a clean check is no failure.
 */
export async function watchCheck(invocation: Invocation): Promise<number> {
  const { terminal, positionals } = invocation;
  if (positionals.includes("-")) throw new UsageProblem("--watch follows files; standard input cannot be watched.");
  if ((invocation.value("format") ?? "text") !== "text") {
    throw new UsageProblem("--watch writes for a person, as text; run check without it for another format.");
  }
  const changes = new Changes();
  const watches = new Watches(
    () => changes.tell(),
    (reason) => terminal.warn(`ferrule: not everything can be watched: ${reason}.\n`),
  );
  const stop = (): void => changes.end();
  process.once("SIGINT", stop);
  process.once("SIGTERM", stop);
  const engines: KeptEngines = new Map();
  let before: CheckInputs | undefined;
  let day = "";
  let exitCode: number = exitCodes.clean;
  try {
    for (let isFirst = true; !changes.ended; isFirst = false) {
      const inputs = read(invocation, isFirst, terminal.warn);
      const settings = settingsOf(invocation);
      if (inputs && !(before && settings.today === day && isSame(inputs, before))) {
        const answer = await answerCheck(inputs.workshops, settings, engines);
        if (!isFirst) terminal.clear();
        sayLeftOut([...inputs.leftOut, ...answer.leftOut], terminal.warn);
        for (const piece of answer.pieces) terminal.write(piece);
        exitCode = exitCodeOf([...inputs.leftOut, ...answer.leftOut], answer.exitCode);
        terminal.warn(`Checked at ${new Date().toTimeString().slice(0, 8)}; waiting for changes. Ctrl+C ends.\n`);
      }
      before = inputs;
      day = settings.today;
      // What was written between the reading and the begin of the watch is found by reading once more.
      if (!(inputs && (await watches.follow(inputs.workshops.map(({ folder }) => folder))))) await changes.next();
    }
  } finally {
    await watches.stop();
  }
  return exitCode;
}

/** What is to be checked; nothing when the words mean nothing any more, which is said. */
function read(invocation: Invocation, isFirst: boolean, warn: (text: string) => void): CheckInputs | undefined {
  try {
    return readInputs(invocation);
  } catch (error) {
    if (isFirst || !isUsageProblem(error)) throw error;
    warn(`ferrule: ${error.message} Waiting for changes; Ctrl+C ends.\n`);
    return undefined;
  }
}

function isSame(now: CheckInputs, before: CheckInputs): boolean {
  const files = (inputs: CheckInputs): ReadWorkshop["files"] => inputs.workshops.flatMap((workshop) => workshop.files);
  const [newer, older] = [files(now), files(before)];
  return (
    newer.length === older.length &&
    newer.every((file, index) => {
      const other = older[index];
      if (!other || other.path !== file.path) return false;
      if (typeof file.bytes === "number" || typeof other.bytes === "number") return file.bytes === other.bytes;
      return file.bytes.equals(other.bytes);
    }) &&
    JSON.stringify(now.leftOut) === JSON.stringify(before.leftOut)
  );
}

/** Whether something changed that nobody has looked at yet. */
class Changes {
  #isPending = false;
  #wake: (() => void) | undefined;
  ended = false;

  tell(): void {
    this.#isPending = true;
    this.#wake?.();
  }

  end(): void {
    this.ended = true;
    this.#wake?.();
  }

  /** Settles when something changed since the last call settled, or when watching ends. */
  async next(): Promise<void> {
    if (!this.#isPending && !this.ended) {
      await new Promise<void>((resolve) => {
        this.#wake = resolve;
      });
      this.#wake = undefined;
    }
    this.#isPending = false;
  }
}
