import { defineSlot } from "../define.ts";
import { length, quantity } from "../fields.ts";

const rackSettings = {
  load: quantity("mass", "Load that this build carries on it.", {
    group: "Set-up",
    unit: "kg",
    highest: 200_000,
    deed: "Load it with {} at most",
  }),
} as const;
const mudguardSettings = {
  gap: length("Between the tread of the inflated tyre and the guard, where it is least.", {
    group: "Set-up",
    highest: 60,
    deed: "Set the guard {} from the tread",
  }),
} as const;

/** Mudguards, racks, stands and seats. */
export const carryingSlots = [
  defineSlot({
    path: "carrying.front-rack",
    kinds: ["rack"],
    description: "The front rack.",
    omitted: "none",
    settings: rackSettings,
  }),
  defineSlot({
    path: "carrying.rear-rack",
    kinds: ["rack"],
    description: "The rear rack.",
    omitted: "none",
    settings: rackSettings,
  }),
  defineSlot({
    path: "carrying.front-mudguard",
    kinds: ["mudguard"],
    description: "The front mudguard.",
    omitted: "none",
    settings: mudguardSettings,
  }),
  defineSlot({
    path: "carrying.rear-mudguard",
    kinds: ["mudguard"],
    description: "The rear mudguard.",
    omitted: "none",
    settings: mudguardSettings,
  }),
  defineSlot({ path: "carrying.stand", kinds: ["stand"], description: "The stand.", omitted: "none" }),
  defineSlot({
    path: "carrying.child-seat",
    kinds: ["child-seat"],
    description: "The child seat.",
    omitted: "none",
  }),
] as const;
