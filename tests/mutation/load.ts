import { createRequire } from "node:module";
import { join } from "node:path";
import type { Script } from "node:vm";
import { type CollectedTest, Suite } from "./suite.ts";

/**
 * One evaluation of the bundle of tests: nothing in it is older than this. Test files are loaded when they are asked
 * for, since most mutants are found by the first of them.
 */
export class LoadedTests {
  readonly #suite: Suite;
  readonly #files: Record<string, () => unknown> = {};
  readonly #loaded = new Map<string, readonly CollectedTest[]>();

  constructor(script: Script, root: string, expect: unknown) {
    const suite = new Suite(expect);
    this.#suite = suite;
    const fromRoot = createRequire(join(root, "package.json"));
    const required = (name: string): unknown => (name === "vitest" ? suite.exports : fromRoot(name));
    const module = { exports: {} };
    const body = script.runInThisContext() as (...given: unknown[]) => void;
    body(required, module, module.exports, this.#files, `file://${root}/`);
  }

  /** Paths of all test files, from the root. */
  get files(): readonly string[] {
    return Object.keys(this.#files);
  }

  /** The tests of one file. Throws what the file throws while it is loaded. */
  testsOf(file: string): readonly CollectedTest[] {
    const known = this.#loaded.get(file);
    if (known) return known;
    const tests = this.#suite.collect(file, () => this.#files[file]?.());
    this.#loaded.set(file, tests);
    return tests;
  }
}

/** Whether a test passes, whatever it throws. */
export async function passes(test: CollectedTest): Promise<boolean> {
  try {
    await test.run();
    return true;
  } catch {
    return false;
  }
}
