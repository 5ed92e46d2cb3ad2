import { standsTwice } from "../calculations/shared/every-part.ts";
import type { Check } from "../checks/define.ts";
import { needsOf } from "../checks/table.ts";
import { massOf, partsFor, priceOf } from "../engine/candidates.ts";
import type { Engine } from "../engine/engine.ts";
import type { RankedBy } from "../engine/ranking.ts";
import { factsRead } from "../engine/reads.ts";
import type { Assembly } from "../model/assembly.ts";
import type { Part } from "../model/part.ts";
import type { Target } from "./target.ts";

/** What parts may differ in and be alike to every check: the lighter and the cheaper one is as good as the other. */
const softFacts = new Set(["mass", "price"]);

/**
 * The parts worth trying in each slot. Of parts that state the same, as far as any check or target reads it, only
 * those are tried that none of the others beats in mass and price.
 */
export class Choices {
  readonly #engine: Engine;
  readonly #targets: readonly Target[];
  readonly #rankedBy: RankedBy;
  readonly #currency: string | undefined;
  readonly #bySlot = new Map<string, readonly Part[]>();

  /** Names of the parts that the build has: one of them may be recognised as the same piece and is like no other, as is one that stands in two slots. */
  readonly #present: ReadonlySet<string>;

  /** @param currency in which prices are compared. */
  constructor(
    engine: Engine,
    assembly: Assembly,
    targets: readonly Target[],
    rankedBy: RankedBy,
    currency: string | undefined,
  ) {
    this.#engine = engine;
    this.#present = new Set([...assembly.slots.values()].map(({ name }) => name));
    this.#targets = targets;
    this.#rankedBy = rankedBy;
    this.#currency = currency;
  }

  of(slot: string): readonly Part[] {
    const kept = this.#bySlot.get(slot);
    if (kept) return kept;
    const found = this.#find(slot);
    this.#bySlot.set(slot, found);
    return found;
  }

  #find(slot: string): readonly Part[] {
    const facts = this.#factsRead(slot);
    const classes = new Map<string, Part[]>();
    for (const declaration of partsFor(this.#engine, slot)) {
      const part = this.#engine.part(declaration);
      const isItself = this.#present.has(declaration.name) || standsTwice(declaration.kind);
      const own = isItself ? declaration.name : "";
      const key = [part.kind?.name ?? "", own, ...facts.map((fact) => said(part, fact))].join("\n");
      const alike = classes.get(key);
      if (alike) alike.push(part);
      else classes.set(key, [part]);
    }
    const dimensions = this.#dimensions();
    return [...classes.values()].flatMap((alike) => unbeaten(alike, dimensions));
  }

  /** The facts of a slot's part on which any answer rests, other than those in which less is simply better. */
  #factsRead(slot: string): readonly string[] {
    const facts = new Set<string>();
    const rules = new Set<Check>(this.#engine.checks.rules);
    for (const { check, instance } of this.#engine.checks.reading(slot)) {
      for (const fact of factsRead(needsOf(check, instance), slot)) {
        // To what comes with the program less mass is never worse; a house rule may think otherwise.
        if (!softFacts.has(fact) || rules.has(check)) facts.add(fact);
      }
    }
    for (const target of this.#targets) {
      // A number that rests on masses in another way than by their sum tells even a gram apart.
      for (const fact of target.facts(slot)) if (!target.contribution || !softFacts.has(fact)) facts.add(fact);
    }
    return [...facts];
  }

  /** What the parts of one kind are compared in: what the targets add up, and what ranks the answers. */
  #dimensions(): readonly ((part: Part) => number)[] {
    const mass = (part: Part): number => massOf(part) ?? Number.POSITIVE_INFINITY;
    const price = (part: Part): number => {
      const stated = priceOf(part);
      return stated && (this.#currency === undefined || stated.currency === this.#currency)
        ? stated.amount
        : Number.POSITIVE_INFINITY;
    };
    const sums = new Set(this.#targets.filter(({ contribution }) => contribution).map(({ name }) => name));
    const wanted = [
      ...(sums.has("mass") || this.#rankedBy !== "price" ? [mass] : []),
      ...(sums.has("price") || this.#rankedBy === "price" ? [price] : []),
    ];
    return wanted;
  }
}

function said(part: Part, fact: string): string {
  const statement = part.facts.get(fact);
  return statement === undefined ? "" : statement.state === "stated" ? statement.written : `\t${statement.state}`;
}

/** Those that no other one equals or beats in everything. */
function unbeaten(parts: readonly Part[], dimensions: readonly ((part: Part) => number)[]): readonly Part[] {
  const rows = parts
    .map((part) => ({ part, values: dimensions.map((value) => value(part)) }))
    .sort((a, b) => compare(a.values, b.values) || (a.part.declaration.name < b.part.declaration.name ? -1 : 1));
  const kept: typeof rows = [];
  for (const row of rows) {
    const isBeaten = kept.some(({ values }) => values.every((value, index) => value <= (row.values[index] ?? 0)));
    if (!isBeaten) kept.push(row);
  }
  return kept.map(({ part }) => part);
}

function compare(one: readonly number[], other: readonly number[]): number {
  for (const [index, value] of one.entries()) {
    const against = other[index] ?? 0;
    if (value !== against) return value < against ? -1 : 1;
  }
  return 0;
}
