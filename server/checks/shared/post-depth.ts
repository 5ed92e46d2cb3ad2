import { fact, type Maybe, optional, worked } from "../../model/need.ts";
import { atLeast, atMost } from "../../values/compare.ts";
import { millimetres } from "./written.ts";

/** What bounds the depth of a post, and the depth at which the saddle stands as high as the build aims at. */
export const depthNeeds = {
  byPost: optional(fact("seat.post", "least-insertion")),
  byFrame: optional(fact("frame", "least-post-insertion")),
  free: optional(fact("frame", "greatest-post-insertion")),
  body: optional(fact("seat.post", "body-length")),
  wanted: optional(worked<number>("seat.insertion-for-height")),
};

export interface DepthFacts {
  readonly byPost: Maybe<number>;
  readonly byFrame: Maybe<number>;
  readonly free: Maybe<number>;
  readonly body: Maybe<number>;
  readonly wanted: Maybe<number>;
}

/**
 * The depth to set a post at that stands beyond a limit: the one for the saddle height that is aimed at, where every limit
 * stated allows it, so that what mends the post does not leave the saddle wrong; the limit itself otherwise.
 */
export function depthWithin(
  limit: { readonly value: number; readonly round: "up" | "down" },
  facts: DepthFacts,
): string {
  const { wanted } = facts;
  const atLimit = millimetres(limit.value, limit.round);
  if (wanted.state !== "known") return atLimit;
  // To half a millimetre, and to the side of it on which no limit lies.
  const near = (["near", "up", "down"] as const).map((round) => millimetres(wanted.value, round));
  return near.find((written) => allowed(Number.parseFloat(written), facts)) ?? atLimit;
}

function allowed(depth: number, { byPost, byFrame, free, body }: DepthFacts): boolean {
  return (
    [byPost, byFrame].every((least) => least.state !== "known" || atLeast(depth, least.value)) &&
    [free, body].every((most) => most.state !== "known" || atMost(depth, most.value))
  );
}
