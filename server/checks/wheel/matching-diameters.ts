import { fact, type Maybe, optional } from "../../model/need.ts";
import { mate, type ResolvedCode } from "../../model/standard.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { matingPair, type OneOrMoreCodes, showCode } from "../shared/codes.ts";
import { anySlot } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";
import { anyHolderFact, wheelPlaces } from "../shared/wheel-places.ts";

const [front, rear] = wheelPlaces;

export default defineCheck({
  code: "wheel/matching-diameters",
  title: "Both wheels are of one size, unless the frame allows two",
  severity: "error",
  since: 1,
  needs: () => ({
    frontSeat: fact("front-wheel.rim", "bead-seat"),
    rearSeat: fact("rear-wheel.rim", "bead-seat"),
    rim: anySlot("rear-wheel.rim"),
    mixed: optional(fact("frame", "mixed-wheels")),
    frontTakes: anyHolderFact<OneOrMoreCodes>(front, "beadSeats"),
    rearTakes: anyHolderFact<OneOrMoreCodes>(rear, "beadSeats"),
  }),
  test({ frontSeat, rearSeat, rim, mixed, frontTakes, rearTakes }) {
    if (mate(frontSeat.value, rearSeat.value)) {
      return holds(`Both rims have the bead seat ${showCode(frontSeat.value)}.`);
    }
    if (isStranger(frontSeat.value, frontTakes) || isStranger(rearSeat.value, rearTakes))
      return notApplicable("a wheel is of a size that its fork or frame does not take, which is found as such");
    if (mixed.state === "unknown") return cannotTell(mixed);
    const sizes = `${frontSeat.subject} in front has the bead seat ${showCode(frontSeat.value)}, and ${rearSeat.subject} behind ${showCode(rearSeat.value)}`;
    if (mixed.state === "known" && mixed.value) return holds(`${sizes}; ${mixed.subject} allows that.`);
    const said =
      mixed.state === "known"
        ? `${mixed.subject} allows no mixed wheels`
        : "the frame does not say that it allows that";
    return fails(
      `${sizes}, but ${said}: fit two wheels of one size, or state mixed-wheels: yes where the frame's maker allows it.`,
      rim.state === "known" ? rim : rearSeat,
      [frontSeat, rearSeat, ...(mixed.state === "known" ? [mixed] : [])],
      [
        ...swaps("rear-wheel.rim", "front-wheel.rim", "frame"),
        ...(mixed.state === "none" ? [{ kind: "state-fact", slot: "frame", fact: "mixed-wheels" } as const] : []),
      ],
      // Many cargo and small-wheeled bikes mix their wheels by design and only forget to say so.
      mixed.state === "known" ? {} : { severity: "warning" },
    );
  },
  explanation:
    "A frame's angles and the height of its pedals suppose two wheels of one size, or the mixture it was designed for. " +
    "Another mixture tilts the whole bicycle: some 25 mm of difference in radius change the head angle by more than a " +
    "degree and move the crank axis by a centimetre. Many mountain frames allow a smaller rear wheel, and cargo bikes are " +
    "built with a smaller front one; their maker says so.",
  source: "common practice, no source",
  examples: {
    holds: `
part frame example.frame "Frame" { mixed-wheels: yes }
part rim example.large "Rim 622" { bead-seat: 622 }
part rim example.small "Rim 584" { bead-seat: 584 }

build example "Small behind, as its maker allows" {
  frame: example.frame
  front-wheel.rim: example.large
  rear-wheel.rim: example.small
}
`,
    fails: `
part frame example.frame "Frame" { mixed-wheels: no }
part rim example.large "Rim 622" { bead-seat: 622 }
part rim example.small "Rim 584" { bead-seat: 584 }

build example "Small behind in a frame for one size" {
  frame: example.frame
  front-wheel.rim: example.large
  rear-wheel.rim: example.small
}
`,
  },
});

function isStranger(seat: ResolvedCode, takes: Maybe<OneOrMoreCodes>): boolean {
  return takes.state === "known" && matingPair(seat, takes.value) === undefined;
}
