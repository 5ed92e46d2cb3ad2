import type { Engine } from "../engine/engine.ts";
import { statedByWorkshop } from "../model/workshop-fields.ts";

/** The currency that the workshop states for itself; `undefined` when it states none. */
export function workshopCurrency({ workshop }: Engine): string | undefined {
  const declaration = workshop.lookup("workshop");
  const currency = declaration && statedByWorkshop(declaration).get("currency");
  return currency?.state === "stated" && typeof currency.value === "string" ? currency.value : undefined;
}
