import type { Statement, Statements } from "./stated.ts";

/**
 * Statements that are read one by one, when somebody asks for them: a build's checks ask for a few facts of each part,
 * and reading a value costs more than finding it. Whoever goes through all of them has all of them read.
 */
export abstract class StatementsOnDemand implements Statements {
  abstract get(name: string): Statement | undefined;
  abstract has(name: string): boolean;
  /** All of them, read, in the order in which they stand. */
  protected abstract all(): ReadonlyMap<string, Statement>;

  get size(): number {
    return this.all().size;
  }

  forEach(visit: (statement: Statement, name: string, all: Statements) => void): void {
    for (const [name, statement] of this.all()) visit(statement, name, this);
  }

  entries(): MapIterator<[string, Statement]> {
    return this.all().entries();
  }

  keys(): MapIterator<string> {
    return this.all().keys();
  }

  values(): MapIterator<Statement> {
    return this.all().values();
  }

  [Symbol.iterator](): MapIterator<[string, Statement]> {
    return this.entries();
  }
}

/** Statements laid over those of a base: what a layer says counts instead of what the ones before it said. */
export class LayeredStatements extends StatementsOnDemand {
  /** From the furthest base to the one that counts first. */
  readonly #layers: readonly Statements[];
  #all: ReadonlyMap<string, Statement> | undefined;

  constructor(layers: readonly Statements[]) {
    super();
    this.#layers = layers;
  }

  override get(name: string): Statement | undefined {
    return this.#layers.findLast((layer) => layer.has(name))?.get(name);
  }

  override has(name: string): boolean {
    return this.#layers.some((layer) => layer.has(name));
  }

  protected override all(): ReadonlyMap<string, Statement> {
    this.#all ??= new Map(this.#layers.flatMap((layer) => [...layer]));
    return this.#all;
  }
}
