import { fact, optional, slot } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionOf } from "../shared/codes.ts";
import { bandTolerance } from "../shared/controls.ts";
import { swaps } from "../shared/swaps.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

/** Which of the two makes of lever a shape of bar takes; shapes that are missing are held by neither. */
const leversFor: Readonly<Record<string, "flat" | "drop">> = {
  flat: "flat",
  riser: "flat",
  "swept-back": "flat",
  drop: "drop",
};

export default defineCheck({
  code: "cockpit/lever-bar",
  title: "Brake levers are made for the shape of the bar",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ brake }) => ({
    lever: slot(ofBrake(brake, "lever")),
    made: fact(ofBrake(brake, "lever"), "bars"),
    bar: slot("cockpit.handlebar"),
    shape: fact("cockpit.handlebar", "bar"),
    mount: optional(fact(ofBrake(brake, "lever"), "mount")),
    diameter: optional(fact("cockpit.handlebar", "control-diameter")),
  }),
  test({ lever, made, bar, shape, mount, diameter }, { brake }) {
    if (made.value === "any") return holds(`${lever.subject} is made for bars of any shape.`);
    const takes = leversFor[shape.value];
    if (takes === undefined) return notApplicable("levers are not made apart for bars of this shape");
    const is = shape.value === "drop" ? "a drop bar" : "no drop bar";
    if (takes === made.value)
      return holds(
        `${lever.subject} is made for ${made.value} bars, and ${bar.subject} is ${is} (bar: ${shape.value}).`,
      );
    const band = mount.state === "known" ? dimensionOf<number>(mount.value, "diameter") : undefined;
    if (band !== undefined && diameter.state === "known" && greaterThan(Math.abs(band - diameter.value), bandTolerance))
      return notApplicable("its band does not go round the bar, which is found as such");
    return fails(
      `${lever.subject} is made for ${made.value} bars, but ${bar.subject} is ${is} (bar: ${shape.value}): the blade stands where the hand does not reach it. Fit a lever made for ${takes} bars.`,
      lever,
      [made, shape],
      swaps(ofBrake(brake, "lever"), "cockpit.handlebar"),
    );
  },
  explanation:
    "A lever for drop bars stands forward of the bend, and its blade is squeezed from the hood or from the drops. A lever " +
    "for flat bars lies along the grip. Each is shaped for one hold: on the other bar the blade points away from the " +
    "fingers, the hand has nothing to rest on, and the clamp sits on a bend it was not made for. Risers and swept-back " +
    "bars take levers for flat bars. For bullhorns and base bars of extensions the lever's maker says what is allowed.",
  source: "common practice, no source; what a lever is made for is its maker's own statement",
  caution: "A rider who cannot reach the lever from every hold cannot stop in time.",
  examples: {
    holds: `
part brake-lever example.hood "Hood" { bars: drop }
part handlebar example.drop "Drop 42" { bar: drop }

build example "Hoods on a drop bar" {
  front-brake.lever: example.hood
  rear-brake.lever: example.hood
  cockpit.handlebar: example.drop
}
`,
    fails: `
part brake-lever example.stop "Stop" { bars: flat; mount: band-23.8 }
part handlebar example.drop "Drop 42" { bar: drop; control-diameter: 23.8 mm }

build example "A flat-bar lever on drops" {
  front-brake.lever: example.stop
  rear-brake.lever: none
  cockpit.handlebar: example.drop
}
`,
  },
});
