import { optional, setting, workshopField } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { anySlot } from "../shared/end.ts";
import { unknowns } from "../shared/unknowns.ts";

const other = { left: "right", right: "left" } as const;

export default defineCheck({
  code: "brake/front-side",
  title: "The front brake is worked by the hand that the workshop says",
  severity: "warning",
  since: 1,
  safety: true,
  needs: () => ({
    usual: optional(workshopField("front-brake-side")),
    lever: anySlot("front-brake.lever"),
    side: optional(setting("front-brake.lever", "side")),
    rear: anySlot("rear-brake.lever"),
  }),
  test({ usual, lever, side, rear }) {
    if (usual.state === "none") return notApplicable("the workshop does not say which hand works the front brake");
    if (lever.state === "none") return notApplicable("front-brake.lever is none");
    if (side.state === "none") return notApplicable(`${side.path} is none`);
    if (usual.state === "unknown" || side.state === "unknown") return cannotTell(...unknowns(usual, lever, side));
    if (side.value === usual.value) {
      return holds(`The ${side.value} hand works the front brake, as ${usual.subject} says.`);
    }
    return fails(
      `The ${side.value} hand works the front brake (side: ${side.value}), but ${usual.subject} says that where it trades the ` +
        `${usual.value} hand does, by law or habit. Change the hands over, or waive this when the rider asks for it and the law allows it.`,
      side,
      [usual],
      rear.state === "none"
        ? [{ kind: "set-setting", slot: "front-brake.lever", setting: "side", value: other[side.value] }]
        : [],
    );
  },
  explanation:
    "Which hand works which brake is a matter of law in some countries and of habit in all. A workshop says once, with " +
    "front-brake-side, how it is where it trades, and every build is held against that. A rider who is used to the other way " +
    "round may ask for it; that is a waiver with a reason, so that whoever takes the bicycle over knows. Where the workshop " +
    "does not say, this does not apply.",
  source: "common practice, no source; the law where it is ridden decides",
  caution: "A rider who pulls the wrong brake in fright can go over the bar.",
  examples: {
    holds: `
workshop example "Example" { language: 1; front-brake-side: right }

part brake-lever example.lever "Lever" { hand: either }

build example "The right hand" {
  front-brake.lever: example.lever { side: right }
}
`,
    fails: `
workshop example "Example" { language: 1; front-brake-side: right }

part brake-lever example.lever "Lever" { hand: either }

build example "The left hand" {
  front-brake.lever: example.lever { side: left }
  rear-brake.lever: none
}
`,
  },
});
