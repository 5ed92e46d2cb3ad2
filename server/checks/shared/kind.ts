import type { Installed } from "../../model/assembly.ts";
import type { KindName } from "../../vocabulary/index.ts";

/** Whether what is installed is of a kind, in a slot that takes several. */
export function isKind(installed: Installed, kind: KindName): boolean {
  return installed.part?.kind?.name === kind;
}
