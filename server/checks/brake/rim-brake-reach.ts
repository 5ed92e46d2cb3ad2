import { fact, optional, slot } from "../../model/need.ts";
import { greaterThan, inside } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { brakePlaceNeeds, isMisplaced } from "../shared/brake-place.ts";
import { jointNamed } from "../shared/mating.ts";
import { swaps } from "../shared/swaps.ts";
import { anyHolderFact, ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "brake/rim-brake-reach",
  title: "The rim brake reaches the rim",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...brakePlaceNeeds(place),
    part: slot(ofBrake(place.brake, "caliper")),
    arms: optional(fact(ofBrake(place.brake, "caliper"), "arms")),
    reach: optional(fact(ofBrake(place.brake, "caliper"), "reach")),
    needed: anyHolderFact<number>(place, "brakeReach"),
  }),
  test({ part, arms, reach, needed, ...brake }, place) {
    if (isMisplaced(brake, jointNamed(`${place.name}-caliper-mount`), place)) {
      return notApplicable("the brake is found not to fit where it is");
    }
    if (reach.state === "none") return notApplicable(`${reach.path} is none`);
    if (needed.state === "none") return notApplicable(`${needed.path} is none`);
    if (reach.state === "unknown" || needed.state === "unknown") {
      const open = [reach, needed].flatMap((one) => (one.state === "unknown" ? [one] : []));
      const onBosses = arms.state === "known" && (arms.value === "cantilever" || arms.value === "direct-pull");
      if (open.length === 2 && onBosses) {
        return notApplicable("arms on bosses are set by the place of the bosses, and nobody states a reach");
      }
      return cannotTell(...open);
    }
    const range = showInterval(reach.value, "length");
    const wants = showQuantity(needed.value, "length");
    if (inside(needed.value, reach.value)) {
      return holds(
        `${part.subject} reaches ${range}, and ${needed.subject} asks for ${wants}.`,
        Math.min(needed.value - reach.value.least, reach.value.greatest - needed.value) / needed.value,
      );
    }
    const low = greaterThan(needed.value, reach.value.greatest);
    return fails(
      `${part.subject} reaches ${range}, but ${needed.subject} asks for ${wants} from the bolt to the rim's track: its blocks ${low ? "stay above the track and rub the tyre" : "come below the track and slip under the rim"}. Fit a brake that reaches ${wants}.`,
      part,
      [reach, needed],
      swaps(ofBrake(place.brake, "caliper")),
    );
  },
  explanation:
    "The blocks of a rim brake slide up and down in slots of its arms, over 10 mm or so. The distance from the brake's bolt to " +
    "the middle of the rim's track has to lie within that. Frames for mudguards and wide tyres need a long reach, racing " +
    "frames a short one. Blocks that touch the tyre cut through it in one descent, and blocks that hang under the rim are " +
    "drawn into the spokes. Arms on bosses are set by the place of the bosses.",
  source: "common practice, no source",
  caution: "A block that rubs the tyre bursts it, and one that slips under the rim locks the wheel.",
  examples: {
    holds: `
part fork example.fork "Fork" { brake-mount: centre-bolt; brake-reach: 61 mm }
part rim-brake example.brake "Long reach" { mount: centre-bolt; reach: 55 to 73 mm }

build example "Within its slots" {
  fork: example.fork
  front-brake.caliper: example.brake
  rear-brake.caliper: none
}
`,
    fails: `
part fork example.fork "Fork" { brake-mount: centre-bolt; brake-reach: 61 mm }
part rim-brake example.brake "Short reach" { mount: centre-bolt; reach: 39 to 49 mm }

build example "A racing brake on a town fork" {
  fork: example.fork
  front-brake.caliper: example.brake
  rear-brake.caliper: none
}
`,
  },
});
