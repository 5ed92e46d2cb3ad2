import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, type Known, type Missing, optional, slot, type Unknown } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable, type Verdict } from "../define.ts";
import { dimensionFact } from "../shared/codes.ts";
import { fittedAxle, fittedAxleNeeds } from "../shared/fitted-axle.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

/** Over the end of a thicker axle the tool of a cassette's lock-ring does not go. */
const throughInside = 12;

export default defineCheck({
  code: "wheel/rotor-tool",
  title: "The rotor's lock-ring can be tightened over the axle's end",
  severity: "error",
  since: 1,
  instances: wheelPlaces,
  needs: (place) => ({
    ...fittedAxleNeeds(place),
    rotor: slot(ofBrake(place.brake, "rotor")),
    tool: fact(ofBrake(place.brake, "rotor"), "lockring-tool"),
    greatest: optional(fact(ofBrake(place.brake, "rotor"), "greatest-axle-diameter")),
    caps: optional(fact(ofWheel(place.wheel, "hub"), "end-cap-diameter")),
    fastening: optional(fact(ofWheel(place.wheel, "hub"), "axle-fastening")),
  }),
  test({ rotor, tool, greatest, caps, fastening, hubAxle, fitted }, { wheel, brake }) {
    if (tool.value === "outside")
      return holds(`The lock-ring of ${rotor.subject} is turned from outside, past any axle.`);
    const swap = swaps(ofBrake(brake, "rotor"), ofWheel(wheel, "hub"));
    const axle = fittedAxle({ hubAxle, fitted });
    const thickness: Known<number> | undefined =
      axle.state === "known" ? dimensionFact<number>(axle.value, "diameter") : undefined;
    const end = caps.state === "known" ? caps : thickness;
    // The axle alone is thinner than the caps at its ends, which only a through axle has.
    const fastened =
      fastening.state === "known"
        ? fastening.value
        : axle.state === "known" && dimensionFact<string>(axle.value, "fastening")?.value;
    const hasUnknownCaps = caps.state === "unknown" && (!fastened || fastened === "through");
    if (greatest.state === "known") {
      if (!end) return withoutAxle(unknowns(caps, axle));
      const [is, most] = showPair(end.value, greatest.value, "length");
      if (atMost(end.value, greatest.value)) {
        if (hasUnknownCaps) return cannotTell(caps);
        return holds(
          `${end.subject} is ${is} at the axle's end, and the lock-ring of ${rotor.subject} passes ${most}.`,
        );
      }
      return fails(
        `${end.subject} is ${is} at the axle's end, but the inside lock-ring of ${rotor.subject} passes ${most} at most: use a lock-ring that is turned from outside.`,
        rotor,
        [end, greatest],
        swap,
      );
    }
    if (!thickness) return withoutAxle(unknowns(axle, greatest));
    const [is, most] = showPair(thickness.value, throughInside, "length");
    if (atMost(thickness.value, throughInside)) {
      // A thin axle may have wide caps, and what this ring passes is its maker's figure alone.
      const isWider = caps.state === "known" && !atMost(caps.value, throughInside);
      if (isWider || hasUnknownCaps) {
        const field = "greatest-axle-diameter";
        const at = ofBrake(brake, "rotor");
        const what = `${field} of ${rotor.subject} (${at})`;
        const passes: Missing = { path: `${at}.${field}`, what, place: tool.place };
        return cannotTell(...unknowns(caps), { state: "unknown", missing: [passes] });
      }
      return holds(`An axle end of ${is} leaves room for the tool inside the lock-ring of ${rotor.subject}.`);
    }
    return fails(
      `${rotor.subject} has a lock-ring that is turned from inside, and the tool does not go over the end of an axle thicker than ${most}; this one is ${is}: use a lock-ring that is turned from outside.`,
      rotor,
      [tool, thickness],
      swap,
      { severity: "warning" },
    );
  },
  explanation:
    "Rotors on splines are held by a lock-ring. One kind is turned by the tool that goes inside a cassette's lock-ring; over " +
    "the wide ends of 15 and 20 mm axles that tool does not pass, and the ring itself may not either. A 12 mm axle may carry caps that are as wide, so that the " +
    "rotor's maker is asked what the ring passes. The other kind is " +
    "turned from outside by the tool of bottom-bracket cups, and goes on any hub. The two rings interchange, so that the " +
    "right one can be bought alone.",
  source: "common practice, no source; the rotor maker's own figure decides",
  examples: {
    holds: `
part rotor example.rotor "Rotor" { lockring-tool: inside; greatest-axle-diameter: 17 mm }
part hub example.hub "Front" { axle: 9x100; end-cap-diameter: 16 mm }

build example "The tool goes over the axle" {
  front-brake.rotor: example.rotor
  front-wheel.hub: example.hub
  rear-brake.rotor: none
}
`,
    fails: `
part rotor example.rotor "Rotor" { lockring-tool: inside; greatest-axle-diameter: 17 mm }
part hub example.hub "Front" { axle: 20x110; end-cap-diameter: 25 mm }

build example "An axle too thick" {
  front-brake.rotor: example.rotor
  front-wheel.hub: example.hub
  rear-brake.rotor: none
}
`,
  },
});

/** The answer where no thickness of an axle is known: an open question, unless there is no axle at all. */
function withoutAxle(open: readonly Unknown[]): Verdict {
  return open.length > 0 ? cannotTell(...open) : notApplicable("there is no axle at this wheel");
}
