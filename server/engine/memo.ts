import type { Declaration } from "../model/declaration.ts";

/** A result together with the keys that were looked up to get it, found or not. */
export interface Dependent {
  readonly lookups: readonly string[];
}

/**
 * Keeps one result per declaration until a name it looked up changes its meaning.
 *
 * Names that were looked up in vain are dependencies too: declaring them later must wake the result.
 */
export class Memo<Result extends Dependent> {
  readonly #results = new Map<Declaration, Result>();
  readonly #dependents = new Map<string, Set<Declaration>>();
  readonly #dropped: ((declaration: Declaration, result: Result) => void) | undefined;

  /** @param dropped told of each result that is let go because it may no longer be right. */
  constructor(dropped?: (declaration: Declaration, result: Result) => void) {
    this.#dropped = dropped;
  }

  get(declaration: Declaration, compute: () => Result): Result {
    const kept = this.#results.get(declaration);
    if (kept) return kept;
    const result = compute();
    this.#results.set(declaration, result);
    for (const key of result.lookups) {
      const dependents = this.#dependents.get(key);
      if (dependents) dependents.add(declaration);
      else this.#dependents.set(key, new Set([declaration]));
    }
    return result;
  }

  has(declaration: Declaration): boolean {
    return this.#results.has(declaration);
  }

  /** Drops every result that looked up one of the keys; returns their declarations. */
  invalidate(keys: Iterable<string>): Set<Declaration> {
    const dropped = new Set<Declaration>();
    for (const key of keys) {
      for (const declaration of this.#dependents.get(key) ?? []) {
        if (this.drop(declaration)) dropped.add(declaration);
      }
    }
    return dropped;
  }

  drop(declaration: Declaration): boolean {
    const result = this.#results.get(declaration);
    if (!result) return false;
    this.#results.delete(declaration);
    this.#dropped?.(declaration, result);
    for (const key of result.lookups) {
      const dependents = this.#dependents.get(key);
      dependents?.delete(declaration);
      if (dependents?.size === 0) this.#dependents.delete(key);
    }
    return true;
  }

  clear(): void {
    this.#results.clear();
    this.#dependents.clear();
  }
}
