import type { FactReader } from "../model/facts.ts";

/** A bike that answers questions about itself. */
export interface Bike {
  readonly reader: FactReader;
  /** How a number is worked out, step by step; empty when it cannot be. */
  working(path: string): readonly string[];
}
