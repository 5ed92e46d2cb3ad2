import { tyreSize } from "../../calculations/shared/tyre-size.ts";
import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { inside, lessThan } from "../../values/compare.ts";
import { showInterval, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { matingPair, showCode, showCodes } from "../shared/codes.ts";
import { halfCode, lacksHalf } from "../shared/half-mating.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "wheel/tube-size",
  title: "The inner tube is for the tyre's size",
  severity: "error",
  since: 1,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    tube: slot(ofWheel(wheel, "tube")),
    seats: fact(ofWheel(wheel, "tube"), "bead-seats"),
    widths: fact(ofWheel(wheel, "tube"), "tyre-widths"),
    size: fact(ofWheel(wheel, "tyre"), "size"),
    rim: optional(fact(ofWheel(wheel, "rim"), "bead-seat")),
  }),
  test({ tube, seats, widths, size, rim }, { wheel }) {
    const seat = halfCode(size.value, "bead-seat");
    const labelled = tyreSize(size.value);
    if (!seat || !labelled) return cannotTell(lacksHalf(size, seat ? "section-width" : "bead-seat"));
    const swap = swaps(ofWheel(wheel, "tube"), ofWheel(wheel, "tyre"));
    if (!matingPair(seats.value, seat)) {
      if (rim.state === "known" && matingPair(seats.value, rim.value) && !matingPair(seat, rim.value)) {
        return notApplicable("the tube goes with the rim, and the tyre is found not to");
      }
      return fails(
        `${tube.subject} is for the bead seat ${showCodes(seats.value)}, but ${size.subject} has ${showCode(seat)}: fit a tube for ${size.written}.`,
        tube,
        [seats, size],
        swap,
      );
    }
    const takes = showInterval(widths.value, "length");
    const is = showQuantity(labelled.width, "length");
    if (inside(labelled.width, widths.value)) {
      return holds(`${tube.subject} is for tyres ${takes} wide, and ${size.subject} is ${is}.`);
    }
    const narrow = lessThan(labelled.width, widths.value.least);
    return fails(
      `${tube.subject} is for tyres ${takes} wide, but ${size.subject} is ${is}: it ${narrow ? "folds in so narrow a tyre and is pinched" : "is stretched thin in so wide a tyre and bursts early"}. Fit a tube for ${size.written}.`,
      tube,
      [widths, size],
      swap,
    );
  },
  explanation:
    "A tube is stretched to fill its tyre. Its maker names the widths and the bead seats for which that works: in a narrower " +
    "tyre it lies in folds, in which it chafes through or is caught under the bead, and in a wider one its rubber becomes " +
    "thin and gives way at the valve. The width that counts is the one printed on the tyre, since tubes are sorted by it.",
  source: "common practice, no source; the tube maker's own range decides",
  examples: {
    holds: `
part tube example.tube "Tube" { bead-seats: 559; tyre-widths: 40 to 62 mm }
part tyre example.tyre "Tyre" { size: 54-559 }

build example "A tube of this size" {
  front-wheel { tube: example.tube; tyre: example.tyre }
  rear-wheel.tube: none
}
`,
    fails: `
part tube example.tube "Tube" { bead-seats: 559; tyre-widths: 25 to 37 mm }
part tyre example.tyre "Tyre" { size: 54-559 }

build example "A tube too thin" {
  front-wheel { tube: example.tube; tyre: example.tyre }
  rear-wheel.tube: none
}
`,
  },
});
