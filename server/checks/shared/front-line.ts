import { chainlineNeeds, frontChainline } from "../../calculations/shared/front-chainline.ts";
import type { Installed } from "../../model/assembly.ts";
import { type Facts, type Known, optional, slot, type Unknown } from "../../model/need.ts";
import { isSingle } from "../../values/compare.ts";
import { showQuantity } from "../../values/show.ts";
import type { Interval } from "../../values/types.ts";
import type { SlotPath } from "../../vocabulary/index.ts";

/** What {@link frontLine} reads. */
export const frontLineNeeds = {
  ...chainlineNeeds,
  crankset: optional(slot("drivetrain.crankset")),
  outerPart: optional(slot("drivetrain.chainring")),
};

export type FrontLine =
  | {
      readonly state: "known";
      /** Millimetres from the centre plane, with what states it. */
      readonly line: Known<number>;
      readonly part: Known<Installed>;
      readonly slot: SlotPath;
    }
  | Unknown
  | { readonly state: "none" };

/** The chainline at the cranks, with the part that states it; spacers that move it are named with the part. */
export function frontLine(facts: Facts<typeof frontLineNeeds>): FrontLine {
  const front = frontChainline(facts);
  if (front.state !== "known") return front;
  const { ringChainline, crankChainline, outerPart, crankset } = facts;
  const line = (stated: Known<number>): Known<number> =>
    front.moved === 0
      ? stated
      : { ...stated, value: front.chainline, subject: `${stated.subject}, ${bySpacers(front.moved)}` };
  if (ringChainline.state === "known" && outerPart.state === "known") {
    return { state: "known", line: line(ringChainline), part: outerPart, slot: "drivetrain.chainring" };
  }
  if (crankChainline.state === "known" && crankset.state === "known") {
    return { state: "known", line: line(crankChainline), part: crankset, slot: "drivetrain.crankset" };
  }
  return { state: "none" };
}

function bySpacers(moved: number): string {
  return `moved ${showQuantity(Math.abs(moved), "length")} ${moved > 0 ? "outward" : "inward"} by spacers`;
}

/** How far, in millimetres, cranks may stand from a single figure of the frame's: spacers come in steps of about that. */
const aroundOneFigure = 1;

/** The chainlines that suit a frame: the span it states, or a millimetre around the one figure it states. */
export function suitableChainlines(design: Interval): Interval {
  return isSingle(design)
    ? { least: design.least - aroundOneFigure, greatest: design.greatest + aroundOneFigure }
    : design;
}
