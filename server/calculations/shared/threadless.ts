import { fact, type Maybe, optional } from "../../model/need.ts";
import { stated } from "./maybe.ts";

/** What {@link notThreadless} reads. */
export const threadlessNeeds = {
  clamping: optional(fact("cockpit.stem", "clamping")),
  shape: optional(fact("fork", "steerer-shape")),
};

/**
 * Why nothing clamps the steerer from outside: the stem is a quill, or the steerer is threaded. What neither says is
 * taken for a plain steerer in a clamping stem.
 */
export function notThreadless(facts: {
  readonly clamping: Maybe<string>;
  readonly shape: Maybe<string>;
}): string | undefined {
  if (stated(facts.clamping) === "quill") return "the stem is a quill";
  if (stated(facts.shape) === "threaded") return "the steerer is threaded";
  return undefined;
}
