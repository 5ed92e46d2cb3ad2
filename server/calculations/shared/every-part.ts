import type { OfSlot } from "../../model/need.ts";
import type { AnyValue } from "../../values/types.ts";

/**
 * Rows of a fact over all slots, each part once. A brake lever with a shift control built in stands in two slots of a
 * build, its second one saying by `clamp` that it is the same; it is weighed and paid for once.
 */
export function eachPartOnce<Value extends AnyValue>(rows: readonly OfSlot<Value>[]): readonly OfSlot<Value>[] {
  return rows.filter(({ installed }) => {
    const clamp = installed.settings.get("clamp");
    if (clamp?.state !== "stated") return true;
    const other = rows.find(({ slot }) => slot === clamp.value);
    return !(other && other.installed.name === installed.name);
  });
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
