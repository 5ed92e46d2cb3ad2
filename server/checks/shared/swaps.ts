import type { Repair } from "../../model/finding.ts";
import type { SlotPath } from "../../vocabulary/index.ts";

/** Other parts in these slots, the likeliest first. */
export function swaps(...slots: readonly SlotPath[]): readonly Repair[] {
  return [...new Set(slots)].map((slot) => ({ kind: "swap-part", slot }));
}
