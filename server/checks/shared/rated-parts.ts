import { type SlotPath, slotPaths } from "../../vocabulary/index.ts";

/** Every place on a bicycle whose part may be rated by its maker, one instance for each. */
export const ratedParts: readonly { readonly name: SlotPath; readonly slot: SlotPath }[] = slotPaths.map((slot) => ({
  name: slot,
  slot,
}));
