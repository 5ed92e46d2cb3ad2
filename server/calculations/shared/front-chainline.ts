import { fact, type Maybe, type Missing, optional } from "../../model/need.ts";

/**
 * The chainline at the cranks: what a ring in a slot of its own states that it gives on the crank it is made for,
 * otherwise what the crankset states.
 */
export const chainlineNeeds = {
  crankChainline: optional(fact("drivetrain.crankset", "chainline")),
  ringChainline: optional(fact("drivetrain.chainring", "ring-chainline")),
};

export interface ChainlineFacts {
  readonly crankChainline: Maybe<number>;
  readonly ringChainline: Maybe<number>;
}

export type FrontChainline =
  | { readonly state: "known"; readonly chainline: number }
  | { readonly state: "unknown"; readonly missing: readonly Missing[] }
  | { readonly state: "none" };

export function frontChainline({ crankChainline, ringChainline }: ChainlineFacts): FrontChainline {
  if (ringChainline.state === "known") return { state: "known", chainline: ringChainline.value };
  if (crankChainline.state === "known") return { state: "known", chainline: crankChainline.value };
  if (crankChainline.state === "unknown") return { state: "unknown", missing: crankChainline.missing };
  return { state: "none" };
}
