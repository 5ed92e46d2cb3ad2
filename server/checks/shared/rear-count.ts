import { fact, type Known, type Maybe, optional, type Unknown } from "../../model/need.ts";
import type { Teeth } from "../../values/types.ts";

/** How many cogs the rear wheel has: what the cassette calls itself, else how many cogs it lists. */
export const rearCountNeeds = {
  cassetteSpeeds: optional(fact("drivetrain.cassette", "speeds")),
  cogs: optional(fact("drivetrain.cassette", "cogs")),
};

export interface RearCountFacts {
  readonly cassetteSpeeds: Maybe<number>;
  readonly cogs: Maybe<Teeth>;
}

export type RearCount = Known<number> | Unknown | { readonly state: "none" };

export function rearCount({ cassetteSpeeds, cogs }: RearCountFacts): RearCount {
  if (cassetteSpeeds.state === "known") return cassetteSpeeds;
  if (cogs.state === "known") return { ...cogs, value: cogs.value.length };
  return cassetteSpeeds.state === "unknown" ? cassetteSpeeds : cogs.state === "unknown" ? cogs : { state: "none" };
}
