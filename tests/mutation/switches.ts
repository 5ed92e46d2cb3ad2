/** What the instrumented code goes by: which mutant is switched on, and what it counts. */
export interface Switches {
  activeMutant?: string | undefined;
  hitCount?: number | undefined;
  hitLimit?: number | undefined;
  currentTestId?: string | undefined;
  mutantCoverage?: Coverage;
}

/** How often each mutant's place was come by, by the mutant's id. */
interface Coverage {
  static: Record<string, number>;
  perTest: Record<string, Record<string, number>>;
}

/** Puts the switches where the instrumented code looks for them. */
export function makeSwitches(): Switches {
  const switches: Switches = {};
  Object.assign(globalThis, { __stryker__: switches });
  return switches;
}

/**
 * What the instrumented code counts in. Each file takes hold of this object when it first counts: it has to stay the
 * same one, and is emptied instead of exchanged.
 */
export function coverageOf(switches: Switches): Coverage {
  switches.mutantCoverage ??= { static: {}, perTest: {} };
  return switches.mutantCoverage;
}
