import { fact, type Maybe, optional } from "../../model/need.ts";

/** What {@link notThreaded} reads. */
export const threadedNeeds = {
  shape: optional(fact("fork", "steerer-shape")),
  clamping: optional(fact("cockpit.stem", "clamping")),
};

/** How far below the top of the locknut a threaded steerer ends, in millimetres: common practice, no source. */
export const usualLocknutGap = 2;

/** Why no locknut goes on the steerer. Where the fork does not say, a quill tells that it is threaded. */
export function notThreaded({
  shape,
  clamping,
}: {
  readonly shape: Maybe<string>;
  readonly clamping: Maybe<string>;
}): string | undefined {
  if (shape.state === "known") return shape.value === "threaded" ? undefined : "the steerer is not threaded";
  if (shape.state === "none") return "the fork has no steerer of a shape";
  return clamping.state === "known" && clamping.value === "quill" ? undefined : "nothing says that it is threaded";
}
