import { fact, slot } from "../../model/need.ts";
import { atLeast } from "../../values/compare.ts";
import { showNumber } from "../../values/show.ts";
import { defineCheck, fails, holds } from "../define.ts";
import { fittedRings, requiredRingNeeds, withoutRings } from "../shared/fitted-rings.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/gear-hub-ratio",
  title: "Ring and cog do not gear the hub lower than its maker allows",
  severity: "error",
  since: 1,
  needs: () => ({
    ...requiredRingNeeds,
    hub: slot("rear-wheel.hub"),
    gears: fact("rear-wheel.hub", "gears"),
    least: fact("rear-wheel.hub", "least-primary-ratio"),
    cogs: fact("drivetrain.cassette", "cogs"),
  }),
  test(facts) {
    const { least, cogs } = facts;
    const rings = fittedRings(facts);
    if (rings.state !== "known") return withoutRings(rings);
    const ring = rings.rings[rings.rings.length - 1] ?? rings.rings[0];
    const cog = Math.max(...cogs.value);
    const ratio = ring.teeth / cog;
    const bound = least.value;
    const [shown, shownBound] = apart(ratio, bound);
    const sum = `${ring.teeth} t ÷ ${cog} t = ${shown}`;
    if (atLeast(ratio, bound)) {
      return holds(`Ring to cog ${sum}, and ${least.subject} allows ${shownBound} or more.`, (ratio - bound) / bound);
    }
    const fewest = Math.ceil(bound * cog - 1e-9);
    const most = Math.floor(ring.teeth / bound + 1e-9);
    return fails(
      `Ring to cog ${sum}, but ${least.subject} allows no less than ${shownBound}: fit a ring of ${fewest} t or more, or a cog of ${most} t or fewer.`,
      ring.part,
      [least, ring.fact, cogs],
      swaps(ring.slot, "drivetrain.cassette"),
    );
  },
  explanation:
    "The smaller the ring against the cog, the slower the hub's driver turns and the greater the torque that the same " +
    "push on the pedals puts into it. Hubs with gears inside have a limit to that, set by their smallest pinions, and " +
    "their makers state it as the least ratio of ring to cog. Below it the gears inside strip on the first steep climb, " +
    "and the guarantee is gone. The limit counts for the smallest ring with the largest cog that the build has.",
  source: "common practice, no source; the limit is the hub maker's own figure",
  examples: {
    holds: `
part hub example.hub "Eight inside" { gears: 8; least-primary-ratio: 1.8 }
part crankset example.crank "Crank" { rings: 38 t }
part sprocket example.cog "Cog 20" { cogs: 20 t }

build example "Geared high enough" {
  drivetrain {
    crankset: example.crank
    cassette: example.cog
  }
  rear-wheel.hub: example.hub
}
`,
    fails: `
part hub example.hub "Eight inside" { gears: 8; least-primary-ratio: 1.8 }
part crankset example.crank "Crank" { rings: 33 t }
part sprocket example.cog "Cog 20" { cogs: 20 t }

build example "Geared too low" {
  drivetrain {
    crankset: example.crank
    cassette: example.cog
  }
  rear-wheel.hub: example.hub
}
`,
  },
});

/** Two ratios with as many decimals as it takes to tell them apart. */
function apart(one: number, other: number): readonly [string, string] {
  for (let digits = 2; digits < 6; digits++) {
    const shown = [showNumber(one, digits), showNumber(other, digits)] as const;
    if (shown[0] !== shown[1]) return shown;
  }
  return [showNumber(one, 6), showNumber(other, 6)];
}
