import type { Known } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { showCode } from "./codes.ts";

/** How two parts whose codes mate belong together, for a sentence. */
export function ofOneFamily(one: Known<ResolvedCode>, other: Known<ResolvedCode>): string {
  return one.value.code === other.value.code && one.value.family === other.value.family
    ? `${one.subject} and ${other.subject} are both of ${showCode(one.value)}`
    : `${one.subject} of ${showCode(one.value)} goes with ${other.subject} of ${showCode(other.value)}`;
}
