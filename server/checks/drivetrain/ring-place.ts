import { fact, slot } from "../../model/need.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { fittedRings, requiredRingNeeds, withoutRings } from "../shared/fitted-rings.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/ring-place",
  title: "Each ring stands where it is made to stand",
  severity: "warning",
  since: 1,
  instances: [
    { name: "outer", slot: "drivetrain.chainring" },
    { name: "middle", slot: "drivetrain.middle-chainring" },
    { name: "inner", slot: "drivetrain.inner-chainring" },
  ] as const,
  needs: (instance) => ({
    ...requiredRingNeeds,
    part: slot(instance.slot),
    made: fact(instance.slot, "ring-place"),
  }),
  test(facts, { name, slot: path }) {
    const { part, made } = facts;
    const rings = fittedRings(facts);
    if (rings.state !== "known") return withoutRings(rings);
    const stands = name === "outer" && rings.rings.length === 1 ? "single" : name;
    const among = `${rings.rings.length === 1 ? "1 ring" : `${rings.rings.length} rings`} (${rings.rings.map(({ teeth }) => teeth).join("-")} t)`;
    if (made.value === stands) return holds(`${made.subject} is made to be the ${stands} ring, and stands there.`);
    return fails(
      `${made.subject} is made to be the ${made.value} ring, but of ${among} it stands as the ${stands} ring: its ramps, pins and offset are for another place, so it shifts badly or stands askew. Fit a ring made for that place.`,
      part,
      [made],
      swaps(path),
    );
  },
  explanation:
    "An outer ring has ramps and pins that lift the chain up from its neighbour, and a catch pin behind the crank; an inner " +
    "ring has neither; a single ring holds the chain by its wide and narrow teeth and lets go of it unwillingly. In the wrong " +
    "place a ring shifts badly, stands off the chainline, or cannot be bolted on with its pins. Makers say which place each of " +
    "their rings is for.",
  source: "common practice, no source",
  examples: {
    holds: `
part crankset example.arm "Arm" { rings: none }
part chainring example.big "Big" { teeth: 46 t; ring-place: outer }
part chainring example.small "Small" { teeth: 30 t; ring-place: inner }

build example "An outer ring outside" {
  drivetrain {
    crankset: example.arm
    chainring: example.big
    inner-chainring: example.small
  }
}
`,
    fails: `
part crankset example.arm "Arm" { rings: none }
part chainring example.big "Big" { teeth: 46 t; ring-place: single }
part chainring example.small "Small" { teeth: 30 t }

build example "A single ring as one of two" {
  drivetrain {
    crankset: example.arm
    chainring: example.big
    inner-chainring: example.small
  }
}
`,
  },
});
