import { comesInWheel, standsTwice } from "../calculations/shared/every-part.ts";
import { failuresOverAll, hasAlternates } from "../engine/alternates.ts";
import type { Engine } from "../engine/engine.ts";
import type { RankedBy } from "../engine/ranking.ts";
import type { Assembly } from "../model/assembly.ts";
import { slotByPath, slotPaths } from "../vocabulary/index.ts";
import { Choices } from "./choices.ts";
import { settle } from "./settle.ts";
import { byRank, type Solution, solutionOf } from "./solution.ts";
import { BuildState, type Change } from "./state.ts";
import { type Contribution, distance, type Measured, type Target } from "./target.ts";

export interface SearchOptions {
  readonly rankedBy: RankedBy;
  /** In which prices are added up. */
  readonly currency: string | undefined;
  /** How many answers are kept. */
  readonly limit: number;
  /** Slots whose parts stay. */
  readonly keep: ReadonlySet<string>;
  /** No more slots are changed than this. */
  readonly mostChanges: number;
  /** Whether there is still time. */
  more(): boolean;
}

/** What a search for a target came to. */
export interface TargetSuggestions {
  readonly targets: readonly Target[];
  /** What the build comes to as it stands. */
  readonly before: readonly Measured[];
  /** The best answers found, best first; all of them change as many slots. */
  readonly solutions: readonly Solution[];
  /** How many answers of that size were found in all. */
  readonly found: number;
  /** No set of fewer changes than this does it: all of them were tried, by themselves or by what rules them out. */
  readonly proven: number;
  /** True when every set of the answers' size was compared as well, so that the first answer is the best there is. */
  readonly isComplete: boolean;
  /** Where no answer was found: the build without new errors that comes nearest. */
  readonly nearest?: Solution;
}

/**
 * Finds the smallest set of slots to change so that a build meets its targets and no check fails as an error that did
 * not before.
 *
 * Sets are tried by their size, so that the first one found is a smallest one. A set grows by what is wrong with it:
 * while a target is missed or a check fails, one of the slots that decide about that has to change, and no other slot
 * is tried. Sums over the whole bike are bounded by the best that the remaining slots can give.
 */
export function searchTarget(
  engine: Engine,
  assembly: Assembly,
  targets: readonly Target[],
  options: SearchOptions,
): TargetSuggestions {
  return new TargetSearch(engine, assembly, targets, options).run();
}

/** Time is looked at once in so many states. */
const statesBetweenLooks = 4;

/** A set of parts to exchange, as it is and set up for them. */
interface Node {
  readonly raw: BuildState;
  readonly settled: BuildState;
  /** Slots that decided what was set. */
  readonly deciding: ReadonlySet<string>;
}

/** Slots of which one has to change, and those that may as well be left empty for it. */
interface Conflict {
  readonly slots: readonly string[];
  readonly canBeEmpty: ReadonlySet<string>;
}

class TargetSearch {
  readonly #targets: readonly Target[];
  readonly #options: SearchOptions;
  readonly #start: BuildState;
  readonly #choices: Choices;
  /** Whether the build stands for several bikes. */
  readonly #hasAlternates: boolean;
  /** The parts that the build has. */
  readonly #present: ReadonlySet<Change>;
  readonly #better: (one: Solution, other: Solution) => number;
  /** The most that a change of a slot can take off a sum, greatest first. */
  readonly #savings = new Map<Target, readonly { readonly slot: string; readonly saving: number }[]>();
  #solutions: Solution[] = [];
  #found = 0;
  #nearest: { readonly node: Node; readonly distance: number } | undefined;
  #states = 0;
  #isOver = false;

  constructor(engine: Engine, assembly: Assembly, targets: readonly Target[], options: SearchOptions) {
    this.#targets = targets;
    this.#options = options;
    this.#start = BuildState.of(engine, withoutAims(assembly, targets));
    this.#choices = new Choices(engine, assembly, targets, options.rankedBy, options.currency);
    this.#hasAlternates = hasAlternates(assembly);
    this.#present = new Set([...assembly.slots.values()].flatMap(({ part }) => part ?? []));
    this.#better = byRank(options.rankedBy);
  }

