import { stated } from "../../calculations/shared/maybe.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { brakePlaceNeeds, isMisplaced } from "../shared/brake-place.ts";
import { isKind } from "../shared/kind.ts";
import { jointNamed } from "../shared/mating.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { anyHolderFact, ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "brake/rim-brake-stop",
  title: "A cantilever brake has a stop for its cable",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...brakePlaceNeeds(place),
    part: slot(ofBrake(place.brake, "caliper")),
    arms: optional(fact(ofBrake(place.brake, "caliper"), "arms")),
    needs: optional(fact(ofBrake(place.brake, "caliper"), "cable-stop-needed")),
    stop: anyHolderFact<boolean>(place, "cableStop"),
  }),
  test({ part, arms, needs, stop, ...brake }, place) {
    if (!isKind(part.value, "rim-brake")) return notApplicable(`${part.subject} is no rim brake`);
    // Cantilevers are always pulled up by a straddle cable; what the brake states itself comes first.
    if (needs.state === "none" && arms.state === "unknown") return cannotTell(arms);
    const asks = needs.state === "known" ? needs.value : stated(arms) === "cantilever";
    if (!asks) return notApplicable(`${part.subject} needs no stop on the ${place.holder}`);
    if (isMisplaced(brake, jointNamed(`${place.name}-caliper-mount`), place)) {
      return notApplicable("the brake is found not to fit where it is");
    }
    const unknown = unknowns(needs, stop);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (stop.state === "known" && stop.value)
      return holds(`${stop.subject} has a stop for the cable of ${part.subject}.`);
    const name = stop.state === "known" ? stop.subject : `the ${place.holder}`;
    return fails(
      `${part.subject} is pulled up by its cable and needs a stop for the housing above it, but ${name} has none: fit a cable hanger at the ${place.name === "front" ? "headset or fork crown" : "seat clamp"} and state it, or arms with direct pull.`,
      part,
      [
        ...(needs.state === "known" ? [needs] : arms.state === "known" ? [arms] : []),
        ...(stop.state === "known" ? [stop] : []),
      ],
      swaps(ofBrake(place.brake, "caliper"), place.holder),
    );
  },
  explanation:
    "Cantilever arms are pulled upward by a straddle cable in the middle above the wheel, and the housing of the brake cable " +
    "has to end at a fixed stop there: a hanger at the headset, a bridge of the stays, a bolt in the crown. Frames made for " +
    "direct-pull arms or discs have none. Direct-pull arms carry their own stop. Without one nothing pulls. A hook over " +
    "the front tyre also keeps the straddle cable off it when the brake cable breaks.",
  source: "common practice, no source",
  caution: "A straddle cable that falls on a knobbly front tyre throws the rider.",
  examples: {
    holds: `
part frame example.frame "Frame" { rear-brake-mount: rim-bosses; rear-cable-stop: yes }
part rim-brake example.brake "Cantilevers" { mount: rim-bosses; arms: cantilever }

build example "A bridge with a stop" {
  frame: example.frame
  rear-brake.caliper: example.brake
  front-brake.caliper: none
}
`,
    fails: `
part frame example.frame "Frame" { rear-brake-mount: rim-bosses; rear-cable-stop: no }
part rim-brake example.brake "Cantilevers" { mount: rim-bosses; arms: cantilever }

build example "Nothing for the housing to end at" {
  frame: example.frame
  rear-brake.caliper: example.brake
  front-brake.caliper: none
}
`,
  },
});
