/**
 * As much of the test runner as the tests of checks and calculations use, without the runner: tests are collected once
 * and each can be run by itself, in a few milliseconds and in this process.
 */

export interface CollectedTest {
  /** The names of the groups and of the test, joined. */
  readonly name: string;
  readonly file: string;
  /** How many tests of the same file came before it. */
  readonly place: number;
  run(): unknown;
}

type Body = (...values: never[]) => unknown;
type Rows = readonly unknown[];

/** Collects what a bundle of test files declares. */
export class Suite {
  readonly #tests: CollectedTest[] = [];
  readonly #groups: string[] = [];
  readonly expect: unknown;
  #file = "";
  #first = 0;

  constructor(expect: unknown) {
    this.expect = expect;
  }

  /** The tests that a file declares while it is loaded. */
  collect(file: string, load: () => unknown): readonly CollectedTest[] {
    const first = this.#tests.length;
    this.#file = file;
    this.#first = first;
    load();
    return this.#tests.slice(first);
  }

  /** What a test file imports from the runner. */
  get exports(): Readonly<Record<string, unknown>> {
    const nothing = (): void => {};
    const it = Object.assign((name: string, first: unknown, second?: unknown) => this.#test(name, first, second), {
      each: (rows: Rows) => this.#each(rows, (name, body) => this.#test(name, body)),
      skipIf: (skipped: boolean) => (skipped ? nothing : it),
      skip: nothing,
      only: nothing,
    });
    const describe = Object.assign((name: string, body: () => void) => this.#group(name, body), {
      each: (rows: Rows) => this.#each(rows, (name, body) => this.#group(name, body as () => void)),
      skipIf: (skipped: boolean) => (skipped ? nothing : describe),
    });
    return { describe, it, test: it, expect: this.expect, beforeAll: nothing, afterAll: nothing, afterEach: nothing };
  }

  #group(name: string, body: () => void): void {
    this.#groups.push(name);
    try {
      body();
    } finally {
      this.#groups.pop();
    }
  }

  #test(name: string, first: unknown, second?: unknown): void {
    const body = typeof first === "function" ? first : second;
    if (typeof body !== "function") return;
    this.#tests.push({
      name: [...this.#groups, name].join(" > "),
      file: this.#file,
      place: this.#tests.length - this.#first,
      run: () => body(),
    });
  }

  #each(
    rows: Rows,
    declare: (name: string, body: () => unknown) => void,
  ): (name: string, first: unknown, second?: unknown) => void {
    return (name, first, second) => {
      const body = (typeof first === "function" ? first : second) as Body;
      rows.forEach((row, index) => {
        const values = (Array.isArray(row) ? row : [row]) as never[];
        declare(title(name, row, values, index), () => body(...values));
      });
    };
  }
}

function title(name: string, row: unknown, values: readonly unknown[], index: number): string {
  let next = 0;
  return name
    .replace(/%[sdifjo#]/g, (sign) => (sign === "%#" ? String(index) : String(values[next++])))
    .replace(/\$(\w+)/g, (_, key: string) => String((row as Record<string, unknown> | null)?.[key]));
}
