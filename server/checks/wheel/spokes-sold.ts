import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

const sold = ["spokes", "nipples"] as const;

export default defineCheck({
  code: "wheel/spokes-sold",
  title: "Spokes and nipples that are sold by the set are enough for the wheel",
  severity: "error",
  since: 1,
  instances: wheelPlaces.flatMap(({ name, wheel }) => sold.map((what) => ({ name: `${name} ${what}`, wheel, what }))),
  needs: ({ wheel, what }) => ({
    part: slot(ofWheel(wheel, what)),
    pieces: fact(ofWheel(wheel, what), "pieces"),
    holes: fact(ofWheel(wheel, "rim"), "rim-holes"),
  }),
  test({ part, pieces, holes }, { wheel, what }) {
    if (pieces.value >= holes.value) {
      return holds(`${pieces.subject} is a set of ${pieces.value}, and ${holes.subject} has ${holes.value} holes.`);
    }
    return fails(
      `${pieces.subject} is a set of ${pieces.value}, but ${holes.subject} has ${holes.value} holes: ${what} for ${holes.value - pieces.value} of them are missing, and the mass and price stated are for ${pieces.value}. Fit a set of ${holes.value} or more.`,
      part,
      [pieces, holes],
      swaps(ofWheel(wheel, what), ofWheel(wheel, "rim")),
    );
  },
  explanation:
    "Every hole of the rim takes one spoke and one nipple. Sets are made up for wheels of so many holes, and a set for a " +
    "small wheel leaves a large one short. Their mass and price are those of the set, so that a set with too few also " +
    "makes the bicycle look lighter and cheaper than it can be.",
  source: "common practice, no source",
  examples: {
    holds: `
part rim example.rim "Rim" { rim-holes: 32 }
part spokes example.spokes "Spokes" { pieces: 36 }

build example "A set with four to spare" {
  front-wheel { rim: example.rim; spokes: example.spokes; nipples: none }
  rear-wheel.spokes: none
}
`,
    fails: `
part rim example.rim "Rim" { rim-holes: 32 }
part spokes example.spokes "Spokes" { pieces: 20 }

build example "A set for a child's wheel" {
  front-wheel { rim: example.rim; spokes: example.spokes }
}
`,
  },
});
