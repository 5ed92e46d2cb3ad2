import { ofWheel } from "../../calculations/shared/wheels.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { isOtherSize, thruAxleNeeds } from "../shared/thru-axle.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** Pitches are 1.0, 1.5 or 1.75 mm; this is only what rounding can make of one. */
const rounding = 0.01;

export default defineCheck({
  code: "wheel/axle-thread",
  title: "The thru axle has the thread of the fork or frame",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => thruAxleNeeds<number>(place, "axle-thread-pitch", "axleThreadPitch"),
  test({ axle, own, asked, made, takes }, place) {
    if (isOtherSize(made, takes)) return notApplicable("the axle is of another size, which is found as such");
    const [has, wants] = showPair(own.value, asked.value, "length");
    if (atMost(Math.abs(own.value - asked.value), rounding)) {
      return holds(`${axle.subject} has a thread of ${has} pitch, and ${asked.subject} takes it.`);
    }
    return fails(
      `${axle.subject} has a thread of ${has} pitch, but ${asked.subject} takes one of ${wants}: fit an axle with a pitch of ${wants}.`,
      axle,
      [own, asked],
      swaps(ofWheel(place.wheel, "axle"), place.holder),
    );
  },
  explanation:
    "Thru axles of one diameter and width come with threads of 1.0, 1.5 or 1.75 mm pitch. A thread of another pitch " +
    "starts for a turn or two and then binds, and whoever goes on strips the thread of the dropout or insert. One that " +
    "holds by a turn feels tight and lets go. The axle that came with the frame or fork has the right thread; a " +
    "replacement is chosen by diameter, pitch, length and seat.",
  source: "common practice, no source; pitches from memory",
  caution: "An axle that is held by a turn or two of thread lets the wheel come out while riding.",
  examples: {
    holds: `
part frame example.frame "Frame" { rear-axle-thread-pitch: 1.75 mm }
part thru-axle example.axle "Axle" { axle-thread-pitch: 1.75 mm }

build example "One pitch" {
  frame: example.frame
  rear-wheel.axle: example.axle
  front-wheel.axle: none
}
`,
    fails: `
part frame example.frame "Frame" { rear-axle-thread-pitch: 1.75 mm }
part thru-axle example.axle "Axle" { axle-thread-pitch: 1.5 mm }

build example "Two pitches" {
  frame: example.frame
  rear-wheel.axle: example.axle
  front-wheel.axle: none
}
`,
  },
});
