import { ofWheel } from "../../calculations/shared/wheels.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import { defineCheck, notApplicable } from "../define.ts";
import { anyFact, anySlot, readEnd } from "../shared/end.ts";
import { axlesDiffer, fittedAxle, fittedAxleNeeds } from "../shared/fitted-axle.ts";
import { jointNamed, judgeMating, type MatingWords } from "../shared/mating.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

const words: MatingWords = {
  one: "is a thru axle of",
  other: "takes",
  nothing: "takes no thru axle",
  remedy: "fit a thru axle of that size.",
};

export default defineCheck({
  code: "wheel/thru-axle",
  title: "The thru axle is of the size that fork or frame takes",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...fittedAxleNeeds(place),
    axle: anySlot(ofWheel(place.wheel, "axle")),
    made: anyFact<ResolvedCode>(ofWheel(place.wheel, "axle"), "axle"),
    holder: anySlot(place.holder),
  }),
  test({ axle, made, holder, hubAxle, fitted, takes }, place) {
    const ofHub = fittedAxle({ hubAxle, fitted });
    if (
      made.state === "known" &&
      ofHub.state === "known" &&
      mate(made.value, ofHub.value) &&
      axlesDiffer({ hubAxle, fitted, takes })
    ) {
      return notApplicable("the axle goes with the hub, and the hub is found not to fit");
    }
    return judgeMating(
      jointNamed(`${place.name}-thru-axle`),
      words,
      readEnd(axle, made, "axle"),
      readEnd(holder, takes, place.facts.axle),
    );
  },
  explanation:
    "A thru axle passes through one dropout and the hub and screws into the other dropout. Its diameter has to be that of " +
    "the dropouts, and its length that of the hub between them. An axle for a narrower hub does not reach the thread, and " +
    "a thinner one is not held at all. Axles of one size still differ in thread pitch, in length under the head and in " +
    "the seat of the head, which are asked about one by one.",
  source: "common practice, no source",
  caution: "A wheel whose axle is not screwed home can come out while riding.",
  examples: {
    holds: `
part fork example.fork "Fork" { axle: 15x100 }
part thru-axle example.axle "Axle 15" { axle: 15x100 }

build example "An axle of this size" {
  fork: example.fork
  front-wheel.axle: example.axle
  rear-wheel.axle: none
}
`,
    fails: `
part fork example.fork "Fork" { axle: 15x100 }
part thru-axle example.axle "Axle 12" { axle: 12x100 }

build example "An axle too thin" {
  fork: example.fork
  front-wheel.axle: example.axle
  rear-wheel.axle: none
}
`,
  },
});
