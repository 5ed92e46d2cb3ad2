import type { Installed } from "../../model/assembly.ts";
import { label } from "../../model/facts.ts";
import { type Absent, type Known, type Maybe, type Need, optional, slot, type Unknown } from "../../model/need.ts";
import type { SlotPath } from "../../vocabulary/index.ts";

/**
 * One end of a joint as a build has it. A bare absence does not say why there is nothing, and what follows differs:
 * without a part there is no joint, but a part that states it takes nothing there must not be given something.
 */
export type End<Value> =
  /** The slot is empty, stated or by what omission means. */
  | { readonly state: "empty"; readonly slot: string }
  /** The slot takes several kinds, and this one has no such fact: the joint is not one of this part's. */
  | { readonly state: "unasked"; readonly part: Known<Installed> }
  /** The part states that it has nothing there. */
  | { readonly state: "none"; readonly part: Known<Installed>; readonly fact: Known<undefined> }
  /** Nobody said which part it is, or the part does not state the fact. */
  | { readonly state: "unknown"; readonly part: Known<Installed> | undefined; readonly unknown: Unknown }
  | { readonly state: "known"; readonly part: Known<Installed>; readonly fact: Known<Value> };

/** A fact of whatever part is in a slot, whose type the caller vouches for; for code that handles many joints alike. */
export function anyFact<Value>(path: SlotPath, field: string): Need<Value, true> {
  return { kind: "fact", slot: path, field, optional: true };
}

/** A setting of a slot, whose type the caller vouches for. */
export function anySetting<Value>(path: SlotPath, name: string): Need<Value, true> {
  return { kind: "setting", slot: path, setting: name, optional: true };
}

/** What stands in a slot, its absence left to the check to judge. */
export function anySlot(path: SlotPath): Need<Installed, true> {
  return optional(slot(path));
}

/** @param field the fact's name, which says whether the part's kind has it at all. */
export function readEnd<Value>(part: Maybe<Installed>, fact: Maybe<Value>, field: string): End<Value> {
  if (part.state === "none") return { state: "empty", slot: part.path };
  if (part.state === "unknown") return { state: "unknown", part: undefined, unknown: part };
  if (!hasFact(part.value, field)) return { state: "unasked", part };
  if (fact.state === "known") return { state: "known", part, fact };
  if (fact.state === "unknown") return { state: "unknown", part, unknown: fact };
  return { state: "none", part, fact: statedNone(part, fact) };
}

/** A stated absence in the shape of a fact, so that a finding can point to it. */
export function statedNone(part: Known<Installed>, absent: Absent): Known<undefined> {
  return {
    state: "known",
    value: undefined,
    written: "none",
    path: absent.path,
    subject: label(part.value),
    place: absent.place,
  };
}

/** Whether the kind of an installed part has a fact of this name. */
export function hasFact(installed: Installed, field: string): boolean {
  return Object.hasOwn(installed.part?.kind?.fields ?? {}, field);
}
