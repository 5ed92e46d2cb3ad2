import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, optional } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { defineCheck, notApplicable } from "../define.ts";
import { matingPair, type OneOrMoreCodes } from "../shared/codes.ts";
import { anyFact, anySlot, readEnd } from "../shared/end.ts";
import { halfCode } from "../shared/half-mating.ts";
import { jointNamed, judgeMating, type MatingWords } from "../shared/mating.ts";
import { anyHolderFact, wheelPlaces } from "../shared/wheel-places.ts";

const words: MatingWords = {
  one: "has the bead seat",
  other: "takes",
  nothing: "takes no wheel",
  remedy: "fit a wheel of that size.",
};

export default defineCheck({
  code: "wheel/wheel-size",
  title: "The wheel is of a size that fork or frame takes",
  severity: "error",
  since: 1,
  instances: wheelPlaces,
  needs: (place) => ({
    rim: anySlot(ofWheel(place.wheel, "rim")),
    seat: anyFact<ResolvedCode>(ofWheel(place.wheel, "rim"), "bead-seat"),
    tyre: optional(fact(ofWheel(place.wheel, "tyre"), "size")),
    holder: anySlot(place.holder),
    takes: anyHolderFact<OneOrMoreCodes>(place, "beadSeats"),
  }),
  test({ rim, seat, tyre, holder, takes }, place) {
    const tyreSeat = tyre.state === "known" ? halfCode(tyre.value, "bead-seat") : undefined;
    if (
      tyreSeat &&
      seat.state === "known" &&
      takes.state === "known" &&
      !matingPair(seat.value, tyreSeat) &&
      matingPair(tyreSeat, takes.value)
    ) {
      return notApplicable("the tyre is of the right size and the rim is found not to go with it");
    }
    const joint = jointNamed(place.name === "front" ? "front-rim-fork" : "rear-rim-frame");
    return judgeMating(joint, words, readEnd(rim, seat, "bead-seat"), readEnd(holder, takes, place.facts.beadSeats));
  },
  explanation:
    "Frames and forks are made for one size of wheel, or for some that they name. A larger wheel does not turn in them, " +
    "and the blocks of a rim brake do not reach the rim of a smaller one. With disc brakes a smaller wheel turns, but " +
    "lowers the pedals toward the ground and steepens or slackens the steering. What the maker names decides.",
  source: "common practice, no source; the frame or fork maker's own list decides",
  examples: {
    holds: `
part fork example.fork "Fork" { bead-seats: 584, 622 }
part rim example.rim "Rim 584" { bead-seat: 584 }

build example "One of two sizes" {
  fork: example.fork
  front-wheel.rim: example.rim
  rear-wheel.rim: none
}
`,
    fails: `
part fork example.fork "Fork" { bead-seats: 559 }
part rim example.rim "Rim 584" { bead-seat: 584 }

build example "A wheel too large" {
  fork: example.fork
  front-wheel.rim: example.rim
  rear-wheel.rim: none
}
`,
  },
});
