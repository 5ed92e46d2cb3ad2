import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "wheel/spoke-count",
  title: "Hub and rim have the same number of spoke holes",
  severity: "error",
  since: 1,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    rim: slot(ofWheel(wheel, "rim")),
    inRim: fact(ofWheel(wheel, "rim"), "rim-holes"),
    inHub: fact(ofWheel(wheel, "hub"), "spoke-holes"),
    spokes: slot(ofWheel(wheel, "spokes")),
  }),
  test({ rim, inRim, inHub }, { wheel }) {
    if (inRim.value === inHub.value) {
      return holds(`${inRim.subject} and ${inHub.subject} have ${inRim.value} holes each.`);
    }
    return fails(
      `${inRim.subject} has ${inRim.value} holes, but ${inHub.subject} has ${inHub.value}: fit a rim with ${inHub.value} holes, or a hub with ${inRim.value}.`,
      rim,
      [inRim, inHub],
      swaps(ofWheel(wheel, "rim"), ofWheel(wheel, "hub")),
    );
  },
  explanation:
    "Every spoke has a hole in the hub and one in the rim, so that both have as many. A rim with more or fewer holes than " +
    "the hub leaves holes empty in a pattern that cannot be tensioned evenly. Hubs and rims that look alike are sold with " +
    "20 to 48 holes, and it is easy to order the wrong one.",
  source: "common practice, no source",
  examples: {
    holds: `
part hub example.hub "Hub" { spoke-holes: 24 }
part rim example.rim "Rim" { rim-holes: 24 }
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "A hole for every spoke" {
  front-wheel { hub: example.hub; rim: example.rim; spokes: example.spokes }
  rear-wheel.spokes: none
}
`,
    fails: `
part hub example.hub "Hub" { spoke-holes: 24 }
part rim example.rim "Rim" { rim-holes: 20 }
part spokes example.spokes "Spokes" { spoke-head: elbow }

build example "Four holes too few" {
  front-wheel { hub: example.hub; rim: example.rim; spokes: example.spokes }
  rear-wheel.spokes: none
}
`,
  },
});
