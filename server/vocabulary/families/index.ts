import type { Fields } from "../define.ts";
import { codes, text } from "../fields.ts";
import { brakeFluid, brakeMount, hoseFitting, hydraulicFamily, padShape, rotorMount } from "./brakes.ts";
import {
  batteryType,
  bottomBracketShell,
  chainGuideMount,
  connector,
  controlClamp,
  derailleurMount,
  driveFamily,
  freehubBody,
  freewheelThread,
  frontDerailleurMount,
  hangerSeat,
  pedalThread,
  ringMount,
  shiftFamily,
  spindle,
} from "./drivetrain.ts";
import { accessoryMount, rail, shockMount, shockSize } from "./seat-and-frame.ts";
import { crownRace, headsetFit, headsetLower, headsetUpper, routingSystem } from "./steering.ts";
import { axle, beadSeat, hubLayout, rimKind, spokeThread, tyreDesignation, valveKind } from "./wheels.ts";

/** Every family of interfaces, with the fields of its own. */
export const familyTable = [
  driveFamily,
  freehubBody,
  freewheelThread,
  bottomBracketShell,
  spindle,
  ringMount,
  derailleurMount,
  hangerSeat,
  frontDerailleurMount,
  chainGuideMount,
  shiftFamily,
  pedalThread,
  controlClamp,
  batteryType,
  connector,
  axle,
  hubLayout,
  beadSeat,
  tyreDesignation,
  rimKind,
  valveKind,
  spokeThread,
  brakeMount,
  rotorMount,
  hydraulicFamily,
  brakeFluid,
  hoseFitting,
  padShape,
  headsetFit,
  crownRace,
  headsetUpper,
  headsetLower,
  routingSystem,
  rail,
  shockSize,
  shockMount,
  accessoryMount,
] as const;

export type FamilyName = (typeof familyTable)[number]["name"];

/** Fields that a `standard` of any family may state. */
export function standardFields(family: string): Fields {
  return {
    aliases: codes(family, "Other names by which it goes, any of which may be written in its place.", {
      omitted: "none",
    }),
    mates: codes(
      family,
      "Further interfaces that fit it, besides its own: codes of this family, or FAMILY/CODE of another.",
      { omitted: "none", example: "freehub-body/long-spline" },
    ),
    published: text("Publication that defines it, with its year.", { example: '"ISO 5775-2:2021"' }),
    source: text("Where these numbers were taken from, or that they are common practice or from memory."),
    note: text("A remark that is shown with it.", { omitted: "none" }),
  };
}
