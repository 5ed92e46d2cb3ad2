import type { Mutant } from "./instrument.ts";
import { type LoadedTests, passes } from "./load.ts";
import { coverageOf, type Switches } from "./switches.ts";

/** A test, and what is known of it with no mutant switched on. */
export interface KnownTest {
  readonly name: string;
  readonly file: string;
  readonly place: number;
  readonly milliseconds: number;
}

/** Which test files may find which mutants. */
export interface Reach {
  readonly tests: readonly KnownTest[];
  /** Names of tests that fail with no mutant at all: they say nothing. */
  readonly failing: readonly KnownTest[];
  /** The files whose tests a mutant can matter to; none where nothing ever comes by it. */
  filesFor(mutant: Mutant): ReadonlySet<string>;
  /** Whether a test came by the mutant itself, and not only by something else in its file. */
  comesBy(test: KnownTest, mutant: Mutant): boolean;
}

/**
 * Runs every test twice with all mutants switched off: once to see what it reaches, and once more in tests loaded
 * anew, where each has to pass again; one that does not would "find" every mutant.
 *
 * What several files share is often worked out by the first of them alone (a table, the wiring of a calculation), so
 * that the count of one mutant says too little of the others: a mutant that anything reaches at all is tried with
 * every test file that reaches its source file. What is declared is come by once, when the first file asks for it, and
 * read by others through whatever made a table of it: it is tried with every test there is.
 */
export async function findReach(
  load: () => LoadedTests,
  mutants: readonly Mutant[],
  switches: Switches,
): Promise<Reach> {
  const sourceOf = new Map(mutants.map(({ id, fileName }) => [id, fileName]));
  const numberOf = new Map(mutants.map(({ id }, index) => [id, index]));
  const reached = new Set<string>();
  const declared = new Set<string>();
  // Bits, since thousands of tests come by thousands of mutants each.
  const byTest = new Map<string, Uint8Array>();
  const filesOfSource = new Map<string, Set<string>>();
  const coverage = coverageOf(switches);
  const note = (file: string, test?: KnownTest): void => {
    const hits = [coverage.static, ...Object.values(coverage.perTest)].flatMap((counts) => Object.keys(counts));
    if (!test) for (const id of Object.keys(coverage.static)) declared.add(id);
    const bits = new Uint8Array(Math.ceil(mutants.length / 8));
    for (const id of hits) {
      reached.add(id);
      const source = sourceOf.get(id);
      if (source !== undefined) filesOfSource.set(source, (filesOfSource.get(source) ?? new Set()).add(file));
      const index = numberOf.get(id) ?? 0;
      bits[index >> 3] = (bits[index >> 3] ?? 0) | (1 << (index & 7));
    }
    if (test) byTest.set(keyOf(test), bits);
    coverage.static = {};
    coverage.perTest = {};
  };

  const tests: KnownTest[] = [];
  const failing = new Map<string, KnownTest>();
  for (const isFirst of [true, false]) {
    const loaded = load();
    for (const file of loaded.files) {
      switches.currentTestId = undefined;
      const collected = loaded.testsOf(file);
      if (isFirst) note(file);
      switches.currentTestId = "it";
      for (const test of collected) {
        const started = performance.now();
        const isPassed = await passes(test);
        const { name, place } = test;
        const known = { name, file, place, milliseconds: performance.now() - started };
        if (!isPassed) failing.set(keyOf(known), known);
        if (!isFirst) continue;
        tests.push(known);
        note(file, known);
      }
    }
  }
  switches.currentTestId = undefined;
  const allFiles = new Set(tests.map(({ file }) => file));
  return {
    tests: tests.filter((test) => !failing.has(keyOf(test))),
    failing: [...failing.values()],
    comesBy(test, { id }) {
      const index = numberOf.get(id) ?? 0;
      return (((byTest.get(keyOf(test))?.[index >> 3] ?? 0) >> (index & 7)) & 1) === 1;
    },
    filesFor({ id, fileName }) {
      if (declared.has(id)) return allFiles;
      return reached.has(id) ? (filesOfSource.get(fileName) ?? new Set()) : new Set();
    },
  };
}

/** A test's place among those of its file: names may stand twice. */
function keyOf({ file, place }: { readonly file: string; readonly place: number }): string {
  return `${file}#${place}`;
}
