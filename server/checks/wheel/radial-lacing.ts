import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, type Known, type Maybe, optional, slot } from "../../model/need.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { anySlot } from "../shared/end.ts";
import { lacedSides, lacingNeeds } from "../shared/lacing.ts";
import { unknowns } from "../shared/unknowns.ts";
import { ofBrake, wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "wheel/radial-lacing",
  title: "A wheel that is driven or braked at its hub has crossed spokes",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    ...lacingNeeds(place),
    spokes: slot(ofWheel(place.wheel, "spokes")),
    rotor: anySlot(ofBrake(place.brake, "rotor")),
    drum: optional(fact(ofWheel(place.wheel, "hub"), "drum-brake")),
  }),
  test({ spokes, rotor, drum, ...facts }, place) {
    const sides = lacedSides(facts);
    const crossed = sides.find(({ cross }) => cross.state === "known" && cross.value > 0);
    if (crossed)
      return holds(
        `The ${crossed.name.replace("-side", " side")} of ${spokes.subject} is crossed, and turns hub and rim together.`,
      );
    const unknown = unknowns(...sides.map(({ cross }) => cross));
    if (unknown.length > 0) return cannotTell(...unknown);
    const radial = sides.map(({ cross }) => cross).filter((cross): cross is Known<number> => cross.state === "known");
    const [first] = radial;
    if (!first) return holds("No crossing is stated, and none is asked for.");

    const load = place.name === "rear" ? "the chain drives it" : twisted(rotor, drum);
    if (load === undefined) {
      const open = unknowns(rotor, drum);
      return open.length > 0
        ? cannotTell(...open)
        : holds(`Both sides are radial, and nothing turns the hub of the ${place.name} wheel.`);
    }
    return fails(
      `Both sides of the ${place.name} wheel are radial (cross: 0), but ${load}: radial spokes let the hub turn in the rim until it winds them up. Cross them on one side at least, two or three times.`,
      first,
      [...radial.filter((one) => one !== first), ...(place.name === "front" && rotor.state === "known" ? [rotor] : [])],
      [{ kind: "set-setting", slot: ofWheel(place.wheel, "spokes"), setting: "cross", value: "2" }],
    );
  },
  explanation:
    "Radial spokes run straight from hub to rim and cannot turn one by the other until the hub has turned far enough to " +
    "wind them up. A chain at the rear, and a disc or drum brake at either hub, twist the hub with more force than the " +
    "rider's whole weight. Crossed spokes, which leave the flange nearly as tangents, carry that. One crossed side may " +
    "carry it for both where the hub's shell is stiff enough and its maker allows it. Front wheels for rim brakes may be " +
    "radial where the hub's maker allows it.",
  source: "common practice, no source",
  caution: "A wheel whose spokes wind up collapses under hard braking.",
  examples: {
    holds: `
part spokes example.spokes "Spokes" { spoke-head: elbow }
part rotor example.rotor "Rotor" { diameter: 165 mm }
part hub example.hub "Front" { wheel: front }

build example "Crossed beside the rotor" {
  front-brake.rotor: example.rotor
  front-wheel { hub: example.hub; spokes: example.spokes { cross: 0; cross-non-drive-side: 2 } }
  rear-wheel.spokes: none
}
`,
    fails: `
part spokes example.spokes "Spokes" { spoke-head: elbow }
part rotor example.rotor "Rotor" { diameter: 165 mm }
part hub example.hub "Front" { wheel: front }

build example "Radial beside the rotor" {
  front-brake.rotor: example.rotor
  front-wheel { hub: example.hub; spokes: example.spokes { cross: 0 } }
  rear-wheel.spokes: none
}
`,
  },
});

/** What turns the hub of a front wheel against its rim; `undefined` when nothing is known to. */
function twisted(rotor: Maybe, drum: Maybe<boolean>): string | undefined {
  if (rotor.state === "known") return `${rotor.subject} brakes its hub`;
  if (drum.state === "known" && drum.value) return `${drum.subject} has a brake inside`;
  return undefined;
}
