import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, optional, slot } from "../../model/need.ts";
import type { ResolvedCode } from "../../model/standard.ts";
import { atLeast } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionFact } from "../shared/codes.ts";
import { anyFact } from "../shared/end.ts";
import { isKind } from "../shared/kind.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { anyHolderFact, wheelPlaces } from "../shared/wheel-places.ts";

/** Both dropouts together: a quick-release axle is some 8 to 11 mm longer than the width over its locknuts. */
const dropouts = 11;

export default defineCheck({
  code: "wheel/skewer",
  title: "The quick-release skewer suits its wheel and dropouts",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: (place) => ({
    skewer: slot(ofWheel(place.wheel, "axle")),
    made: optional(fact(ofWheel(place.wheel, "axle"), "wheel")),
    span: anyFact<number>(ofWheel(place.wheel, "axle"), "greatest-span"),
    steel: anyFact<boolean>(ofWheel(place.wheel, "axle"), "steel-faces"),
    axle: anyHolderFact<ResolvedCode>(place, "axle"),
    dropout: place.name === "rear" ? anyFact<string>("frame", "dropout") : anyFact<string>("fork", "dropout"),
  }),
  test({ skewer, made, span, steel, axle, dropout }, place) {
    if (!isKind(skewer.value, "quick-release")) return notApplicable(`${skewer.subject} is no skewer`);
    const slotPath = ofWheel(place.wheel, "axle");
    const holder = axle.state === "known" ? axle.subject : place.holder;
    const width = axle.state === "known" ? dimensionFact<number>(axle.value, "width") : undefined;
    if (span.state === "known" && width && !atLeast(span.value, width.value + dropouts)) {
      const [spans, needs] = showPair(span.value, width.value + dropouts, "length");
      const hopeless = !atLeast(span.value, width.value);
      return fails(
        `${skewer.subject} spans ${spans} at most, but ${holder} has ${showPair(width.value, span.value, "length")[0]} between its dropouts, and ${needs} with their thickness: fit a longer skewer.`,
        skewer,
        [span, width],
        swaps(slotPath),
        hopeless ? {} : { severity: "warning" },
      );
    }
    if (made.state === "known" && made.value !== place.name) {
      return fails(
        `${skewer.subject} is made for the ${made.value} wheel, and the build fits it at the ${place.name}: fit a ${place.name} skewer.`,
        skewer,
        [made],
        swaps(slotPath),
        // One that is long enough holds; it only stands out.
        span.state === "known" && width ? { severity: "warning" } : {},
      );
    }
    const slides = dropout.state === "known" && (dropout.value === "horizontal" || dropout.value === "track-end");
    if (slides && steel.state === "known" && !steel.value) {
      return fails(
        `${dropout.subject} has ${dropout.value} dropouts, along which the axle can slide, but the faces of ${skewer.subject} are not of steel and do not bite: fit a skewer with steel faces.`,
        skewer,
        [dropout, steel],
        swaps(slotPath),
      );
    }
    const unknown = unknowns(span, axle, dropout, ...(slides ? [steel] : []));
    if (unknown.length > 0) return cannotTell(...unknown);
    return holds(
      span.state === "known" && width
        ? `${skewer.subject} spans ${showPair(span.value, width.value, "length")[0]}, and ${holder} has ${showPair(width.value, span.value, "length")[0]} between its dropouts.`
        : `${skewer.subject} is made for the ${place.name} wheel.`,
    );
  },
  explanation:
    "A skewer holds the wheel by squeezing the dropouts between its cam and its nut, so that it has to span both of them and " +
    "the hub with enough thread left in the nut. Where the axle can slide in a slot, only hard steel faces that bite into " +
    "the dropout keep the chain from pulling it forward; light skewers with smooth faces are for vertical dropouts. It is " +
    "closed so hard that the lever leaves its mark in the palm.",
  source: "common practice, no source: a quick-release axle is 8 to 11 mm longer than the width over its locknuts",
  caution: "A skewer that is not closed hard lets the wheel come out. Its tabs or dropouts' lips stay on.",
  examples: {
    holds: `
part frame example.frame "Frame" { rear-axle: 10x130; dropout: horizontal }
part quick-release example.skewer "Skewer" { wheel: rear; greatest-span: 150 mm; steel-faces: yes }

build example "Long enough, with teeth" {
  frame: example.frame
  rear-wheel.axle: example.skewer
  front-wheel.axle: none
}
`,
    fails: `
part frame example.frame "Frame" { rear-axle: 10x130; dropout: horizontal }
part quick-release example.skewer "Light skewer" { wheel: rear; greatest-span: 150 mm; steel-faces: no }

build example "Smooth faces in a slot" {
  frame: example.frame
  rear-wheel.axle: example.skewer
  front-wheel.axle: none
}
`,
  },
});
