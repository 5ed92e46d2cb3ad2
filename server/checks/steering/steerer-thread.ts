import { notThreaded, threadedNeeds } from "../../calculations/shared/threaded-steerer.ts";
import { fact, type Maybe, optional, setting, slot } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

/**
 * The share of the upper stack that the race pressed into the head tube and the balls on it take up at most. Where thread
 * begins higher, the race that is screwed down has none. From memory.
 */
const pressedShare = 0.5;

export default defineCheck({
  code: "steering/steerer-thread",
  title: "The thread of a steerer reaches down to the head tube",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    ...threadedNeeds,
    fork: slot("fork"),
    supplied: optional(fact("fork", "steerer-supplied")),
    thread: optional(fact("fork", "steerer-thread-length")),
    cut: optional(setting("fork", "steerer-length")),
    lower: optional(fact("headset", "lower-stack")),
    upper: optional(fact("headset", "upper-stack")),
    headTube: optional(fact("frame", "head-tube-length")),
  }),
  test({ shape, clamping, fork, supplied, thread, cut, lower, upper, headTube }) {
    const other = notThreaded({ shape, clamping });
    if (other) return notApplicable(other);
    for (const figure of [supplied, thread, lower, upper, headTube])
      if (figure.state === "none") return notApplicable(`${figure.path} is none`);
    const open = unknowns(supplied, thread, lower, upper, headTube);
    if (open.length > 0) return cannotTell(...open);
    if (
      supplied.state !== "known" ||
      thread.state !== "known" ||
      lower.state !== "known" ||
      upper.state !== "known" ||
      headTube.state !== "known"
    ) {
      return notApplicable("there is no head tube, no headset or no thread");
    }

    // What is cut off is cut off at the top, so that the thread's lower end stays where it is.
    const foot = Math.max(supplied.value - thread.value, 0);
    const top = lower.value + headTube.value;
    const [begins, stands] = showPair(foot, top, "length");
    const where = `The thread of ${fork.subject} begins ${begins} above its crown-race seat (${supplied.written} as supplied, less ${thread.written} of thread), and the head tube's top stands at ${stands}`;
    const above = foot - top;
    if (!greaterThan(above, 0)) return holds(`${where}.${left(cut, supplied.value, foot)}`);
    const isBare = greaterThan(above, upper.value * pressedShare);
    return fails(
      `${where}: ${showQuantity(above, "length")} above it there is no thread, so that the upper race ${isBare ? "stops" : "may stop"} before it rests on its balls.${left(cut, supplied.value, foot)} Fit a fork whose thread reaches lower, or have a steel one threaded further down before it is cut.`,
      fork,
      [supplied, thread, lower, headTube],
      swaps("fork", "headset"),
      // The pressed race keeps the screwed one some millimetres off the head tube.
      isBare ? {} : { severity: "warning" },
    );
  },
  explanation:
    "The upper race of a threaded headset is screwed down the steerer until its balls run without play, and the locknut is " +
    "turned against it. A fork for a taller frame can be cut to length, but the saw takes thread from the top, and what is " +
    "left may end above the place where the race belongs: it then stops on the bare steerer, and the bearings rattle however " +
    "tight the locknut is. So the thread has to reach down to the head tube's top, where it may end. Far below, the quill's " +
    "wedge would press where the thread has made the steerer thin.",
  source:
    "a frame builder's rule (bikeforums.net, Framebuilders, Steerer length question, 2011): the thread's lower end belongs " +
    "at the head tube's top, and on a longer steerer the race cannot be screwed down far enough; half of the upper stack " +
    "for the pressed race: from memory",
  caution: "Steering with play in it wears and works loose. The fork maker's instructions come first.",
  examples: {
    holds: `
part frame example.tour "Tour" { head-tube-length: 138 mm }
part fork example.fork "Threaded fork" { steerer-shape: threaded; steerer-supplied: 190 mm; steerer-thread-length: 45 mm }
part headset example.bearings "Bearings" { lower-stack: 13 mm; upper-stack: 24 mm }

build example "Thread down into the head tube" {
  frame: example.tour
  fork: example.fork { steerer-length: 173 mm }
  headset: example.bearings
}
`,
    fails: `
part frame example.tour "Tour" { head-tube-length: 138 mm }
part fork example.fork "Fork of a taller bike" { steerer-shape: threaded; steerer-supplied: 215 mm; steerer-thread-length: 45 mm }
part headset example.bearings "Bearings" { lower-stack: 13 mm; upper-stack: 24 mm }

build example "Cut down until three millimetres are left" {
  frame: example.tour
  fork: example.fork { steerer-length: 173 mm }
  headset: example.bearings
}
`,
  },
});

/**
 * What of the thread is left once the steerer is cut, in a sentence of its own; nothing where nobody said, or where it is
 * to be longer than it comes, which is found as such.
 */
function left(cut: Maybe<number>, supplied: number, foot: number): string {
  if (cut.state !== "known" || greaterThan(cut.value, supplied)) return "";
  const length = cut.value - foot;
  return greaterThan(length, 0)
    ? ` Cut to ${cut.written}, it has ${showQuantity(length, "length")} of thread left.`
    : ` Cut to ${cut.written}, it has no thread left.`;
}
