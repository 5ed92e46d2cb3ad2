import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { brakePlaceNeeds, isMisplaced } from "../shared/brake-place.ts";
import { isKind } from "../shared/kind.ts";
import { jointNamed } from "../shared/mating.ts";
import { both } from "../shared/sentence.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { anyHolderFact, ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "brake/forbidden",
  title: "Fork, frame and rim may carry this kind of brake",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...brakePlaceNeeds(place),
    part: slot(ofBrake(place.brake, "caliper")),
    byHolder: anyHolderFact<readonly string[]>(place, "forbids"),
    byRim: optional(fact(ofWheel(place.wheel, "rim"), "forbids")),
    pads: optional(fact(ofBrake(place.brake, "pads"), "compound")),
  }),
  test({ part, byHolder, byRim, pads, ...brake }, place) {
    if (isMisplaced(brake, jointNamed(`${place.name}-caliper-mount`), place)) {
      return notApplicable("the brake is found not to fit where it is");
    }
    const onRim = isKind(part.value, "rim-brake");
    const word = onRim ? "rim-brake" : "disc-brake";
    // That a rim must not carry a rim brake is found with its brake track.
    const judges = onRim ? [byHolder] : [byHolder, byRim];
    const refusing = judges.flatMap((one) => (one.state === "known" && one.value.includes(word) ? [one] : []));
    if (refusing.length > 0) {
      return fails(
        `${part.subject} is a ${onRim ? "rim" : "disc"} brake, which ${refusing.length > 1 ? "the makers" : "the maker"} of ${both(refusing.map(({ subject }) => subject))} ${refusing.length > 1 ? "forbid" : "forbids"}: fit another kind of brake, or parts that may carry it.`,
        part,
        refusing,
        swaps(ofBrake(place.brake, "caliper"), place.holder),
      );
    }
    const metal = [byHolder, byRim].find((one) => one.state === "known" && one.value.includes("sintered-pads"));
    if (metal?.state === "known" && pads.state === "known" && pads.value === "sintered") {
      return fails(
        `${pads.subject} are sintered, which the maker of ${metal.subject} forbids: fit other pads.`,
        part,
        [pads, metal],
        swaps(ofBrake(place.brake, "pads")),
      );
    }
    const unknown = unknowns(byHolder, ...(onRim ? [] : [byRim]));
    if (unknown.length > 0) return cannotTell(...unknown);
    return holds(`Neither ${place.holder} nor rim forbids ${part.subject}.`);
  },
  explanation:
    "A brake that can be bolted on is not always allowed. Some forks and stays are too light for the pull of a disc at one leg, " +
    "some rims for it at the spokes; carbon rims may forbid rim brakes, for their heat. What a maker forbids voids its word " +
    "for the part, and the reason is usually a test that failed. A hub brake with an arm is asked about with the drivetrain.",
  source: "the makers' own statements",
  caution: "A fork or rim that is not made for a brake can fail under it without warning.",
  examples: {
    holds: `
part fork example.fork "Fork" { brake-mount: rim-bosses; forbids: disc-brake }
part rim-brake example.brake "Arms" { mount: rim-bosses }

build example "The brake that it is made for" {
  fork: example.fork
  front-brake.caliper: example.brake
  front-wheel.rim: none
  rear-brake.caliper: none
}
`,
    fails: `
part fork example.fork "Light fork" { brake-mount: post-74; forbids: disc-brake }
part caliper example.caliper "Caliper" { mount: post-74 }

build example "A disc where its maker forbids it" {
  fork: example.fork
  front-brake.caliper: example.caliper
  front-wheel.rim: none
  rear-brake.caliper: none
}
`,
  },
});
