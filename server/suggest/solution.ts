import { massOf, priceOf } from "../engine/candidates.ts";
import type { RankedBy } from "../engine/ranking.ts";
import type { Part } from "../model/part.ts";
import type { BuildState, Change, Failure, SetUp } from "./state.ts";
import { type Measured, pieces, type Target } from "./target.ts";

/** Parts to exchange with which a build meets its targets and no check fails that did not fail before. */
export interface Solution {
  /** In the order of the slots of a build. */
  readonly changes: readonly { readonly slot: string; readonly before: Part | undefined; readonly after: Change }[];
  /** What is set otherwise along with them. */
  readonly setUps: readonly SetUp[];
  /** What each target comes to. */
  readonly values: readonly Measured[];
  /** Warnings that the build as it stands has not. */
  readonly warnings: readonly Failure[];
  /** How many checks cannot be made that could be before. */
  readonly opened: number;
  /** The least room left in any check that reads a changed slot and has a measure; 1 when none has. */
  readonly margin: number;
  /** Sum of the masses that are known, in grams; and how many are not. */
  readonly mass: number;
  readonly unweighed: number;
  /** Sum of the prices in the workshop's currency; and how many parts have none in it. */
  readonly price: number;
  readonly unpriced: number;
  readonly state: BuildState;
}

/** Puts a state that meets its targets into a form that can be ranked and shown. */
export function solutionOf(
  state: BuildState,
  start: BuildState,
  targets: readonly Target[],
  currency: string | undefined,
): Solution {
  const changes = [...state.assembly.slots.keys()].flatMap((slot) => {
    const after = state.changes.get(slot);
    return after === undefined ? [] : [{ slot, before: start.assembly.slots.get(slot)?.part, after }];
  });
  let mass = 0;
  let unweighed = 0;
  let price = 0;
  let unpriced = 0;
  for (const { installed } of pieces(state.assembly)) {
    const own = installed.part && massOf(installed.part);
    if (own === undefined) unweighed++;
    else mass += own;
    const sum = installed.part && priceOf(installed.part);
    if (sum === undefined || (currency !== undefined && sum.currency !== currency)) unpriced++;
    else price += sum.amount;
  }
  return {
    changes,
    setUps: state.setUps,
    values: targets.map((target) => target.measure(state.evaluation)),
    warnings: state.fresh("warning"),
    opened: [...state.answers.open].filter((question) => !start.answers.open.has(question)).length,
    margin: marginOf(state),
    mass,
    unweighed,
    price,
    unpriced,
    state,
  };
}

/** The least room in any check that reads what was changed. */
function marginOf(state: BuildState): number {
  const slots = new Set([...state.changes.keys(), ...state.setUps.map(({ slot }) => slot)]);
  let margin = 1;
  for (const { check, instance } of new Set([...slots].flatMap((slot) => state.questions.touchedBy(slot)))) {
    const verdict = state.evaluation.ask(check, instance);
    if (verdict.outcome === "holds") margin = Math.min(margin, verdict.margin ?? 1);
  }
  return margin;
}

/** What ranks answers, best first: the first number that differs decides. */
export function rank(solution: Solution, rankedBy: RankedBy): readonly number[] {
  const { changes, warnings, opened, setUps, margin, mass, unweighed, price, unpriced } = solution;
  const by: Readonly<Record<RankedBy, readonly number[]>> = {
    margin: [-rounded(margin)],
    mass: [unweighed, rounded(mass)],
    price: [unpriced, rounded(price)],
  };
  const order = [rankedBy, ...(["margin", "mass", "price"] as const).filter((other) => other !== rankedBy)];
  return [changes.length, warnings.length, opened, setUps.length, ...order.flatMap((one) => by[one])];
}

/** Sums of the same numbers in another order differ in their last digits. */
function rounded(value: number): number {
  return Math.round(value * 1e6) / 1e6;
}

/** The better answer first; those that are alike in everything by the names of their parts. */
export function byRank(rankedBy: RankedBy): (one: Solution, other: Solution) => number {
  return (one, other) => {
    const [ranks, others] = [rank(one, rankedBy), rank(other, rankedBy)];
    for (const [index, value] of ranks.entries()) {
      const against = others[index] ?? 0;
      if (value !== against) return value - against;
    }
    return namesOf(one) < namesOf(other) ? -1 : 1;
  };
}

function namesOf({ changes }: Solution): string {
  return changes.map(({ slot, after }) => `${slot} ${after === "none" ? "none" : after.declaration.name}`).join("\n");
}