  run(): TargetSuggestions {
    let proven = 0;
    let isComplete = false;
    let walked: Solution | undefined;
    const root = this.#node(this.#start);
    for (let size = 0; size <= this.#options.mostChanges; size++) {
      // Before sets of several slots are gone through, a way that is good enough is looked for step by step.
      if (size === 2) walked = this.#walk(root);
      this.#extend(root, size, this.#options.keep);
      if (this.#isOver) break;
      if (this.#solutions.length > 0) {
        isComplete = true;
        break;
      }
      proven = size + 1;
    }
    if (this.#solutions.length === 0 && walked) this.#take(walked);
    const nearest = this.#solutions.length === 0 ? this.#nearest : undefined;
    return {
      targets: this.#targets,
      before: this.#targets.map((target) => target.measure(this.#start.evaluation)),
      solutions: this.#solutions,
      found: this.#found,
      proven,
      isComplete: isComplete || (!this.#isOver && this.#solutions.length === 0),
      ...(nearest ? { nearest: this.#solution(nearest.node.settled) } : {}),
    };
  }

  #node(raw: BuildState): Node {
    const { state, deciding } = settle(raw, this.#targets);
    return { raw, settled: state, deciding };
  }

  #solution(state: BuildState): Solution {
    return solutionOf(state, this.#start, this.#targets, this.#options.currency);
  }

  #isTimeUp(): boolean {
    if (!this.#isOver && this.#states++ % statesBetweenLooks === 0 && !this.#options.more()) this.#isOver = true;
    return this.#isOver;
  }

  /** Goes through every set with so many further changes. Slots that are banned were gone through already. */
  #extend(node: Node, remaining: number, banned: ReadonlySet<string>): void {
    if (this.#isTimeUp()) return;
    const conflict = this.#conflict(node, banned);
    if (!conflict) {
      this.#take(this.#solution(node.settled));
      return;
    }
    if (remaining === 0) return;
    const passed = new Set(banned);
    for (const slot of conflict.slots) {
      passed.add(slot);
      const bound = this.#boundOf(node.raw, slot, remaining - 1, passed);
      for (const change of this.#changes(node.raw, slot, conflict)) {
        if (this.#isOver) return;
        if (!bound(change)) continue;
        const raw = node.raw.withChange(slot, change);
        if (this.#isPromising(raw, remaining - 1)) this.#extend(this.#node(raw), remaining - 1, passed);
      }
    }
  }

  /** What is wrong that the fewest slots can put right; `undefined` where nothing is wrong. */
  #conflict({ raw, settled, deciding }: Node, banned: ReadonlySet<string>): Conflict | undefined {
    const conflicts: Conflict[] = [];
    const missed = this.#targets.filter((target) => distance(target, target.measure(settled.evaluation)) > 0);
    const errors = settled.fresh("error");
    if (errors.length === 0) this.#remember({ raw, settled, deciding });
    const allowed = (slots: Iterable<string>): string[] =>
      [...new Set(slots)].filter((slot) => !banned.has(slot) && !raw.changes.has(slot));
    for (const target of missed) {
      const measured = target.measure(settled.evaluation);
      const slots = slotsMissing(target, measured) ?? this.#slotsTouching(target, raw);
      conflicts.push({ slots: allowed([...slots, ...deciding]), canBeEmpty: new Set() });
    }
    for (const { question, verdict } of errors) {
      // A place that is empty is filled where the check itself asks for a part there, such as an adapter.
      const asked = new Set(verdict.repairs.flatMap((repair) => (repair.kind === "insert-part" ? [repair.slot] : [])));
      const empty = verdict.repairs.flatMap((repair) => (repair.kind === "leave-empty" ? [repair.slot] : []));
      const slots = this.#start.questions
        .slotsOf(question)
        .filter((slot) => isFilled(raw.assembly, slot) || asked.has(slot));
      conflicts.push({ slots: allowed([...slots, ...deciding]), canBeEmpty: new Set(empty) });
    }
    if (conflicts.length === 0) return undefined;
    const { slots } = conflicts.reduce((fewest, one) => (one.slots.length < fewest.slots.length ? one : fewest));
    // A place that a check would see empty may be left so for whichever conflict it is in.
    return { slots, canBeEmpty: new Set(conflicts.flatMap(({ canBeEmpty }) => [...canBeEmpty])) };
  }

  /** Slots in which another part can change what a target comes to. */
  #slotsTouching(target: Target, { assembly }: BuildState): readonly string[] {
    const savings = this.#savingsOf(target);
    if (savings) return savings.map(({ slot }) => slot);
    return slotPaths.filter((slot) => isFilled(assembly, slot) && target.touches(slot));
  }

  #changes({ assembly }: BuildState, slot: string, { canBeEmpty }: Conflict): readonly Change[] {
    const current = assembly.slots.get(slot)?.part;
    // To lace a wheel in place of one that was bought asks for spokes, which no change of this slot brings.
    const isWhole = standsTwice(current?.kind?.name);
    const parts = this.#choices
      .of(slot)
      .filter((part) => part !== current && (!isWhole || standsTwice(part.kind?.name)));
    return canBeEmpty.has(slot) && current ? [...parts, "none"] : parts;
  }

  /**
   * Whether, with a change of a slot, so many further ones can still bring every sum down far enough: by what each part
   * adds to it, before anything is fitted.
   */
  #boundOf(
    state: BuildState,
    slot: string,
    remaining: number,
    banned: ReadonlySet<string>,
  ): (change: Change) => boolean {
    const bounds = this.#targets.flatMap((target) => {
      const { contribution } = target;
      const savings = this.#savingsOf(target);
      const measured = target.measure(state.evaluation);
      if (!contribution || !savings || measured.state === "none") return [];
      if (measured.state === "unknown") {
        // Each part that does not say what it adds has to go.
        const open = new Set(measured.slots.filter((one) => one !== slot)).size;
        return [() => open <= remaining];
      }
      const rest = savings
        .filter((one) => !banned.has(one.slot) && !state.changes.has(one.slot))
        .slice(0, remaining)
        .reduce((sum, { saving }) => sum + Math.max(0, saving), 0);
      const own = contribution(state.assembly.slots.get(slot)?.part) ?? 0;
      const most = target.interval.greatest * (1 + slack) - (measured.value - own - rest);
      return [(change: Change) => (this.#leastAdded(contribution, slot, change) ?? Number.POSITIVE_INFINITY) <= most];
    });
    return (change) => bounds.every((isWithin) => isWithin(change));
  }

  /** What a part adds at least: nothing where it may be the same piece as one that is there already. */
  #leastAdded(contribution: Contribution, slot: string, change: Change): number | undefined {
    if (change === "none") return 0;
    const mayShareClamp = Object.hasOwn(slotByPath(slot)?.settings ?? {}, "clamp") && this.#present.has(change);
    return mayShareClamp || standsTwice(change.kind?.name) ? 0 : contribution(change);
  }

  /** What stands in a slot adds at least, whatever of the libraries it is. */
  #leastIn(slot: string, contribution: Contribution): number {
    const hub = comesInWheel[slot];
    if (hub !== undefined && this.#choices.of(hub).some(({ kind }) => standsTwice(kind?.name))) return 0;
    const added = this.#choices.of(slot).map((part) => this.#leastAdded(contribution, slot, part));
    return Math.min(...added.map((one) => one ?? Number.POSITIVE_INFINITY));
  }

  /** Whether a set to which nothing more is added comes to its targets, as far as setting up cannot change that. */
  #isPromising(state: BuildState, remaining: number): boolean {
    if (remaining > 0) return true;
    return this.#targets.every(
      (target) => target.readsSettings || distance(target, target.measure(state.evaluation)) === 0,
    );
  }

