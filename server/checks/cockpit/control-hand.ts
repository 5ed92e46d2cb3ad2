import { fact, optional, setting, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { controls, levers } from "../shared/controls.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "cockpit/control-hand",
  title: "Each control is made for the hand that works it",
  severity: "error",
  since: 1,
  instances: controls,
  needs: ({ slot: path }) => ({
    control: slot(path),
    hand: fact(path, "hand"),
    side: optional(setting(path, "side")),
    clamp: optional(setting(path, "clamp")),
    rearSide: optional(setting("rear-brake.lever", "side")),
    frontSide: optional(setting("front-brake.lever", "side")),
  }),
  test({ control, hand, side, clamp, rearSide, frontSide }, { slot: path }) {
    if (isKind(control.value, "brake-lever")) return notApplicable("it is part of a lever, which is asked by itself");
    if (hand.value === "either") return holds(`${control.subject} works at either hand.`);
    // On a lever's clamp, and with nothing else said, it is at that lever's hand.
    const shared = clamp.state === "known" ? [rearSide, frontSide][levers.map(String).indexOf(clamp.value)] : undefined;
    const at = side.state === "known" ? side : (shared ?? side);
    if (at.state === "unknown") return cannotTell(at);
    if (at.state === "none") return notApplicable("nothing says which hand works it");
    if (at.value === hand.value) return holds(`${control.subject} is made for the ${hand.value} hand, and is there.`);
    return fails(
      `${control.subject} is made for the ${hand.value} hand, but the build has it at the ${at.value} one (side: ${at.value}): its levers point away from the thumb. Put it at the other hand, or fit one for the ${at.value}.`,
      control,
      [hand, at],
      [
        ...swaps(path),
        ...(side.state === "known"
          ? [{ kind: "set-setting" as const, slot: path, setting: "side", value: hand.value }]
          : []),
      ],
    );
  },
  explanation:
    "Shift controls and remotes are shaped for one thumb: at the other hand their levers stand behind the bar, or out of " +
    "reach, and their cable leaves toward the grip. A few can be turned over. Which hand works what is written in the " +
    "build; on the clamp of a brake lever a control is at that lever's hand. Brake levers, and controls built into " +
    "them, are asked by themselves, together with which brake they work.",
  source: "common practice, no source; the hand is the part maker's own statement",
  examples: {
    holds: `
part shift-controller example.thumb "Thumb, right" { hand: right }

build example "At the right hand" {
  drivetrain { rear-controller: example.thumb { side: right }; front-controller: none }
  seat.remote: none
}
`,
    fails: `
part remote example.paddle "Paddle, left" { hand: left }

build example "At the wrong thumb" {
  drivetrain { rear-controller: none; front-controller: none }
  seat.remote: example.paddle { side: right }
}
`,
  },
});
