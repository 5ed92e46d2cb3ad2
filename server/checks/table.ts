import { calculationOfQuantity } from "../calculations/table.ts";
import type { Need, Needs } from "../model/need.ts";
import type { Check, Instance } from "./define.ts";
import { checks } from "./index.ts";

export { checks };

const byCode = new Map(checks.map((check) => [check.code, check]));

export function checkByCode(code: string): Check | undefined {
  return byCode.get(code);
}

/** One instance of a check that reads a slot. */
export interface CheckInstance {
  readonly check: Check;
  readonly instance: Instance;
}

/** Paths of slots that needs read, also by way of the numbers they need; `*` for needs that read the whole build. */
function slotsOf(needs: Needs, into: Set<string>, seen: Set<string>): Set<string> {
  for (const need of Object.values(needs) as Need[]) {
    switch (need.kind) {
      case "fact":
      case "setting":
      case "slot":
        into.add(need.slot);
        break;
      case "fact-of-named":
      case "every-fact":
      case "every-setting":
      case "every-slot":
        if ("slot" in need) into.add(need.slot);
        into.add("*");
        break;
      case "worked": {
        if (seen.has(need.quantity)) break;
        seen.add(need.quantity);
        const quantity = calculationOfQuantity(need.quantity);
        if (quantity) slotsOf(quantity.inBuild.needs, into, seen);
        break;
      }
      case "field":
        break;
    }
  }
  return into;
}

let bySlot: Map<string, CheckInstance[]> | undefined;

function index(): Map<string, CheckInstance[]> {
  if (bySlot) return bySlot;
  bySlot = new Map();
  for (const check of checks) {
    for (const instance of check.instances ?? [{ name: "" }]) {
      const asked = { check, instance };
      for (const slot of slotsOf(check.needs(instance), new Set(), new Set())) {
        const known = bySlot.get(slot);
        if (known) known.push(asked);
        else bySlot.set(slot, [asked]);
      }
    }
  }
  return bySlot;
}

/** The check instances whose answer may change when the part in a slot does. */
export function checksReading(slot: string): readonly CheckInstance[] {
  return [...new Set([...(index().get(slot) ?? []), ...(index().get("*") ?? [])])];
}
