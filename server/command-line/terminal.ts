import { fstatSync, statSync } from "node:fs";
import { devNull } from "node:os";
import { writeAll } from "./write.ts";

/** Where a command writes to, and what that place can show. */
export interface Terminal {
  /** The result of the command. */
  write(text: string): void;
  /** What is said about the run itself. */
  warn(text: string): void;
  /** Makes room for a result that takes the place of the one before: an empty screen, elsewhere an empty line. */
  clear(): void;
  /** True when a person looks at the result and gave the command: a hook of git writes to a terminal too. */
  readonly isAttended: boolean;
  /** True when the result may be coloured. */
  readonly colour: boolean;
  /** Columns for the result. */
  readonly width: number;
}

/** What a report is written in when nobody looks at it in a window. */
const usualWidth = 100;
const narrowest = 40;
const widest = 140;

/**
 * Colour only where a person looks, and never for one who asks for none (NO_COLOR with any text, as agreed at
 * no-color.org) or whose terminal cannot.
 */
function wantsColour(environment: NodeJS.ProcessEnv): boolean {
  if (environment.NO_COLOR !== undefined && environment.NO_COLOR !== "") return false;
  if (environment.FORCE_COLOR !== undefined) return environment.FORCE_COLOR !== "0" && environment.FORCE_COLOR !== "";
  return environment.TERM !== "dumb" && isTerminal();
}

/** Whether a person looks at the output. The module that knows is costly to load, so what is plain without it is asked first. */
function isTerminal(): boolean {
  return isDevice(1) && process.stdout.isTTY === true;
}

/** Whether an open file may be a terminal: a device, and not the one that swallows everything. */
function isDevice(descriptor: number): boolean {
  try {
    const status = fstatSync(descriptor);
    return status.isCharacterDevice() && status.rdev !== statSync(devNull).rdev;
  } catch {
    return false;
  }
}

/** The process's own output. Colour and width are found out when a report asks for them. */
export const processTerminal: Terminal = {
  write: (text) => writeAll(1, text),
  warn: (text) => writeAll(2, text),
  clear: () => writeAll(1, isTerminal() && process.env.TERM !== "dumb" ? "\u001b[H\u001b[2J" : "\n"),
  get isAttended() {
    return isDevice(0) && isTerminal();
  },
  get colour() {
    return wantsColour(process.env);
  },
  get width() {
    const columns = isTerminal() ? process.stdout.columns : undefined;
    return columns === undefined || columns <= 0 ? usualWidth : Math.max(narrowest, Math.min(columns, widest));
  },
};
