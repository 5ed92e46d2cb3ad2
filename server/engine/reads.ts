import { calculationOfQuantity } from "../calculations/table.ts";
import type { Need, Needs } from "../model/need.ts";
import type { SlotCondition } from "../vocabulary/define.ts";
import { kindByName, slotByPath, slotPaths } from "../vocabulary/index.ts";

/**
 * What an answer about a build depends on, read from needs alone. Ranking a library judges thousands of parts in one
 * slot of one build: whatever the slot does not touch is answered once for all of them.
 */

/** Slots by which it is decided what leaving another slot out means, by that slot. */
const conditionSlots = new Map<string, ReadonlySet<string>>();

function conditionsOf(path: string): readonly SlotCondition[] {
  return slotByPath(path)?.noneWhen?.flat() ?? [];
}

/** The slots whose content decides what it means that nothing was said of a slot, itself included. */
function deciding(path: string): ReadonlySet<string> {
  const kept = conditionSlots.get(path);
  if (kept) return kept;
  const found = new Set([path]);
  for (const slot of found) for (const condition of conditionsOf(slot)) found.add(condition.slot);
  conditionSlots.set(path, found);
  return found;
}

const touched = new Map<string, WeakMap<Need, boolean>>();

/** Whether the answer to a need may change when another part stands in a slot. */
export function isTouched(need: Need, slot: string): boolean {
  let known = touched.get(slot);
  if (!known) {
    known = new WeakMap();
    touched.set(slot, known);
  }
  const kept = known.get(need);
  if (kept !== undefined) return kept;
  // While a number's own needs are looked at, one that needs itself adds nothing.
  known.set(need, false);
  const answer = touches(need, slot);
  known.set(need, answer);
  return answer;
}

function touches(need: Need, slot: string): boolean {
  switch (need.kind) {
    case "fact":
    case "setting":
    case "slot":
      return deciding(need.slot).has(slot);
    case "field":
    case "workshop-field":
      return false;
    case "worked":
      return numberTouched(need.quantity, slot);
    case "fact-of-named":
    case "every-fact":
    case "every-setting":
    case "every-slot":
      return true;
  }
}

/** Whether a number of a build may change when another part stands in a slot. */
export function numberTouched(path: string, slot: string): boolean {
  const quantity = calculationOfQuantity(path);
  if (!quantity) return false;
  return Object.values(quantity.inBuild.needs as Needs).some((need) => isTouched(need, slot));
}

/** Whether the answer to a need may change when a field of the build itself does, such as `category`. */
export function readsField(need: Need, field: string, seen: ReadonlySet<string> = new Set()): boolean {
  if (need.kind === "field") return need.field === field;
  if (need.kind !== "worked" || seen.has(need.quantity)) return false;
  const quantity = calculationOfQuantity(need.quantity);
  if (!quantity) return false;
  const further = new Set([...seen, need.quantity]);
  return Object.values(quantity.inBuild.needs as Needs).some((inner) => readsField(inner, field, further));
}

/**
 * The facts of the part in a slot that needs read, by way of numbers and of what leaving other slots out means too.
 * What a slot holds is known to whoever asks for the slot itself by its kind alone: facts are asked for by name.
 */
export function factsRead(needs: Needs, slot: string): ReadonlySet<string> {
  const facts = new Set(conditionFacts(slot));
  collectFacts(needs, slot, facts, new Set());
  return facts;
}

/** Facts of a slot's part that decide what leaving out other slots means. */
function conditionFacts(slot: string): readonly string[] {
  return slotPaths.flatMap((path) =>
    conditionsOf(path).flatMap((condition) => (condition.slot === slot && "fact" in condition ? [condition.fact] : [])),
  );
}

/** A fact, and those that decide what it means that it is left out. */
function addFact(name: string, slot: string, facts: Set<string>): void {
  facts.add(name);
  for (const kind of slotByPath(slot)?.kinds ?? []) {
    for (const other of kindByName(kind)?.fields[name]?.impliedBy ?? []) facts.add(other);
  }
}

function collectFacts(needs: Needs, slot: string, facts: Set<string>, seen: Set<string>): void {
  for (const need of Object.values(needs) as Need[]) {
    switch (need.kind) {
      case "fact":
        if (need.slot === slot) addFact(need.field, slot, facts);
        break;
      case "fact-of-named":
      case "every-fact":
        addFact(need.field, slot, facts);
        break;
      case "worked": {
        if (seen.has(need.quantity)) break;
        seen.add(need.quantity);
        const quantity = calculationOfQuantity(need.quantity);
        if (quantity) collectFacts(quantity.inBuild.needs as Needs, slot, facts, seen);
        break;
      }
      case "every-slot":
      case "slot":
      case "setting":
      case "every-setting":
      case "field":
      case "workshop-field":
        break;
    }
  }
}
