import { workshopFieldsOf } from "../engine/analyse.ts";
import type { Engine } from "../engine/engine.ts";

/** The currency that the workshop states for itself; `undefined` when it states none. */
export function workshopCurrency({ workshop }: Engine): string | undefined {
  const declaration = workshop.lookup("workshop");
  const currency = declaration && workshopFieldsOf(declaration, []).get("currency");
  return currency?.state === "stated" && typeof currency.value === "string" ? currency.value : undefined;
}
