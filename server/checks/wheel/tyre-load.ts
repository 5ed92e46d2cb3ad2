import { usualFrontShare } from "../../calculations/shared/front-share.ts";
import { missingOf } from "../../calculations/shared/maybe.ts";
import { ofWheel } from "../../calculations/shared/wheels.ts";
import { showNumber } from "../../calculations/show.ts";
import { buildField, everyFact, everySlot, fact, optional, slot, worked } from "../../model/need.ts";
import { greaterThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { bikeMass, carriedMass, carriedNeeds, knownOf, massOf } from "../shared/bike-mass.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** The least share of an ordinary bicycle, in per cent, that rests on either wheel. */
const leastShare = { "front-wheel": 35, "rear-wheel": 50 } as const;

export default defineCheck({
  code: "wheel/tyre-load",
  title: "No more rests on a tyre than it bears",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    tyre: slot(ofWheel(wheel, "tyre")),
    limit: optional(fact(ofWheel(wheel, "tyre"), "load-limit")),
    masses: everyFact<number>("mass"),
    slots: everySlot(),
    rider: optional(buildField("rider.mass")),
    ...carriedNeeds(),
    frontShare: optional(worked<number>("bike.front-share")),
  }),
  test({ tyre, limit, masses, slots, rider, frontShare, ...carrying }, { name, wheel }) {
    // Many tyres print none; what the whole bicycle may weigh is asked of frame and fork.
    if (limit.state !== "known") return notApplicable(`the maker of ${tyre.subject} states no greatest load`);
    const bike = bikeMass(masses.value, slots);
    const carried = carriedMass(carrying);
    const onRacks = massOf(carrying.onFront) + massOf(carrying.onRear);
    const onRack = massOf(wheel === "front-wheel" ? carrying.onFront : carrying.onRear);
    /** What both wheels share. */
    const rest = massOf(rider) + carried.least + bike.least - onRacks;
    const missing = [...missingOf(rider), ...carried.missing, ...bike.missing];
    const atFront = frontShare.state === "known" ? frontShare.value : usualFrontShare;
    const share = wheel === "front-wheel" ? atFront : 100 - atFront;
    const bears = onRack + (rest * share) / 100;
    const [rests = "", allows = ""] = showPair(bears, limit.value, "mass");
    const [all = ""] = showPair(rest, bears, "mass");
    const least = missing.length > 0 ? "at least " : "";
    const who = `${rider.state === "known" ? "rider, kit and bicycle" : "kit and bicycle"}${onRacks > 0 ? " without what lies on racks" : ""}`;
    const by = frontShare.state === "known" ? "as the rider sits" : "as is usual";
    const rack = onRack > 0 ? `${showPair(onRack, bears, "mass")[0]} on its rack and ` : "";
    const said = `The ${name} wheel carries ${least}${rests} (${rack}${showNumber(share, 1)} % of ${least}${all} of ${who}, ${by})`;
    if (greaterThan(bears, limit.value)) {
      const rackFacts = knownOf(wheel === "front-wheel" ? carrying.onFront : carrying.onRear).filter(
        (load) => !carried.facts.includes(load),
      );
      // Where the usual share alone says so, another rider's position may still be within the limit.
      const certain =
        frontShare.state === "known" || greaterThan(onRack + (rest * leastShare[wheel]) / 100, limit.value);
      return fails(
        `${said}, but ${tyre.subject} bears ${allows}: fit a tyre that bears more, or carry less.`,
        tyre,
        [limit, ...knownOf(rider), ...carried.facts, ...rackFacts, ...bike.facts],
        swaps(ofWheel(wheel, "tyre")),
        certain ? {} : { severity: "warning" },
      );
    }
    if (missing.length > 0) return { outcome: "unknown", missing };
    return holds(`${said}, and ${tyre.subject} bears ${allows}.`, (limit.value - bears) / limit.value);
  },
  explanation:
    "A tyre bears so much and no more, at its greatest pressure. Overloaded, it bulges and runs hot, its casing breaks, and " +
    "it bottoms on the rim at the first kerb or comes off it. What rests on a wheel is its share of rider, kit and bicycle: " +
    "worked out from the rider's position where that is known, else 45 % in front and 55 % behind; what lies on a rack rests " +
    "on the wheel below it alone. Where only the usual share says that it is too much, it is a warning. A tyre whose maker " +
    "states no load is not asked about.",
  source:
    "common practice, no source: the limit is the tyre maker's own figure; shares of 45 to 55, and of 35 to 50 % on the front wheel of ordinary bicycles",
  caution: "An overloaded tyre fails at speed or in a bend. The tyre maker's limit and pressure come first.",
  examples: {
    holds: bicycle("Within the limit", "load-limit: 80 kg", "mass: 85 kg; kit-mass: 5 kg"),
    fails: bicycle("A light tyre under a load", "load-limit: 60 kg", "mass: 90 kg; kit-mass: 40 kg"),
  },
});

/** A bicycle of which all is weighed, as one frame and the tyre behind. */
function bicycle(title: string, tyre: string, rider: string): string {
  return `
part frame example.town "Town" { mass: 11 kg }
part tyre example.tyre "Tyre" { ${tyre}; mass: 500 g }

build example "${title}" {
  rider { ${rider} }
  frame: example.town
  fork: none
  rear-shock: none
  headset: none
  drivetrain {
    rear-derailleur: none
    front-derailleur: none
    cassette: none
    chain: none
    crankset: none
    chainring: none
    bottom-bracket: none
    pedals: none
    rear-controller: none
  }
  front-brake { lever: none; caliper: none }
  rear-brake { lever: none; caliper: none }
  cockpit { stem: none; handlebar: none; grips: none }
  seat { post: none; clamp: none; saddle: none }
  front-wheel { hub: none; rim: none; spokes: none; tyre: none; tube: none; rim-tape: none; axle: none }
  rear-wheel { hub: none; rim: none; spokes: none; tyre: example.tyre; tube: none; rim-tape: none; axle: none }
}
`;
}
