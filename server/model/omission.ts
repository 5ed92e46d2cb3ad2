import type { Field, Omission, Slot, SlotCondition } from "../vocabulary/define.ts";
import { slotByPath } from "../vocabulary/index.ts";
import type { Installed } from "./assembly.ts";
import type { Statements } from "./stated.ts";

/** What it means that a part leaves a fact out: by the fact's row, and by what the part states beside it. */
export function omittedFact(field: Field, facts: Statements): Omission {
  const isImplied = field.impliedBy?.some((name) => facts.get(name)?.state === "stated") ?? false;
  return isImplied ? "unknown" : field.omitted;
}

type Slots = ReadonlyMap<string, Installed>;

/** Conditions lead from slot to slot; more steps than this come from a table that goes in circles. */
const mostSteps = 8;

/**
 * What it means for this build that nothing was said about a slot: `none` where every whole bike like it has nothing
 * there (no controller for a front derailleur that it has not got), else `unknown`.
 */
export function omittedSlot(row: Slot, slots: Slots, steps = 0): "unknown" | "none" {
  if (row.omitted === "none") return "none";
  if (steps > mostSteps) return "unknown";
  const met = row.noneWhen?.some((conditions) => conditions.every((condition) => holds(condition, slots, steps)));
  return met ? "none" : "unknown";
}

function holds(condition: SlotCondition, slots: Slots, steps: number): boolean {
  const installed = slots.get(condition.slot);
  if ("is" in condition && !("fact" in condition)) {
    if (condition.is === "present") return installed !== undefined && installed.state !== "none";
    if (installed) return installed.state === "none";
    const row = slotByPath(condition.slot);
    return row !== undefined && omittedSlot(row, slots, steps + 1) === "none";
  }
  const part = installed?.part;
  if ("kind" in condition) return part?.kind?.name === condition.kind;
  if (!part) return false;
  const statement = part.facts.get(condition.fact);
  if ("word" in condition) return statement?.state === "stated" && statement.value === condition.word;
  if (condition.is === "stated") return statement?.state === "stated";
  // Left out, a fact is absent when its row says so, or when this kind of part has no such fact at all.
  const field = part.kind?.fields[condition.fact];
  if (!statement) return !field || omittedFact(field, part.facts) !== "unknown";
  return statement.state === "none";
}
