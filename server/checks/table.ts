import { calculationOfQuantity } from "../calculations/table.ts";
import { type Need, type Needs, shareNeeds } from "../model/need.ts";
import type { Check, Instance } from "./define.ts";
import { checks } from "./index.ts";

export { checks };

const byCode = new Map(checks.map((check) => [check.code, check]));

export function checkByCode(code: string): Check | undefined {
  return byCode.get(code);
}

const onceOfTheBuild: readonly Instance[] = [{ name: "" }];

/** Everything a check is asked of: one nameless instance when it is asked once of the build. */
export function instancesOf(check: Check): readonly Instance[] {
  return check.instances ?? onceOfTheBuild;
}

/** House rules come and go with their texts, and their needs with them. */
const needsByCheck = new WeakMap<Check, Map<Instance, Needs>>();

/** What an instance of a check needs to know: always the same object. */
export function needsOf(check: Check, instance: Instance): Needs {
  let byInstance = needsByCheck.get(check);
  if (!byInstance) {
    byInstance = new Map();
    needsByCheck.set(check, byInstance);
  }
  let needs = byInstance.get(instance);
  if (!needs) {
    needs = shareNeeds(check.needs(instance));
    byInstance.set(instance, needs);
  }
  return needs;
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
      case "workshop-field":
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
    for (const instance of instancesOf(check)) {
      const asked = { check, instance };
      for (const slot of slotsOf(needsOf(check, instance), new Set(), new Set())) {
        const known = bySlot.get(slot);
        if (known) known.push(asked);
        else bySlot.set(slot, [asked]);
      }
    }
  }
  return bySlot;
}

const readingSlot = new Map<string, readonly CheckInstance[]>();

/** The check instances whose answer may change when the part in a slot does. */
export function checksReading(slot: string): readonly CheckInstance[] {
  const kept = readingSlot.get(slot);
  if (kept) return kept;
  const reading = [...new Set([...(index().get(slot) ?? []), ...(index().get("*") ?? [])])];
  readingSlot.set(slot, reading);
  return reading;
}

let judgedSettings: Set<string> | undefined;

/** Whether any check reads a setting of a slot, and so judges what it says. */
export function isSettingJudged(slot: string, setting: string): boolean {
  if (!judgedSettings) {
    judgedSettings = new Set();
    for (const check of checks) {
      for (const instance of instancesOf(check)) {
        for (const need of Object.values(needsOf(check, instance))) {
          if (need.kind === "setting" || need.kind === "fact-of-named") {
            judgedSettings.add(`${need.slot} ${need.setting}`);
          }
        }
      }
    }
  }
  return judgedSettings.has(`${slot} ${setting}`);
}
