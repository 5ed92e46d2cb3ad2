import type { CheckAnswer, CheckSettings } from "./check-answer.ts";
import type { ReadWorkshop } from "./read-workshops.ts";
import type { Terminal } from "./terminal.ts";

/** An option of a command. One without a `value` is a switch. */
export interface OptionRow {
  readonly name: string;
  /** What to call its value in help, such as `DATE`. */
  readonly value?: string;
  /** The values it takes, when they are a few words. */
  readonly words?: readonly string[];
  /** True when it may be given several times, or several words with commas between. */
  readonly several?: boolean;
  readonly description: string;
}

/** What a command is run with. */
export interface Invocation {
  readonly terminal: Terminal;
  /** Where relative paths start; absolute, links followed. */
  readonly folder: string;
  readonly positionals: readonly string[];
  /** The option's values in the order given; a switch that was given has one empty value. */
  values(option: string): readonly string[];
  /** The last value, or the one that counts when it is not given. */
  value(option: string): string | undefined;
  has(option: string): boolean;
}

/** A command: what help says of it, and what runs it. */
export interface CommandRow {
  readonly name: string;
  readonly summary: string;
  /** Each way to write it, after the command's name. */
  readonly usage: readonly string[];
  readonly options: readonly OptionRow[];
  /** Paragraphs of further help. */
  readonly details: readonly string[];
  /** @returns the exit code. */
  run(invocation: Invocation, program: () => Promise<Program>): Promise<number>;
}

/** Everything behind the commands that is costly to load: finding and reading files does without. */
export interface Program {
  answerCheck(read: readonly ReadWorkshop[], settings: CheckSettings): Promise<CheckAnswer>;
  watch(invocation: Invocation): Promise<number>;
  explain(invocation: Invocation): Promise<number>;
  calculate(invocation: Invocation): Promise<number>;
  suggest(invocation: Invocation): Promise<number>;
  parts(invocation: Invocation): Promise<number>;
  importParts(invocation: Invocation): Promise<number>;
  exportParts(invocation: Invocation): Promise<number>;
  format(invocation: Invocation): Promise<number>;
  /** @param socket where a standby of this program listens, which only its entry point knows. */
  standby(invocation: Invocation, socket: string | undefined): Promise<number>;
  serve(invocation: Invocation): Promise<number>;
  /** @param width columns. */
  help(command: CommandRow | undefined, width: number): Promise<string>;
}