  /** For a sum that is to be small: what a change of each slot can take off it at most, greatest first. */
  #savingsOf(target: Target): readonly { readonly slot: string; readonly saving: number }[] | undefined {
    const { contribution, interval } = target;
    if (!contribution || Number.isFinite(interval.least)) return undefined;
    const kept = this.#savings.get(target);
    if (kept) return kept;
    const savings: { slot: string; saving: number }[] = [];
    for (const [slot, { part, state }] of this.#start.assembly.slots) {
      if (state === "none" || this.#options.keep.has(slot)) continue;
      const least = this.#leastIn(slot, contribution);
      const own = (part && contribution(part)) ?? 0;
      if (Number.isFinite(least)) savings.push({ slot, saving: own - least });
    }
    savings.sort((a, b) => b.saving - a.saving);
    this.#savings.set(target, savings);
    return savings;
  }

  /**
   * Whether a check that is an error fails with other parts that the build names as alternates, where it failed with
   * none of them before.
   */
  #breaksAlternates(state: BuildState): boolean {
    if (!this.#hasAlternates) return false;
    const { engine } = state;
    const changed = new Set([...state.changes.keys(), ...state.setUps.map(({ slot }) => slot)]);
    return [...changed].some((slot) => {
      const before = failuresOverAll(this.#start.assembly, engine.workshop, engine.checks, slot);
      const after = failuresOverAll(state.assembly, engine.workshop, engine.checks, slot);
      return [...after].some(([question, count]) => {
        const [code = ""] = question.split(" ");
        return count > 0 && (before.get(question) ?? 0) === 0 && engine.checks.byCode(code)?.severity === "error";
      });
    });
  }

  #take(solution: Solution): void {
    if (this.#breaksAlternates(solution.state)) return;
    this.#found++;
    this.#solutions.push(solution);
    this.#solutions.sort(this.#better);
    this.#solutions.length = Math.min(this.#solutions.length, this.#options.limit);
  }

  #remember(node: Node): void {
    const sum = this.#distance(node.settled);
    if (!this.#nearest || sum < this.#nearest.distance) this.#nearest = { node, distance: sum };
  }

  #distance(state: BuildState): number {
    return this.#targets.reduce((sum, target) => sum + distance(target, target.measure(state.evaluation)), 0);
  }

