import { spokeGeometry } from "../../calculations/shared/spoke-geometry.ts";
import { ofWheel } from "../../calculations/shared/wheels.ts";
import type { Repair } from "../../model/finding.ts";
import { fact, type Known, type Maybe, optional, slot } from "../../model/need.ts";
import { atLeast, atMost } from "../../values/compare.ts";
import { showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { lacedSides, lacingNeeds, refusedLacing } from "../shared/lacing.ts";
import { both } from "../shared/sentence.ts";
import { unknowns } from "../shared/unknowns.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** No spoke is past its tangent below this angle, since no flange is half as large as its rim. */
const alwaysPossible = 60;
/** Every spoke is from here on, however small the flange. */
const neverPossible = 90;

export default defineCheck({
  code: "wheel/lacing-possible",
  title: "The spokes can be laced with that many crossings",
  severity: "error",
  since: 1,
  instances: wheelPlaces,
  needs: (place) => ({
    ...lacingNeeds(place),
    spokes: slot(ofWheel(place.wheel, "spokes")),
    holes: fact(ofWheel(place.wheel, "hub"), "spoke-holes"),
    "drive-side": optional(fact(ofWheel(place.wheel, "hub"), "flange-diameter-right")),
    "non-drive-side": optional(fact(ofWheel(place.wheel, "hub"), "flange-diameter-left")),
    rim: optional(fact(ofWheel(place.wheel, "rim"), "effective-rim-diameter")),
  }),
  test({ spokes, holes, rim, ...facts }, { wheel }) {
    const refused = refusedLacing(facts);
    if (refused) return notApplicable(refused);
    const perSide = holes.value / 2;
    if (!Number.isInteger(perSide)) {
      return fails(
        `${holes.subject} has ${holes.value} holes, which do not share out evenly on two sides: state lacing as what it is, or fit a hub with an even number.`,
        spokes,
        [holes],
        [{ kind: "swap-part", slot: ofWheel(wheel, "hub") }],
      );
    }
    const open: Maybe[] = [];
    const said: { readonly side: string; readonly makes: string }[] = [];
    for (const { name, cross, setting } of lacedSides(facts)) {
      if (cross.state !== "known") {
        open.push(cross);
        continue;
      }
      const flange = facts[name];
      const most = mostCrossings(perSide, flange, rim);
      const angle = angleOf(cross.value, perSide);
      if (atMost(cross.value, most.sure)) {
        said.push({
          side: name.replace("-side", " side"),
          makes: `${cross.value} crossings make ${showQuantity(angle, "angle")}`,
        });
      } else if (cross.value > most.possible) {
        const repairs: readonly Repair[] = [
          { kind: "set-setting", slot: ofWheel(wheel, "spokes"), setting, value: String(most.possible) },
        ];
        return fails(
          `${cross.value} crossings of ${perSide} spokes on the ${name.replace("-side", " side")} turn a spoke ${showQuantity(angle, "angle")} round the hub, beyond the tangent of its flange: it would lie over the heads of its neighbours. Lace ${most.possible} crossings.`,
          cross,
          [holes, ...[flange, rim].filter((one): one is Known<number> => one.state === "known")],
          repairs,
        );
      } else open.push(flange, rim);
    }
    const unknown = unknowns(...open);
    if (unknown.length > 0) return cannotTell(...unknown);
    if (said.length === 0) return notApplicable("no crossing is stated");
    const alike = said.every(({ makes }) => makes === said[0]?.makes);
    const turned = alike
      ? `${said[0]?.makes ?? ""} on either side`
      : both(said.map(({ side, makes }) => `${makes} on the ${side}`));
    return holds(`Of ${holes.value} spokes of ${holes.subject}, ${turned}: no spoke passes its flange's tangent.`);
  },
  explanation:
    "The more spokes each one crosses, the further its hole lies round the hub from the place where it meets the rim. Where " +
    "it leaves the flange as a tangent, the hub turns the rim most directly. Beyond that it would have to bend over the " +
    "heads of the next spokes. So 36 spokes take four crossings, 32 and 28 take three, and 24 and 20 take two; large " +
    "flanges take fewer. Lacings other than even ones, and straight-pull hubs, follow their maker's plan.",
  source: "geometry, re-derived: a spoke is a tangent where cos(360° × crossings ÷ spokes of a side) is flange ÷ rim",
  examples: {
    holds: `
part hub example.hub "Front" { spoke-holes: 36; flange-diameter-left: 40 mm; flange-diameter-right: 40 mm }
part rim example.rim "Rim" { effective-rim-diameter: 596 mm }
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Four crossings of 36" {
  front-wheel { hub: example.hub; rim: example.rim; spokes: example.spokes { cross: 4 } }
  rear-wheel.spokes: none
}
`,
    fails: `
part hub example.hub "Front" { spoke-holes: 24; flange-diameter-left: 40 mm; flange-diameter-right: 40 mm }
part rim example.rim "Rim" { effective-rim-diameter: 596 mm }
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Three crossings of 24" {
  front-wheel { hub: example.hub; rim: example.rim; spokes: example.spokes { cross: 3 } }
  rear-wheel.spokes: none
}
`,
  },
});

/** Degrees round the hub between the two ends of a spoke. */
function angleOf(cross: number, perSide: number): number {
  return (360 * cross) / perSide;
}

/** Up to how many crossings are surely possible, and beyond how many none are. */
function mostCrossings(perSide: number, flange: Maybe<number>, rim: Maybe<number>): { sure: number; possible: number } {
  const atAngle = (possible: (angle: number, cross: number) => boolean): number => {
    let cross = 0;
    while (possible(angleOf(cross + 1, perSide), cross + 1)) cross += 1;
    return cross;
  };
  if (flange.state === "known" && rim.state === "known" && flange.value < rim.value) {
    const side = { flangeDiameter: flange.value, rimDiameter: rim.value, offset: 0, holeDiameter: 0, spokes: perSide };
    const most = atAngle((angle, cross) => angle < 180 && !spokeGeometry({ ...side, cross }).pastTangent);
    return { sure: most, possible: most };
  }
  return {
    sure: atAngle((angle) => atMost(angle, alwaysPossible)),
    possible: atAngle((angle) => !atLeast(angle, neverPossible)),
  };
}
