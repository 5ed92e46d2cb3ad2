import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

const heads = { elbow: "with an elbow", straight: "of straight pull" } as const;

export default defineCheck({
  code: "wheel/spoke-head",
  title: "The heads of the spokes fit the hub's flanges",
  severity: "error",
  since: 1,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    spokes: slot(ofWheel(wheel, "spokes")),
    head: fact(ofWheel(wheel, "spokes"), "spoke-head"),
    flange: fact(ofWheel(wheel, "hub"), "spoke-head"),
  }),
  test({ spokes, head, flange }, { wheel }) {
    if (head.value === flange.value) {
      return holds(`${spokes.subject} are spokes ${heads[head.value]}, and ${flange.subject} takes those.`);
    }
    return fails(
      `${spokes.subject} are spokes ${heads[head.value]}, but ${flange.subject} takes spokes ${heads[flange.value]}: fit those, or another hub.`,
      spokes,
      [head, flange],
      swaps(ofWheel(wheel, "spokes"), ofWheel(wheel, "hub")),
    );
  },
  explanation:
    "Most hubs have round holes through a thin flange, in which the elbow of a spoke hangs. Hubs for straight-pull spokes " +
    "have slots or holes along the spoke, in which a spoke with an elbow does not lie, and a straight spoke falls " +
    "through an ordinary hole. Straight-pull hubs also fix the lacing: their maker states the lengths.",
  source: "common practice, no source",
  examples: {
    holds: `
part hub example.hub "Front" { spoke-head: straight }
part spokes example.spokes "Straight" { spoke-head: straight }

build example "Straight spokes in their slots" {
  front-wheel { hub: example.hub; spokes: example.spokes }
  rear-wheel.spokes: none
}
`,
    fails: `
part hub example.hub "Front" { spoke-head: straight }
part spokes example.spokes "Elbow" { spoke-head: elbow }

build example "Elbows in a straight-pull hub" {
  front-wheel { hub: example.hub; spokes: example.spokes }
  rear-wheel.spokes: none
}
`,
  },
});
