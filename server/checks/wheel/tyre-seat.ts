import { ofWheel } from "../../calculations/shared/wheels.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { defineCheck } from "../define.ts";
import { anyFact, anySlot, readEnd } from "../shared/end.ts";
import { halfEnd } from "../shared/half-mating.ts";
import { jointNamed, judgeMating, type MatingWords } from "../shared/mating.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

const words: MatingWords = {
  one: "seats on",
  other: "has",
  nothing: "has no bead seat",
  remedy: "fit a tyre whose second number is that of the rim; there is no tolerance.",
};

export default defineCheck({
  code: "wheel/tyre-seat",
  title: "Tyre and rim have one bead-seat diameter",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    tyre: anySlot(ofWheel(wheel, "tyre")),
    size: anyFact<ResolvedCode>(ofWheel(wheel, "tyre"), "size"),
    rim: anySlot(ofWheel(wheel, "rim")),
    seat: anyFact<ResolvedCode>(ofWheel(wheel, "rim"), "bead-seat"),
  }),
  test({ tyre, size, rim, seat }, { name }) {
    return judgeMating(
      jointNamed(`${name}-tyre-rim`),
      words,
      halfEnd(readEnd(tyre, size, "size"), "bead-seat"),
      readEnd(rim, seat, "bead-seat"),
    );
  },
  explanation:
    "A tyre is held by its beads, which sit on a seat of the rim; the second number of its designation, 61-622, is the " +
    "diameter of that seat in millimetres. It has to be the rim's own: a tyre some millimetres too large blows off, and one " +
    "too small cannot be put on without harm. Names in inches mislead: 26 x 1.5 is 559 mm and 26 x 1 1/2 is 584 mm, 24 x 1 " +
    "is 520 or 540 mm, and a 28 inch tyre may be for 622, 635 or 642 mm. The printed millimetres decide.",
  source: "ISO 5775-1 and -2; the names in inches by trade glossaries",
  caution:
    "A tyre on the wrong seat comes off under pressure, at once or while riding. Eyes are protected when beads are seated; the lower seating limit of tyre and rim is never passed.",
  examples: {
    holds: `
part rim example.rim "Rim 559" { bead-seat: 559 }
part tyre example.tyre "Tyre" { size: 50-559 }

build example "One seat" {
  front-wheel { rim: example.rim; tyre: example.tyre }
  rear-wheel { rim: none; tyre: none }
}
`,
    fails: `
part rim example.rim "Rim 584" { bead-seat: 584 }
part tyre example.tyre "Tyre 26 x 1.5" { size: 40-559 }

build example "26 x 1.5 on a rim for 26 x 1 1/2" {
  front-wheel { rim: example.rim; tyre: example.tyre }
  rear-wheel { rim: none; tyre: none }
}
`,
  },
});