  /**
   * Goes towards the targets one change at a time, each the one that brings them nearest without a new error; then
   * takes back what turned out not to be needed. Not the smallest answer, but one for when time runs out.
   */
  #walk(root: Node): Solution | undefined {
    let node = root;
    for (let steps = 0; steps <= this.#options.mostChanges; steps++) {
      const before = this.#distance(node.settled);
      if (before === 0 && node.settled.fresh("error").length === 0)
        return this.#solution(this.#withoutNeedless(node).settled);
      const next = this.#step(node, before);
      if (!next) return undefined;
      node = next;
    }
    return undefined;
  }

  #step(node: Node, before: number): Node | undefined {
    const slots = [...new Set(this.#targets.flatMap((target) => this.#slotsTouching(target, node.raw)))].filter(
      (slot) => !this.#options.keep.has(slot),
    );
    const steps: { readonly slot: string; readonly change: Change; readonly distance: number }[] = [];
    const measured = this.#targets.map((target) => target.measure(node.raw.evaluation));
    for (const slot of slots) {
      for (const change of this.#changes(node.raw, slot, { slots: [], canBeEmpty: new Set() })) {
        if (this.#isTimeUp()) return undefined;
        const sum = this.#distanceWith(node.raw, measured, slot, change);
        if (sum < before) steps.push({ slot, change, distance: sum });
      }
    }
    steps.sort((a, b) => a.distance - b.distance);
    for (const { slot, change } of steps) {
      if (this.#isTimeUp()) return undefined;
      const next = this.#node(node.raw.withChange(slot, change));
      if (next.settled.fresh("error").length === 0) {
        this.#remember(next);
        return next;
      }
    }
    return undefined;
  }

  /** How far off a build is with another part in a slot; sums are not added up anew for it. */
  #distanceWith(state: BuildState, measured: readonly Measured[], slot: string, change: Change): number {
    let changed: BuildState | undefined;
    return this.#targets.reduce((sum, target, index) => {
      const { contribution } = target;
      const before = measured[index]!;
      if (contribution && before.state === "known") {
        const own = contribution(state.assembly.slots.get(slot)?.part) ?? 0;
        const other = contribution(change === "none" ? undefined : change);
        const value = other === undefined ? Number.POSITIVE_INFINITY : before.value - own + other;
        return sum + distance(target, { state: "known", value });
      }
      if (!target.touches(slot)) return sum + distance(target, before);
      changed ??= state.withChange(slot, change);
      return sum + distance(target, target.measure(changed.evaluation));
    }, 0);
  }

  /** The same without the changes that it does as well without. */
  #withoutNeedless(node: Node): Node {
    let kept = node;
    for (const slot of node.raw.changes.keys()) {
      let raw = this.#start;
      for (const [other, change] of kept.raw.changes) if (other !== slot) raw = raw.withChange(other, change);
      const without = this.#node(raw);
      if (this.#distance(without.settled) === 0 && without.settled.fresh("error").length === 0) kept = without;
    }
    return kept;
  }
}

/** The build without its own aims for what the targets ask: the targets stand in their place. */
function withoutAims(assembly: Assembly, targets: readonly Target[]): Assembly {
  const fields = new Map(assembly.fields);
  for (const { aim } of targets) if (aim !== undefined) fields.delete(aim);
  return { ...assembly, fields };
}

/** Sums of the same numbers in another order differ in their last digits. */
const slack = 1e-9;

/** For a sum that cannot be told: the slots whose parts do not say what is added up, each of which has to change. */
function slotsMissing({ contribution }: Target, measured: Measured): readonly string[] | undefined {
  return contribution && measured.state === "unknown" ? measured.slots : undefined;
}

function isFilled({ slots }: Assembly, slot: string): boolean {
  const installed = slots.get(slot);
  return installed !== undefined && installed.state !== "none" && slotByPath(slot) !== undefined;
}
