import { readFileSync } from "node:fs";

/** One change of one expression or statement. */
export interface Mutant {
  readonly id: string;
  readonly fileName: string;
  readonly mutatorName: string;
  readonly replacement: string;
  readonly status?: string;
  /** Lines and columns from nought. */
  readonly location: { readonly start: Position; readonly end: Position };
}

interface Position {
  readonly line: number;
  readonly column: number;
}

export interface Instrumented {
  /** Each file's text with every mutant in it, off unless switched on, by the path given. */
  readonly texts: ReadonlyMap<string, string>;
  readonly mutants: readonly Mutant[];
}

/** As much of the instrumenter's interface as is used. */
export interface InstrumenterModule {
  readonly Instrumenter?: unknown;
  createInstrumenter(injector: unknown): unknown;
}

interface Node {
  readonly node: {
    readonly type: string;
    readonly key?: { readonly name?: string; readonly value?: string };
    readonly loc?: { readonly start: { readonly line: number } };
  };
  readonly parentPath?: Node | null;
}

/**
 * What is prose or an example, and not behaviour: no test says what an explanation has to read like, and to change an
 * example's text changes the test. A finding's message is behaviour; its words are left out too, since a test that
 * holds every word of a sentence would forbid to write a better one, but the numbers put into it are not.
 */
const prose = new Set(["explanation", "source", "title", "caution", "examples", "description", "formula", "example"]);

const ignorer = {
  shouldIgnore({ node }: Node): string | undefined {
    const isProperty = node.type === "ObjectProperty";
    const name = node.key?.name ?? node.key?.value;
    return isProperty && name !== undefined && prose.has(name) ? "prose" : undefined;
  },
};

const silent = new Proxy({}, { get: () => () => false });

/** Puts every mutant into the files, each behind a switch. */
export async function instrument(files: readonly string[], tools: InstrumenterModule): Promise<Instrumented> {
  // The instrumenter is made by an injector; it asks for its logger and for three functions of its own.
  const injector = {
    provideValue: () => injector,
    provideFactory: () => injector,
    provideClass: () => injector,
    injectClass: (Class: new (...given: unknown[]) => unknown) => new Class(silent),
    injectFunction: (make: (of: unknown) => unknown) => make(injector),
    resolve: () => silent,
  };
  const instrumenter = tools.createInstrumenter(injector) as {
    instrument(
      files: readonly { name: string; content: string; mutate: boolean }[],
      options: object,
    ): Promise<{ files: readonly { name: string; content: string }[]; mutants: readonly Mutant[] }>;
  };
  const result = await instrumenter.instrument(
    files.map((name) => ({ name, content: readFileSync(name, "utf8"), mutate: true })),
    { plugins: [], excludedMutations: ["StringLiteral"], ignorers: [ignorer], noHeader: false },
  );
  return {
    texts: new Map(result.files.map(({ name, content }) => [name, content])),
    // Those that are ignored come with their reason in the place of a result.
    mutants: result.mutants.filter(({ status }) => status !== "Ignored"),
  };
}
