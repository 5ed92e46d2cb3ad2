import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, setting, slot } from "../../model/need.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "wheel/tyre-direction",
  title: "A tyre with a direction is mounted with its arrow",
  severity: "information",
  since: 1,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    tyre: slot(ofWheel(wheel, "tyre")),
    reversed: setting(ofWheel(wheel, "tyre"), "mounted-reversed"),
    directional: fact(ofWheel(wheel, "tyre"), "directional"),
  }),
  test({ tyre, reversed, directional }, { wheel }) {
    if (!reversed.value) return holds(`${tyre.subject} is mounted with its arrow.`);
    if (!directional.value) return notApplicable(`${tyre.subject} has no direction`);
    return fails(
      `The build mounts ${tyre.subject} against its arrow (mounted-reversed: yes), and its tread has a direction: mount it with the arrow, unless it is meant so.`,
      tyre,
      [reversed, directional],
      [
        { kind: "set-setting", slot: ofWheel(wheel, "tyre"), setting: "mounted-reversed", value: "no" },
        ...swaps(ofWheel(wheel, "tyre")),
      ],
    );
  },
  explanation:
    "An arrow on the side of many tyres shows which way they turn: their tread sheds mud and grips by braking in front, and " +
    "by driving behind. Some riders turn a front tyre round for the rear wheel on purpose, and some makers print two arrows " +
    "for that. So this is said and no fault; a build that says nothing of it is mounted with the arrow.",
  source: "common practice, no source",
  examples: {
    holds: `
part tyre example.tyre "Tyre" { directional: yes }

build example "With the arrow, and said so" {
  rear-wheel.tyre: example.tyre { mounted-reversed: no }
  front-wheel.tyre: none
}
`,
    fails: `
part tyre example.tyre "Tyre" { directional: yes }

build example "Turned round" {
  rear-wheel.tyre: example.tyre { mounted-reversed: yes }
  front-wheel.tyre: none
}
`,
  },
});
