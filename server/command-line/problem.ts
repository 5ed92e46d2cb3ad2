import { exitCodes } from "./exit-codes.ts";

/** Ends a command with one clear line: something a person wrote on the command line is not understood or not there. */
export class UsageProblem extends Error {
  readonly exitCode = exitCodes.usage;
  /** Further lines, such as what was expected. */
  readonly details: readonly string[];

  constructor(message: string, details: readonly string[] = []) {
    super(message);
    this.details = details;
  }
}

/** Whether an error is one; by its shape, since the packed program has a class of its own. */
export function isUsageProblem(error: unknown): error is UsageProblem {
  return error instanceof Error && "details" in error && "exitCode" in error && Array.isArray(error.details);
}
