import { stated } from "../../calculations/shared/maybe.ts";
import { ofWheel } from "../../calculations/shared/wheels.ts";
import type { Repair } from "../../model/finding.ts";
import { fact, type Known, type Maybe, optional, setting, slot, worked } from "../../model/need.ts";
import { atMost, greaterThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { lacingNeeds, refusedLacing } from "../shared/lacing.ts";
import { both } from "../shared/sentence.ts";
import { unknowns } from "../shared/unknowns.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** A nipple takes up this much either way. */
const good = 1;
/** Beyond this a spoke runs out of thread, or stands out of the nipple. */
const bearable = 2;

const sides = ["drive-side", "non-drive-side"] as const;

export default defineCheck({
  code: "wheel/spoke-length",
  title: "The spokes are as long as hub, rim and lacing ask for",
  severity: "error",
  since: 1,
  instances: wheelPlaces,
  needs: (place) => {
    const spokes = ofWheel(place.wheel, "spokes");
    return {
      ...lacingNeeds(place),
      spokes: slot(spokes),
      "drive-side": optional(setting(spokes, "length-drive-side")),
      "non-drive-side": optional(setting(spokes, "length-non-drive-side")),
      "worked drive-side": optional(worked<number>(`${place.wheel}.spoke-length-drive-side`)),
      "worked non-drive-side": optional(worked<number>(`${place.wheel}.spoke-length-non-drive-side`)),
      pastTangent: optional(worked<string>(`${place.wheel}.past-tangent`)),
      stocked: optional(fact(spokes, "lengths-stocked")),
      inHub: optional(fact(ofWheel(place.wheel, "hub"), "spoke-holes")),
      inRim: optional(fact(ofWheel(place.wheel, "rim"), "rim-holes")),
    };
  },
  test({ stocked, pastTangent, inHub, inRim, ...facts }, { wheel }) {
    const refused = refusedLacing(facts);
    if (refused) return notApplicable(refused);
    if (stated(pastTangent) === "yes") {
      return notApplicable("the spokes are found not to be laced with that many crossings");
    }
    // Lengths for a wheel that cannot be built would have somebody order spokes for it.
    if (inHub.state === "known" && inRim.state === "known" && inHub.value !== inRim.value) {
      return notApplicable(`${inHub.subject} has ${inHub.written} holes and ${inRim.subject} ${inRim.written}`);
    }
    const compared = sides.flatMap((name) => compare(name, facts[name], facts[`worked ${name}`]));
    const wrong = compared.filter(({ off }) => !atMost(Math.abs(off), good));
    const [worst] = [...wrong].sort((a, b) => Math.abs(b.off) - Math.abs(a.off));
    if (worst) {
      const spokes = ofWheel(wheel, "spokes");
      const repairs = wrong.map(
        ({ name, needed }): Repair => ({
          kind: "set-setting",
          slot: spokes,
          setting: `length-${name}`,
          value: showQuantity(nearest(needed.value, stocked), "length", { displayUnits: "metric" }),
        }),
      );
      const said = wrong.map(({ name, stated, needed, off }) => {
        const [is, wants] = showPair(stated.value, needed.value, "length", { digits: 1 });
        return `on the ${name.replace("-side", " side")} ${is}, where ${wants} are needed (${showQuantity(Math.abs(off), "length", { digits: 1 })} too ${greaterThan(off, 0) ? "long" : "short"})`;
      });
      const effect = greaterThan(worst.off, 0)
        ? "Long spokes stand out of the nipples or bottom in them"
        : "Short spokes hold by too little thread";
      return fails(
        `The build states the spokes ${both(said)}. ${effect}: cut or order them to length.`,
        worst.stated,
        [...wrong.filter((one) => one !== worst).map(({ stated }) => stated), ...wrong.map(({ needed }) => needed)],
        repairs,
        atMost(Math.abs(worst.off), bearable) ? { severity: "warning" } : {},
      );
    }
    const unknown = unknowns(...sides.flatMap((name) => [facts[name], facts[`worked ${name}`]]));
    if (unknown.length > 0) return cannotTell(...unknown);
    if (compared.length === 0) return notApplicable("no spoke length can be worked out for this lacing");
    return holds(
      `${compared.map(({ name, stated, needed }) => `${name.replace("-side", " side")}: ${stated.written} stated, ${showQuantity(needed.value, "length", { digits: 1 })} worked out`).join("; ")}.`,
      (good - Math.max(...compared.map(({ off }) => Math.abs(off)))) / good,
    );
  },
  explanation:
    "A spoke reaches from its hole in the flange to the slot of its nipple. Its length follows from the flanges, the " +
    "effective diameter of the rim, the number of spokes and the crossings, for either side by itself, since flanges stand " +
    "at different distances from the rim. A millimetre either way is taken up by the nipple. A spoke two millimetres short " +
    "breaks its nipple, and a long one stands into the tape or has no thread left to tighten. Lengths for straight-pull, " +
    "paired and uneven lacings are not guessed: the makers of hub and rim state them.",
  source: "length: Wikipedia, Spoke, section Spoke length; what a nipple takes up: common practice, no source",
  examples: {
    holds: `
part hub example.hub "Front" {
  spoke-holes: 36
  spoke-hole-diameter: 2.2 mm
  flange-diameter-left: 39 mm
  flange-diameter-right: 39 mm
  flange-offset-left: 30 mm
  flange-offset-right: 30 mm
}
part rim example.rim "Rim" { effective-rim-diameter: 602 mm; hole-offset: 0 mm }
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "The example of the encyclopedia" {
  front-wheel {
    hub: example.hub
    rim: example.rim
    spokes: example.spokes { cross: 3; length-drive-side: 292 mm; length-non-drive-side: 292 mm }
  }
  rear-wheel.spokes: none
}
`,
    fails: `
part hub example.hub "Front" {
  spoke-holes: 36
  spoke-hole-diameter: 2.2 mm
  flange-diameter-left: 39 mm
  flange-diameter-right: 39 mm
  flange-offset-left: 30 mm
  flange-offset-right: 30 mm
}
part rim example.rim "Rim" { effective-rim-diameter: 602 mm; hole-offset: 0 mm }
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Cut for two crossings" {
  front-wheel {
    hub: example.hub
    rim: example.rim
    spokes: example.spokes { cross: 3; length-drive-side: 287 mm; length-non-drive-side: 287 mm }
  }
  rear-wheel.spokes: none
}
`,
  },
});

interface Compared {
  readonly name: (typeof sides)[number];
  readonly stated: Known<number>;
  readonly needed: Known<number>;
  /** By how much the stated length is too long. */
  readonly off: number;
}

function compare(name: (typeof sides)[number], stated: Maybe<number>, needed: Maybe<number>): readonly Compared[] {
  if (stated.state !== "known" || needed.state !== "known") return [];
  return [{ name, stated, needed, off: stated.value - needed.value }];
}

/** The length to order: the nearest that can be had, if it is near enough, else the whole millimetre. */
function nearest(needed: number, stocked: Maybe<readonly number[]>): number {
  const can = stocked.state === "known" ? [...stocked.value] : [];
  const [best] = can.sort((a, b) => Math.abs(a - needed) - Math.abs(b - needed));
  return best !== undefined && atMost(Math.abs(best - needed), good) ? best : Math.round(needed);
}
