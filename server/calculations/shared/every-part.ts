import type { OfSlot } from "../../model/need.ts";
import type { Part } from "../../model/part.ts";
import type { AnyValue } from "../../values/types.ts";
import type { KindName } from "../../vocabulary/index.ts";

/** Where a wheel bought whole is named a second time, by its second place. */
const namedAgain: Readonly<Record<string, string>> = {
  "front-wheel.rim": "front-wheel.hub",
  "rear-wheel.rim": "rear-wheel.hub",
};

/** The slot in which a part of this one stands too, where it is a part that does the work of both. */
export function firstPlaceOf(slot: string): string | undefined {
  return namedAgain[slot];
}

/** Slots of what a wheel bought whole has in it, each with a place where such a wheel would stand. */
export const comesInWheel: Readonly<Record<string, string>> = {
  "front-wheel.spokes": "front-wheel.hub",
  "front-wheel.nipples": "front-wheel.hub",
  "rear-wheel.spokes": "rear-wheel.hub",
  "rear-wheel.nipples": "rear-wheel.hub",
};

/**
 * Rows of a fact over all slots, each part once. Some parts stand in two slots of a build and are weighed and paid for
 * once: a brake lever with a shift control built in, its second slot saying by `clamp` that it is the same, and a wheel
 * bought whole, which is hub and rim.
 */
export function eachPartOnce<Value extends AnyValue>(rows: readonly OfSlot<Value>[]): readonly OfSlot<Value>[] {
  return rows.filter(({ slot, installed }) => {
    const clamp = installed.settings.get("clamp");
    const first = clamp?.state === "stated" ? clamp.value : namedAgain[slot];
    if (first === undefined) return true;
    const other = rows.find((row) => row.slot === first);
    return !(other && other.installed.name === installed.name);
  });
}

/** Whether a part in this slot is one that stands in another slot as well and is counted there. */
export function isNamedAgain(slot: string, part: Part | undefined): boolean {
  return Object.hasOwn(namedAgain, slot) && standsTwice(part?.kind?.name);
}

/** Whether parts of a kind stand in two slots of a build, so that which of them it is matters and not only its facts. */
export function standsTwice(kind: string | undefined): boolean {
  return kind === ("built-wheel" satisfies KindName);
}

/** The slots in which the part of a slot stands: both places of a wheel bought whole, else the slot alone. */
export function placesOf(slots: ReadonlyMap<string, { readonly part?: Part }>, slot: string): readonly string[] {
  const part = slots.get(slot)?.part;
  if (!standsTwice(part?.kind?.name)) return [slot];
  const pair = Object.entries(namedAgain).find((places) => places.includes(slot)) ?? [];
  const both = pair.length > 0 && pair.every((place) => slots.get(place)?.part === part);
  return both ? [...pair].reverse() : [slot];
}

/** The rows of one assembly; all of them for `bike`. */
export function ofAssembly<Value extends AnyValue>(
  rows: readonly OfSlot<Value>[],
  assembly: string,
): readonly OfSlot<Value>[] {
  return assembly === "bike" ? rows : rows.filter(({ slot }) => slot.startsWith(`${assembly}.`));
}

/** Every place where sums are published: each assembly, and the whole bicycle. */
export const sumPlaces = [
  "bike",
  "drivetrain",
  "front-brake",
  "rear-brake",
  "cockpit",
  "seat",
  "front-wheel",
  "rear-wheel",
  "lighting",
  "carrying",
] as const;

/** Names written in one text, separated by commas. */
export function namesIn(text: string | undefined): readonly string[] {
  return (text ?? "")
    .split(",")
    .map((name) => name.trim())
    .filter((name) => name !== "");
}
