import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, slot } from "../../model/need.ts";
import { atMost, greaterThan } from "../../values/compare.ts";
import { showPair } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { dimensionFact, lacksDimension, showCode } from "../shared/codes.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** Holes are drilled with some tenths of a millimetre of play. */
const play = 0.3;

const instances = wheelPlaces.flatMap(({ name, wheel }) => [
  { name: `${name} tube`, wheel, holder: ofWheel(wheel, "tube") },
  { name: `${name} valve`, wheel, holder: ofWheel(wheel, "valve") },
]);

export default defineCheck({
  code: "wheel/valve-hole",
  title: "The valve goes through the rim's hole",
  severity: "error",
  since: 1,
  instances,
  needs: ({ wheel, holder }) => ({
    part: slot(holder),
    kind: fact(holder, "valve-kind"),
    hole: fact(ofWheel(wheel, "rim"), "valve-hole"),
  }),
  test({ part, kind, hole }, { wheel, holder }) {
    const needs = dimensionFact<number>(kind.value, "hole-diameter");
    if (!needs) return cannotTell(lacksDimension(kind.value, "hole-diameter"));
    const [wants, has] = showPair(needs.value, hole.value, "length");
    if (atMost(Math.abs(needs.value - hole.value), play)) {
      return holds(`${showCode(kind.value)} needs a hole of ${wants}, and ${hole.subject} has one of ${has}.`);
    }
    const thick = greaterThan(needs.value, hole.value);
    return fails(
      thick
        ? `${part.subject} has ${showCode(kind.value)}, which needs a hole of ${wants}, but that of ${hole.subject} is ${has}: fit one with a narrower valve. Drilling the rim is for its maker to allow.`
        : `${part.subject} has ${showCode(kind.value)} for a hole of ${wants}, but that of ${hole.subject} is ${has}: the valve stands askew and chafes. Put a reducing sleeve in the hole, or fit one with the wider valve.`,
      part,
      [kind, hole],
      swaps(holder, ofWheel(wheel, "rim")),
      thick ? {} : { severity: "warning" },
    );
  },
  explanation:
    "Rims are drilled for narrow valves, 6.5 mm, or for car valves, 8.5 mm. A car valve does not pass a narrow hole. A " +
    "narrow valve in a wide hole moves about, so that the edge cuts the tube at its foot; a small sleeve in the hole " +
    "prevents it. Wider holes weaken narrow rims, which is why their makers forbid drilling them out.",
  source: "from memory",
  examples: {
    holds: `
part tube example.tube "Tube" { valve-kind: woods }
part rim example.rim "Rim" { valve-hole: 8.5 mm }

build example "A wide valve in a wide hole" {
  front-wheel { tube: example.tube; rim: example.rim }
  rear-wheel.tube: none
}
`,
    fails: `
part tube example.tube "Tube" { valve-kind: car }
part rim example.rim "Rim" { valve-hole: 6.5 mm }

build example "A car valve at a narrow hole" {
  front-wheel { tube: example.tube; rim: example.rim }
  rear-wheel.tube: none
}
`,
  },
});
