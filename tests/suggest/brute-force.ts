import { partsFor } from "../../server/engine/candidates.ts";
import type { Engine } from "../../server/engine/engine.ts";
import type { RankedBy } from "../../server/engine/ranking.ts";
import type { Assembly } from "../../server/model/assembly.ts";
import { settle } from "../../server/suggest/settle.ts";
import { byRank, rank, type Solution, solutionOf } from "../../server/suggest/solution.ts";
import { BuildState } from "../../server/suggest/state.ts";
import { distance, type Target } from "../../server/suggest/target.ts";

export interface BruteForce {
  /** Fewest changes with which it can be done; `undefined` where it cannot. */
  readonly size: number | undefined;
  readonly best: Solution | undefined;
  readonly count: number;
}

/** Every set of parts for every set of slots, smallest sets first: nothing is ruled out by thinking. */
export function bruteForce(
  engine: Engine,
  assembly: Assembly,
  targets: readonly Target[],
  slots: readonly string[],
  rankedBy: RankedBy,
  currency: string,
): BruteForce {
  const start = BuildState.of(engine, assembly);
  const choices = slots.map((slot) =>
    [...partsFor(engine, slot)]
      .map((declaration) => engine.part(declaration))
      .filter((part) => part !== assembly.slots.get(slot)?.part),
  );
  for (let size = 0; size <= slots.length; size++) {
    const found: Solution[] = [];
    const go = (state: BuildState, from: number, left: number): void => {
      if (left === 0) {
        const { state: settled } = settle(state, targets);
        if (settled.fresh("error").length > 0) return;
        if (targets.some((target) => distance(target, target.measure(settled.evaluation)) > 0)) return;
        found.push(solutionOf(settled, start, targets, currency));
        return;
      }
      for (let index = from; index <= slots.length - left; index++) {
        for (const part of choices[index] ?? []) go(state.withChange(slots[index]!, part), index + 1, left - 1);
      }
    };
    go(start, 0, size);
    if (found.length > 0) return { size, best: found.sort(byRank(rankedBy))[0], count: found.length };
  }
  return { size: undefined, best: undefined, count: 0 };
}

/** What an answer is worth, for comparing two that may name different parts. */
export function worth(solution: Solution | undefined, rankedBy: RankedBy): readonly number[] | undefined {
  return solution && rank(solution, rankedBy);
}
