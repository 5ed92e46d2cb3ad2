import { fact, optional, slot, worked } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";

export default defineCheck({
  code: "drivetrain/front-derailleur-tyre",
  title: "The tyre passes behind the front derailleur",
  severity: "error",
  since: 1,
  needs: () => ({
    part: slot("drivetrain.front-derailleur"),
    limit: fact("drivetrain.front-derailleur", "widest-tyre"),
    tyre: slot("rear-wheel.tyre"),
    mount: optional(fact("frame", "front-derailleur-mount")),
    width: worked<number>("rear-wheel.tyre-width-on-rim"),
  }),
  test({ part, limit, tyre, mount, width }) {
    if (mount.state === "none") return notApplicable("the frame takes no front derailleur, which is found as such");
    const [measures, most] = showPair(width.value, limit.value, "length");
    if (atMost(width.value, limit.value)) {
      return holds(
        `${tyre.subject} measures ${measures} on its rim, and ${part.subject} leaves room for ${most}.`,
        (limit.value - width.value) / limit.value,
      );
    }
    return fails(
      `${tyre.subject} measures ${measures} on its rim, but ${part.subject} leaves room for ${most} at most: fit a narrower tyre, or another front derailleur.`,
      tyre,
      [width, limit],
      swaps("rear-wheel.tyre", "drivetrain.front-derailleur"),
    );
  },
  explanation:
    "The arm and cage of a front derailleur stand between the seat tube and the rear tyre, and on a bike with short " +
    "chainstays they come within millimetres of it. A tyre too wide rubs on them in the small ring, or the derailleur " +
    "cannot swing far enough to reach it. What counts is the width as the tyre measures on its rim, not its label. The " +
    "maker's figure is for the shortest chainstay that it names.",
  source: "common practice, no source; the limit is the derailleur maker's own figure",
  examples: {
    holds: `
part front-derailleur example.mech "Mech" { mount: brazed-on; widest-tyre: 44 mm }
part rim example.rim "Rim 21" { inner-width: 21 mm }
part tyre example.tyre "Smooth 38" { size: 38-622; measured-width: 39 mm; measured-on-rim: 21 mm }

build example "Room behind the cage" {
  drivetrain.front-derailleur: example.mech
  rear-wheel {
    rim: example.rim
    tyre: example.tyre
  }
}
`,
    fails: `
part front-derailleur example.mech "Mech" { mount: brazed-on; widest-tyre: 42 mm }
part rim example.rim "Rim 25" { inner-width: 25 mm }
part tyre example.tyre "Rough 45" { size: 45-622; measured-width: 46 mm; measured-on-rim: 25 mm }

build example "A tyre that rubs on the cage" {
  drivetrain.front-derailleur: example.mech
  rear-wheel {
    rim: example.rim
    tyre: example.tyre
  }
}
`,
  },
});
