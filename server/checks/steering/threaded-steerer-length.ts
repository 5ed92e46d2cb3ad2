import { notThreaded, threadedNeeds, usualLocknutGap } from "../../calculations/shared/threaded-steerer.ts";
import type { Repair } from "../../model/finding.ts";
import { fact, type Maybe, optional, setting, slot, worked } from "../../model/need.ts";
import { atMost, greaterThan, lessThan } from "../../values/compare.ts";
import { showInterval, showPair, showQuantity } from "../../values/show.ts";
import type { Interval } from "../../values/types.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable, type Verdict } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { millimetres } from "../shared/written.ts";

/**
 * How far below the top of its locknut a steerer may end, in millimetres. A locknut is some 8 mm high and closed by a lip
 * of a millimetre or so; with 4 mm left out, half of its thread still holds. Common practice, no source.
 */
const usual: Interval = { least: 1, greatest: 4 };

export default defineCheck({
  code: "steering/threaded-steerer-length",
  title: "A threaded steerer ends inside its locknut",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    ...threadedNeeds,
    fork: slot("fork"),
    length: optional(setting("fork", "steerer-length")),
    supplied: optional(fact("fork", "steerer-supplied")),
    top: optional(worked<number>("steering.locknut-height")),
    allowed: optional(fact("headset", "locknut-gap")),
    spacers: optional(setting("headset", "locknut-spacers")),
  }),
  test({ shape, clamping, fork, length, supplied, top, allowed, spacers }) {
    const other = notThreaded({ shape, clamping });
    if (other) return notApplicable(other);
    if (top.state === "none") return notApplicable("there is no headset on the steerer");
    if (top.state === "unknown") return cannotTell(...unknowns(length, top, allowed));
    if (allowed.state === "unknown") return cannotTell(...unknowns(length, allowed));
    const range = allowed.state === "known" ? allowed.value : usual;
    const asks = `${showInterval(range, "length")} below it ${allowed.state === "known" ? `by the maker of ${allowed.subject}` : "by common practice"}`;
    const under = spacers.state === "known" ? spacers.value : 0;
    const wanted = Math.min(Math.max(usualLocknutGap, range.least), range.greatest);

    // What is not cut yet may still be cut, but never made longer.
    const steerer = length.state === "known" ? length : supplied;
    if (steerer.state !== "known") return noLength(length);
    const gap = top.value - steerer.value;
    const [is, upTo] = showPair(steerer.value, top.value, "length");
    const facts = [steerer, top, ...(allowed.state === "known" ? [allowed] : [])];
    if (greaterThan(gap, range.greatest)) {
      // Spacers that are left out lower the locknut; what is too little for that is not mended by them.
      const fewer = Math.max(0, under - (gap - wanted));
      const repairs: readonly Repair[] =
        spacers.state === "known" && atMost(gap - under, range.greatest)
          ? [{ kind: "set-setting", slot: "headset", setting: "locknut-spacers", value: millimetres(fewer) }]
          : [];
      // As it comes, it may be long enough: then it is only planned to be cut too short.
      const whole = top.value - wanted;
      const isPlannedShort = length.state === "known" && supplied.state === "known" && atMost(whole, supplied.value);
      const again: readonly Repair[] = isPlannedShort
        ? [{ kind: "set-setting", slot: "fork", setting: "steerer-length", value: millimetres(whole) }]
        : [];
      const mends = [
        ...(isPlannedShort ? [`cut it to ${millimetres(whole)} while that can still be done`] : []),
        ...(repairs.length > 0
          ? [`leave ${fewer > 0 ? `${millimetres(fewer)} of spacers` : "no spacers"} under the locknut`]
          : []),
        "fit a headset with less stack, or a fork with a longer steerer",
      ].join(", or ");
      return fails(
        `The steerer of ${fork.subject} is ${is} long, and the top of the locknut stands at ${upTo}: it ends ${showQuantity(gap, "length")} below the top, where it may end ${asks}, so that too few threads hold the locknut. ${mends.charAt(0).toUpperCase()}${mends.slice(1)}.`,
        steerer,
        facts,
        [...again, ...repairs, ...swaps("headset", "fork")],
      );
    }
    if (length.state !== "known") return noLength(length);
    if (lessThan(gap, range.least)) {
      const ends = lessThan(gap, 0)
        ? `stands ${showQuantity(-gap, "length")} above the top`
        : `ends ${showQuantity(gap, "length")} below the top`;
      const [cutTo, add] = [millimetres(top.value - wanted), millimetres(under + wanted - gap, "up")];
      return fails(
        `The steerer of ${fork.subject} is cut to ${is}, and the top of the locknut stands at ${upTo}: it ${ends}, where it may end ${asks}, so that the locknut stops on the steerer before it locks the bearings. Cut the steerer to ${cutTo}, or put ${add} of spacers under the locknut.`,
        length,
        facts,
        [
          { kind: "set-setting", slot: "fork", setting: "steerer-length", value: cutTo },
          { kind: "set-setting", slot: "headset", setting: "locknut-spacers", value: add },
        ],
      );
    }
    return holds(
      `The steerer of ${fork.subject} is cut to ${is}, and the top of the locknut stands at ${upTo}: it ends ${showQuantity(gap, "length")} below the top, where it may end ${asks}.`,
    );
  },
  explanation:
    "On a threaded steerer the upper bearing race is screwed down, and a locknut over a washer is turned against it. The " +
    "steerer has to reach through the lower stack, the head tube, the upper stack and whatever stands under the locknut, and " +
    "end just below its top. Too short, a few turns of thin thread hold the steering together and strip. Too long, the lip of " +
    "the locknut meets the steerer before the washer is tight, and the bearings work loose; a spacer under the locknut mends " +
    "it, as a saw does. A frame's and fork's stack (steerer less head tube) is compared with the headset's before it is " +
    "bought, since headsets of low and of tall stack are sold. A cable hanger under the locknut counts as a spacer.",
  source:
    "Wikipedia, Headset (bicycle part): with more stack than the steerer leaves the locknut does not thread on far enough, with less spacers make up for it; 1 to 4 mm: common practice, no source",
  caution:
    "A locknut that strips or works loose takes the steering away. A steerer cut too short is not mended; the makers' instructions come first.",
  examples: {
    holds: `
part frame example.tour "Tour" { head-tube-length: 138 mm }
part fork example.fork "Threaded fork" { steerer-shape: threaded }
part headset example.bearings "Bearings" { lower-stack: 13 mm; upper-stack: 24 mm }

build example "Two millimetres under the lip" {
  frame: example.tour
  fork: example.fork { steerer-length: 173 mm }
  headset: example.bearings
}
`,
    fails: `
part frame example.tour "Tour" { head-tube-length: 138 mm }
part fork example.fork "Threaded fork" { steerer-shape: threaded }
part headset example.bearings "Tall bearings" { lower-stack: 14 mm; upper-stack: 29 mm }

build example "A taller headset on the same fork" {
  frame: example.tour
  fork: example.fork { steerer-length: 173 mm }
  headset: example.bearings
}
`,
  },
});

function noLength(length: Maybe): Verdict {
  return length.state === "unknown" ? cannotTell(length) : notApplicable("no length of steerer is stated");
}
