import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, optional, slot } from "../../model/need.ts";
import { atLeast, greaterThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds, notApplicable } from "../define.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** What a pump's head grips, and a nut under it. */
const grip = 15;

const instances = wheelPlaces.flatMap(({ name, wheel }) => [
  { name: `${name} tube`, wheel, holder: ofWheel(wheel, "tube") },
  { name: `${name} valve`, wheel, holder: ofWheel(wheel, "valve") },
]);

export default defineCheck({
  code: "wheel/valve-length",
  title: "The valve stands far enough out of the rim to be pumped",
  severity: "error",
  since: 1,
  instances,
  needs: ({ wheel, holder }) => ({
    part: slot(holder),
    length: fact(holder, "valve-length"),
    through: optional(fact(ofWheel(wheel, "rim"), "valve-hole-depth")),
    depth: optional(fact(ofWheel(wheel, "rim"), "depth")),
  }),
  test({ part, length, through, depth }, { wheel, holder }) {
    const rim = through.state === "known" ? through : depth;
    if (rim.state === "none") return notApplicable("the rim states no depth");
    if (rim.state === "unknown") return cannotTell(through.state === "unknown" ? through : rim);
    const out = length.value - rim.value;
    const [is, passes] = showPair(length.value, rim.value, "length");
    const where = `${part.subject} has a valve of ${is}, and ${rim.subject} is ${passes} ${rim === through ? "thick where it passes" : "deep"}`;
    if (atLeast(out, grip)) return holds(`${where}: ${showQuantity(out, "length")} stand out.`);
    // The whole depth of a rim is more than the valve may have to pass.
    if (rim !== through && through.state === "unknown") return cannotTell(through);
    const wants = showQuantity(rim.value + grip, "length");
    return fails(
      greaterThan(out, 0)
        ? `${where}: only ${showQuantity(out, "length")} stand out, and a pump grips some ${showQuantity(grip, "length")}. Fit a valve of ${wants} or more, or an extension.`
        : `${where}: it does not come out of the rim. Fit a valve of ${wants} or more.`,
      part,
      [length, rim],
      swaps(holder, ofWheel(wheel, "rim")),
      greaterThan(out, 0) ? { severity: "warning" } : {},
    );
  },
  explanation:
    "A valve passes through the rim from its bed to the inside of the wheel, and has to stand out far enough for its nut and " +
    "the head of a pump, some 15 mm. Deep rims need long valves. Extensions help where the valve's core can be taken " +
    "out. A valve that stands out much further than it need only rattles.",
  source: "common practice, no source",
  examples: {
    holds: `
part valve example.valve "Valve 80" { valve-length: 80 mm }
part rim example.rim "Deep rim" { depth: 55 mm; valve-hole-depth: 50 mm }

build example "Long enough for a deep rim" {
  front-wheel { valve: example.valve; rim: example.rim }
  rear-wheel.tube: none
}
`,
    fails: `
part valve example.valve "Valve 48" { valve-length: 48 mm }
part rim example.rim "Deep rim" { depth: 55 mm; valve-hole-depth: 50 mm }

build example "Lost in a deep rim" {
  front-wheel { valve: example.valve; rim: example.rim }
  rear-wheel.tube: none
}
`,
  },
});
