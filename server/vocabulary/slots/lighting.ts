import { defineSlot } from "../define.ts";

/** Lamps, and what else the law of the road may ask for. */
export const lightingSlots = [
  defineSlot({ path: "lighting.front-lamp", kinds: ["lamp"], description: "The front lamp.", omitted: "none" }),
  defineSlot({ path: "lighting.rear-lamp", kinds: ["lamp"], description: "The rear lamp.", omitted: "none" }),
  defineSlot({
    path: "lighting.dynamo",
    kinds: ["dynamo"],
    description: "A dynamo outside the hub.",
    omitted: "none",
  }),
  defineSlot({
    path: "lighting.wiring",
    kinds: ["wire"],
    description: "The leads between dynamo and lamps.",
    omitted: "none",
  }),
  defineSlot({
    path: "lighting.battery",
    kinds: ["battery"],
    description: "The battery of the lamps, where they do not hold their own.",
    omitted: "none",
  }),
  defineSlot({ path: "lighting.reflectors", kinds: ["reflectors"], description: "The reflectors.", omitted: "none" }),
  defineSlot({ path: "lighting.bell", kinds: ["bell"], description: "The bell.", omitted: "none" }),
] as const;
