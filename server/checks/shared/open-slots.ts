import type { Installed } from "../../model/assembly.ts";
import { type Maybe, type Missing, type Need, optional, slot } from "../../model/need.ts";
import { type SlotPath, slotByPath, slotPaths } from "../../vocabulary/index.ts";

/** The places in which every whole bike has something, or says that it has nothing. */
export const askedSlots: readonly SlotPath[] = slotPaths.filter((path) => slotByPath(path)?.omitted === "unknown");

type SlotNeeds = Record<`slot ${string}`, Need<Installed, true>>;

/** Needs of a check that adds something up over the whole bike: what stands in each of these places. */
export const openSlotNeeds: SlotNeeds = Object.fromEntries(
  askedSlots.map((path) => [`slot ${path}`, optional(slot(path))]),
);

/** The same for one assembly. */
export function openSlotNeedsOf(assembly: string): SlotNeeds {
  return Object.fromEntries(
    askedSlots.filter((path) => path.startsWith(`${assembly}.`)).map((path) => [`slot ${path}`, optional(slot(path))]),
  );
}

/** What is missing for want of a part in these places. */
export function openSlots(facts: Readonly<Record<string, Maybe>>): readonly Missing[] {
  return askedSlots.flatMap((path) => {
    const here = facts[`slot ${path}`];
    return here?.state === "unknown" ? here.missing : [];
  });
}
