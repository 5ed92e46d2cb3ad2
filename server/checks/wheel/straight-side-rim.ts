import { tyreSize } from "../../calculations/shared/tyre-size.ts";
import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { dimensionFact, dimensionOf, lacksDimension, showCode } from "../shared/codes.ts";
import { lacksHalf } from "../shared/half-mating.ts";
import { excessWidth } from "../shared/straight-side.ts";
import { swaps } from "../shared/swaps.ts";
import { unknowns } from "../shared/unknowns.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

export default defineCheck({
  code: "wheel/straight-side-rim",
  title: "The tyre is one that a rim with straight sides holds",
  severity: "error",
  since: 1,
  safety: true,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    tyre: slot(ofWheel(wheel, "tyre")),
    kind: fact(ofWheel(wheel, "rim"), "rim-kind"),
    inner: optional(fact(ofWheel(wheel, "rim"), "inner-width")),
    size: optional(fact(ofWheel(wheel, "tyre"), "size")),
    approved: optional(fact(ofWheel(wheel, "tyre"), "straight-side-approved")),
    bead: optional(fact(ofWheel(wheel, "tyre"), "bead")),
  }),
  test({ tyre, kind, inner, size, approved, bead }, { wheel }) {
    const straight = dimensionOf<boolean>(kind.value, "straight-side");
    if (straight === undefined) return cannotTell(lacksDimension(kind.value, "straight-side"));
    if (!straight) return notApplicable(`${kind.subject} has no straight sides`);
    const swap = swaps(ofWheel(wheel, "tyre"), ofWheel(wheel, "rim"));
    const named = `${kind.subject} is ${showCode(kind.value)}`;

    if (dimensionOf<boolean>(kind.value, "tubeless") === false) {
      if (bead.state === "unknown") return cannotTell(bead);
      if (bead.state === "known" && bead.value === "wire") {
        return holds(`${named}, and ${bead.subject} has wire beads.`);
      }
      return fails(
        `${named}, which holds stiff beads of wire only, but ${tyre.subject} has ${bead.state === "known" ? "folding beads" : "none"}: fit a tyre with wire beads, or a rim with hooks.`,
        tyre,
        [kind, ...(bead.state === "known" ? [bead] : [])],
        swap,
      );
    }

    if (approved.state === "known" && !approved.value) {
      return fails(
        `${named}, but the maker of ${tyre.subject} does not approve it on such rims: fit a tyre that is approved, or a rim with hooks.`,
        tyre,
        [kind, approved],
        swap,
      );
    }
    const excess = dimensionFact<number>(kind.value, "least-excess-width");
    const width = size.state === "known" ? tyreSize(size.value)?.width : undefined;
    if (size.state === "known" && width === undefined) return cannotTell(lacksHalf(size, "section-width"));
    if (excess && width !== undefined && inner.state === "known" && size.state === "known") {
      const suits = excessWidth(kind.value, width, inner.value);
      if (suits !== "enough") {
        const [is, on, by, least] = [width, inner.value, width - inner.value, excess.value].map((value) =>
          showQuantity(value, "length"),
        );
        const near = suits === "disputed";
        return fails(
          `${tyre.subject} is ${is} wide, ${by} more than the rim with its ${on} inside: ${named}, on which a tyre is ${least} wider at least. Fit a tyre of ${showQuantity(inner.value + excess.value, "length")} or more${near ? "; sources differ by a millimetre here, and the rim maker's list decides" : ""}.`,
          tyre,
          [size, inner, excess],
          swap,
          near ? { severity: "warning" } : {},
        );
      }
    }
    const unknown = unknowns(approved, ...(excess ? [size, inner] : []));
    if (unknown.length > 0) return cannotTell(...unknown);
    if (approved.state !== "known") {
      return notApplicable(`${tyre.subject} is none that could be approved`);
    }
    const wider =
      width !== undefined && inner.state === "known"
        ? `, and it is ${showQuantity(width - inner.value, "length")} wider than the rim inside`
        : "";
    return holds(`${named}; its maker approves ${tyre.subject} on such rims${wider}.`);
  },
  explanation:
    "A rim whose sides have no hook holds the tyre by the fit of bead and seat alone. Tubeless rims of that kind, which the " +
    "trade calls hookless, take only tyres that their maker approves on them: beads that do not stretch, and at least 5 mm " +
    "more width than the rim inside, by the edition of 2023. So a tyre of 28 mm does not go on a rim of 25 mm, and one of " +
    "30 mm does. The older plain straight-side rims take only stiff wire beads with a tube. Pressure on such rims is " +
    "limited too, which is asked with the other limits of pressure.",
  source:
    "kinds: ISO 5775-2 as summarised in Wikipedia, ISO 5775; straight-side rims for rigid beads: BS ISO 5775-2:2015 extract; 5 mm: reported by trade magazines, 2023, another page quotes 4 mm",
  caution:
    "A tyre that blows off a rim throws the rider. No levers on the beads of straight-side rims, and eyes protected when they are seated.",
  examples: {
    holds: `
part tyre example.tyre "Tyre" { size: 30-622; straight-side-approved: yes }
part rim example.rim "Hookless" { rim-kind: tubeless-straight-side; inner-width: 25 mm }

build example "Approved, and five millimetres wider" {
  front-wheel { tyre: example.tyre; rim: example.rim }
  rear-wheel { tyre: none; rim: none }
}
`,
    fails: `
part tyre example.tyre "Tyre" { size: 28-622; straight-side-approved: yes }
part rim example.rim "Hookless" { rim-kind: tubeless-straight-side; inner-width: 25 mm }

build example "Three millimetres wider only" {
  front-wheel { tyre: example.tyre; rim: example.rim }
  rear-wheel { tyre: none; rim: none }
}
`,
  },
});
