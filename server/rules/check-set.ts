import type { Check } from "../checks/define.ts";
import { type CheckInstance, checkByCode, checks, checksReading, instancesOf, needsOf } from "../checks/table.ts";
import type { Need } from "../model/need.ts";
import type { RuleCheck } from "./rule-check.ts";

/** Everything that is asked of a workshop's builds: the checks that come with the program, then its own rules by name. */
export class CheckSet {
  readonly all: readonly Check[];
  readonly rules: readonly RuleCheck[];
  readonly #rules: ReadonlyMap<string, RuleCheck>;
  /** @param touches whether the answer to a need may change when another part stands in a slot. */
  readonly #touches: (need: Need, slot: string) => boolean;
  readonly #reading = new Map<string, readonly CheckInstance[]>();

  constructor(rules: readonly RuleCheck[], touches: (need: Need, slot: string) => boolean) {
    this.rules = rules;
    this.all = [...checks, ...rules];
    this.#rules = new Map(rules.map((rule) => [rule.code, rule]));
    this.#touches = touches;
  }

  byCode(code: string): Check | undefined {
    return checkByCode(code) ?? this.#rules.get(code);
  }

  /** The check instances whose answer may change when the part in a slot does. */
  reading(slot: string): readonly CheckInstance[] {
    const kept = this.#reading.get(slot);
    if (kept) return kept;
    const own = this.rules.flatMap((check) =>
      instancesOf(check).flatMap((instance): CheckInstance[] =>
        Object.values(needsOf(check, instance)).some((need) => this.#touches(need, slot)) ? [{ check, instance }] : [],
      ),
    );
    const reading = [...checksReading(slot), ...own];
    this.#reading.set(slot, reading);
    return reading;
  }
}
