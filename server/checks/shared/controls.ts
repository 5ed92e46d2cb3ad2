import type { ResolvedCode } from "../../model/standard.ts";
import { dimensionOf } from "./codes.ts";

/** What a hand works besides the brake levers: each may have a band of its own, share a clamp, or be built into a lever. */
export const controls = [
  { name: "drivetrain.rear-controller", slot: "drivetrain.rear-controller" },
  { name: "drivetrain.front-controller", slot: "drivetrain.front-controller" },
  { name: "seat.remote", slot: "seat.remote" },
  { name: "cockpit.remote", slot: "cockpit.remote" },
] as const;

export type ControlSlot = (typeof controls)[number]["slot"];

export const levers = ["rear-brake.lever", "front-brake.lever"] as const;

/** The places that may lend a clamp to a control, those that usually do first. */
export const hosts = [...levers, ...controls.map(({ slot }) => slot)] as const;

/** Bars and bands are out by this much, in millimetres, without anyone noticing. */
export const bandTolerance = 0.2;

/** How a control is held, as the standard of its mount says; `undefined` when that does not say. */
export type ClampForm = "band" | "shared" | "built-in" | "bar-end" | "stem-or-tube";

export function clampForm(mount: ResolvedCode): ClampForm | undefined {
  return dimensionOf<string>(mount, "form") as ClampForm | undefined;
}
