import { fact, type Maybe, type Missing, optional, setting } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";

/**
 * The chainline at the cranks: what a ring in a slot of its own states that it gives on the crank it is made for,
 * otherwise what the crankset states. Both count with the spacers that the makers prescribe, which are often more on
 * one side than on the other, so that spacers under a cup move it only where the bottom bracket states how its cup has
 * to stand. Spacers between ring and crank always do.
 */
export const chainlineNeeds = {
  crankChainline: optional(fact("drivetrain.crankset", "chainline")),
  ringChainline: optional(fact("drivetrain.chainring", "ring-chainline")),
  ringSpacers: optional(setting("drivetrain.chainring", "ring-spacers")),
  cupFace: optional(fact("drivetrain.bottom-bracket", "drive-side-face")),
  cupSpacers: optional(setting("drivetrain.bottom-bracket", "shell-spacers-drive-side")),
  shell: optional(fact("frame", "bottom-bracket-shell")),
};

export interface ChainlineFacts {
  readonly crankChainline: Maybe<number>;
  readonly ringChainline: Maybe<number>;
  readonly ringSpacers: Maybe<number>;
  readonly cupFace: Maybe<number>;
  readonly cupSpacers: Maybe<number>;
  readonly shell: Maybe<ResolvedCode>;
}

export type FrontChainline =
  | {
      readonly state: "known";
      readonly chainline: number;
      /** How far spacers move the rings from where their makers have them, positive to the drive side. */
      readonly moved: number;
    }
  | { readonly state: "unknown"; readonly missing: readonly Missing[] }
  | { readonly state: "none" };

export function frontChainline(facts: ChainlineFacts): FrontChainline {
  const { crankChainline, ringChainline } = facts;
  const line = ringChainline.state === "known" ? ringChainline : crankChainline;
  if (line.state !== "known") return line.state === "unknown" ? line : { state: "none" };
  const moved = movedBySpacers(facts);
  return typeof moved === "number" ? { state: "known", chainline: line.value + moved, moved } : moved;
}

/** Which parts are fitted may still be open; only what is known of them moves anything. */
function movedBySpacers(facts: ChainlineFacts): number | Extract<FrontChainline, { state: "unknown" }> {
  const inward = facts.ringSpacers.state === "known" ? facts.ringSpacers.value : 0;
  if (facts.cupFace.state !== "known") return -inward;
  const { shell, cupSpacers } = facts;
  const missing = [shell, cupSpacers].flatMap((one) => (one.state === "unknown" ? one.missing : []));
  if (missing.length > 0) return { state: "unknown", missing };
  const stated = shell.state === "known" ? shell.value.standard?.dimensions.get("shell-width") : undefined;
  const width = stated?.state === "stated" && typeof stated.value === "number" ? stated.value : undefined;
  if (width === undefined) return -inward;
  const face = width / 2 + (cupSpacers.state === "known" ? cupSpacers.value : 0);
  return face - facts.cupFace.value - inward;
}
