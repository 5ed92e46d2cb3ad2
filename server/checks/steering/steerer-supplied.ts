import { notThreadless, threadlessNeeds } from "../../calculations/shared/threadless.ts";
import type { Repair } from "../../model/finding.ts";
import { fact, optional, setting, slot, worked } from "../../model/need.ts";
import { atLeast, lessThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { mostCapGap } from "../shared/cap-gap.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { millimetres } from "../shared/written.ts";

export default defineCheck({
  code: "steering/steerer-supplied",
  title: "The steerer comes long enough",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    ...threadlessNeeds,
    fork: slot("fork"),
    supplied: fact("fork", "steerer-supplied"),
    cut: optional(setting("fork", "steerer-length")),
    stack: optional(worked<number>("steering.steerer-stack")),
    gap: optional(setting("cockpit.stem", "cap-gap")),
    below: optional(setting("cockpit.stem", "spacers-below")),
  }),
  test({ fork, supplied, cut, stack, gap, below, ...kind }) {
    // A threaded one that is not cut yet is held against its locknut, by a check of its own.
    const other = notThreadless(kind);
    if (other && cut.state !== "known") return notApplicable(other);
    if (cut.state === "known") {
      const [has, wants] = showPair(supplied.value, cut.value, "length");
      if (atLeast(supplied.value, cut.value)) {
        return holds(
          `${fork.subject} comes with a steerer of ${has}, and it is cut to ${wants}.`,
          room(supplied.value, cut.value),
        );
      }
      return fails(
        `The build has the steerer at ${wants}, but that of ${fork.subject} is ${has} long as supplied: fit a fork with a longer steerer, or plan with less on it.`,
        fork,
        [cut, supplied],
        swaps("fork"),
      );
    }
    if (stack.state === "none") return notApplicable("nothing stands on the steerer");
    if (stack.state === "unknown") return cannotTell(stack);
    // The least that could be cut to is known even where the gap under the cap is not.
    const least = stack.value - (gap.state === "known" ? gap.value : mostCapGap);
    const [has, wants] = showPair(supplied.value, least, "length");
    if (lessThan(supplied.value, least)) {
      const spare = below.state === "known" ? below.value - (least - supplied.value) : -1;
      const fewer: readonly Repair[] = atLeast(spare, 0)
        ? [{ kind: "set-setting", slot: "cockpit.stem", setting: "spacers-below", value: millimetres(spare, "down") }]
        : [];
      return fails(
        `What stands on the steerer needs ${wants} of it, but that of ${fork.subject} is ${has} long as supplied: ${atLeast(spare, 0) ? `take out spacers (${millimetres(spare, "down")} are left), or ` : ""}fit a fork with a longer steerer.`,
        fork,
        [supplied, stack, ...(gap.state === "known" ? [gap] : [])],
        [...fewer, ...swaps("fork")],
      );
    }
    if (gap.state === "unknown" && lessThan(supplied.value, stack.value)) return cannotTell(...unknowns(gap));
    return holds(
      `${fork.subject} comes with a steerer of ${has}, and ${wants} are needed.`,
      room(supplied.value, least),
    );
  },
  explanation:
    "A steerer is cut, never lengthened. It has to reach through the lower bearing, the head tube, the upper bearing, the " +
    "spacers and the stem, less the few millimetres that are left under the cap. Forks for one frame size are sold with " +
    "steerers of one length, and a used fork was cut for the bike it came from. Where it is a little short, spacers can be " +
    "left out and a stem that points up brings the bar back. Extensions for steerers are not to be used.",
  source: "common practice, no source",
  caution:
    "A stem that holds on too little steerer comes off. A steerer cut too short is not mended; the fork maker's instructions come first.",
  examples: {
    holds: `
part fork example.fork "Fork" { steerer-supplied: 190 mm }

build example "Cut from a longer one" {
  fork: example.fork { steerer-length: 181 mm }
}
`,
    fails: `
part fork example.fork "Used fork" { steerer-supplied: 190 mm }
part frame example.fell "Fell" { head-tube-length: 140 mm }
part headset example.bearings "Bearings" { lower-stack: 4 mm; upper-stack: 8 mm }
part stem example.stem "Stem" { clamp-height: 40 mm }

build example "A fork from a smaller bike" {
  frame: example.fell
  fork: example.fork
  headset: example.bearings
  cockpit.stem: example.stem { spacers-below: 10 mm; spacers-above: 0 mm; cap-gap: 3 mm }
}
`,
  },
});

function room(has: number, needs: number): number {
  return (has - needs) / has;
}
