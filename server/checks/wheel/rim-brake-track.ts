import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, optional } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { brakePlaceNeeds, isMisplaced } from "../shared/brake-place.ts";
import { anySlot } from "../shared/end.ts";
import { isKind } from "../shared/kind.ts";
import { jointNamed } from "../shared/mating.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "wheel/rim-brake-track",
  title: "The rim has a track for the rim brake",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...brakePlaceNeeds(place),
    rim: anySlot(ofWheel(place.wheel, "rim")),
    track: optional(fact(ofWheel(place.wheel, "rim"), "brake-track")),
    forbids: optional(fact(ofWheel(place.wheel, "rim"), "forbids")),
  }),
  test({ rim, track, forbids, ...brake }, place) {
    const { caliper } = brake;
    if (caliper.state === "none") return notApplicable("there is no brake at the wheel");
    if (caliper.state === "unknown") return cannotTell(caliper);
    if (!isKind(caliper.value, "rim-brake")) return notApplicable(`${caliper.subject} does not brake the rim`);
    if (isMisplaced(brake, jointNamed(`${place.name}-caliper-mount`), place)) {
      return notApplicable("the brake is found not to fit where it is");
    }
    if (rim.state === "none") return notApplicable("there is no rim");
    const forbidden = forbids.state === "known" && forbids.value.includes("rim-brake") ? forbids : undefined;
    const without = track.state === "known" && !track.value ? track : undefined;
    if (rim.state === "known" && (forbidden || without)) {
      return fails(
        `${caliper.subject} brakes the rim, but ${rim.subject} ${without ? "has no track for it" : "must not carry a rim brake by its maker's word"}: fit a rim with a brake track.`,
        rim,
        [caliper, ...(without ? [without] : []), ...(forbidden ? [forbidden] : [])],
        swaps(ofWheel(place.wheel, "rim"), ofBrake(place.brake, "caliper")),
      );
    }
    const unknown = unknowns(rim, track);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (track.state !== "known" || rim.state !== "known") return notApplicable("the rim states no track");
    return holds(`${rim.subject} has a track for ${caliper.subject}.`);
  },
  explanation:
    "A rim brake presses its blocks on the sides of the rim, which have to be flat, parallel and thick enough to wear. Rims " +
    "made for disc brakes have thin, painted or slanted sides: blocks grip badly, wear through the wall, and the pressure of " +
    "the tyre then bursts it. A track wears, and the rim is replaced when its groove or mark is gone.",
  source: "common practice, no source",
  caution: "A rim worn through by the brake bursts under its tyre's pressure.",
  examples: {
    holds: `
part fork example.fork "Fork" { brake-mount: rim-bosses }
part rim-brake example.arms "Arms" { mount: rim-bosses }
part rim example.rim "Rim" { brake-track: yes }

build example "Blocks on their track" {
  fork: example.fork
  front-brake.caliper: example.arms
  front-wheel.rim: example.rim
  rear-brake.caliper: none
}
`,
    fails: `
part fork example.fork "Fork" { brake-mount: rim-bosses }
part rim-brake example.arms "Arms" { mount: rim-bosses }
part rim example.rim "Rim for discs" { brake-track: no }

build example "Blocks on paint" {
  fork: example.fork
  front-brake.caliper: example.arms
  front-wheel.rim: example.rim
  rear-brake.caliper: none
}
`,
  },
});
