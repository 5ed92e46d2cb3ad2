import type { Engine } from "../engine/engine.ts";
import { readFields } from "../model/read-fields.ts";
import type { Statement } from "../model/stated.ts";
import { workshopFields } from "../vocabulary/index.ts";

/** The currency that the workshop states for itself; `undefined` when it states none. */
export function workshopCurrency({ workshop }: Engine): string | undefined {
  const declaration = workshop.lookup("workshop");
  const block = declaration?.tree.block;
  if (!declaration || !block) return undefined;
  const into = new Map<string, Statement>();
  readFields(block, {
    declaration,
    fields: workshopFields,
    owner: "a workshop",
    prefix: "",
    free: ["own"],
    into,
    findings: [],
  });
  const currency = into.get("currency");
  return currency?.state === "stated" && typeof currency.value === "string" ? currency.value : undefined;
}
