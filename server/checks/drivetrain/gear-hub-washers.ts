import { stated } from "../../calculations/shared/maybe.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { either } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";

/** How a dropout holds a washer: those that move as a whole, or with the crank axis, have a slot like a vertical one. */
const shapes = {
  vertical: "vertical",
  horizontal: "horizontal",
  "track-end": "track-end",
  sliding: "vertical",
  rocking: "vertical",
  eccentric: "vertical",
} as const;

export default defineCheck({
  code: "drivetrain/gear-hub-washers",
  title: "The hub's turn-stop washers fit the dropouts",
  severity: "error",
  since: 1,
  safety: true,
  needs: () => ({
    hub: slot("rear-wheel.hub"),
    gears: fact("rear-wheel.hub", "gears"),
    washers: optional(fact("rear-wheel.hub", "dropout-washers")),
    arm: optional(fact("rear-wheel.hub", "torque-arm")),
    dropout: optional(fact("frame", "dropout")),
  }),
  test({ hub, washers, arm, dropout }) {
    if (stated(arm) === true) return notApplicable("a torque arm holds the axle, which is asked for by itself");
    if (washers.state === "none") return notApplicable(`${washers.path} is none`);
    if (dropout.state === "none") return notApplicable(`${dropout.path} is none`);
    const unknown = unknowns(arm, washers, dropout);
    if (washers.state === "unknown" || dropout.state === "unknown" || unknown.length > 0) return cannotTell(...unknown);
    const shape = shapes[dropout.value];
    if (washers.value.includes(shape)) {
      return holds(
        `${hub.subject} has turn-stop washers for ${shape} dropouts, and those of ${dropout.subject} are ${dropout.value}.`,
      );
    }
    const as = shape === dropout.value ? dropout.value : `${dropout.value}, with slots like vertical ones`;
    return fails(
      `${hub.subject} has turn-stop washers for ${either(washers.value)} dropouts only, but those of ${dropout.subject} are ${as}: get the hub's washers for ${shape} dropouts, or another hub.`,
      hub,
      [washers, dropout],
      swaps("rear-wheel.hub"),
    );
  },
  explanation:
    "The axle of a hub with gears inside is pushed round by the gears, and washers with a tongue in the slot of the " +
    "dropout hold it at the right angle. The slots of vertical, forward and backward opening dropouts lie at different " +
    "angles, so each has its own washers, and with the wrong ones the axle either turns or points its cable the wrong " +
    "way. Sliding and rocking dropouts, and frames with an eccentric, have slots like vertical ones. A hub that is held " +
    "by a torque arm is not asked.",
  source: "common practice, no source; the hub maker lists the washers for each kind of dropout",
  caution: "An axle that turns in its dropouts can let the rear wheel come loose.",
  examples: {
    holds: `
part frame example.frame "Frame" { dropout: track-end }
part hub example.hub "Five inside" { gears: 5; dropout-washers: horizontal, track-end }

build example "Washers for these dropouts" {
  frame: example.frame
  rear-wheel.hub: example.hub
}
`,
    fails: `
part frame example.frame "Frame" { dropout: vertical }
part hub example.hub "Five inside" { gears: 5; dropout-washers: horizontal, track-end }

build example "Washers for other dropouts" {
  frame: example.frame
  rear-wheel.hub: example.hub
}
`,
  },
});
