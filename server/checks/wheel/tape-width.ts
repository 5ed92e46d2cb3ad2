import { ofWheel } from "../../calculations/shared/wheels.ts";
import { fact, slot } from "../../model/need.ts";
import { greaterThan, lessThan } from "../../values/compare.ts";
import { showPair, showQuantity } from "../../values/show.ts";
import { cannotTell, defineCheck, fails, holds } from "../define.ts";
import { anySlot } from "../shared/end.ts";
import { swaps } from "../shared/swaps.ts";
import { wheelPlaces } from "../shared/wheel-places.ts";

/** How far sealing tape may climb the walls before it lies under the beads' edge. */
const climbs = 6;
/** The access holes of double-walled rims are about that wide. */
const holeCover = 10;

export default defineCheck({
  code: "wheel/tape-width",
  title: "The rim tape is as wide as its rim asks for",
  severity: "warning",
  since: 1,
  instances: wheelPlaces,
  needs: ({ wheel }) => ({
    tape: slot(ofWheel(wheel, "rim-tape")),
    width: fact(ofWheel(wheel, "rim-tape"), "width"),
    inner: fact(ofWheel(wheel, "rim"), "inner-width"),
    tube: anySlot(ofWheel(wheel, "tube")),
  }),
  test({ tape, width, inner, tube }, { wheel }) {
    const [is, on] = showPair(width.value, inner.value, "length");
    const wrong = (what: string): ReturnType<typeof fails> =>
      fails(
        `${tape.subject} is ${is} wide, and ${inner.subject} measures ${on} inside: ${what}`,
        tape,
        [width, inner],
        swaps(ofWheel(wheel, "rim-tape")),
      );
    const most = inner.value + climbs;
    if (greaterThan(width.value, most)) {
      return wrong(
        `it climbs the walls and lies under the edge of the beads. Use tape of ${showQuantity(most, "length")} or less.`,
      );
    }
    if (lessThan(width.value, holeCover)) {
      return wrong(`it does not cover the holes inside. Use tape of ${showQuantity(holeCover, "length")} or more.`);
    }
    // Narrow tape is right over the holes of a rim with a tube, and leaks on one without.
    if (lessThan(width.value, inner.value)) {
      if (tube.state === "unknown") return cannotTell(tube);
      if (tube.state === "none") {
        return wrong(
          `without a tube it leaves the edges of the rim's bed open, and leaks there. Use tape of ${on} or a little more.`,
        );
      }
    }
    return holds(`${tape.subject} is ${is} wide, and ${inner.subject} measures ${on} inside.`);
  },
  explanation:
    "Under a tube the tape only covers the spoke holes, so that their edges do not cut it, and lies flat in the bed between " +
    "the seats. Without a tube it seals the rim and reaches from wall to wall, some 2 to 5 mm wider than the rim inside; " +
    "the beads then hold its edges down. Narrower sealing tape leaks at its edges, and much wider tape stands up the " +
    "walls and keeps the beads from seating.",
  source: "common practice, no source",
  examples: {
    holds: `
part rim-tape example.tape "Tape 27" { width: 27 mm; airtight: yes }
part rim example.rim "Rim 25" { inner-width: 25 mm }
part valve example.valve "Valve" { valve-kind: presta }

build example "From wall to wall" {
  front-wheel { rim-tape: example.tape; rim: example.rim; valve: example.valve }
  rear-wheel.rim-tape: none
}
`,
    fails: `
part rim-tape example.tape "Tape 21" { width: 21 mm; airtight: yes }
part rim example.rim "Rim 25" { inner-width: 25 mm }
part valve example.valve "Valve" { valve-kind: presta }

build example "Open at the edges" {
  front-wheel { rim-tape: example.tape; rim: example.rim; valve: example.valve }
  rear-wheel.rim-tape: none
}
`,
  },
});
