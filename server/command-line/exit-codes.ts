/** What the process ends with. */
export const exitCodes = {
  /** Nothing at or above the severity asked for. */
  clean: 0,
  /** Findings at or above it; for `format`, files that are not in canonical form or cannot be brought into it. */
  findings: 1,
  /** A command, option or value that is not understood, or input that cannot be read. */
  usage: 2,
  /** A fault of the program itself (EX_SOFTWARE of sysexits.h). */
  internal: 70,
  /** The result could not be written (EX_IOERR of sysexits.h). */
  output: 74,
} as const;
