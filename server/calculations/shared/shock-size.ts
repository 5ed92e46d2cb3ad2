import type { Code } from "../../values/types.ts";
import { compositeHalves, familyByName } from "../../vocabulary/index.ts";

/** Eye-to-eye length and stroke that a shock's size says, in millimetres; `undefined` for a code of another form. */
export function shockSize(size: Code): { readonly eyeToEye: number; readonly stroke: number } | undefined {
  const family = familyByName(size.family);
  const halves = family && compositeHalves(family, size.code);
  const eyeToEye = halves?.[0].value;
  const stroke = halves?.[1].value;
  return eyeToEye !== undefined && stroke !== undefined && stroke > 0 ? { eyeToEye, stroke } : undefined;
}
