import { cannotTell, fails, holds, notApplicable } from "../../checks/define.ts";
import { unknowns } from "../../checks/shared/unknowns.ts";
import { anyHolderFact, wheelPlaces } from "../../checks/shared/wheel-places.ts";
import { type Known, optional, worked } from "../../model/need.ts";
import { atMost } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { defineComparison, judged } from "../define.ts";
import { isWithin, toleranceAt } from "../tolerance.ts";

export default defineComparison({
  code: "record/tyre-width",
  title: "The tyre measures no wider than frame or fork takes, and about as it was worked out",
  severity: "error",
  safety: true,
  restsOn: "spec",
  instances: wheelPlaces.map((place) => ({ name: place.name, place, path: `${place.wheel}.tyre-width` })),
  needs: ({ place }) => ({
    worked: optional(worked<number>(`${place.wheel}.tyre-width-on-rim`)),
    widest: anyHolderFact<number>(place, "widestTyre"),
  }),
  test(measured: Known<number>, { worked: width, widest }, { path, name }) {
    const expected = width.state === "known" ? showQuantity(width.value, "length") : undefined;
    if (widest.state === "known" && !atMost(measured.value, widest.value)) {
      const [is, takes] = showPair(measured.value, widest.value, "length");
      return judged(
        fails(
          `The ${name} tyre measures ${is}, but ${widest.subject} takes ${takes} at most: fit a narrower one.`,
          measured,
          [widest],
        ),
        expected,
      );
    }
    if (width.state === "known" && !isWithin(toleranceAt(path, "worked"), measured.value, width.value)) {
      const [is, comes] = showPair(measured.value, width.value, "length");
      return judged(
        fails(
          `The ${name} tyre measures ${is}, and by its label it comes to ${comes} on this rim: state what it measures where the tyre is declared, since clearances are worked out from it.`,
          measured,
          [width],
          [],
          { severity: "information", caution: "" },
        ),
        expected,
      );
    }
    const unknown = unknowns(width, widest);
    if (unknown.length > 0) return judged(cannotTell(...unknown), expected);
    const takes =
      widest.state === "known"
        ? `; ${widest.subject} takes ${showPair(widest.value, measured.value, "length")[0]}`
        : "";
    if (width.state !== "known" && widest.state !== "known")
      return judged(notApplicable("nothing states a width for this tyre"));
    return judged(
      holds(
        `The ${name} tyre measures ${showQuantity(measured.value, "length")}${expected === undefined ? "" : `, and comes to ${expected} by its label on this rim`}${takes}.`,
      ),
      expected,
    );
  },
  explanation:
    "Tyres measure what they like: their labels are for a rim that is not the one fitted, and casings stretch in the first " +
    "days. The width measured over the widest place, inflated, has to pass between the stays or the legs with room for " +
    "mud, and no wider than the maker of frame or fork allows. Where it differs from what the label makes of it, the part " +
    "in the library should state what was measured.",
  source: "the frame's or fork's maker; 2 mm or 3 % from the width worked out: common practice, no source",
  caution: "A tyre that touches frame or fork locks the wheel.",
  examples: {
    holds: `
part frame example.frame "Frame" { widest-tyre: 66 mm }
part rim example.rim "Rim" { inner-width: 30 mm }
part tyre example.tyre "Tyre" { size: 61-622; measured-on-rim: 30 mm }

build example "Tyre" {
  frame: example.frame
  rear-wheel { rim: example.rim; tyre: example.tyre }
}

record "A-1" of example {
  rear-wheel.tyre-width: 61.5 mm
}
`,
    fails: `
part frame example.frame "Frame" { widest-tyre: 61 mm }
part rim example.rim "Rim" { inner-width: 30 mm }
part tyre example.tyre "Tyre" { size: 61-622; measured-on-rim: 30 mm }

build example "Tyre" {
  frame: example.frame
  rear-wheel { rim: example.rim; tyre: example.tyre }
}

record "A-1" of example {
  rear-wheel.tyre-width: 63 mm
}
`,
  },
});
